// A better spelling for a word that no title on the shelf has.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "query/finding/sketch.h"

namespace gallipot {

/// The query with misspelt words mended from the shelf's own titles; empty where nothing is to be mended or nothing is
/// near. A word is misspelt when neither the shelf nor the lexicon has it; near is an edit distance (with swaps of
/// neighbours) of one, or of two from seven letters up.
std::string suggestion(const Shelf& shelf, const Lexicon& lexicon, Telling& telling,
                       const std::vector<std::string>& words);

/// Damerau's edit distance with adjacent swaps (optimal string alignment); stops counting above `most`.
unsigned edit_distance(std::string_view a, std::string_view b, unsigned most);

}  // namespace gallipot
