// Chooses the largest measure that still counts in plain fractions.
#include "query/cooking/kitchen_measure.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "query/cooking/bulk.h"

namespace gallipot {
namespace {

constexpr double most_cups = 8;

struct Fraction {
  double value;
  const char* sign;
};

constexpr std::array<Fraction, 7> fractions = {{{0, ""},
                                                {0.25, "\xC2\xBC"},
                                                {1.0 / 3, "\xE2\x85\x93"},
                                                {0.5, "\xC2\xBD"},
                                                {2.0 / 3, "\xE2\x85\x94"},
                                                {0.75, "\xC2\xBE"},
                                                {1, ""}}};

bool measured_by_piece(const std::string& kind) { return kind == "fruit" || kind == "vegetable" || kind == "egg"; }

bool measured_by_spoon(const std::string& kind) {
  static constexpr std::array<std::string_view, 16> kinds = {
      "grain", "sweet", "dairy", "fat",       "spice", "leaven", "liquor",  "water",
      "nut",   "herb",  "sauce", "condiment", "drink", "bread",  "gelling", "colour"};
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace

std::string by_fraction(double value) {
  if (value >= 10) return fmt::format("{:.0f}", value);
  const double whole = std::floor(value);
  const double rest = value - whole;
  const Fraction* best = &fractions.front();
  for (const Fraction& f : fractions)
    if (std::abs(f.value - rest) < std::abs(best->value - rest)) best = &f;
  const double shown = best->value == 1 ? whole + 1 : whole;
  if (shown == 0 && *best->sign == '\0') return "";
  if (*best->sign == '\0') return fmt::format("{:.0f}", shown);
  return shown == 0 ? best->sign : fmt::format("{:.0f} {}", shown, best->sign);
}

std::string by_spoon_and_cup(double millilitres) {
  if (millilitres < 0.15) return "a few grains";
  if (millilitres < 0.9) return "a pinch";
  const auto said = [](double value, const char* one, const char* many) {
    const std::string figure = by_fraction(value);
    return figure + " " + (value > 1 && figure != "1" ? many : one);
  };
  if (millilitres < 14) return said(millilitres / teaspoon_ml, "tsp", "tsp");
  if (millilitres < 55) return said(std::round(millilitres / tablespoon_ml * 2) / 2, "tbsp", "tbsp");
  if (millilitres < most_cups * cup_ml) return said(millilitres / cup_ml, "cup", "cups");
  return fmt::format("{:.2g} l", millilitres / 1000);
}

std::string kitchen_measure(const std::string& name, const std::string& kind, const Amount& amount,
                            const Yardstick& yardstick) {
  if (amount.unit == Amount::Unit::count) return {};
  if (amount.unit == Amount::Unit::gram && measured_by_piece(kind)) {
    const auto piece = piece_of(name, yardstick);
    if (!piece) return {};
    const double pieces = amount.likely / piece->likely;
    if (pieces < 0.2 || pieces > 60) return {};
    return fmt::format("about {}", by_fraction(pieces >= 3 ? std::round(pieces) : pieces));
  }
  if (!measured_by_spoon(kind)) return {};
  if (amount.unit == Amount::Unit::millilitre) return by_spoon_and_cup(amount.likely);
  const auto density = density_of(name, yardstick);
  if (!density) return {};
  const double millilitres = amount.likely / density->likely;
  // So much of a dry stuff is weighed, not counted out in cups.
  return millilitres < most_cups * cup_ml ? by_spoon_and_cup(millilitres) : std::string();
}

}  // namespace gallipot
