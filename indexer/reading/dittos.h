// What does a ditto mark stand for? Internal to the room.
#pragma once

#include <vector>

#include "indexer/reading/block.h"

namespace gallipot {

/// Puts the words of the row above in the place of ditto marks (", ,,, do., ditto), where it is plain which: a cell
/// that is nothing else takes the cell above; in a list of amounts the mark takes the word in the same place above.
/// Contents lists and indexes are left as printed.
void resolve_dittos(std::vector<Block>& blocks);

}  // namespace gallipot
