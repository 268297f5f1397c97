// gallipot compare: recipes side by side.
#include "query/comparing/compare.h"

#include <fmt/format.h>

#include "query/grouping/choice.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::vector<std::string> ids;
  std::string dish, variants_of, basis, csv, html;
  long limit = 50;
  Filter filter;
  bool by_name = false, printed = false, full = false;
};

/// The recipes to lay side by side: those named, or those chosen for a dish or a recipe.
Outcome<Choice> recipes_of(const Asked& asked, const Opened& opened) {
  Choice named;
  for (const std::string& id : asked.ids) named.taken.push_back({id, {}, 0, 1, true});
  if (!asked.ids.empty()) return named;
  const auto filter = checked(asked.filter, opened);
  if (!filter) return tl::unexpected(filter.error());
  const auto limit = checked_limit(asked.limit);
  if (!limit) return tl::unexpected(limit.error());
  const Wanted wanted{*limit, asked.by_name};
  return asked.dish.empty() ? chosen_by_recipe(opened.shelf, *opened.lexicon, asked.variants_of, *filter, wanted)
                            : chosen_by_dish(opened.shelf, *opened.lexicon, asked.dish, *filter, wanted);
}

Outcome<bool> understood(const Asked& asked) {
  const int ways = (asked.ids.empty() ? 0 : 1) + (asked.dish.empty() ? 0 : 1) + (asked.variants_of.empty() ? 0 : 1);
  if (ways != 1)
    return fault("\"compare\" wants either recipes, or a dish, or one recipe with its variants",
                 "name recipes by their ids, or say --dish and its words, or --variants-of and an id");
  if (asked.csv == "-" && asked.json) return fault("an answer cannot be both CSV and JSON", "say --csv or --json");
  return true;
}

/// Writes what was asked for to files; what goes to standard output is written last.
Outcome<Exit> answer(const Asked& asked, const Comparison& comparison) {
  bool written = false;
  if (!asked.html.empty()) {
    if (const auto done = write_file(asked.html, comparison_as_html(comparison)); !done)
      return tl::unexpected(done.error());
    written = true;
  }
  if (!asked.csv.empty() && asked.csv != "-") {
    if (const auto done = write_file(asked.csv, comparison_as_csv(comparison)); !done)
      return tl::unexpected(done.error());
    written = true;
  }
  if (asked.json)
    say(comparison_as_json(comparison));
  else if (asked.csv == "-")
    say(comparison_as_csv(comparison));
  else if (!written)
    say(comparison_as_text(comparison, text_style(asked.printed, asked.full)));
  return Exit::answered;
}

Outcome<Exit> compare_recipes(const Asked& asked) {
  if (const auto sound = understood(asked); !sound) return tl::unexpected(sound.error());
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto choice = recipes_of(asked, *opened);
  if (!choice) return tl::unexpected(choice.error());
  if (choice->taken.empty()) {
    complain(fmt::format("Nothing found for \"{}\".", asked.dish));
    return Exit::nothing_found;
  }
  const auto yardstick = Yardstick::load(opened->shelf.measures(), asked.tables);
  if (!yardstick) return tl::unexpected(yardstick.error());
  std::vector<std::string> ids;
  for (const Considered& one : choice->taken) ids.push_back(one.id);
  auto comparison = compare(opened->shelf, ids, *yardstick, asked.basis);
  if (!comparison) return tl::unexpected(comparison.error());
  comparison->chosen = choice->words;
  if (!asked.dish.empty()) comparison->dish = asked.dish;
  return answer(asked, *comparison);
}

}  // namespace

void add_compare(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("compare", "Lay recipes side by side: proportions and methods");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("ids", asked->ids, "The recipes, by their ids")->type_name("ID");
  verb->add_option("--dish", asked->dish, "Or a dish: the recipes that bear its name or are made as it is")
      ->type_name("WORDS");
  verb->add_option("--variants-of", asked->variants_of, "Or one recipe, by its id, with its variants")->type_name("ID");
  add_index_option(*verb, *asked);
  add_decisions_option(*verb, *asked);
  verb->add_option("--basis", asked->basis,
                   "Amounts per kilogram of this ingredient, of the whole \"batch\", or \"as printed\"; without it the "
                   "chief ingredient")
      ->type_name("STUFF");
  verb->add_option("--limit", asked->limit, "With --dish or --variants-of: at most so many recipes")
      ->type_name("N")
      ->capture_default_str();
  verb->add_flag("--by-name", asked->by_name, "With --dish or --variants-of: none that go by another name");
  add_filter_options(*verb, asked->filter);
  verb->add_flag("--printed", asked->printed, "Show the printed words under each amount");
  verb->add_flag("--full", asked->full, "Show every witness's column, however many there are");
  verb->add_option("--csv", asked->csv, "Answer as a table for a spreadsheet (RFC 4180); with a name, into that file")
      ->type_name("FILE")
      ->expected(0, 1)
      ->default_str("-");
  verb->add_option("--html", asked->html, "Write one page with plots that prints well into this file")
      ->type_name("FILE");
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot compare --index shelf --dish \"damson catsup\"\n"
      "  gallipot compare --index shelf oldacre-1838/0019 pellowe-1884/0010 --basis vinegar --printed");
  verb->callback([&work, asked] { work = [asked] { return compare_recipes(*asked); }; });
}

}  // namespace gallipot::program
