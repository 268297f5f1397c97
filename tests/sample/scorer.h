// How right is what the pipeline made of the sample shelf? One figure a question. An answer is taken to be about a
// heading of the gold when it begins within four raw lines of it.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "tests/sample/gold.h"

namespace gallipot::sample {

/// Counts behind a precision and a recall.
struct Tally {
  std::size_t hits = 0, found = 0, wanted = 0;
  double precision() const { return found ? static_cast<double>(hits) / static_cast<double>(found) : 0; }
  double recall() const { return wanted ? static_cast<double>(hits) / static_cast<double>(wanted) : 0; }
  double f1() const;  ///< harmonic mean of the two; 0 where both are
};

/// The recipes that the pipeline found, by book, in order of line.
class Answer {
 public:
  explicit Answer(std::vector<ComparableRecipe> recipes);
  const std::vector<ComparableRecipe>& of(const std::string& book) const;
  /// The recipe whose heading is nearest to `place`, if it is near enough; else nullptr.
  const ComparableRecipe* at(const Place& place) const;

 private:
  std::map<std::string, std::vector<ComparableRecipe>> by_book_;
};

struct Segmentation {
  Tally headings;
  Tally titles;                    ///< of those found: words shared by at least 3/4 (Jaccard)
  Tally pages, contributors;       ///< of every heading
  std::vector<std::string> notes;  ///< each miss, extra and wrong title, for people
};
Segmentation score_segmentation(const std::vector<GoldWindow>& gold, const Answer& answer);

struct Parsing {
  std::size_t recipes = 0, located = 0;
  Tally ingredients;  ///< by name
  Tally quantities;   ///< by amount and measure, of ingredients whose names agree at least in their head word
  Tally relatives, per_units;
  Tally operations;  ///< longest common subsequence
  Tally durations;   ///< within one part in twenty
  Tally pages, contributors;
  std::vector<std::string> notes;
};
Parsing score_parsing(const std::vector<GoldRecipe>& gold, const Answer& answer);

/// Are the recipes that can hurt told of, and no others?
struct Warnings {
  Tally told;    ///< the words that must be said
  Tally silent;  ///< recipes that need no caution and have none
  std::vector<std::string> notes;
};
Warnings score_cautions(const std::vector<GoldCaution>& gold, const Answer& answer);

/// How good a ranking is against graded judgements.
struct Ranking {
  double ndcg50 = 0;     ///< gains 3 and 1 for grades 2 and 1, logarithmic discount, first fifty
  double recall200 = 0;  ///< of grade 2, in the first two hundred
};
/// `ranked` holds ids of recipes, best first; `leave_out` is the recipe that was asked from, which counts neither way.
Ranking score_ranking(const GoldTopic& topic, const std::vector<std::string>& ranked, const Answer& answer,
                      const Place& leave_out = {});

/// Whether two titles are the same by their words.
bool same_title(const std::string& a, const std::string& b);
/// Whether a name means one of the gold's names; `head_only`: the last word of each is enough.
bool same_name(const GoldIngredient& gold, const std::string& name, bool head_only);

}  // namespace gallipot::sample
