// What does a recipe's title call the dish, and which recipes are of that name?
#pragma once

#include <string>
#include <string_view>

#include "indexer/lexicon/lexicon.h"
#include "indexer/normalizing/comparable.h"
#include "query/finding/sketch.h"

namespace gallipot {

/// The title in plain lower-case words: without "to make", "a" and "another way", without a number after it ("No. 2"),
/// without what stands in brackets. "To make CATCHUP of DAMSONS" -> "catchup of damsons". That of the dish meant for
/// "Another way".
std::string plain_title(const Recipe& recipe);

/// The key under which recipes of one dish come together by name. It depends on the recipe alone, so that a book more
/// on the shelf parts none that stood together.
///   base and kind, where the title names the base:      "walnut|catsup"
///   kind and the title's other words, where it does not: "|cake|delicate"  (the base is then only its chief stuff)
///   the title's words, where it names no kind:           "|beef brisket"
/// Empty where the title says nothing.
std::string dish_key(const ComparableRecipe& recipe, const Lexicon& lexicon, Telling& telling);

}  // namespace gallipot
