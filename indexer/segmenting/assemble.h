// Puts the words of a receipt together from pieces of blocks, and keeps where each stood in print and on disk.
#pragma once

#include "indexer/reading/block.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// Adds [from, to) of the block's text to the receipt as one part, or as one a line where printed lines are a list.
void add_piece(Recipe& recipe, const Block& block, std::uint32_t from, std::uint32_t to, Part::Kind kind);

/// What kind of part a block becomes.
Part::Kind part_kind(const Block& block);

}  // namespace gallipot
