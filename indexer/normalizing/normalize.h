// How does a parsed recipe become comparable with others? Dish name, canonical stuff, amounts in SI.
#pragma once

#include <string_view>

#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/register.h"
#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// The dish that a title names, read with the lexicon: "To make Catsup of Walnuts" -> {walnut, catsup}. Falls back on
/// `chapter` for the kind ("Another way" under PICKLES) and on `main` (the name of the chief ingredient) for the base.
Dish dish_of(std::string_view title, std::string_view chapter, std::string_view main, const Lexicon& lexicon);

/// The recipe made comparable, but for its metric amounts. `book_order` is the book's place on the shelf.
ComparableRecipe normalize(Recipe recipe, ParsedRecipe parsed, const Book& book, std::uint32_t book_order,
                           const Lexicon& lexicon);

/// Fills in the metric amounts, as the register reads them now. They are no part of an index: statements of books that
/// are indexed later, and decisions of the cook, change them. Cautions that hang on an amount are added with them.
void weigh(ComparableRecipe& recipe, const Register& measures);

/// "tyree-1878/0412".
std::string recipe_id(std::string_view book, std::uint32_t ordinal);

}  // namespace gallipot
