// What could the printer have meant by a word that is not known? Internal to the room.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/mending/book_words.h"
#include "indexer/mending/confusions.h"
#include "indexer/mending/good_words.h"

namespace gallipot {

/// A known word that the copy's may stand for, and the damage that it takes.
struct Meaning {
  std::string word;
  double occurrences = 0;                     ///< expected in a book like this one
  double share = 1;                           ///< product of the confusions' shares
  std::array<std::uint8_t, damages> times{};  ///< of each kind of damage
};

/// How far to look. Every step more costs some twenty times the time.
struct Reach {
  unsigned steps = 1;  ///< damages to one word, long s not counted
  bool wild = false;   ///< a letter taken for any other, lost, or put in
};

/// Finds meanings in one book. Remembers nothing between words.
class Meanings {
 public:
  /// `trusted` tells of the book's words which may be meant although no table knows them.
  Meanings(const Confusions& confusions, const GoodWords& good, const BookWords& book, const std::vector<bool>& trusted)
      : confusions_(confusions), good_(good), book_(book), trusted_(trusted) {}

  /// All meanings of a word within reach, in no order; at most a few dozen.
  std::vector<Meaning> of(std::string_view word, Reach reach);

 private:
  struct Path {
    std::string built;
    std::uint32_t hash = hash_start;
    double share = 1;
    std::array<std::uint8_t, damages> times{};
    unsigned steps = 0;
    unsigned long_s = 0;
  };
  void walk(std::string_view word, std::size_t at, Path& path, Reach reach);
  void take(std::string_view rest, const Path& path);
  void wild(std::string_view word);

  const Confusions& confusions_;
  const GoodWords& good_;
  const BookWords& book_;
  const std::vector<bool>& trusted_;
  std::vector<Meaning> found_;
  std::uint32_t tries_ = 0;  ///< readings of the word that were looked up
  std::string whole_;
};

}  // namespace gallipot
