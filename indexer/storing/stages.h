// The stages of the pipeline for one book, put end to end; no threads and no index here.
#pragma once

#include <cstdint>
#include <vector>

#include "indexer/correcting/correction.h"
#include "indexer/measures/statement.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/storing/build.h"

namespace gallipot {

/// A book read, mined and cut, its recipes not yet parsed.
struct CutBook {
  std::vector<Recipe> recipes;
  std::vector<Statement> statements;
  BookReport report;  ///< `refused` where the book could not be read or has no recipes; then there are none
};

/// `corrections` of how the book is cut are applied; those that find no place are told in `report.doubts`.
CutBook read_and_cut(const Book& book, const Lexicon& lexicon, const Corrections& corrections);

/// A recipe parsed and normalized; its metric amounts are left to whoever reads it.
ComparableRecipe make_comparable(Recipe recipe, const Book& book, std::uint32_t book_order, const Lexicon& lexicon);

}  // namespace gallipot
