// What do the cook's corrections make of how a book was cut?
#pragma once

#include <vector>

#include "indexer/correcting/correction.h"
#include "indexer/reading/block.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// Puts right how a book was cut. Recipes keep their numbers, so that no id changes: one that is dropped leaves a gap,
/// one that a correction begins is numbered after the book's last. Answers the corrections that found no place, each a
/// fault that names its line: the file has changed since.
std::vector<Fault> correct_cuts(std::vector<Recipe>& recipes, const std::vector<Block>& blocks,
                                const std::vector<const Correction*>& corrections, const std::string& file);

}  // namespace gallipot
