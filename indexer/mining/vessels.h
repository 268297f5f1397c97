// Vessels named by what they hold: "a half-pint mug", "a pint bowl of codfish", "a one ounce box".
#pragma once

#include "indexer/mining/equalities.h"

namespace gallipot::mining {

std::vector<Told> vessels(const Passage& passage, Sizes& sizes);

}  // namespace gallipot::mining
