// A text as a row of plain words, each with what it tells, so that texts of different printers can be set side by side.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "indexer/storing/stems.h"
#include "indexer/text/span.h"

namespace gallipot {

/// The words of a text without its points. Two words have the same number where they are one word however spelt:
/// "shalots" and "eschalot", "two" and "2", "half" and "1/2", "table-spoonful" and "tablespoon".
struct WordRow {
  enum class Sort : unsigned char { word, little, number, measure, time };
  std::vector<std::uint32_t> words;
  std::vector<float> tells;  ///< how rare the word is on the shelf, in natural logarithms; see WordRows
  std::vector<Sort> sorts;
  std::vector<Span> spans;                ///< in the text
  std::vector<std::uint64_t> marks;       ///< of the words that make shingles; see shingles.h
  std::vector<std::uint32_t> mark_words;  ///< for each mark the word that it stands in
  double tells_all = 0;                   ///< sum of `tells`

  std::size_t size() const { return words.size(); }
};

/// Makes rows whose numbers can be set against one another. Keep one for all rows of an answer.
///
/// A word tells log((n + 1000) / (df + 4)), n being the recipes of the shelf and df those with its stem: a rarity as in
/// Robertson and Spärck Jones (1976), smoothed as though a thousand recipes more stood on every shelf with the word in
/// four of them, so that on a shelf of three recipes a word of two is not thought common. Little words, numbers and
/// measures, of which the index keeps no count, tell a fixed small amount.
class WordRows {
 public:
  /// Both must outlive it.
  WordRows(const Shelf& shelf, const Lexicon& lexicon);

  WordRow of(std::string_view text);
  /// The stems of a text under which the index keeps it.
  std::vector<std::string> stems_of(std::string_view text) { return stems_.of(text); }

 private:
  struct Known {
    std::uint32_t number = 0;
    float tells = 0;
    WordRow::Sort sort = WordRow::Sort::word;
    std::uint64_t mark = 0;  ///< 0: makes no shingle
  };
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  const Known& meet(std::string_view key);
  Known judge(std::string_view key);
  std::uint32_t number_of(const std::string& plain);
  float rarity(const std::string& stem) const;
  static void append(WordRow& row, const Known& known, Span span);

  const Xapian::Database& database_;
  double documents_;
  const Lexicon& lexicon_;
  Stems stems_;
  std::unordered_map<std::string, Known, Hash, std::equal_to<>> known_;  ///< by key as printed
  std::unordered_map<std::string, std::uint32_t> numbers_;               ///< by plain form, with a letter for its sort
};

}  // namespace gallipot
