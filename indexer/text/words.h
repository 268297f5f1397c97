// A text as a row of words, numbers and points, each with its span and a plain lower-case key. The one tokenizer of the
// house: parsing, the lexicon and the search terms all see print through it.
#pragma once

#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/text/span.h"

namespace gallipot {

struct Word {
  enum class Kind : unsigned char {
    word,    ///< letters, inner apostrophes kept ("calf's"); hyphenated words are several words with `glued` set
    number,  ///< digits with inner points or commas ("1,000", "2.5"); a vulgar fraction character is a number too
    point,   ///< one character of punctuation; a dash of any length ("--", "—") is one point with key "--"
  };
  Span span;             ///< in the text given to `words`
  std::string_view key;  ///< to_plain() of the printed form; "1/2"-like fraction characters spelt out ("½" -> "1/2")
  Kind kind = Kind::word;
  bool glued = false;         ///< no space between this and the word before ("rose-water": "-" and "water" are glued)
  bool capital = false;       ///< printed with a capital first letter
  bool all_capitals = false;  ///< two letters or more, all of them capitals
};

/// The words of one text. Owns the keys; `text` itself must outlive it. Movable, not copyable (keys are views).
class Words {
 public:
  Words() = default;
  explicit Words(std::string_view text);
  Words(Words&&) = default;
  Words& operator=(Words&&) = default;
  Words(const Words&) = delete;
  Words& operator=(const Words&) = delete;

  const std::vector<Word>& all() const { return words_; }
  std::size_t size() const { return words_.size(); }
  const Word& operator[](std::size_t i) const { return words_[i]; }
  std::string_view text() const { return text_; }

 private:
  std::string_view text_;
  std::vector<Word> words_;
  std::deque<std::string> keys_;  ///< keys that differ from the printed bytes; a deque keeps views valid
};

/// Plain English singular of a lower-case word ("potatoes" -> "potato", "loaves" -> "loaf", "cherries" -> "cherry");
/// words that only look plural ("molasses", "asparagus", "couscous") stay. From memory: ordinary English spelling
/// rules.
std::string singular(std::string_view key);

}  // namespace gallipot
