// Which heats does a passage name? "Slow oven", "the crack", "candy height", "blood warm".
#pragma once

#include <string>
#include <vector>

#include "indexer/parsing/row.h"

namespace gallipot::mining {

/// A heat of the table data/heat-words.tsv, which says what the fields mean.
struct Heat {
  std::string name, kind, of;
  double low = 0, high = 0;  ///< degrees Fahrenheit
  bool lone = false;
};

struct NamedHeat {
  parsing::Extent at;
  const Heat* heat = nullptr;  ///< lives as long as the program
};

/// In order, the longest names first where they overlap.
std::vector<NamedHeat> named_heats(const parsing::Row& row);

/// Last words of the names of stages of boiled sugar, each once or more.
const std::vector<std::string>& stage_words();

}  // namespace gallipot::mining
