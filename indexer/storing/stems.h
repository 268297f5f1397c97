// From a printed word to the stem under which the index keeps it. Indexing and searching take this one road.
#pragma once

#include <xapian.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/lexicon/lexicon.h"

namespace gallipot {

/// A word is brought to the lexicon's spelling where that is one word too ("catchup" -> "catsup", "eschalot" ->
/// "shallot"), then stemmed (Snowball English). Numbers and the little words of `common_words.tsv` have no stem.
/// Remembers every word that it has met: keep one a thread. The lexicon must outlive it.
class Stems {
 public:
  explicit Stems(const Lexicon& lexicon);

  /// A number that stands for a stem until `forget` is called; `none` where the word has no stem.
  /// `key` is a Word's key.
  static constexpr std::uint32_t none = 0;
  std::uint32_t number_of(std::string_view key);
  /// The stem, without a prefix, of a number.
  const std::string& stem(std::uint32_t number) const { return stems_[number]; }

  /// Numbers of the stems of a text, in order, appended to `out`.
  void append_numbers(std::string_view text, std::vector<std::uint32_t>& out);
  /// The stems of a text, in order.
  std::vector<std::string> of(std::string_view text);

  /// Words remembered; a shelf full of misread letters has no end of them, so that one must be able to `forget`.
  std::size_t remembered() const { return numbers_.size(); }
  void forget();

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  std::uint32_t meet(std::string_view key);
  std::string_view lexicon_spelling(std::string_view key) const;

  const Lexicon& lexicon_;
  Xapian::Stem snowball_{"en"};
  std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> numbers_;       ///< word -> number
  std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> stem_numbers_;  ///< stem -> number
  std::vector<std::string> stems_;                                                      ///< number -> stem
};

}  // namespace gallipot
