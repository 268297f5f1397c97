// Search stems of a text: the same road from print to term that the index took.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"

namespace gallipot {

/// Stems of the words of a text in order, without words that say nothing of a dish ("the", "make", "fine").
std::vector<std::string> telling_stems(std::string_view text, const Lexicon& lexicon);

}  // namespace gallipot
