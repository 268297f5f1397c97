// How do plain-text transcriptions show italics and bold? Internal to the room.
#pragma once

#include "indexer/reading/draft.h"

namespace gallipot {

/// Takes the transcribers' marks out of every block's text and makes runs of them: _italic_, =bold=, *bold*,
/// +small capitals+, ~spaced~, and ^{superscript} or ^s.
void read_emphasis(Draft& draft);

}  // namespace gallipot
