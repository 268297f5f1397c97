// Which words are good as they stand, and how common are they in cookery books? Internal to the room.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"

namespace gallipot {

/// FNV-1a, 32 bits, one letter at a time (Fowler, Noll and Vo).
inline constexpr std::uint32_t hash_start = 0x811C9DC5u;
inline constexpr std::uint32_t hash_on(std::uint32_t hash, char c) {
  return (hash ^ static_cast<unsigned char>(c)) * 0x01000193u;
}
inline std::uint32_t hash_of_word(std::string_view word) {
  std::uint32_t hash = hash_start;
  for (const char c : word) hash = hash_on(hash, c);
  return hash;
}

/// Words of the table "known-words" and of the lexicon, in lower case. Immutable once made; thread-safe.
class GoodWords {
 public:
  /// Faults name the table's file and line.
  static Outcome<GoodWords> load(const Lexicon& lexicon);

  /// How often the word stands among all words of a cookery book, 0..1; 0 where it is not known. Inflections of known
  /// words ("curdles", "curdling") are known, and rare.
  double share(std::string_view word) const;
  /// The same for words that are spelt out only; `hash` is hash_of_word(word).
  double share_spelt(std::string_view word, std::uint32_t hash) const;

 private:
  struct Slot {
    std::uint32_t hash = 0;
    std::uint32_t offset = 0;
    std::uint16_t length = 0;
    float share = 0;
  };
  void enter(std::string_view word, float share);
  void grow();

  std::vector<Slot> slots_;
  std::vector<std::uint64_t> sieve_;  ///< a bit for each hash: most words asked for are not here
  std::string letters_;
  std::size_t count_ = 0;
};

}  // namespace gallipot
