// Is a raised figure after a number a fraction of its own? Internal to the room.
#pragma once

#include "indexer/reading/draft.h"

namespace gallipot {

/// Parts "26" from "1/2" where the print shows 26 and a small 1/2 but the text would run them together as "261/2".
void part_fractions(Draft& draft);

}  // namespace gallipot
