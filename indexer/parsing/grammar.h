// The closed classes of English words that the grammar of amounts stands on: numbers, articles, prepositions and the
// like. They are data (data/grammar-words.tsv); this is how the grammar asks for them.
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot::parsing {

/// What a word can be. A word may be several at once ("quarter", "little").
enum Role : std::uint32_t {
  number = 1,      ///< "seven"; value is the number
  multiplier = 2,  ///< "dozen", "hundred"; value is the factor
  fraction = 4,    ///< "half", "thirds"; value is the fraction
  article = 8,     ///< "a"
  definite = 16,   ///< "the", "your"
  each = 32,       ///< "each", "every", "per"
  vague = 64,      ///< "some", "few": a quantity without a number
  little = 128,    ///< "little": a quantity without a number after an article, else an adjective
  about = 256,     ///< "nearly": bends a number that follows and changes nothing
  bend = 512,      ///< "heaped", "large": bends a measure
  preposition = 1024,
  conjunction = 2048,  ///< "and", "while", "which"
  or_word = 4096,
  pronoun = 8192,
  auxiliary = 16384,  ///< "is", "must"
  of_word = 32768,
  part = 65536,  ///< "juice", "yolks": a part of the thing named next; text is the part's plain name
};

struct GrammarWord {
  std::uint32_t roles = 0;
  double value = 0;       ///< of a number, multiplier or fraction
  std::string_view part;  ///< plain name of the part: "peel" for "rind"
};

/// Roles of a plain lower-case word; no roles where the table does not know it.
const GrammarWord& grammar_word(std::string_view key);

}  // namespace gallipot::parsing
