// What did the transcribers add to the book? Internal to the room.
#pragma once

#include <cstdint>
#include <string_view>

#include "indexer/reading/draft.h"

namespace gallipot {

/// Raw lines between which the book's own text stands: after `first`, before `last`; 0 where there is no marker.
struct OwnText {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
};

/// Finds "*** START OF ..." and "*** END OF ..." and their older forms in a file.
OwnText own_text(std::string_view text);

/// Drops blocks outside `own`, and inside it the producers' credits and transcribers' notes at either end.
void cut_boilerplate(Draft& draft, OwnText own);

}  // namespace gallipot
