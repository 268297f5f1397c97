// The kin of every recipe of a book, counted by book.
#include "query/grouping/borrowings.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "indexer/storing/nearest.h"
#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

tl::unexpected<Fault> no_such_book(const Shelf& shelf, std::string_view asked) {
  const Book* nearest = nullptr;
  std::size_t least = 0;
  for (const Book& book : shelf.books()) {
    const auto distance = edit_distance(asked, book.id);
    if (nearest != nullptr && distance >= least) continue;
    nearest = &book;
    least = distance;
  }
  return fault(fmt::format("there is no book \"{}\" on this shelf", asked),
               nearest == nullptr ? "index some books first" : fmt::format("perhaps \"{}\" is meant", nearest->id));
}

/// Documents of the book's recipes. Throws Xapian::Error.
std::vector<Xapian::docid> documents_of(const Shelf& shelf, const std::string& book) {
  const std::string term = schema::term(schema::book, book);
  std::vector<Xapian::docid> out;
  const auto end = shelf.database().postlist_end(term);
  for (auto at = shelf.database().postlist_begin(term); at != end; ++at) out.push_back(*at);
  return out;
}

using ByBook = std::map<std::string, SharedWith, std::less<>>;

void count(const KinText& own, const std::vector<FoundKin>& found, ByBook& by_book) {
  for (std::size_t i = 0; i < found.size(); ++i) {
    const FoundKin& one = found[i];
    SharedWith& shared = by_book[one.text->book];
    shared.borrowings.push_back(
        {own.id, one.text->id, one.kinship.of_second, one.kinship.likelihood, one.kinship.copy, i == 0});
  }
}

/// Counts recipes, not pairs: one spliced from two of a book's recipes is one.
void add_up(SharedWith& shared) {
  auto& all = shared.borrowings;
  std::sort(all.begin(), all.end(), [](const Borrowing& a, const Borrowing& b) {
    return a.id != b.id                   ? a.id < b.id
           : a.likelihood != b.likelihood ? a.likelihood > b.likelihood
                                          : a.source < b.source;
  });
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i > 0 && all[i].id == all[i - 1].id) continue;
    ++shared.recipes;
    shared.copies += all[i].copy;
    shared.best += all[i].best;
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Borrowing& a, const Borrowing& b) { return a.verbatim > b.verbatim; });
}

std::string why_nothing(const Shelf& shelf, const Book& book) {
  if (shelf.books().size() == 1) return fmt::format("{} is the only book of this shelf.", book.id);
  if (!years_of_text(book))
    return fmt::format("{} has no date in the shelf list, so no book can be called earlier.", book.id);
  const bool some = std::any_of(shelf.books().begin(), shelf.books().end(), [&](const Book& other) {
    return other.id != book.id && earlier_of(book, other).which != Order::Which::first;
  });
  return some ? std::string() : fmt::format("No book of this shelf is earlier than {}.", book.id);
}

void put(SharedWith shared, Borrowings& out) {
  auto& into = shared.order.which == Order::Which::first    ? out.earlier
               : shared.order.which == Order::Which::second ? out.later
                                                            : out.undecided;
  into.push_back(std::move(shared));
}

void in_order(std::vector<SharedWith>& all) {
  std::stable_sort(all.begin(), all.end(),
                   [](const SharedWith& a, const SharedWith& b) { return a.recipes > b.recipes; });
}

Outcome<Borrowings> search(const Shelf& shelf, const Lexicon& lexicon, const Book& book) {
  KinTexts texts(shelf, lexicon);
  Borrowings out;
  out.of = book.id;
  out.note = why_nothing(shelf, book);
  ByBook by_book;
  for (const auto docid : documents_of(shelf, book.id)) {
    const auto recipe = shelf.unweighed(docid);
    if (!recipe) return tl::unexpected(recipe.error());
    ++out.recipes;
    const KinText asked = texts.asked(*recipe);
    const auto found = kin_in_other_books(texts, asked);
    out.kin += std::any_of(found.begin(), found.end(), [&](const FoundKin& one) {
      return earlier_of(*shelf.book(one.text->book), book).which == Order::Which::first;
    });
    count(asked, found, by_book);
  }
  for (auto& [id, shared] : by_book) {
    const Book& other = *shelf.book(id);
    shared.book = id;
    shared.order = earlier_of(other, book);
    shared.same_author = same_author(other, book);
    add_up(shared);
    put(std::move(shared), out);
  }
  in_order(out.earlier);
  in_order(out.undecided);
  in_order(out.later);
  return out;
}

}  // namespace

Outcome<Borrowings> borrowings_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view id) {
  const Book* book = shelf.book(id);
  if (book == nullptr) return no_such_book(shelf, id);
  try {
    return search(shelf, lexicon, *book);
  } catch (const Xapian::Error& error) {
    return fault("the index cannot be read: " + error.get_msg(), "index the books again", shelf.folder());
  }
}

}  // namespace gallipot
