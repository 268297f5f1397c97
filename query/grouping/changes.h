// What did the copyist change? The words of a witness against those of its source, one after another.
#pragma once

#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "query/grouping/word_row.h"

namespace gallipot {

/// A stretch of words of the source in whose place the witness has others. Either may be empty.
struct WordChange {
  enum class Kind : unsigned char {
    amount,  ///< a number, a measure or a time differs
    words,   ///< other words, or words put in or left out
    moved,   ///< the words stand elsewhere in the other text
  };
  Kind kind = Kind::words;
  Span was_at, is_at;                         ///< in the texts of the source and of the witness
  std::string was, is;                        ///< as printed
  std::string stuff;                          ///< of an amount: the ingredient that it is of; may be empty
  std::uint32_t was_word = 0, was_words = 0;  ///< place and number of the words in the source's row
  std::uint32_t is_word = 0, is_words = 0;    ///< and in the witness's
};

/// A recipe with its row of words, for `changes_between`.
struct PrintedText {
  const ComparableRecipe& recipe;
  const WordRow& row;
};

/// All changes, in the order of the source. What stands between two of them is word for word the same but for
/// spelling; so the changes applied to the source give the witness (see `applied`).
/// By the longest row of words that both have in the same order, weighed by what they tell (Needleman and Wunsch 1970
/// with nothing paid for gaps). Texts are read up to 4000 words.
std::vector<WordChange> changes_between(const PrintedText& source, const PrintedText& witness);

/// The row of the source with the changes made: numbers of words. For checking.
std::vector<std::uint32_t> applied(const std::vector<WordChange>& changes, const WordRow& source,
                                   const WordRow& witness);

/// The same changes, amounts first, then words, then what was moved; each group in the order of the source.
std::vector<WordChange> amounts_first(std::vector<WordChange> changes);

}  // namespace gallipot
