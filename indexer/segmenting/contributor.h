// Who gave the receipt? Learnt from where a book prints the names of its contributors.
#pragma once

#include <vector>

#include "indexer/segmenting/recipe.h"
#include "indexer/segmenting/vocabulary.h"

namespace gallipot {

/// Fills Recipe::contributor, where the title has not told it, from signatures, lines under titles and names at the end
/// of the last paragraph.
void name_contributors(std::vector<Recipe>& recipes, Vocabulary& vocabulary);

}  // namespace gallipot
