// Recipes made by hand for the tests of comparing, and a small set of weights of their own, so that these tests stand
// whatever the tables of measures say.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "query/comparing/compare.h"
#include "query/comparing/yardstick.h"

namespace gallipot::bench {

/// Pounds and ounces to the gram; a pint of anything 470 to 570 ml, of sugar 400 to 500 g; an egg 45 to 60 g.
inline std::optional<Amount> weigh(const Measured& asked) {
  const auto scaled = [&](Amount::Unit unit, double low, double likely, double high) {
    return Amount{unit, asked.low * low, (asked.low + asked.high) / 2 * likely, asked.high * high,
                  std::string(asked.measure)};
  };
  using enum Amount::Unit;
  if (asked.measure == "pound") return scaled(gram, 453.6, 453.6, 453.6);
  if (asked.measure == "ounce") return scaled(gram, 28.35, 28.35, 28.35);
  if (asked.measure == "peck") return scaled(gram, 5000, 6000, 7000);
  if (asked.measure == "teaspoon") return scaled(gram, 3, 5, 7);
  if (asked.measure == "pint" && asked.of == "sugar") return scaled(gram, 400, 450, 500);
  if (asked.measure == "pint") return scaled(millilitre, 470, 500, 570);
  if (asked.measure == "quart") return scaled(millilitre, 940, 1000, 1140);
  if (asked.measure.empty() && asked.of == "egg") return scaled(gram, 45, 52, 60);
  if (asked.measure.empty()) return scaled(count, 1, 1, 1);
  return std::nullopt;
}

inline Yardstick yardstick() {
  auto loaded = Yardstick::load(Yardstick::Weigh(weigh));
  EXPECT_TRUE(loaded) << (loaded ? "" : loaded.error().sentence());
  return std::move(*loaded);
}

/// Builds a recipe a phrase at a time; each phrase becomes part of its text, so that spans are true.
class Receipt {
 public:
  Receipt(std::string id, int year, Dish dish) {
    out_.id = std::move(id);
    out_.book = out_.id.substr(0, out_.id.find('/'));
    out_.year = year;
    out_.dish = std::move(dish);
    out_.recipe.title = out_.dish.base + " " + out_.dish.kind;
    out_.recipe.page = "12";
    out_.recipe.line_start = 100;
    out_.recipe.line_end = 104;
  }

  /// An ingredient with its printed words; an amount where `quantity` is over nought.
  Receipt& has(const std::string& printed, const std::string& name, double quantity = 0, std::string measure = {},
               std::string kind = "fruit") {
    ComparableIngredient ingredient;
    ingredient.printed.span = say(printed);
    ingredient.printed.name = name;
    ingredient.kind = std::move(kind);
    if (quantity > 0) {
      ingredient.printed.quantity = Range{quantity, quantity};
      ingredient.printed.measure = std::move(measure);
      ingredient.metric = weigh({quantity, quantity, ingredient.printed.measure, {}, name, out_.year, {}});
    }
    out_.ingredients.push_back(std::move(ingredient));
    return *this;
  }

  Receipt& per(double quantity, std::string measure, std::string of) {
    out_.ingredients.back().printed.per = PerUnit{quantity, std::move(measure), std::move(of)};
    return *this;
  }

  Receipt& relative(double factor, std::string to, Relative::By by) {
    out_.ingredients.back().printed.relative = Relative{factor, std::move(to), by};
    out_.ingredients.back().printed.quantity.reset();
    out_.ingredients.back().metric.reset();
    return *this;
  }

  Receipt& instead_of(std::string other) {
    out_.ingredients.back().printed.alternative_of = std::move(other);
    return *this;
  }

  Receipt& if_liked() {
    out_.ingredients.back().printed.optional = true;
    return *this;
  }

  Receipt& does(const std::string& op, double minutes = 0) {
    Step step;
    step.op = op;
    step.span = say(op + " it");
    if (minutes > 0) step.minutes = Range{minutes, minutes};
    out_.steps.push_back(std::move(step));
    return *this;
  }

  const ComparableRecipe& recipe() const { return out_; }

 private:
  Span say(const std::string& words) {
    std::string& text = out_.recipe.text;
    if (!text.empty()) text += ' ';
    const auto begin = static_cast<std::uint32_t>(text.size());
    text += words;
    return {begin, static_cast<std::uint32_t>(text.size())};
  }

  ComparableRecipe out_;
};

inline std::vector<Book> books_of(const std::vector<ComparableRecipe>& recipes) {
  std::vector<Book> out;
  for (const ComparableRecipe& recipe : recipes) {
    Book book;
    book.id = recipe.book;
    book.title = "The Book of " + recipe.book;
    book.date = recipe.year > 0 ? std::to_string(recipe.year) : "";
    out.push_back(std::move(book));
  }
  return out;
}

inline Outcome<Comparison> lay_out(const std::vector<ComparableRecipe>& recipes, const std::string& basis = {}) {
  return compare(recipes, books_of(recipes), yardstick(), basis);
}

inline const Row* row(const Comparison& comparison, const std::string& name) {
  for (const Row& one : comparison.rows)
    if (one.name == name) return &one;
  return nullptr;
}

inline bool says(const Comparison& comparison, const std::string& words) {
  for (const std::string& note : comparison.notes)
    if (note.find(words) != std::string::npos) return true;
  return false;
}

}  // namespace gallipot::bench
