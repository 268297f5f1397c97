// Is a mention an ingredient of the recipe, or only a second mention, a dish, a vessel? A linear model decides, with
// weights learnt from annotated recipes (data/mention-weights.tsv, made by tools/train_mentions.cc).
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/parsing/mentions.h"

namespace gallipot::parsing {

/// What the model looks at besides the mention itself.
struct Circumstances {
  const Row* row = nullptr;
  const std::vector<Mention>* mentions = nullptr;
  const std::vector<bool>* variant = nullptr;  ///< per word: in a variant told after the recipe proper
  std::vector<std::string_view> title;         ///< modern names of stuff in the title, and their bases
  bool has_list = false;                       ///< the recipe has a list of ingredients
  struct Sentence {
    std::uint32_t imperatives = 0;  ///< verbs of the kitchen that order something done
    std::uint32_t auxiliaries = 0;  ///< "is", "should": it rather tells than orders
  };
  std::vector<Sentence> sentences;
  std::vector<char> listing;   ///< per sentence: it lists stuff ("One cup of sugar, two eggs, ...")
  std::uint32_t measured = 0;  ///< mentions with a number and a measure
  std::vector<char> accepted;  ///< decisions so far, one a mention
};

Circumstances circumstances(const Row& row, const std::vector<Mention>& mentions, const std::vector<bool>& variant);

/// Names of the features of mention `at`, given the decisions on those before it. A feature is a name with its values
/// ("before=with"); its weight is 0 where the model does not know it.
void name_features(const Circumstances& c, std::uint32_t at, std::vector<std::string>& out);

/// Log-odds that mention `at` is an ingredient.
double score(const Circumstances& c, std::uint32_t at);

/// Decides all mentions from left to right; 1 for an ingredient. `scores` receives the log-odds.
std::vector<char> decide(const Circumstances& c, std::vector<double>& scores);

}  // namespace gallipot::parsing
