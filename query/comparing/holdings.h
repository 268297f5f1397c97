// What does one recipe have of each stuff? Mentions of one stuff summed; "to each quart of juice" and "half as much"
// kept as ties to the stuff that they are told by, so that a proportion can be had where no amount is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "query/comparing/yardstick.h"

namespace gallipot {

/// So much (`part`) of one holding for so much (`whole`) of another.
struct Tie {
  std::size_t to = 0;  ///< place in the row of holdings
  Amount part, whole;  ///< whole.low is over nought
  std::string how;     ///< "per quart of juice", "half the weight of the fruit"
};

struct Holding {
  std::string name;                   ///< the stuff under which it is compared
  std::string kind;                   ///< of the foodstuff, from the lexicon
  std::vector<std::size_t> mentions;  ///< places in ComparableRecipe::ingredients; empty for a stuff that only others
                                      ///< are told by ("to each quart of liquor") and that the recipe does not list
  std::optional<Amount> amount;       ///< in SI, as printed
  std::optional<Tie> tie;
  std::string how;    ///< how `amount` was told, where it was told through another; may be empty
  bool more = false;  ///< a further mention names no amount
  bool optional = false;
  std::string alternative_of;
};

/// What all recipes of a comparison are made of, where most agree: "raspberry", a fruit. General words of one of them
/// ("the berries", "the fruit") mean it. Empty where nothing is agreed.
struct Subject {
  std::string stuff;
  std::string kind;
};

/// The holdings of a recipe, in order of first mention, then what others are told by. The dish itself, named without an
/// amount ("serve the mead"), is none of them.
std::vector<Holding> holdings_of(const ComparableRecipe& recipe, const Yardstick& yardstick,
                                 const Subject& subject = {});

/// The place of the stuff `name`; nothing where there is none.
std::optional<std::size_t> place_of(const std::vector<Holding>& holdings, const std::string& name);

/// How much of `holding` there is for `per` (in `unit`) of `basis`; nothing where it cannot be told. A tie to the basis
/// is used before totals, since it is surer: the basis' own width does not enter.
std::optional<Amount> against(const std::vector<Holding>& holdings, std::size_t holding, std::size_t basis, double per,
                              Amount::Unit unit);

/// The absolute amount of a holding: its own, or through its tie; nothing where it cannot be told.
std::optional<Amount> total_of(const std::vector<Holding>& holdings, std::size_t holding);

}  // namespace gallipot
