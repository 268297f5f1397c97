// The same amount by the spoons, cups and pieces of a kitchen of today.
#pragma once

#include <string>

#include "indexer/measures/amount.h"
#include "query/comparing/yardstick.h"

namespace gallipot {

/// Millilitres of the teaspoon, tablespoon and cup that are meant: those of 21 CFR 101.9(b)(5)(viii).
inline constexpr double teaspoon_ml = 5, tablespoon_ml = 15, cup_ml = 240;

/// "2 tbsp", "1 1/4 cups", "a pinch" with vulgar fractions, nearest to `millilitres`.
std::string by_spoon_and_cup(double millilitres);

/// "1 1/2": halves, thirds and quarters as vulgar fractions; from ten on whole.
std::string by_fraction(double value);

/// The amount of a stuff by spoon, cup or piece; empty where that makes no sense (meat by the cup) or the register does
/// not know its density.
std::string kitchen_measure(const std::string& name, const std::string& kind, const Amount& amount,
                            const Yardstick& yardstick);

}  // namespace gallipot
