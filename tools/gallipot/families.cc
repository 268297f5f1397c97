// gallipot families: the dishes of the shelf.
#include "query/grouping/families.h"

#include <fmt/format.h>

#include "query/reporting/families_report.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string dish;
  long limit = 50;
};

Outcome<Exit> families(const Asked& asked) {
  const auto limit = checked_limit(asked.limit);
  if (!limit) return tl::unexpected(limit.error());
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto all = families_of(opened->shelf, *opened->lexicon, asked.dish);
  if (!all) return tl::unexpected(all.error());
  if (asked.json)
    say(families_as_json(*all, opened->shelf, *limit));
  else if (!all->families.empty())
    say(families_as_text(*all, opened->shelf, text_style(), *limit));
  if (!all->families.empty()) return Exit::answered;
  if (!asked.json)
    complain(asked.dish.empty() ? "No dish stands on this shelf twice."
                                : fmt::format("No dish of this shelf is called \"{}\".", asked.dish));
  return Exit::nothing_found;
}

}  // namespace

void add_families(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("families", "List the dishes of the shelf, with their names and years");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("--dish", asked->dish, "Only dishes with these words in one of their names")->type_name("WORDS");
  add_index_option(*verb, *asked);
  verb->add_option("--limit", asked->limit, "At most so many")->type_name("N")->capture_default_str();
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot families --index shelf\n"
      "  gallipot families --index shelf --dish \"damson catsup\"");
  verb->callback([&work, asked] { work = [asked] { return families(*asked); }; });
}

}  // namespace gallipot::program
