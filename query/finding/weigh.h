// Weighs candidates against what was asked, in two rounds: the best of the first speak for the dish in the second.
#pragma once

#include <vector>

#include "query/finding/candidates.h"

namespace gallipot {

/// A candidate as weighed.
struct Weighed {
  Xapian::docid docid = 0;
  double score = 0;  ///< 0..1
  double words = 0;
  Alike alike;
  ComparableRecipe recipe;
};

/// Best first; `most` at the most. `asked` is the dish or recipe asked for, `words` the stems of its text (may be
/// empty). `except` is left out of the answer and of the feedback (0: nothing is).
std::vector<Weighed> weigh(const Shelf& shelf, const Lexicon& lexicon, const Sketch& asked, const Weights& words,
                           const Filter& filter, const Ranking& ranking, Telling& telling, Xapian::docid except,
                           std::size_t most);

}  // namespace gallipot
