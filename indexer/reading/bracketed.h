// What do plain-text transcriptions put in square brackets? Internal to the room.
#pragma once

#include "indexer/reading/draft.h"

namespace gallipot {

/// "[Illustration: ...]" becomes a caption, "[Footnote 3: ...]" a note, "[Sidenote: ...]" a sidenote; the brackets and
/// words go from the text. "[Transcriber's note: ...]" is emptied, to be dropped with the blocks that hold nothing.
void read_bracketed(Draft& draft);

}  // namespace gallipot
