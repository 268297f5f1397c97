// What is to be got ready: vessels with their size, sieves, cloths, scales.
#pragma once

#include <vector>

#include "query/comparing/yardstick.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// From operations, words and the room that the batch takes. `keeps`: it is put up in jars or bottles.
std::vector<Vessel> vessels_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Made& made,
                               bool keeps, const Kitchen& kitchen, const Yardstick& yardstick);

}  // namespace gallipot
