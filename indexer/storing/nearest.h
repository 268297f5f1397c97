// Somebody asked for a recipe that is not there: which did they mean?
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/catalogue/book.h"

namespace gallipot {

/// What to do instead, for the `mend` of a fault: names recipes that exist, nearest first. `counts`: recipes of each
/// book, numbered from 1.
std::string nearest_recipes(std::string_view id, const std::vector<Book>& books,
                            const std::vector<std::size_t>& counts);

/// How many letters must be put in, taken out, changed or swapped with their neighbour to turn one word into the other.
/// Source: Damerau 1964, in the restricted form (optimal string alignment).
std::size_t edit_distance(std::string_view a, std::string_view b);

}  // namespace gallipot
