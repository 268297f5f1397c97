// What do the cook's corrections make of a recipe's amounts and ingredients?
#pragma once

#include <optional>
#include <vector>

#include "indexer/correcting/correction.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/text/span.h"

namespace gallipot {

/// A correction that holds in a recipe, and where.
struct PlacedCorrection {
  const Correction* correction = nullptr;
  Span span;                              ///< its printed words, in Recipe::text; empty for a title
  std::optional<std::size_t> ingredient;  ///< the one it is about, after correcting; none where it is gone
};

/// Puts right what the corrections say of this recipe: those of its book whose line is one of its own and whose
/// printed words stand in it, the nearest to that line where they stand several times. Metric amounts are not filled
/// in. To correct twice is to correct once.
void correct_readings(ComparableRecipe& recipe, const Corrections& corrections);

/// The corrections that hold in a recipe that has been corrected.
std::vector<PlacedCorrection> corrections_in(const ComparableRecipe& recipe, const Corrections& corrections);

/// The 1-based raw line on which byte `at` of the recipe's text stands.
std::uint32_t line_of_text(const Recipe& recipe, std::uint32_t at);

/// Where printed words stand in a recipe, nearest to a line; nothing where they do not.
std::optional<Span> place_of(const Recipe& recipe, std::string_view printed, std::uint32_t line);

}  // namespace gallipot
