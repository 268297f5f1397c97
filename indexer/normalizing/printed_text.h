// The words of a recipe as they stand in the copy, and as they are read. Where a book was mended the two differ.
#pragma once

#include <string>

#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// Sets a recipe's text back to what stands in the copy, once all has been read from it; moves every span along.
void set_back(ComparableRecipe& recipe);

/// The text of a recipe that has been set back, with its readings in place: for search and for likeness of wording.
std::string text_as_read(const Recipe& recipe);

/// Lowers a recipe's confidence by the words of it that were mended or could not be read, and says so in `doubt` where
/// it becomes low.
void weigh_reading(Recipe& recipe);

}  // namespace gallipot
