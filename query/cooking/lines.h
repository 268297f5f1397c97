// What goes in, and how much of it at this batch? One line for each ingredient, in the order of the print.
#pragma once

#include <vector>

#include "query/comparing/holdings.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// The lines at `factor` times the print. `holdings` are those of the recipe, with the basis' amount set where one was
/// taken.
std::vector<SheetLine> lines_of(const ComparableRecipe& recipe, const std::vector<Holding>& holdings, double factor,
                                const Yardstick& yardstick);

/// `line` at `factor` times its amount: amounts, what is measured out and the kitchen measure.
void scale_line(SheetLine& line, double factor, const Yardstick& yardstick);

}  // namespace gallipot
