// Recipes made by hand and by chance, for the tests of storing.
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"

namespace gallipot::examples {

/// An invented recipe with one of everything that the schema can hold.
inline ComparableRecipe medlar_cheese() {
  ComparableRecipe r;
  r.id = "hollin-1812/0007";
  r.book = "hollin-1812";
  r.book_order = 2;
  r.year = 1812;
  r.country = "GB";
  r.file = "hollin-1812.txt";
  r.recipe.ordinal = 7;
  r.recipe.title = "Médlar Cheese";
  r.recipe.title_printed = "7. MÉDLAR CHEESE.";
  r.recipe.dish_title = "Médlar Cheese";
  r.recipe.chapter = "OF PRESERVES / Cheeses";
  r.recipe.text = "Bletted medlars, “ripe”; to every pint of pulp half its weight in sugar. Boil ½ an hour.";
  r.recipe.parts = {{Part::Kind::paragraph, {0, 40}}, {Part::Kind::remark, {41, 90}}};
  r.recipe.contributor = "Mrs. Pell";
  r.recipe.page = "41";
  r.recipe.page_end = "42";
  r.recipe.line_start = 810;
  r.recipe.line_end = 813;
  r.recipe.lines = {{0, 811}, {33, 812}, {70, 813}};
  r.recipe.pages = {{41, "42"}};
  r.recipe.confidence = 0.75;
  r.recipe.doubt = "the title stands in the margin";
  r.dish = {"medlar", "cheese"};
  ComparableIngredient medlars;
  medlars.printed.span = {0, 15};
  medlars.printed.name_span = {8, 15};
  medlars.printed.name = "medlar";
  medlars.kind = "fruit";
  ComparableIngredient sugar;
  const auto at = static_cast<std::uint32_t>(r.recipe.text.find("half"));
  sugar.printed.span = {at, at + 24};
  sugar.printed.name_span = {at + 19, at + 24};
  sugar.printed.name = "sugar";
  sugar.printed.quantity = Range{1.0 / 3, 0.5};
  sugar.printed.measure = "pound";
  sugar.printed.measure_note = "heaped";
  sugar.printed.relative = Relative{0.5, "medlar", Relative::By::weight};
  sugar.printed.per = PerUnit{1, "pint", "pulp"};
  sugar.printed.optional = true;
  sugar.printed.alternative_of = "honey";
  sugar.printed.confidence = 0.6;
  sugar.kind = "sweet";
  sugar.metric = Amount{Amount::Unit::gram, 151.2, 226.796, 227, "avoirdupois pound"};
  r.ingredients = {medlars, sugar};
  const auto boil = static_cast<std::uint32_t>(r.recipe.text.find("Boil"));
  r.steps = {{"boil", Range{30, 30}, {boil, static_cast<std::uint32_t>(r.recipe.text.size())}}};
  r.cautions = {"seal it while hot"};
  return r;
}

/// Recipes with random contents in every field, sensible or not.
class RandomRecipes {
 public:
  explicit RandomRecipes(std::uint32_t seed) : random_(seed) {}

  ComparableRecipe next() {
    ComparableRecipe r;
    r.id = text(), r.book = text(), r.book_order = any(), r.year = static_cast<int>(any()), r.country = text(),
    r.file = text();
    auto& c = r.recipe;
    c.ordinal = any(), c.title = text(), c.title_printed = text(), c.dish_title = text(), c.chapter = text();
    c.number = text(), c.text = text(2000), c.contributor = text(), c.page = text(), c.page_end = text();
    c.line_start = any(), c.line_end = any(), c.confidence = share(), c.doubt = text();
    for (auto n = few(); n > 0; --n) c.parts.push_back({static_cast<Part::Kind>(below(8)), span()});
    for (auto n = few(); n > 0; --n) c.lines.push_back({any(), any()});
    for (auto n = few(); n > 0; --n) c.pages.push_back({any(), text()});
    r.dish = {text(), text()};
    for (auto n = few(); n > 0; --n) r.ingredients.push_back(ingredient());
    for (auto n = few(); n > 0; --n) r.steps.push_back({text(), maybe_range(), span()});
    for (auto n = few(); n > 0; --n) r.cautions.push_back(text());
    return r;
  }

  std::uint32_t below(std::uint32_t n) { return static_cast<std::uint32_t>(random_() % n); }

 private:
  std::uint32_t any() {
    const auto v = static_cast<std::uint32_t>(random_());
    return v >> below(32);
  }
  std::uint32_t few() { return below(5); }
  bool coin() { return below(2) == 1; }
  double real() {
    switch (below(5)) {
      case 0:
        return below(20);
      case 1:
        return 0.25 * below(100);
      case 2:
        return -static_cast<double>(any()) / 7;
      case 3:
        return -0.0;
      default:
        return static_cast<double>(any()) * 1e290;
    }
  }
  double share() { return static_cast<double>(below(1000)) / 999; }
  Span span() { return {any(), any()}; }
  std::string text(std::uint32_t longest = 30) {
    std::string s(below(longest + 1), '\0');
    for (char& c : s) c = static_cast<char>(random_());
    return s;
  }
  std::optional<Range> maybe_range() { return coin() ? std::optional(Range{real(), real()}) : std::nullopt; }
  ComparableIngredient ingredient() {
    ComparableIngredient i;
    auto& p = i.printed;
    p.span = span(), p.name_span = span(), p.name = text(), p.quantity = maybe_range(), p.quantity_span = span();
    p.measure = text(), p.measure_span = span(), p.measure_note = text();
    if (coin()) p.relative = Relative{real(), text(), coin() ? Relative::By::weight : Relative::By::measure};
    if (coin()) p.per = PerUnit{real(), text(), text()};
    p.optional = coin(), p.alternative_of = text(), p.confidence = share();
    i.kind = text();
    if (coin()) i.metric = Amount{static_cast<Amount::Unit>(below(3)), real(), real(), real(), text()};
    return i;
  }
  std::mt19937 random_;
};

}  // namespace gallipot::examples
