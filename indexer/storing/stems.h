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

/// A word is stemmed as it is spelt (Snowball English) and, where the lexicon has another spelling of one word for it
/// ("catchup" -> "catsup", "eschalot" -> "shallot"), stemmed in that too: it is found by either. Numbers and the little
/// words of `common_words.tsv` have no stem.
/// Remembers every word that it has met: keep one a thread. The lexicon must outlive it.
class Stems {
 public:
  explicit Stems(const Lexicon& lexicon);

  /// Numbers that stand for stems until `forget` is called; `none` where the word has no stem, or no second one.
  static constexpr std::uint32_t none = 0;
  struct Numbers {
    std::uint32_t printed = none;  ///< as it is spelt
    std::uint32_t lexicon = none;  ///< as the lexicon spells it, where that is another stem
    std::uint32_t plain = none;    ///< in modern spelling: one, however printed; none for a number in words
  };
  /// `key` is a Word's key.
  Numbers numbers_of(std::string_view key);
  /// The stem, without a prefix, of a number.
  const std::string& stem(std::uint32_t number) const { return stems_[number]; }

  /// A hash of the stem of a number: the same in every process and on every machine (FNV-1a).
  std::uint64_t mark(std::uint32_t number) const { return marks_[number]; }

  /// Numbers of the stems of a text, in order, appended to `out`. Where `marks` is given the mark of each word that has
  /// a `plain` one is appended to it.
  void append_numbers(std::string_view text, std::vector<std::uint32_t>& out,
                      std::vector<std::uint64_t>* marks = nullptr);
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
  Numbers meet(std::string_view key);
  std::uint32_t plain_of(std::string_view key);
  std::uint32_t number_of_stem_of(std::string_view word);
  std::string_view lexicon_spelling(std::string_view key) const;

  const Lexicon& lexicon_;
  Xapian::Stem snowball_{"en"};
  std::unordered_map<std::string, Numbers, Hash, std::equal_to<>> numbers_;             ///< word -> its numbers
  std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> stem_numbers_;  ///< stem -> number
  std::vector<std::string> stems_;                                                      ///< number -> stem
  std::vector<std::uint64_t> marks_;                                                    ///< number -> hash of the stem
};

}  // namespace gallipot
