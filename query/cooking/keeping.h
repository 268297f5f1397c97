// What is known of how it keeps: salt, sugar and acid of what goes in, beside published guidance. Information, never a
// verdict.
#pragma once

#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "query/comparing/yardstick.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

Keeping keeping_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Kitchen& kitchen,
                   const Yardstick& yardstick);

/// The strength of vinegar in a book of that year and country: the union of the rows that hold.
Amount vinegar_strength(const Kitchen& kitchen, int year, const std::string& country);

}  // namespace gallipot
