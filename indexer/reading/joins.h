// Is a word broken at a line's end one word or two joined by a hyphen? Internal to the room.
#pragma once

#include "indexer/reading/draft.h"

namespace gallipot {

/// Decides every seam by the book's own use: the hyphen goes where the joined word stands elsewhere in the book and
/// the hyphenated one is not commoner; "two-" before "and" or "or" gets its space back; otherwise the hyphen stays.
void join_broken_words(Draft& draft);

}  // namespace gallipot
