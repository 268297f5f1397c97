// Puts a recipe's place in print into words.
#include "query/citing/cite.h"

#include <fmt/format.h>

namespace gallipot {
namespace {

std::string place_and_year(const Book& book) {
  std::string out = book.place;
  const auto append = [&](const std::string& part, const char* by) {
    if (part.empty()) return;
    if (!out.empty()) out += by;
    out += part;
  };
  append(book.publisher, out.empty() ? "" : ": ");
  append(book.date.empty() ? "no date" : book.date, ", ");
  return out;
}

std::string bracket(const Book& book) {
  std::string out;
  if (!book.edition.empty()) {
    out = book.edition;
    // "3" and "3rd" are editions without the word; "third edition, enlarged" has it.
    if (out.find("ed") == std::string::npos && out.find("Ed") == std::string::npos) out += " edition";
    out += "; ";
  }
  out += place_and_year(book);
  const bool earlier = !book.first_published.empty() && book.first_published != book.date;
  if (earlier) out += "; first published " + book.first_published;
  return out;
}

}  // namespace

std::string Citation::place_in_book() const {
  if (page.empty()) {
    if (line_start == 0) return "no page marks";
    if (line_end > line_start) return fmt::format("no page marks; lines {}-{} of {}", line_start, line_end, file);
    return fmt::format("no page marks; line {} of {}", line_start, file);
  }
  if (page_end.empty() || page_end == page) return "p. " + page;
  return fmt::format("pp. {}-{}", page, page_end);
}

std::string Citation::note() const {
  std::string out;
  if (!book.creator.empty()) out = book.creator + ", ";
  out += fmt::format("{} ({}), {}", book.title, bracket(book), place_in_book());
  if (!title.empty()) out += fmt::format(", \"{}\"", title);
  if (!contributor.empty()) out += ", contributed by " + contributor;
  if (out.back() != '.') out += '.';
  return out;
}

Citation cite(const ComparableRecipe& recipe, const Book& book) {
  Citation out;
  out.id = recipe.id;
  out.title = recipe.recipe.title_stands.empty() ? recipe.recipe.title : recipe.recipe.title_stands;
  out.chapter = recipe.recipe.chapter;
  out.contributor = recipe.recipe.contributor;
  out.book = book;
  out.page = recipe.recipe.page;
  out.page_end = recipe.recipe.page_end;
  out.file = recipe.file.empty() ? book.file : recipe.file;
  out.line_start = recipe.recipe.line_start;
  out.line_end = recipe.recipe.line_end;
  return out;
}

Outcome<Citation> cite(const Shelf& shelf, std::string_view id) {
  const auto recipe = shelf.recipe(id);
  if (!recipe) return tl::unexpected(recipe.error());
  const Book* book = shelf.book(recipe->book);
  if (book == nullptr)
    return fault("the index has the recipe " + recipe->id + " but not its book", "index the shelf again");
  return cite(*recipe, *book);
}

}  // namespace gallipot
