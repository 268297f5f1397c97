// Reads what the cook asks for and finds the factor.
#include "query/cooking/batch.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>

#include "indexer/measures/amount.h"
#include "indexer/parsing/parse.h"
#include "indexer/text/unicode.h"
#include "query/cooking/bulk.h"

namespace gallipot {
namespace {

constexpr int today = 2000;  // the basket is measured with measures of today

/// The figure at the head of `text`, taken off it; nothing where there is none.
std::optional<double> take_figure(std::string_view& text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{} || !std::isfinite(value)) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return value;
}

struct UnitWord {
  const char* word;
  Amount::Unit unit;
  double of;
};

// Source of the pound and ounce: NIST Handbook 44, Appendix C.
constexpr UnitWord unit_words[] = {{"g", Amount::Unit::gram, 1},
                                   {"kg", Amount::Unit::gram, 1000},
                                   {"lb", Amount::Unit::gram, 453.59237},
                                   {"oz", Amount::Unit::gram, 28.349523},
                                   {"ml", Amount::Unit::millilitre, 1},
                                   {"cl", Amount::Unit::millilitre, 10},
                                   {"dl", Amount::Unit::millilitre, 100},
                                   {"l", Amount::Unit::millilitre, 1000},
                                   {"litre", Amount::Unit::millilitre, 1000},
                                   {"litres", Amount::Unit::millilitre, 1000}};

std::string names_of(const std::vector<Holding>& holdings) {
  std::string out;
  std::size_t n = 0;
  for (const Holding& holding : holdings) {
    if (holding.mentions.empty() || n == 8) continue;
    out += (n++ > 0 ? ", " : "") + holding.name;
  }
  return out;
}

std::string_view last_word(std::string_view name) {
  const auto space = name.rfind(' ');
  return space == std::string_view::npos ? name : name.substr(space + 1);
}

/// The holding that the basket's stuff is: by name, or by its last word ("plum" for "damson plum").
std::optional<std::size_t> same_stuff(const std::string& name, const std::vector<Holding>& holdings,
                                      const Yardstick& yardstick) {
  if (const auto at = place_of(holdings, yardstick.stuff(name))) return at;
  for (std::size_t h = 0; h < holdings.size(); ++h)
    if (!holdings[h].mentions.empty() && (last_word(holdings[h].name) == name || last_word(name) == holdings[h].name))
      return h;
  return std::nullopt;
}

/// Printed and basket in the same words: "four lemons", "6 lemons".
std::optional<double> by_same_measure(const Basket& basket, const ComparableRecipe& recipe, const Holding& holding) {
  std::optional<double> printed;
  for (const std::size_t i : holding.mentions) {
    const Ingredient& one = recipe.ingredients[i].printed;
    if (one.per || one.relative || !one.quantity) continue;
    if (printed || one.name != basket.name || one.measure != basket.measure || one.measure_note != basket.note ||
        !one.measure.empty())
      return std::nullopt;
    printed = (one.quantity->low + one.quantity->high) / 2;
  }
  if (!printed || *printed <= 0) return std::nullopt;
  return (basket.quantity.low + basket.quantity.high) / 2 / *printed;
}

std::string said(const Basket& basket) {
  std::string out = fmt::format("{:g}", (basket.quantity.low + basket.quantity.high) / 2);
  if (!basket.measure.empty()) out += " " + basket.measure + " of";
  return out + " " + basket.name;
}

}  // namespace

Outcome<double> checked_scale(double scale) {
  if (!std::isfinite(scale) || scale <= 0)
    return fault(fmt::format("a recipe cannot be scaled by {:g}", scale),
                 "give --scale a number over 0, like 0.5 or 2");
  if (scale < least_scale || scale > greatest_scale)
    return fault(fmt::format("{:g} times the recipe is no batch for a kitchen", scale),
                 fmt::format("give --scale a number from {:g} to {:g}", least_scale, greatest_scale));
  return scale;
}

Outcome<WantedYield> read_yield(std::string_view text) {
  std::string_view rest = text;
  const auto figure = take_figure(rest);
  const std::string mend = "write --yield as a figure and a unit (g, kg, oz, lb, ml, l), like 1l or \"500 g\"";
  if (!figure) return fault("\"" + std::string(text) + "\" is not an amount to make", mend);
  if (*figure <= 0) return fault("\"" + std::string(text) + "\" makes nothing", mend);
  const std::string unit = fold_case(rest);
  for (const UnitWord& word : unit_words)
    if (unit == word.word) return WantedYield{*figure * word.of, word.unit};
  return fault("\"" + std::string(rest) + "\" is not a unit of weight or volume", mend);
}

Outcome<Basket> read_basket(const std::string& text, const Lexicon& lexicon) {
  Recipe asked;
  asked.text = to_nfc(text);
  asked.parts.push_back({Part::Kind::list_item, {0, static_cast<std::uint32_t>(asked.text.size())}});
  const Words words(asked.text);
  const auto read = parse_ingredients(asked, words, lexicon);
  const std::string mend = "write --have as an amount and an ingredient, like \"6 lemons\" or \"2 pounds of plums\"";
  if (read.empty()) return fault("\"" + text + "\" names no ingredient that the lexicon knows", mend);
  const Ingredient& one = read.front();
  if (!one.quantity || one.quantity->high <= 0) return fault("\"" + text + "\" names no amount", mend);
  if (lexicon.foodstuff(one.name) == nullptr)
    return fault("\"" + text + "\" names no ingredient that the lexicon knows", mend);
  return Basket{one.name, *one.quantity, one.measure, one.measure_note};
}

std::optional<std::size_t> untold_basis(const std::vector<Holding>& holdings) {
  std::map<std::size_t, std::size_t> told_by;
  for (std::size_t h = 0; h < holdings.size(); ++h) {
    if (holdings[h].amount) return std::nullopt;
    if (!holdings[h].tie) continue;
    std::size_t at = h;
    for (std::size_t n = 0; n < holdings.size() && holdings[at].tie; ++n) at = holdings[at].tie->to;
    if (!holdings[at].tie) ++told_by[at];
  }
  const auto most = std::max_element(told_by.begin(), told_by.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  if (most == told_by.end()) return std::nullopt;
  return most->first;
}

Outcome<Batch> batch_for(const Basket& basket, const ComparableRecipe& recipe, std::vector<Holding>& holdings,
                         const Yardstick& yardstick) {
  const auto at = same_stuff(basket.name, holdings, yardstick);
  if (!at) return fault(recipe.id + " has no " + basket.name, "name one of its ingredients: " + names_of(holdings));
  Batch out;
  if (const auto factor = by_same_measure(basket, recipe, holdings[*at])) {
    out.factor = *factor;
  } else {
    const auto have = yardstick.weigh(
        {basket.quantity.low, basket.quantity.high, basket.measure, basket.note, basket.name, today, {}});
    if (!have || have->likely <= 0)
      return fault("it cannot be told how much " + said(basket) + " is",
                   "give it by weight, like \"2 pounds of plums\"");
    const auto printed = total_of(holdings, *at);
    if (!printed && untold_basis(holdings) == at) {
      holdings[*at].amount = have;
      out.basis = holdings[*at].name;
      out.basis_amount = have;
      out.why = "Made for the " + said(basket) + " in the basket; the print tells the rest by it.";
      return out;
    }
    const auto have_grams = in_grams(basket.name, *have, yardstick);
    const auto print_grams = printed ? in_grams(basket.name, *printed, yardstick) : std::nullopt;
    if (!have_grams || !print_grams || print_grams->likely <= 0)
      return fault("the print does not say how much " + holdings[*at].name + " " + recipe.id + " takes",
                   "scale by an ingredient with an amount, or say --scale");
    out.factor = have_grams->likely / print_grams->likely;
  }
  const auto checked = checked_scale(out.factor);
  if (!checked)
    return fault(fmt::format("{} would make {:.3g} times the recipe, no batch for a kitchen", said(basket), out.factor),
                 fmt::format("keep to {:g} to {:g} times the recipe", least_scale, greatest_scale));
  out.why = fmt::format("{:.3g} times the print, for the {} in the basket.", out.factor, said(basket));
  return out;
}

}  // namespace gallipot
