// How is a book cut into recipes? Each book's own habit of marking them is learnt from its blocks, then used.
#pragma once

#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/reading/block.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// Cuts a book's blocks into recipes, in order. Needs the lexicon to know prose that cooks from prose that talks.
/// Chapter heads, remarks, menus, contents and index pages are no recipes; several untitled ways under one title are
/// recipes of their own and carry the dish in `dish_title`. Never faults: a book without recipes gives none.
SegmentedBook segment(const std::vector<Block>& blocks, const Lexicon& lexicon);

}  // namespace gallipot
