// A sketch is what ranking needs to know of a recipe or of a dish asked for: names, stuff and operations, weighted by
// how much they tell on this shelf. One form for both, so that likeness is a function of two sketches.
#pragma once

#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "indexer/storing/stems.h"
#include "query/finding/ranking.h"

namespace gallipot {

/// A sparse vector; for names and stuff the weight holds how telling the word is on the shelf.
using Weights = std::unordered_map<std::string, double>;

struct Sketch {
  Weights title;  ///< stems of the title
  Weights bases;  ///< what the dish is made of
  Weights kinds;  ///< which kind of dish
  Weights families;
  Weights stuff;   ///< canonical ingredients, and what they are made of at half weight
  Weights method;  ///< operations
};

/// How much a word tells on this shelf: its stem, and how rare that is - idf as in Robertson and Spärck Jones (1976),
/// never below 0. Remembers what it was asked, since one answer asks for the same few hundred terms many times.
class Telling {
 public:
  Telling(const Shelf& shelf, const Lexicon& lexicon);

  double rarity(const std::string& term);
  double rarity(std::string_view prefix, std::string_view word);
  /// Stems of a text in order, without words that say nothing of a dish ("the", "make", "fine").
  std::vector<std::string> stems_of(std::string_view text);

 private:
  const Xapian::Database& database_;
  double documents_;
  Stems stems_;
  std::unordered_set<std::string> silent_;
  std::unordered_map<std::string, double> known_;
};

/// The sketch of a stored recipe.
Sketch sketch_of(const ComparableRecipe& recipe, const Lexicon& lexicon, const Ranking& ranking, Telling& telling);

/// The sketch of a dish asked for by words: its name, and its base as chief stuff.
Sketch sketch_of(const std::vector<std::string>& words, const Lexicon& lexicon, const Ranking& ranking,
                 Telling& telling);

/// The two mixed: (1 - share) of the first and `share` of the mean of the others. For feedback from a first round.
Sketch mixed(const Sketch& first, const std::vector<const Sketch*>& others, double share);

/// Likeness of two sketches, each part 0..1.
struct Alike {
  double name = 0, stuff = 0, method = 0;
};
Alike alike(const Sketch& asked, const Sketch& candidate, const Ranking& ranking);

}  // namespace gallipot
