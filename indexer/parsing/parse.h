// What does a recipe ask for and do? Reads the words of one recipe; the rooms below do ingredients and steps.
#pragma once

#include "indexer/lexicon/lexicon.h"
#include "indexer/parsing/parsed.h"
#include "indexer/segmenting/recipe.h"
#include "indexer/text/words.h"

namespace gallipot {

/// Reads ingredients and steps of a recipe. Spans point into recipe.text. Never faults. Thread-safe.
ParsedRecipe parse(const Recipe& recipe, const Lexicon& lexicon);

/// Ingredients alone. `words` are those of recipe.text.
std::vector<Ingredient> parse_ingredients(const Recipe& recipe, const Words& words, const Lexicon& lexicon);

/// Steps alone: operations in order, with durations in minutes. `words` are those of recipe.text.
std::vector<Step> parse_steps(const Recipe& recipe, const Words& words, const Lexicon& lexicon);

}  // namespace gallipot
