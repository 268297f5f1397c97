// gallipot find: which recipes are this dish?
#include <fmt/format.h>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::vector<std::string> words;
  std::size_t limit = 20;
  Filter filter;
};

Outcome<Exit> find_dish(const Asked& asked) {
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto found = find(opened->shelf, *opened->lexicon, asked.words, asked.filter, asked.limit);
  if (!found) return tl::unexpected(found.error());
  if (asked.json)
    say(found_as_json(*found, opened->shelf));
  else if (!found->hits.empty())
    say(found_as_text(*found, opened->shelf, text_style()));
  if (!found->hits.empty()) return Exit::answered;
  if (!asked.json)
    complain(fmt::format(
        "Nothing found for \"{}\"{}", fmt::join(asked.words, " "),
        found->suggestion.empty() ? std::string(".") : fmt::format("; did you mean \"{}\"?", found->suggestion)));
  return Exit::nothing_found;
}

}  // namespace

void add_find(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("find", "Find the recipes of a dish, whatever each book calls it");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("words", asked->words, "The dish")->type_name("WORDS")->required();
  add_index_option(*verb, *asked);
  verb->add_option("--limit", asked->limit, "At most so many")->type_name("N")->capture_default_str();
  add_filter_options(*verb, asked->filter);
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot find --index shelf damson catsup\n"
      "  gallipot find --index shelf seed cake --from 1800 --to 1850 --country GB\n"
      "  gallipot find --index shelf pickled onions --with ginger --without sugar");
  verb->callback([&work, asked] { work = [asked] { return find_dish(*asked); }; });
}

}  // namespace gallipot::program
