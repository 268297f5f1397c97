// What does a book's title page say of the book? Internal to the room.
#pragma once

#include <vector>

#include "indexer/reading/block.h"
#include "indexer/reading/proposal.h"

namespace gallipot {

/// Adds what the first blocks seem to say: title, creator ("By ..."), place and date. A field that has a proposal
/// already keeps it.
void propose_from_title_page(const std::vector<Block>& blocks, std::vector<Proposal>& proposals);

}  // namespace gallipot
