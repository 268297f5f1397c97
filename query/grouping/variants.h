// Which recipes are the same thing as this one? Candidates from the index, then weighed by what they are made of, how
// they are made, and what they are called.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/finding/find.h"
#include "query/finding/ranking.h"

namespace gallipot {

struct Variant {
  std::string id;
  double score = 0;                        ///< 0..1
  double name = 0, stuff = 0, method = 0;  ///< the parts of the score, each 0..1
  std::vector<std::string> shared;         ///< ingredients that both have, most telling first
  std::vector<std::string> lacks;          ///< what the asked recipe has and this has not
  std::vector<std::string> adds;           ///< what this has and the asked one has not
  std::string reason;                      ///< one sentence
};

struct VariantSet {
  std::string of;                 ///< id asked for; empty when asked by words
  std::vector<Variant> variants;  ///< best first, without `of`
};

/// Variants of the recipe `id`. Faults: no such id (nearest named).
Outcome<VariantSet> variants_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view id,
                                const Filter& filter = {}, std::size_t limit = 50,
                                const Ranking& ranking = built_in_ranking());

}  // namespace gallipot
