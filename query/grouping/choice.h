// Which recipes belong side by side? Those that bear a dish's name and those that are made as it is; and what was left
// out.
#pragma once

#include <string>
#include <vector>

#include "query/finding/find.h"
#include "query/finding/ranking.h"

namespace gallipot {

/// Under another name a recipe belongs where its score (0..1) comes within this part of the best ...
inline constexpr double alike_enough = 0.66;
/// ... and it is this much made of the same stuff (0..1).
inline constexpr double of_the_same_stuff = 0.60;
/// A recipe that bears the name belongs unless it scores less than this part of the best: then it is a namesake.
inline constexpr double namesake = 0.45;

/// What is asked of a choice.
struct Wanted {
  std::size_t limit = 50;       ///< at most so many
  bool by_name_only = false;    ///< leave out what is alike under another name
};

/// A recipe that was considered.
struct Considered {
  std::string id;
  std::string title;
  int year = 0;  ///< 0 where unknown
  double score = 0;
  bool named = false;  ///< bears the name
};

/// The recipes for a comparison and how they came to be chosen.
struct Choice {
  std::vector<Considered> taken;     ///< best first
  std::vector<Considered> left_out;  ///< the next best, at most `most_left_out`
  std::vector<std::string> words;    ///< sentences: how chosen, what was left out
};

inline constexpr std::size_t most_left_out = 12;

/// Recipes of the dish that `words` name. A recipe bears the name where each word of it stands in its title or names
/// what it is made of or the kind that it is, in any spelling that the lexicon holds for one, and its title names no
/// other kind of dish. Nothing taken where nothing is found. Faults: as find().
Outcome<Choice> chosen_by_dish(const Shelf& shelf, const Lexicon& lexicon, const std::string& words,
                               const Filter& filter = {}, const Wanted& wanted = {},
                               const Ranking& ranking = built_in_ranking());

/// The recipe `id` and its variants: those that bear the name of its dish or are made as it is. Faults: no such id
/// (nearest named).
Outcome<Choice> chosen_by_recipe(const Shelf& shelf, const Lexicon& lexicon, const std::string& id,
                                 const Filter& filter = {}, const Wanted& wanted = {},
                                 const Ranking& ranking = built_in_ranking());

}  // namespace gallipot
