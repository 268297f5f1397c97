// Which blocks are a contents list or an index? Internal to the room.
#pragma once

#include <vector>

#include "indexer/reading/block.h"

namespace gallipot {

/// Sets Block::contents on runs of rows that end in page numbers in the order of pages or letters, and on the lists
/// under a heading that says contents or index. On entry it may be set where a block links to a page; where no such
/// run is found that is taken back.
void mark_contents(std::vector<Block>& blocks);

}  // namespace gallipot
