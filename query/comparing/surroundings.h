// How much of a stuff do other recipes on the shelf have, whatever the dish? A sample of those that have it, the same
// for the same shelf each time.
#pragma once

#include <set>
#include <string>

#include "indexer/storing/shelf.h"
#include "query/comparing/compare.h"

namespace gallipot {

/// At most so many recipes are looked at for one stuff; fewer than `fewest_elsewhere` amounts tell nothing.
inline constexpr unsigned most_elsewhere = 48;
inline constexpr std::size_t fewest_elsewhere = 20;

/// Answers from `shelf`, leaving out the recipes `except` (those compared). What it read is remembered; it must not
/// outlive the shelf or the yardstick.
Surroundings surroundings_on(const Shelf& shelf, const Yardstick& yardstick, std::set<std::string> except);

}  // namespace gallipot
