// All that was read of a recipe's stuff before it is decided what of it are ingredients. For the trainer of the model.
#pragma once

#include <vector>

#include "indexer/parsing/mentions.h"
#include "indexer/parsing/relations.h"

namespace gallipot::parsing {

struct Mentioned {
  Row row;
  std::vector<Mention> mentions;
  std::vector<bool> variant;  ///< per word: in a variant told after the recipe proper
};

/// Views into `recipe`, `words` and `lexicon`, which must outlive the answer.
Mentioned read_mentions(const Recipe& recipe, const Words& words, const Lexicon& lexicon);

}  // namespace gallipot::parsing
