// Is a stretch of prose one that cooks or one that talks? Counted in words, so that stretches can be added up.
#pragma once

#include <cstdint>

#include "indexer/segmenting/vocabulary.h"
#include "indexer/text/words.h"

namespace gallipot {

/// What was counted in a stretch of prose.
struct ProseCount {
  std::uint32_t words = 0;  ///< words and numbers
  std::uint32_t food = 0;
  std::uint32_t operations = 0;
  std::uint32_t begins = 0;   ///< kitchen verbs at the head of a clause
  std::uint32_t amounts = 0;  ///< a number with a measure after it
  std::uint32_t numbers = 0;
  std::uint32_t times = 0;
  std::uint32_t talk = 0;
  std::uint32_t direct = 0;

  ProseCount& operator+=(const ProseCount& o);
  /// Log-odds that it is directions or a list of ingredients; 0 where nothing was counted.
  double log_odds() const;
};

/// Counts words[from, to).
ProseCount count_prose(const Words& words, std::size_t from, std::size_t to, Vocabulary& vocabulary);

}  // namespace gallipot
