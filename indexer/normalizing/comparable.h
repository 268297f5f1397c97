// A recipe made comparable: canonical names, metric amounts, the dish that it is, beside its own words and places.
// This is what is stored, and all that query/ ever sees of a recipe.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/measures/amount.h"
#include "indexer/parsing/parsed.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// What a recipe makes: "walnut" "catsup". Either may be empty.
struct Dish {
  std::string
      base;  ///< canonical foodstuff or style that the title names first ("walnut", "corn meal" for Indian meal)
  std::string kind;  ///< canonical kind of dish ("catsup", "pudding"); spelling variants are one
};

struct ComparableIngredient {
  Ingredient printed;            ///< as parsed
  std::string kind;              ///< of the foodstuff, from the lexicon
  std::optional<Amount> metric;  ///< none where no number can honestly be given
};

struct ComparableRecipe {
  std::string id;  ///< "tyree-1878/0412": book id, '/', ordinal of at least four digits
  std::string book;
  std::uint32_t book_order = 0;  ///< place of the book on the shelf, 0-based
  int year = 0;                  ///< of the edition; 0 where unknown
  std::string country;
  std::string file;  ///< as the shelf list names it
  Recipe recipe;
  Dish dish;
  std::vector<ComparableIngredient> ingredients;
  std::vector<Step> steps;
  std::vector<std::string> cautions;
};

}  // namespace gallipot
