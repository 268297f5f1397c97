// gallipot lineage: where does a recipe come from, who took it over, who printed it first?
#include <fmt/format.h>

#include "query/reporting/lineage_report.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string of, book;
  long limit = 20;
  bool csv = false;
};

Outcome<Exit> of_recipe(const Asked& asked, const Opened& opened, std::size_t limit) {
  const auto lineage = lineage_of(opened.shelf, *opened.lexicon, asked.of, limit);
  if (!lineage) return tl::unexpected(lineage.error());
  const bool found = !lineage->earlier.empty() || !lineage->later.empty();
  if (asked.json)
    say(lineage_as_json(*lineage, opened.shelf));
  else if (asked.csv)
    say(lineage_as_csv(*lineage));
  else if (found)
    say(lineage_as_text(*lineage, opened.shelf, text_style()));
  if (found) return Exit::answered;
  if (!asked.json)
    complain(lineage->note.empty() ? fmt::format("No other book of this shelf has the words of {}.", asked.of)
                                   : lineage->note);
  return Exit::nothing_found;
}

Outcome<Exit> of_book(const Asked& asked, const Opened& opened, std::size_t examples) {
  const auto borrowings = borrowings_of(opened.shelf, *opened.lexicon, asked.book);
  if (!borrowings) return tl::unexpected(borrowings.error());
  const bool found = !borrowings->earlier.empty() || !borrowings->undecided.empty() || !borrowings->later.empty();
  if (asked.json)
    say(borrowings_as_json(*borrowings, opened.shelf));
  else if (found)
    say(borrowings_as_text(*borrowings, opened.shelf, text_style(), examples));
  if (found) return Exit::answered;
  if (!asked.json)
    complain(borrowings->note.empty() ? fmt::format("No other book of this shelf has a recipe of {}.", asked.book)
                                      : borrowings->note);
  return Exit::nothing_found;
}

Outcome<Exit> lineage(const Asked& asked) {
  constexpr std::size_t few = 3;
  if (asked.of.empty() == asked.book.empty())
    return fault("\"lineage\" wants either a recipe or a book",
                 "say \"--of\" and a recipe's id, or \"--book\" and a book's");
  if (asked.csv && asked.json) return fault("an answer cannot be both CSV and JSON", "say --csv or --json");
  if (asked.csv && !asked.book.empty())
    return fault("--csv shows what was changed in one recipe", "say \"--of\" and a recipe's id with it");
  const auto limit = checked_limit(asked.limit);
  if (!limit) return tl::unexpected(limit.error());
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  return asked.book.empty() ? of_recipe(asked, *opened, *limit) : of_book(asked, *opened, std::min(*limit, few));
}

}  // namespace

void add_lineage(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("lineage", "Tell where a recipe comes from and who took it over");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("--of", asked->of, "The recipe, by its id")->type_name("ID");
  verb->add_option("--book", asked->book, "Or a whole book: which earlier books does it draw on?")->type_name("ID");
  add_index_option(*verb, *asked);
  verb->add_option("--limit", asked->limit, "At most so many witnesses")->type_name("N")->capture_default_str();
  verb->add_flag("--csv", asked->csv, "With --of: every change as a table for a spreadsheet (RFC 4180)");
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot lineage --index shelf --of dalgarnoch-1808/0019\n"
      "  gallipot lineage --index shelf --book oldacre-1857");
  verb->callback([&work, asked] { work = [asked] { return lineage(*asked); }; });
}

}  // namespace gallipot::program
