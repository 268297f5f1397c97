// Weighs two books' dates against each other.
#include "query/grouping/earlier.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "indexer/text/words.h"

namespace gallipot {
namespace {

std::string author_and(const Book& book, const std::string& rest) {
  return (book.creator.empty() ? book.title.empty() ? book.id : book.title : book.creator) + ", " + rest;
}

std::vector<std::string> name_words(const std::string& creator) {
  const Words words(creator);
  std::vector<std::string> out;
  for (const Word& word : words.all())
    if (word.kind == Word::Kind::word) out.emplace_back(word.key);
  std::sort(out.begin(), out.end());
  return out;
}

/// A later edition of which the shelf list does not say when the book was new.
bool later_edition(const Book& book) {
  if (book.first_years || book.edition.empty()) return false;
  const Words words(book.edition);
  return std::none_of(words.all().begin(), words.all().end(),
                      [](const Word& word) { return word.key == "first" || word.key == "1" || word.key == "1st"; });
}

std::string caution(const Book& book) {
  return later_edition(book) ? fmt::format(
                                   " {} is a later edition ({}) and the shelf list does not say when it was "
                                   "first published: its text may be older.",
                                   book.id, book.edition)
                             : std::string();
}

std::string no_date(const Book& book) {
  return fmt::format("{} has no date in the shelf list, so which is the earlier cannot be told.", book.id);
}

std::string sentence(const Book& earlier, const Book& later) {
  const std::string later_year = later.first_published.empty() ? later.date : later.first_published;
  if (!earlier.first_published.empty() && earlier.first_published != earlier.date)
    return fmt::format("{} was first published in {}, {} in {}; the words set side by side are those of {}.{}",
                       earlier.id, earlier.first_published, later.id, later_year,
                       earlier.date.empty() ? "an edition without a date" : "the edition of " + earlier.date,
                       caution(later));
  return fmt::format("{} is of {}, {} of {}.{}", earlier.id, earlier.date, later.id, later_year, caution(later));
}

}  // namespace

std::optional<Years> years_of_text(const Book& book) { return book.first_years ? book.first_years : book.years; }

Order earlier_of(const Book& first, const Book& second) {
  const auto a = years_of_text(first), b = years_of_text(second);
  if (!a) return {Order::Which::undecided, no_date(first)};
  if (!b) return {Order::Which::undecided, no_date(second)};
  if (a->last < b->first) return {Order::Which::first, sentence(first, second)};
  if (b->last < a->first) return {Order::Which::second, sentence(second, first)};
  return {Order::Which::undecided,
          fmt::format("{} and {} may be of the same year by the shelf list ({}; {}), so which is the earlier cannot be "
                      "told.",
                      first.id, second.id, first.first_published.empty() ? first.date : first.first_published,
                      second.first_published.empty() ? second.date : second.first_published)};
}

bool same_author(const Book& first, const Book& second) {
  if (first.creator.empty() || second.creator.empty()) return false;
  return name_words(first.creator) == name_words(second.creator);
}

std::string name_and_year(const Book& book) {
  std::string year = book.date.empty() ? "no date" : book.date;
  if (!book.first_published.empty() && book.first_published != book.date)
    year += " (first published " + book.first_published + ")";
  return author_and(book, year);
}

}  // namespace gallipot
