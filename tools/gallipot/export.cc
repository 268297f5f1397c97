// gallipot export: every recipe of the index as JSON Lines.
#include "indexer/storing/export.h"

#include <cstdio>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

Outcome<Exit> export_shelf(const Common& asked) {
  const auto shelf = open_shelf(asked);
  if (!shelf) return tl::unexpected(shelf.error());
  const auto all = shelf->each([](const ComparableRecipe& recipe) {
    say(export_line(recipe) + "\n");
    return std::ferror(stdout) == 0;
  });
  if (!all) return tl::unexpected(all.error());
  return shelf->recipe_count() == 0 ? Exit::nothing_found : Exit::answered;
}

}  // namespace

void add_export(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("export", "Write every recipe of an index as JSON Lines");
  const auto asked = std::make_shared<Common>();
  add_index_option(*verb, *asked);
  add_tables_option(*verb, *asked);
  add_decisions_option(*verb, *asked);
  verb->footer(
      "Example:\n  gallipot export --index shelf > recipes.jsonl\n\nOne recipe a line, in the order of the shelf.");
  verb->callback([&work, asked] { work = [asked] { return export_shelf(*asked); }; });
}

}  // namespace gallipot::program
