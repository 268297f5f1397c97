// Finds phrases of a table in a row of words, longest first. Knows nothing of what the phrases mean.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/text/words.h"

namespace gallipot {

/// A set of phrases, each with a number of the owner's. Matching takes words by their singular and ignores hyphens, so
/// that "rose-water", "rose water" and "rosewater" are one phrase. Immutable once filled; then thread-safe.
class Phrases {
 public:
  struct Match {
    std::uint32_t value = 0;  ///< the owner's number
    std::uint32_t words = 0;  ///< how many Words of the row it covers, hyphens included
  };

  /// Adds a phrase. A phrase already there keeps its first value; returns whether it was new.
  bool add(std::string_view phrase, std::uint32_t value);

  /// The longest phrase that begins at words[at]; `words == 0` in the answer where there is none.
  Match longest(const std::vector<Word>& words, std::size_t at) const;

  /// The value of a phrase given as text; nothing matched unless it covers the whole text.
  bool find(std::string_view phrase, std::uint32_t& value) const;

  std::size_t size() const { return count_; }

 private:
  struct Hash {
    std::size_t operator()(std::uint64_t k) const { return static_cast<std::size_t>(k * 0x9E3779B97F4A7C15ULL >> 7); }
  };
  struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  std::uint32_t word_id(std::string_view key) const;

  std::unordered_map<std::string, std::uint32_t, KeyHash, std::equal_to<>> ids_;  ///< word (and its plural) -> id
  std::unordered_map<std::uint64_t, std::uint32_t, Hash> next_;                   ///< node << 32 | word id -> node
  std::vector<std::uint32_t> value_of_;  ///< node -> value + 1; 0 where no phrase ends
  std::size_t count_ = 0;
};

}  // namespace gallipot
