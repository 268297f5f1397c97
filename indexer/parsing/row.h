// The words of a recipe as the grammar sees them: each with its roles and the phrases of the lexicon that begin there.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/parsing/grammar.h"
#include "indexer/segmenting/recipe.h"
#include "indexer/text/words.h"

namespace gallipot::parsing {

inline constexpr std::uint32_t kNone = 0xFFFFFFFFu;

/// Half-open range of word indices.
struct Extent {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  bool empty() const { return begin >= end; }
  bool holds(std::uint32_t i) const { return begin <= i && i < end; }
};

struct Tag {
  std::uint32_t roles = 0;
  double value = 0;
  std::string_view part;
  std::uint32_t food = kNone;  ///< index in Lexicon::foodstuffs() of the longest phrase that begins here
  std::uint32_t food_words = 0;
  std::uint32_t measure = kNone;  ///< index in Lexicon::measures()
  std::uint32_t measure_words = 0;
  std::uint32_t operation = kNone;  ///< index in Lexicon::operations()
  std::uint32_t clause = 0;    ///< index of the first word of its clause (parted by points and by "and then" words)
  std::uint32_t sentence = 0;  ///< number of the sentence
  std::uint16_t line = 0;      ///< number of the part of the recipe (Recipe::parts)
};

/// One recipe's words, tagged. Views into the recipe, its words and the lexicon, which must outlive it.
struct Row {
  const Recipe* recipe = nullptr;
  const Lexicon* lexicon = nullptr;
  const std::vector<Word>* words = nullptr;
  std::vector<Tag> tags;
  std::vector<bool> listed;  ///< per part: an item of an ingredient list

  std::uint32_t size() const { return static_cast<std::uint32_t>(tags.size()); }
  const Word& word(std::uint32_t i) const { return (*words)[i]; }
  std::string_view key(std::uint32_t i) const { return i < tags.size() ? (*words)[i].key : std::string_view{}; }
  bool is(std::uint32_t i, std::uint32_t roles) const { return i < tags.size() && (tags[i].roles & roles) != 0; }
  bool point(std::uint32_t i) const { return i < tags.size() && (*words)[i].kind == Word::Kind::point; }
  /// A hyphen between two parts of one word.
  bool hyphen(std::uint32_t i) const {
    return point(i) && (*words)[i].key == "-" && (*words)[i].glued && i + 1 < tags.size() && (*words)[i + 1].glued;
  }
  const Foodstuff* food(std::uint32_t i) const {
    return tags[i].food == kNone ? nullptr : &lexicon->foodstuffs()[tags[i].food];
  }
  const MeasureWord* measure(std::uint32_t i) const {
    return tags[i].measure == kNone ? nullptr : &lexicon->measures()[tags[i].measure];
  }
  Span span(Extent e) const { return e.empty() ? Span{} : Span{word(e.begin).span.begin, word(e.end - 1).span.end}; }
  std::string_view printed(Extent e) const { return span(e).in(recipe->text); }
};

Row tag(const Recipe& recipe, const Words& words, const Lexicon& lexicon);

}  // namespace gallipot::parsing
