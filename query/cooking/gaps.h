// What does this recipe leave out that its siblings say? Told with count and place; nothing is borrowed where they
// disagree.
#pragma once

#include <vector>

#include "query/comparing/compare.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/plan.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// A recipe is asked for gaps only where at least so many siblings speak on a question, and no fewer than half of all.
inline constexpr std::size_t fewest_speakers = 3;
/// Siblings agree where so large a share of those who speak say the same.
inline constexpr double agreement = 0.75;
/// Times agree where the upper quartile is at most so many times the lower.
inline constexpr double same_time = 3;

struct Gaps {
  std::vector<Gap> gaps;
  std::vector<BorrowedTime> times;
};

/// Every question of the table put to the recipe, and where it is silent to its siblings (by their places in the row).
Gaps gaps_of(const ComparableRecipe& recipe, const std::vector<ComparableRecipe>& siblings, const Kitchen& kitchen,
             const Yardstick& yardstick);

/// What siblings use of the stuffs of which the recipe names no amount, brought to the recipe's own basis; set in
/// `lines`, for the printed batch. Needs three siblings that say.
void ask_siblings_for_amounts(const ComparableRecipe& recipe, const Book& book,
                              const std::vector<ComparableRecipe>& siblings, const std::vector<Book>& sibling_books,
                              const Yardstick& yardstick, std::vector<SheetLine>& lines);

}  // namespace gallipot
