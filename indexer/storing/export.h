// A recipe as one line of the export schema (JSON Lines). The schema is a contract; see DEVELOPERS.md.
#pragma once

#include <string>

#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// One JSON object without a line end. Spans are in Unicode code points of "text".
std::string export_line(const ComparableRecipe& recipe);

}  // namespace gallipot
