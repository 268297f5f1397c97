// A recipe's words as markup: paragraphs as printed, what was read as an amount marked, each mark with its reading.
#pragma once

#include <string>
#include <vector>

#include "indexer/correcting/readings.h"
#include "indexer/measures/amount.h"
#include "indexer/normalizing/comparable.h"

namespace gallipot::room {

/// Every letter of print is escaped. A mark is a link to the reading's row (#reading-3), with the reading in it for who
/// points or steps there.
std::string marked_text(const ComparableRecipe& recipe, const std::vector<PlacedCorrection>& placed);

/// "half as much as the sugar", "to every quart of liquor", "may be left out"; empty where there is nothing of the
/// kind.
std::string relation_words(const Ingredient& ingredient);

/// An amount drawn: a thin line from low to high with a tick at the likely value, on a scale of its own from nought.
/// Empty for a count that is sure.
std::string amount_drawn(const Amount& amount);

}  // namespace gallipot::room
