// Puts a parsed recipe beside its book: canonical kinds, the dish, cautions; and amounts in SI for
// the book's time and place.
#include "indexer/normalizing/normalize.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/normalizing/cautions.h"

namespace gallipot {
namespace {

// Stuff that every dish has some of, and that names none.
bool of_every_dish(const ComparableIngredient& i) {
  return i.kind == "water" || i.kind == "spice" || i.kind == "leaven" || i.printed.name == "sugar" ||
         i.printed.name == "water";
}

/// The chief ingredient: the first named that is not in every dish, else the first.
std::string_view chief(const std::vector<ComparableIngredient>& all) {
  const auto it = std::find_if(all.begin(), all.end(), [](const ComparableIngredient& i) {
    return !of_every_dish(i) && !i.printed.optional && i.printed.alternative_of.empty();
  });
  if (it != all.end()) return it->printed.name;
  return all.empty() ? std::string_view{} : std::string_view{all.front().printed.name};
}

std::optional<Amount> metric(const Ingredient& i, const ComparableRecipe& in, const Register& measures) {
  if (!i.quantity) return std::nullopt;
  Measured asked;
  asked.low = i.quantity->low;
  asked.high = i.quantity->high;
  asked.measure = i.measure;
  asked.note = i.measure_note;
  asked.of = i.name;
  asked.year = in.year;
  asked.country = in.country;
  asked.book = in.book;
  return measures.amount(asked);
}

}  // namespace

std::string recipe_id(std::string_view book, std::uint32_t ordinal) { return fmt::format("{}/{:04}", book, ordinal); }

ComparableRecipe normalize(Recipe recipe, ParsedRecipe parsed, const Book& book, std::uint32_t book_order,
                           const Lexicon& lexicon) {
  ComparableRecipe out;
  out.id = recipe_id(book.id, recipe.ordinal);
  out.book = book.id;
  out.book_order = book_order;
  out.year = book.year();
  out.country = book.country;
  out.file = book.file;
  out.ingredients.reserve(parsed.ingredients.size());
  for (Ingredient& i : parsed.ingredients) {
    ComparableIngredient c;
    if (const Foodstuff* known = lexicon.foodstuff(i.name)) c.kind = known->kind;
    c.printed = std::move(i);
    out.ingredients.push_back(std::move(c));
  }
  out.dish = dish_of(recipe.dish_title.empty() ? recipe.title : recipe.dish_title, recipe.chapter,
                     chief(out.ingredients), lexicon);
  out.steps = std::move(parsed.steps);
  out.cautions = Cautions::built_in().of(recipe, out.ingredients);
  out.recipe = std::move(recipe);
  return out;
}

void weigh(ComparableRecipe& recipe, const Register& measures) {
  for (ComparableIngredient& i : recipe.ingredients) i.metric = metric(i.printed, recipe, measures);
}

}  // namespace gallipot
