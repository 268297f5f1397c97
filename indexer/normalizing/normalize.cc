// Puts the metric amounts, the dish and the place on the shelf beside a parsed recipe.
#include "indexer/normalizing/normalize.h"

#include <fmt/format.h>

#include "indexer/normalizing/cautions.h"

namespace gallipot {
namespace {

/// The chief ingredient by position: the first that is not water, salt or a leaven.
std::string_view chief_of(const ParsedRecipe& parsed, const Lexicon& lexicon) {
  for (const auto& ingredient : parsed.ingredients) {
    const auto* food = lexicon.foodstuff(ingredient.name);
    if (food && (food->kind == "water" || food->kind == "leaven" || food->name == "salt")) continue;
    return ingredient.name;
  }
  return {};
}

ComparableIngredient comparable(Ingredient printed, const Book& book, const Lexicon& lexicon, const Register& measures) {
  ComparableIngredient out;
  if (const auto* food = lexicon.foodstuff(printed.name)) out.kind = food->kind;
  if (printed.quantity && !printed.relative) {
    Measured asked;
    asked.low = printed.quantity->low;
    asked.high = printed.quantity->high;
    asked.measure = printed.measure;
    asked.note = printed.measure_note;
    asked.of = printed.name;
    asked.year = book.year();
    asked.country = book.country;
    out.metric = measures.amount(asked);
  }
  out.printed = std::move(printed);
  return out;
}

}  // namespace

std::string recipe_id(std::string_view book, std::uint32_t ordinal) { return fmt::format("{}/{:04}", book, ordinal); }

ComparableRecipe normalize(Recipe recipe, ParsedRecipe parsed, const Book& book, std::uint32_t book_order,
                           const Lexicon& lexicon, const Register& measures) {
  ComparableRecipe out;
  out.id = recipe_id(book.id, recipe.ordinal);
  out.book = book.id;
  out.book_order = book_order;
  out.year = book.year();
  out.country = book.country;
  out.file = book.file;
  const auto& title = recipe.dish_title.empty() ? recipe.title : recipe.dish_title;
  out.dish = dish_of(title, recipe.chapter, chief_of(parsed, lexicon), lexicon);
  out.ingredients.reserve(parsed.ingredients.size());
  for (auto& ingredient : parsed.ingredients)
    out.ingredients.push_back(comparable(std::move(ingredient), book, lexicon, measures));
  out.steps = std::move(parsed.steps);
  out.recipe = std::move(recipe);
  out.cautions = cautions_of(out);
  return out;
}

}  // namespace gallipot
