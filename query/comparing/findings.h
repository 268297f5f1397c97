// What does a comparison say, in sentences? The weightiest first; then what could not be done, and why.
#pragma once

#include <string>
#include <vector>

#include "query/comparing/compare.h"

namespace gallipot {

/// Marks cells that are out of line with the others of their row and says how far in Row::note. An amount is out of
/// line where, among five or more amounts in one unit, its modified z-score on logarithms is beyond 3.5 (Iglewicz and
/// Hoaglin 1993), its range meets none of the others', and it is at least twice or at most half their median (the last
/// is ours: a cook does not mind less).
void mark_out_of_line(const Comparison& comparison, Row& row);

/// Sentences on a comparison whose rows and steps are filled in. `yardstick` tells which operations come to the same.
std::vector<std::string> findings(const Comparison& comparison, const Yardstick& yardstick);

/// Those on methods: "All but two boil it (not A and B); those that do not are the oldest."
std::vector<std::string> findings_on_methods(const Comparison& comparison, const Yardstick& yardstick);

/// Those on ingredients: what all have, and what divides them: "Vinegar: 6 with, 5 without."
std::vector<std::string> findings_on_stuffs(const Comparison& comparison);

/// Things that split the witnesses as something else does - the years, the country, the kind of dish it is called,
/// another thing - more nearly than chance explains. Ingredients and operations are tried that two or more have and two
/// or more have not, against at most five years, and the twelve that divide most evenly against one another (chosen by
/// their counts alone); the chance of each is exact, and all tried are allowed for (see tests_that_count). Surest
/// first, one of a kind for each thing, at most five.
std::vector<Contrast> contrasts_of(const Comparison& comparison);
inline constexpr std::size_t most_contrasts = 5;

/// Ingredients whose amount by the basis rises or falls with the years, more than chance explains when all that ten or
/// more dated witnesses measure are allowed for (p times their number). At most five.
std::vector<Trend> trends_of(const Comparison& comparison);
inline constexpr std::size_t fewest_for_trends = 10;

/// What each witness lacks that most have, and what it alone has and does; those that tell no method lack no step.
std::vector<Apart> apart_of(const Comparison& comparison, const Yardstick& yardstick);
inline constexpr std::size_t fewest_for_apart = 4;  ///< witnesses

/// At most so many sentences on one matter.
inline constexpr std::size_t sentences_a_matter = 4;

}  // namespace gallipot
