// Which stuff does a recipe name only to say that it is not wanted, or what the finished dish is eaten with?
#pragma once

#include <vector>

#include "indexer/parsing/mentions.h"

namespace gallipot::parsing {

/// Takes out "use no salt", "without any sugar"; "serve with roast mutton", "for fish" where no amount is told; and a
/// herb printed like a common word ("time") that no other herb stands beside.
void drop_asides(const Row& row, std::vector<Mention>& mentions);

}  // namespace gallipot::parsing
