// How much does it make? What goes in, less what is trimmed, strained off and boiled away; a range with its reasons.
#pragma once

#include <vector>

#include "query/comparing/yardstick.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// The sum of what goes in, in grams; `missing` gets the stuffs of some bulk whose amount is not known. `base` is the
/// dish's own. A small part without an amount widens the sum.
std::optional<Amount> goes_in(const std::vector<SheetLine>& lines, const std::string& base, const Yardstick& yardstick,
                              std::vector<std::string>& missing);

/// The room that what goes in takes in the pot, in millilitres; nothing where no amount is known.
std::optional<Amount> room_for(const std::vector<SheetLine>& lines, const Yardstick& yardstick);

/// `covered`: the siblings or the print say that the pot is covered.
Made made_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Plan& plan, bool covered,
             const Kitchen& kitchen, const Yardstick& yardstick);

/// Whether a line counts towards the batch: it is not optional and stands for no other.
bool counts(const SheetLine& line);

/// The amount of a line, or what siblings use where the print gives none.
std::optional<Amount> amount_or_siblings(const SheetLine& line);

/// Whether so much of a kind of stuff is used that a batch cannot be told without it.
bool is_bulk(const SheetLine& line);

}  // namespace gallipot
