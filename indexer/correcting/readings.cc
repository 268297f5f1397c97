// Applies corrections of amounts and ingredients.
#include "indexer/correcting/readings.h"

#include <algorithm>

namespace gallipot {
namespace {

std::uint32_t apart(std::uint32_t a, std::uint32_t b) { return a > b ? a - b : b - a; }

bool of_this(const Correction& correction, const Recipe& recipe) {
  return correction.line >= recipe.line_start && correction.line <= recipe.line_end;
}

std::uint32_t shared(Span a, Span b) {
  const auto begin = std::max(a.begin, b.begin), end = std::min(a.end, b.end);
  return end > begin ? end - begin : 0;
}

/// The ingredient that shares most with the place; of two that share as much the shorter.
std::optional<std::size_t> ingredient_at(const ComparableRecipe& recipe, Span place) {
  std::optional<std::size_t> best;
  const auto better = [&](std::size_t i) {
    if (!best) return true;
    const Span a = recipe.ingredients[i].printed.span, b = recipe.ingredients[*best].printed.span;
    return shared(a, place) != shared(b, place) ? shared(a, place) > shared(b, place) : a.size() < b.size();
  };
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i)
    if (shared(recipe.ingredients[i].printed.span, place) > 0 && better(i)) best = i;
  return best;
}

void set_amount(Ingredient& ingredient, const Correction& correction) {
  if (ingredient.measure != correction.measure) ingredient.measure_note.clear();
  ingredient.quantity = correction.quantity;
  ingredient.measure = correction.measure;
  ingredient.relative.reset();
  ingredient.confidence = 1;
}

void add_missed(ComparableRecipe& recipe, Span place, const Correction& correction) {
  ComparableIngredient fresh;
  fresh.printed.span = fresh.printed.name_span = place;
  fresh.printed.name = correction.name;
  fresh.kind = correction.stuff;
  const auto at = std::find_if(recipe.ingredients.begin(), recipe.ingredients.end(),
                               [&](const ComparableIngredient& i) { return i.printed.span.begin > place.begin; });
  recipe.ingredients.insert(at, std::move(fresh));
}

void set_name(ComparableRecipe& recipe, Span place, const Correction& correction) {
  const auto at = ingredient_at(recipe, place);
  if (!at) {
    if (!correction.name.empty()) add_missed(recipe, place, correction);
    return;
  }
  if (correction.name.empty()) {
    recipe.ingredients.erase(recipe.ingredients.begin() + static_cast<std::ptrdiff_t>(*at));
    return;
  }
  ComparableIngredient& ingredient = recipe.ingredients[*at];
  for (ComparableIngredient& other : recipe.ingredients)
    if (other.printed.alternative_of == ingredient.printed.name) other.printed.alternative_of = correction.name;
  ingredient.printed.name = correction.name;
  ingredient.printed.confidence = 1;
  ingredient.kind = correction.stuff;
}

}  // namespace

std::uint32_t line_of_text(const Recipe& recipe, std::uint32_t at) {
  std::uint32_t line = recipe.line_start;
  for (const LineStart& start : recipe.lines)
    if (start.at <= at) line = start.line;
  return line;
}

std::optional<Span> place_of(const Recipe& recipe, std::string_view printed, std::uint32_t line) {
  std::optional<Span> best;
  if (printed.empty()) return best;
  std::uint32_t nearest = 0;
  for (std::size_t at = recipe.text.find(printed); at != std::string::npos; at = recipe.text.find(printed, at + 1)) {
    const Span span{static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + printed.size())};
    const std::uint32_t far = apart(line_of_text(recipe, span.begin), line);
    if (best && far >= nearest) continue;
    best = span;
    nearest = far;
  }
  return best;
}

void correct_readings(ComparableRecipe& recipe, const Corrections& corrections) {
  const auto& some = corrections.of(recipe.book);
  // Names first: an amount may be that of an ingredient which had been missed.
  for (const auto kind : {Correction::Kind::ingredient, Correction::Kind::amount})
    for (const Correction* one : some) {
      if (one->kind != kind || !of_this(*one, recipe.recipe)) continue;
      const auto place = place_of(recipe.recipe, one->printed, one->line);
      if (!place) continue;
      if (kind == Correction::Kind::ingredient)
        set_name(recipe, *place, *one);
      else if (const auto at = ingredient_at(recipe, *place))
        set_amount(recipe.ingredients[*at].printed, *one);
    }
}

std::vector<PlacedCorrection> corrections_in(const ComparableRecipe& recipe, const Corrections& corrections) {
  std::vector<PlacedCorrection> out;
  for (const Correction* one : corrections.of(recipe.book)) {
    if (!of_this(*one, recipe.recipe)) continue;
    const auto place = place_of(recipe.recipe, one->printed, one->line);
    if (one->of_cut())
      out.push_back({one, place.value_or(Span{}), std::nullopt});
    else if (place)
      out.push_back({one, *place,
                     one->name.empty() && one->kind == Correction::Kind::ingredient ? std::nullopt
                                                                                    : ingredient_at(recipe, *place)});
  }
  return out;
}

}  // namespace gallipot
