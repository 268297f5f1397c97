// Which recipes are this dish, whatever they call it? Words in, recipes out, best first.
#pragma once

#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "query/finding/ranking.h"

namespace gallipot {

/// Limits on what is searched; empty or zero means no limit.
struct Filter {
  int from = 0, to = 0;  ///< years of the edition, inclusive
  std::string country;   ///< ISO 3166
  std::vector<std::string> books;
  std::vector<std::string> with, without;  ///< canonical ingredient names
};

struct Hit {
  Xapian::docid docid = 0;
  std::string id;
  double score = 0;  ///< 0..1, higher is better; comparable within one answer only
  std::vector<std::string>
      why;  ///< clauses that say what matched: "walnut catsup by name", "has walnut, vinegar, mace"
};

struct Found {
  std::vector<Hit> hits;
  std::string suggestion;  ///< a better spelling of the query; empty where there is none
};

/// Finds the dish that `words` name. Only a misspelt or empty query or a broken index is a fault; nothing found is not.
Outcome<Found> find(const Shelf& shelf, const Lexicon& lexicon, const std::vector<std::string>& words,
                    const Filter& filter = {}, std::size_t limit = 50, const Ranking& ranking = built_in_ranking());

}  // namespace gallipot
