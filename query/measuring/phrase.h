// What do the words of a question say? Number, measure, the word that bends it, and the stuff, read as a recipe's are.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/register.h"
#include "indexer/text/range.h"

namespace gallipot {

/// One printed amount: "two heaped tablespoons".
struct SaidAmount {
  std::optional<Range> quantity;
  std::string measure;  ///< modern singular; empty for a plain count
  std::string size;     ///< "heaped", "small"; may be empty
};

struct Phrase {
  std::vector<SaidAmount> amounts;  ///< several where they add up: "3 lb. 2 oz."
  std::string of;                   ///< canonical stuff; empty where none is named
  std::string unknown;              ///< a word where a measure should stand, that no table knows; may be empty
  bool left_to_the_cook = false;    ///< "as much as will make it stiff", "to taste"
  bool scaled = false;              ///< a thing weighed whole: "the weight of four eggs"
};

/// Reads the words. `sizes`: the register's measures, among them those of size ("size of a walnut").
Phrase read_phrase(std::string_view words, const Lexicon& lexicon, const std::vector<std::string>& sizes);

/// The number with which the words begin as one of degrees: "20 under proof"; nothing where there is none.
std::optional<Range> number_in(std::string_view words, const Lexicon& lexicon);

/// The canonical name of a stuff as the cook says it ("onions", "grated ginger"); empty where nobody knows it.
std::string stuff_in(std::string_view words, const Lexicon& lexicon);

/// Whether any of the phrases stands in the words.
bool says_any(std::string_view words, std::initializer_list<const char*> phrases);

}  // namespace gallipot
