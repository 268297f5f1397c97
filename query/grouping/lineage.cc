// Kin on the shelf, put in order of time.
#include "query/grouping/lineage.h"

#include <fmt/format.h>

#include <algorithm>

namespace gallipot {
namespace {

constexpr std::size_t most_in_stemma = 26;

/// The recipe asked for, with all that is needed to set others beside it.
struct Asked {
  const Shelf& shelf;
  KinTexts& texts;
  const ComparableRecipe& recipe;
  const Book& book;
  std::shared_ptr<const KinText> text;
};

Kin kin_from(const Asked& asked, const FoundKin& found) {
  const Book& book = *asked.shelf.book(found.text->book);
  Kin out;
  out.id = found.text->id;
  out.book = book.id;
  out.order = earlier_of(book, asked.book);
  out.likelihood = found.kinship.likelihood;
  out.copy = found.kinship.copy;
  out.same_author = same_author(book, asked.book);
  const bool taken_over = out.order.which == Order::Which::second;  // the kin is the later
  out.verbatim = taken_over ? found.kinship.of_first : found.kinship.of_second;
  out.of_earlier = taken_over ? found.kinship.of_second : found.kinship.of_first;
  return out;
}

void add_changes(const Asked& asked, std::vector<Kin>& all, const std::vector<FoundKin>& found) {
  for (Kin& kin : all) {
    const auto at =
        std::find_if(found.begin(), found.end(), [&](const FoundKin& one) { return one.text->id == kin.id; });
    const auto recipe = asked.shelf.unweighed(at->docid);
    if (!recipe) continue;
    const PrintedText other{*recipe, at->text->row}, own{asked.recipe, asked.text->row};
    const bool taken_over = kin.order.which == Order::Which::second;
    kin.changes = amounts_first(taken_over ? changes_between(own, other) : changes_between(other, own));
  }
}

int year_of(const Shelf& shelf, const Kin& kin) {
  const auto years = years_of_text(*shelf.book(kin.book));
  return years ? years->first : 0;
}

/// Parts the kin into earlier and later, leaving out those of which the recipe is not the source but its sibling is.
void part(const Asked& asked, const std::vector<FoundKin>& found, Lineage& out) {
  std::vector<Kin> undecided;
  for (const FoundKin& one : found) {
    Kin kin = kin_from(asked, one);
    if (kin.order.which == Order::Which::first) {
      out.earlier.push_back(std::move(kin));
      continue;
    }
    const auto recipe = asked.shelf.unweighed(one.docid);
    if (!recipe || !is_source_of(asked.texts, *asked.text, asked.texts.asked(*recipe))) continue;
    (kin.order.which == Order::Which::second ? out.later : undecided).push_back(std::move(kin));
  }
  std::move(undecided.begin(), undecided.end(), std::back_inserter(out.earlier));
  std::stable_sort(out.later.begin(), out.later.end(),
                   [&](const Kin& a, const Kin& b) { return year_of(asked.shelf, a) < year_of(asked.shelf, b); });
}

/// The oldest of the recipe and its earlier kin, where it is older than every other.
void decide_first(const Asked& asked, Lineage& out) {
  std::vector<std::pair<std::string, const Book*>> all{{asked.recipe.id, &asked.book}};
  for (const Kin& kin : out.earlier) all.emplace_back(kin.id, asked.shelf.book(kin.book));
  std::string undecided;
  for (const auto& [id, book] : all) {
    bool oldest = true;
    for (const auto& [other_id, other] : all) {
      if (other == book) continue;
      const Order order = earlier_of(*book, *other);
      oldest = oldest && order.which == Order::Which::first;
      if (order.which == Order::Which::undecided && undecided.empty()) undecided = order.why;
    }
    if (!oldest) continue;
    out.first = id;
    out.first_why = all.size() == 1
                        ? "No earlier witness of its words stands on this shelf."
                        : fmt::format("Of the witnesses on this shelf that of {} is the oldest.", name_and_year(*book));
    return;
  }
  out.first_why = "Who printed it first the dates do not say: " + undecided;
}

Stemma stemma_with(const Asked& asked, const std::vector<FoundKin>& found, const Lineage& lineage) {
  std::vector<StemmaText> texts{{asked.text, &asked.book}};
  const auto add = [&](const std::vector<Kin>& all) {
    for (const Kin& kin : all) {
      const auto at =
          std::find_if(found.begin(), found.end(), [&](const FoundKin& one) { return one.text->id == kin.id; });
      if (texts.size() < most_in_stemma) texts.push_back({at->text, asked.shelf.book(kin.book)});
    }
  };
  add(lineage.earlier);
  add(lineage.later);
  return stemma_of(std::move(texts));
}

void cut(std::vector<Kin>& all, std::size_t limit) {
  if (all.size() > limit) all.erase(all.begin() + static_cast<std::ptrdiff_t>(limit), all.end());
}

/// Why nothing can be found, where that is plain from the start.
std::string why_nothing(const Asked& asked) {
  if (asked.text->row.size() == 0)
    return fmt::format("{} has no words under its title, so nothing can be set beside it.", asked.recipe.id);
  if (asked.shelf.recipe_count() <= 1) return "This shelf has no other recipe to set beside it.";
  if (asked.shelf.books().size() == 1)
    return fmt::format("{} is the only book of this shelf, so it has no earlier witness here.", asked.book.id);
  return {};
}

/// Why there is no earlier witness, where the dates of the books say so.
std::string why_no_earlier(const Asked& asked) {
  if (!years_of_text(asked.book))
    return fmt::format("{} has no date in the shelf list, so nothing can be called earlier.", asked.book.id);
  const auto& books = asked.shelf.books();
  const bool some = std::any_of(books.begin(), books.end(), [&](const Book& other) {
    return other.id != asked.book.id && earlier_of(asked.book, other).which != Order::Which::first;
  });
  return some
             ? std::string()
             : fmt::format("No book of this shelf is earlier than {}, so its source cannot stand here.", asked.book.id);
}

Lineage search(const Asked& asked, std::size_t limit) {
  Lineage out;
  out.of = asked.recipe.id;
  out.book = asked.book.id;
  out.note = why_nothing(asked);
  const auto found = kin_in_other_books(asked.texts, *asked.text);
  part(asked, found, out);
  cut(out.earlier, limit);
  cut(out.later, limit);
  add_changes(asked, out.earlier, found);
  add_changes(asked, out.later, found);
  for (const FoundKin& one : kin_in_book(asked.texts, *asked.text, asked.book.id))
    out.in_same_book.push_back(kin_from(asked, one));
  cut(out.in_same_book, limit);
  decide_first(asked, out);
  out.stemma = stemma_with(asked, found, out);
  if (out.note.empty() && out.earlier.empty()) out.note = why_no_earlier(asked);
  return out;
}

}  // namespace

Outcome<Lineage> lineage_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view id, std::size_t limit) {
  const auto recipe = shelf.recipe(id);
  if (!recipe) return tl::unexpected(recipe.error());
  const Book* book = shelf.book(recipe->book);
  if (book == nullptr)
    return fault("the index has the recipe " + recipe->id + " but not its book", "index the shelf again");
  try {
    KinTexts texts(shelf, lexicon);
    return search({shelf, texts, *recipe, *book, std::make_shared<KinText>(texts.asked(*recipe))}, limit);
  } catch (const Xapian::Error& error) {
    return fault("the index cannot be read: " + error.get_msg(), "index the books again", shelf.folder());
  }
}

}  // namespace gallipot
