// How do the amounts of a recipe hang together? Amounts told per unit of another stuff, by comparison, as alternatives,
// or only for those who like them.
#pragma once

#include <vector>

#include "indexer/parsing/mentions.h"

namespace gallipot::parsing {

/// "half as much cloves", "an equal quantity of turnips", "the weight of six eggs in sugar": sets `relative`.
void relate_amounts(const Row& row, std::vector<Mention>& mentions);

/// "to every quart of the liquor put ...", "a pound of sugar to each pound of fruit": sets `per` and `per_base`.
void relate_units(const Row& row, const std::vector<PrintedAmount>& amounts, std::vector<Mention>& mentions);

/// "lard or butter", "mace, or else cloves": sets `alternative_to`, and the amount that it inherits.
void relate_alternatives(const Row& row, std::vector<Mention>& mentions);

/// "if you like", "may be added", all after "Another way": sets `optional`. Answers per word whether it stands in a
/// variant of the recipe.
std::vector<bool> mark_optional(const Row& row, std::vector<Mention>& mentions);

}  // namespace gallipot::parsing
