// How large a batch? What the cook asks for - a scale, a yield, what is in the basket - made into one factor.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "query/comparing/holdings.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// What the cook asks for; at most one of scale, yield and have.
struct Wanted {
  std::optional<double> scale;
  std::string yield;          ///< "1l", "500 g"; empty where none is asked for
  std::string have;           ///< "6 lemons", "2 kg plums"; empty likewise
  std::string start;          ///< see read_start; empty: the plan counts from day 1 without dates
  std::size_t siblings = 12;  ///< at most so many are asked for gaps
};

inline constexpr double least_scale = 0.01, greatest_scale = 200;

/// Faults: not a number over nought, or beyond least_scale to greatest_scale.
Outcome<double> checked_scale(double scale);

/// A yield asked for. Faults: no figure, nought or less, a unit that is not of weight or volume.
struct WantedYield {
  double value = 0;  ///< in `unit`
  Amount::Unit unit = Amount::Unit::millilitre;
};
Outcome<WantedYield> read_yield(std::string_view text);

/// What is in the basket, read as the lexicon reads an ingredient.
struct Basket {
  std::string name;  ///< canonical
  Range quantity;
  std::string measure, note;
};
Outcome<Basket> read_basket(const std::string& text, const Lexicon& lexicon);

/// Where the print tells every amount by another stuff ("to each pound of fruit") whose own amount it does not name:
/// the place in `holdings` of that stuff. Nothing where an amount stands on its own.
std::optional<std::size_t> untold_basis(const std::vector<Holding>& holdings);

/// The factor that brings the recipe to the basket. Sets the amount of a basis that has none. Faults: the recipe has no
/// such stuff (those it has are named), or its amount cannot be told.
Outcome<Batch> batch_for(const Basket& basket, const ComparableRecipe& recipe, std::vector<Holding>& holdings,
                         const Yardstick& yardstick);

}  // namespace gallipot
