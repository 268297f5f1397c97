// Nearest recipe ids: the same book's neighbouring numbers, or books of a like name.
#include "indexer/storing/nearest.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <numeric>

#include "indexer/normalizing/normalize.h"

namespace gallipot {
namespace {

/// The recipe's number in "hollin-1812/7"; 0 where there is none.
std::uint32_t ordinal_in(std::string_view id) {
  const auto slash = id.rfind('/');
  std::uint32_t n = 0;
  if (slash != std::string_view::npos) std::from_chars(id.data() + slash + 1, id.data() + id.size(), n);
  return n;
}

std::string in_book(const Book& book, std::size_t count, std::uint32_t asked) {
  const auto last = static_cast<std::uint32_t>(count);
  const auto near = std::clamp<std::uint32_t>(asked, 1, std::max(last, 1u));
  if (near == asked) return fmt::format("did you mean \"{}\"?", recipe_id(book.id, near));
  return fmt::format("\"{}\" has recipes 1 to {}, the nearest is \"{}\"", book.id, last, recipe_id(book.id, near));
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::string nearest_recipes(std::string_view id, const std::vector<Book>& books,
                            const std::vector<std::size_t>& counts) {
  if (books.empty()) return "this index holds no books; index some";
  const std::string_view asked = id.substr(0, id.rfind('/'));
  const auto ordinal = ordinal_in(id);
  std::vector<std::pair<std::size_t, std::size_t>> near;  // distance, book
  for (std::size_t i = 0; i < books.size(); ++i) {
    if (books[i].id == asked) return in_book(books[i], counts[i], ordinal);
    near.emplace_back(edit_distance(asked, books[i].id), i);
  }
  std::sort(near.begin(), near.end());
  if (near.size() > 3) near.resize(3);
  if (near.front().first * 2 <= asked.size()) {  // a slip of the pen rather than another book
    const auto i = near.front().second;
    return in_book(books[i], counts[i], ordinal);
  }
  std::string names;
  for (const auto& [distance, i] : near) names += (names.empty() ? "\"" : ", \"") + books[i].id + "\"";
  return fmt::format("a recipe is named by its book and number, as \"{}\"; the nearest books are {}",
                     recipe_id(books[near.front().second].id, 1), names);
}

}  // namespace gallipot
