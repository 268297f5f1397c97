// Which books a book draws on, to read: the finding first, then each book with a few of its recipes and their pages.
#include <fmt/format.h>

#include <algorithm>

#include "query/citing/cite.h"
#include "query/reporting/layout.h"
#include "query/reporting/lineage_report.h"

namespace gallipot {
namespace {

constexpr std::size_t most_later = 8;  // books that draw on this one are told in a line each

std::string recipes(std::size_t n) { return n == 1 ? "1 recipe" : fmt::format("{} recipes", n); }

std::string named(const Shelf& shelf, const std::string& id) {
  const Book* book = shelf.book(id);
  if (book == nullptr) return id;
  const std::string title = book->title.empty() || book->creator.empty() ? std::string() : ", " + book->title;
  return fmt::format("{}{} ({})", name_and_year(*book), title, id);
}

std::string page_of(const Shelf& shelf, const std::string& id) {
  const auto citation = cite(shelf, id);
  if (!citation) return id;
  return fmt::format("{} ({}, {})", citation->title.empty() ? "(without a title)" : citation->title, id,
                     citation->page.empty() ? fmt::format("line {}", citation->line_start) : citation->place_in_book());
}

std::string shared_text(const SharedWith& shared, const Shelf& shelf, const TextStyle& style, std::size_t examples) {
  std::string how = fmt::format("{}: {}, {} of them with little change", named(shelf, shared.book),
                                recipes(shared.recipes), shared.copies == 0 ? "none" : std::to_string(shared.copies));
  if (shared.best < shared.recipes)
    how +=
        fmt::format("; for {} of them {} book has a likelier source",
                    shared.best == 0 ? "each" : std::to_string(shared.best), shared.best == 0 ? "another" : "no other");
  if (shared.same_author) how += "; the same author";
  std::string out = paragraph(how + ".", style.width, "  - ");
  if (shared.order.which == Order::Which::undecided) out += paragraph(shared.order.why, style.width, "       ");
  std::size_t shown = 0;
  for (const Borrowing& one : shared.borrowings) {
    if (shown++ == examples) break;
    out += paragraph(
        fmt::format("{:.0f}%  {} from {}", 100 * one.verbatim, page_of(shelf, one.id), page_of(shelf, one.source)),
        style.width, "       ");
  }
  return out;
}

/// "238 of the 1047 recipes of X stand in earlier books of this shelf, 190 of them in the same author's own."
std::string finding(const Borrowings& borrowings, const Shelf& shelf) {
  std::string out =
      fmt::format("Of the {} of {}, {} {} in earlier books of this shelf.", recipes(borrowings.recipes),
                  named(shelf, borrowings.of), borrowings.kin == 0 ? "none" : std::to_string(borrowings.kin),
                  borrowings.kin == 1 ? "has a source" : "have a source");
  for (const SharedWith& shared : borrowings.earlier)
    if (shared.same_author)
      out += fmt::format(
          " {} of them stand in the author's own earlier book {}: this is a later edition of it, or draws "
          "on it.",
          shared.recipes, shared.book);
  return out;
}

}  // namespace

std::string borrowings_as_text(const Borrowings& borrowings, const Shelf& shelf, const TextStyle& style,
                               std::size_t examples) {
  std::string out = paragraph(finding(borrowings, shelf), style.width);
  if (!borrowings.note.empty()) out += paragraph(borrowings.note, style.width);
  if (!borrowings.earlier.empty()) out += "\nDraws on\n";
  for (const SharedWith& shared : borrowings.earlier) out += shared_text(shared, shelf, style, examples);
  if (!borrowings.undecided.empty())
    out += "\nShares recipes with books of which the dates do not say which is earlier\n";
  for (const SharedWith& shared : borrowings.undecided) out += shared_text(shared, shelf, style, examples);
  if (!borrowings.later.empty()) out += "\nIs drawn on by\n";
  for (std::size_t i = 0; i < std::min(borrowings.later.size(), most_later); ++i) {
    const SharedWith& shared = borrowings.later[i];
    out += paragraph(fmt::format("{}: {}", named(shelf, shared.book), recipes(shared.recipes)), style.width, "  - ");
  }
  return out;
}

}  // namespace gallipot
