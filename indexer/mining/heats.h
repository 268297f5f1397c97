// Heats that a book tells: degrees of an oven, of fat, of a stage of boiled sugar; what they are known by where there
// is no thermometer; and the strength of spirits.
#pragma once

#include <string>
#include <vector>

#include "indexer/mining/equalities.h"

namespace gallipot::mining {

/// The heats told in a passage, in order. `equals` is zero and `unit` empty where the print gives a test without a
/// figure ("at candy height it will fly like flakes").
std::vector<Told> heats(const Passage& passage);

/// All words of the names of stages of boiled sugar (data/heats.tsv).
std::vector<std::string> stage_words();

}  // namespace gallipot::mining
