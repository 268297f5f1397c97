// gallipot compare: recipes side by side.
#include "query/comparing/compare.h"

#include <fmt/format.h>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

/// Hits that score less than this part of the best are another dish.
constexpr double near_enough = 0.55;

struct Asked : Common {
  std::vector<std::string> ids;
  std::string dish, basis;
  long limit = 12;
  Filter filter;
  bool csv = false, printed = false;
};

/// Ids of the recipes that are the dish.
Outcome<std::vector<std::string>> recipes_of(const Asked& asked, const Opened& opened) {
  const auto filter = checked(asked.filter, opened);
  if (!filter) return tl::unexpected(filter.error());
  const auto limit = checked_limit(asked.limit);
  if (!limit) return tl::unexpected(limit.error());
  const auto found = find(opened.shelf, *opened.lexicon, {asked.dish}, *filter, *limit);
  if (!found) return tl::unexpected(found.error());
  std::vector<std::string> out;
  for (const Hit& hit : found->hits)
    if (hit.score >= near_enough * found->hits.front().score) out.push_back(hit.id);
  return out;
}

Outcome<Exit> compare_recipes(const Asked& asked) {
  if (asked.ids.empty() == asked.dish.empty())
    return fault("\"compare\" wants either recipes or a dish",
                 "name recipes by their ids, or say --dish and its words");
  if (asked.csv && asked.json) return fault("an answer cannot be both CSV and JSON", "say --csv or --json");
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  auto ids = asked.dish.empty() ? Outcome<std::vector<std::string>>(asked.ids) : recipes_of(asked, *opened);
  if (!ids) return tl::unexpected(ids.error());
  if (ids->empty()) {
    complain(fmt::format("Nothing found for \"{}\".", asked.dish));
    return Exit::nothing_found;
  }
  const auto yardstick = Yardstick::load(opened->shelf.measures(), asked.tables);
  if (!yardstick) return tl::unexpected(yardstick.error());
  const auto comparison = compare(opened->shelf, *ids, *yardstick, asked.basis);
  if (!comparison) return tl::unexpected(comparison.error());
  if (asked.json)
    say(comparison_as_json(*comparison));
  else if (asked.csv)
    say(comparison_as_csv(*comparison));
  else
    say(comparison_as_text(*comparison, text_style(asked.printed)));
  return Exit::answered;
}

}  // namespace

void add_compare(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("compare", "Lay recipes side by side: proportions and methods");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("ids", asked->ids, "The recipes, by their ids")->type_name("ID");
  verb->add_option("--dish", asked->dish, "Or a dish: its best recipes are taken")->type_name("WORDS");
  add_index_option(*verb, *asked);
  add_decisions_option(*verb, *asked);
  verb->add_option("--basis", asked->basis,
                   "Amounts per kilogram of this ingredient, of the whole \"batch\", or \"as printed\"; without it the "
                   "chief ingredient")
      ->type_name("STUFF");
  verb->add_option("--limit", asked->limit, "With --dish: at most so many recipes")
      ->type_name("N")
      ->capture_default_str();
  add_filter_options(*verb, asked->filter);
  verb->add_flag("--printed", asked->printed, "Show the printed words under each amount");
  verb->add_flag("--csv", asked->csv, "Answer as a table for a spreadsheet (RFC 4180)");
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot compare --index shelf --dish \"damson catsup\"\n"
      "  gallipot compare --index shelf oldacre-1838/0019 pellowe-1884/0010 --basis vinegar --printed");
  verb->callback([&work, asked] { work = [asked] { return compare_recipes(*asked); }; });
}

}  // namespace gallipot::program
