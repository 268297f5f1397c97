// Draws candidates from the index: one Xapian query over every sign of the dish, with the filters on it.
#pragma once

#include <string>
#include <vector>

#include "indexer/storing/shelf.h"
#include "query/finding/find.h"
#include "query/finding/sketch.h"

namespace gallipot {

/// A recipe drawn from the index, with the share of the best weight that Xapian gave it.
struct Candidate {
  Xapian::docid docid = 0;
  double words = 0;  ///< 0..1
};

/// What to draw by: a sketch, and words of the text with weights (stems).
struct Draw {
  Sketch sketch;
  Weights words;
  std::vector<std::string> feedback;  ///< whole terms won from a first round
};

/// The recipes that the index holds nearest to `draw`, best first, at most `most`. Nothing where no term is known.
std::vector<Candidate> candidates(const Shelf& shelf, const Draw& draw, const Filter& filter, const Ranking& ranking,
                                  Telling& telling, std::size_t most);

/// The terms that tell the documents `best` from the rest of the shelf, weightiest first (Xapian's expand sets, after
/// Robertson's offer weight): stems of text, titles and stuff.
std::vector<std::string> telling_terms(const Shelf& shelf, const std::vector<Xapian::docid>& best, unsigned most);

}  // namespace gallipot
