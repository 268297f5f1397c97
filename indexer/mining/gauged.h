// Which figures of heat does a passage give? Degrees on some scale, and counts ("while you count twenty").
#pragma once

#include <string>
#include <vector>

#include "indexer/mining/heat_names.h"
#include "indexer/parsing/row.h"
#include "indexer/text/range.h"

namespace gallipot::mining {

struct Gauged {
  parsing::Extent at;
  Range value;
  std::string unit;  ///< "degree" where no scale is named, "degree Fahrenheit", "degree above proof", "count"
};

/// In order. Where a passage gives no figure with its sign, those that follow a name at once: "The Feather, 232".
std::vector<Gauged> gauged(const parsing::Row& row, const std::vector<NamedHeat>& named);

}  // namespace gallipot::mining
