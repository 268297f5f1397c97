// The weights by which likeness is weighed: data, not code, so that they can be tuned and laid over.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// What each sign of likeness is worth. Every field is a row of ranking.tsv, which also holds its value.
struct Ranking {
  // Candidates: weights of the parts of the Xapian query.
  double query_title = 0, query_base = 0, query_kind = 0, query_family = 0, query_stuff = 0, query_words = 0;
  double query_feedback = 0;  ///< of terms won from the best of the first round
  // Parts of the likeness; they are divided by their sum.
  double name = 0, stuff = 0, method = 0, words = 0;
  // Inside the name; likewise.
  double name_words = 0, name_base = 0, name_kind = 0, name_family = 0;
  double stuff_main = 0;        ///< how many times more the chief stuff counts than another
  double feedback_recipes = 0;  ///< how many of the first round speak for the dish
  double feedback_share = 0;    ///< which share of the second round's profile they make up, 0..1
  double candidates = 0;        ///< how many are weighed

  /// Sets a field by name; false where there is no such field.
  bool set(std::string_view field, double value);

  /// Every field with its name.
  static const std::vector<std::pair<std::string_view, double Ranking::*>>& fields();
};

/// The built-in weights with those of `overlay_folder`/ranking.tsv over them. Faults name the file and line.
Outcome<Ranking> load_ranking(const std::string& overlay_folder = {});

/// The built-in weights, loaded once. They are part of the program, and a test walks them.
const Ranking& built_in_ranking();

}  // namespace gallipot
