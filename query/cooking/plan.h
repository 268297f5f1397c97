// When is what done? The steps as a dated plan: times of the print, of siblings or usual ones; waits and work apart;
// chores that come round while something stands.
#pragma once

#include <optional>
#include <vector>

#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// A time borrowed from siblings for a step of the recipe.
struct BorrowedTime {
  std::size_t step = 0;  ///< place in ComparableRecipe::steps
  Range minutes;
};

struct PlanAsked {
  std::optional<LocalMinutes> start;  ///< none: counted from day 1, 09:00, and not dated
  std::vector<BorrowedTime> borrowed;
  double kilograms = 1;  ///< of what is washed, peeled and cut at this batch
};

/// Hours in which a cook is asked to do anything after a long wait: a step that would fall into the night waits until
/// the morning. Minutes after midnight.
inline constexpr int kitchen_opens = 7 * 60, kitchen_closes = 22 * 60, morning = 8 * 60;

/// A wait of so many minutes parts one session from the next.
inline constexpr double parting_wait = 120;

Plan plan_of(const ComparableRecipe& recipe, const Kitchen& kitchen, const PlanAsked& asked);

}  // namespace gallipot
