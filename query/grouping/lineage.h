// Where does a recipe come from, who took it over, and who printed it first?
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/grouping/changes.h"
#include "query/grouping/earlier.h"
#include "query/grouping/kin_search.h"
#include "query/grouping/stemma.h"

namespace gallipot {

/// A recipe that has the text of the one asked for, or much of it.
struct Kin {
  std::string id, book;
  Order order;            ///< `first` is the kin's book, `second` that of the recipe asked for
  double verbatim = 0;    ///< 0..1: words of the later text that stand in the earlier one
  double of_earlier = 0;  ///< 0..1: words of the earlier text that stand in the later one
  double likelihood = 0;  ///< 0..1: that one draws on the other, or both on a third
  bool copy = false;      ///< else revised
  bool same_author = false;
  /// From the earlier to the later, amounts first. Where the order is undecided, from the kin to the recipe asked for.
  std::vector<WordChange> changes;
};

struct Lineage {
  std::string of, book;              ///< the recipe asked for
  std::vector<Kin> earlier;          ///< likeliest source first; those of which the order is undecided after the others
  std::vector<Kin> later;            ///< who took it over, in order of year
  std::vector<Kin> in_same_book;     ///< the same text again in its own book
  std::optional<std::string> first;  ///< id of the first witness; none where the dates cannot decide
  std::string first_why;             ///< one sentence
  Stemma stemma;                     ///< of the recipe and all its kin in other books
  std::string note;                  ///< why there can be nothing: an empty text, no other book; else empty
};

/// The lineage of the recipe `id`; at most `limit` kin of each sort. Faults: no such id (nearest named), an index that
/// cannot be read.
Outcome<Lineage> lineage_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view id, std::size_t limit = 20);

}  // namespace gallipot
