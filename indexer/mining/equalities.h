// From amounts that the print sets equal to statements, each told for one of the vaguer measure.
#pragma once

#include <string>
#include <vector>

#include "indexer/mining/passage.h"
#include "indexer/mining/sizes.h"
#include "indexer/mining/ties.h"
#include "indexer/parsing/row.h"

namespace gallipot::mining {

/// A statement before it has its book, page and line.
struct Told {
  std::string measure, of, unit;
  Range equals;
  parsing::Extent words;  ///< of the passage, that say it
  std::string quote;      ///< where the words alone do not say it (a table's row); else empty
};

/// The equalities of a passage, in order.
std::vector<Told> equalities(const Passage& passage, Sizes& sizes, bool tabular);

}  // namespace gallipot::mining
