// Terms and values of a recipe. Words are counted by number before Xapian sees them, so that each distinct stem of a
// recipe is handed over once.
#include "indexer/storing/documents.h"

#include <algorithm>

#include "indexer/normalizing/printed_text.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/schema.h"
#include "indexer/storing/shingles.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr std::size_t most_remembered = 200'000;  // words; about 25 MB a thread

/// Adds the words of a title as they are spelt; numbers and points are no words.
void add_spelt(Xapian::Document& document, std::string_view title) {
  const Words words(title);
  for (const Word& word : words.all())
    if (word.kind == Word::Kind::word) document.add_boolean_term(schema::term(schema::title_word, word.key));
}

/// Adds the distinct ones of `values`, each counting once.
void add_distinct(Xapian::Document& document, std::string_view prefix, std::vector<std::string_view> values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
  for (const auto value : values)
    if (!value.empty()) document.add_term(schema::term(prefix, value));
}

}  // namespace

/// Adds the stems in `numbers_` under `prefix`, each with the number of its occurrences; empties `numbers_`.
void Documents::add_words(Xapian::Document& document, std::string_view prefix) {
  std::sort(numbers_.begin(), numbers_.end());
  std::string term(prefix);
  for (auto at = numbers_.begin(); at != numbers_.end();) {
    const auto next = std::upper_bound(at, numbers_.end(), *at);
    term.resize(prefix.size());
    term += stems_.stem(*at);
    document.add_term(term, static_cast<Xapian::termcount>(next - at));
    at = next;
  }
  numbers_.clear();
}

void Documents::add_stems(Xapian::Document& document, const ComparableRecipe& recipe) {
  const Recipe& r = recipe.recipe;
  stems_.append_numbers(r.title, numbers_);
  if (r.dish_title != r.title) stems_.append_numbers(r.dish_title, numbers_);
  add_spelt(document, r.title);
  const auto title = numbers_;
  add_words(document, schema::title);
  numbers_ = title;
  marks_.clear();
  stems_.append_numbers(r.mends.empty() ? r.text : text_as_read(r), numbers_, &marks_);
  add_words(document, schema::word);
  add_shingles(document);
  stems_.append_numbers(r.chapter, numbers_);
  add_words(document, schema::chapter);
}

/// Adds the shingles of `marks_` that are kept.
void Documents::add_shingles(Xapian::Document& document) const {
  for (const auto shingle : shingles_of(marks_))
    if (is_kept(shingle)) document.add_boolean_term(shingle_term(shingle));
}

void Documents::add_names(Xapian::Document& document, const ComparableRecipe& recipe) const {
  if (!recipe.dish.base.empty()) document.add_term(schema::term(schema::dish_base, recipe.dish.base));
  if (!recipe.dish.kind.empty()) {
    document.add_term(schema::term(schema::dish_kind, recipe.dish.kind));
    std::uint32_t kind = 0;
    if (lexicon_.dish_kind_phrases().find(recipe.dish.kind, kind))
      document.add_term(schema::term(schema::dish_family, lexicon_.dish_kinds()[kind].family));
  }
  std::vector<std::string_view> names, bases;
  for (const auto& item : recipe.ingredients) {
    names.push_back(item.printed.name);
    const Foodstuff* stuff = lexicon_.foodstuff(item.printed.name);
    if (stuff) bases.push_back(stuff->base.empty() ? stuff->name : stuff->base);
  }
  add_distinct(document, schema::ingredient, std::move(names));
  add_distinct(document, schema::ingredient_base, std::move(bases));
  for (const auto& step : recipe.steps) document.add_term(schema::term(schema::operation, step.op));
}

Xapian::Document Documents::of(const ComparableRecipe& recipe) {
  if (stems_.remembered() > most_remembered) stems_.forget();
  Xapian::Document document;
  document.set_data(encode(recipe));
  add_stems(document, recipe);
  add_names(document, recipe);
  document.add_boolean_term(schema::term(schema::id, recipe.id));
  document.add_boolean_term(schema::term(schema::book, recipe.book));
  document.add_boolean_term(schema::lot_term(schema::lot_of(recipe.id)));
  if (!recipe.country.empty()) {
    document.add_boolean_term(schema::term(schema::country, recipe.country));
    document.add_value(schema::slot_country, recipe.country);
  }
  if (recipe.year != 0) document.add_value(schema::slot_year, Xapian::sortable_serialise(recipe.year));
  document.add_value(schema::slot_order, schema::order_value(recipe.book_order, recipe.recipe.ordinal));
  return document;
}

}  // namespace gallipot
