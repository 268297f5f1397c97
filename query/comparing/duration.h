// In which unit of time is a duration said? Minutes in, the plainest unit out.
#pragma once

#include <string>

#include "indexer/parsing/parsed.h"

namespace gallipot {

struct Duration {
  enum class Unit : unsigned char { minute, hour, day, week, year };
  double low = 0, high = 0;
  Unit unit = Unit::minute;
};

/// The largest unit in which the shorter end is still one or more and both ends are whole quarters.
Duration plainest(const Range& minutes);

/// For a stretch between two recipes: each end in its own unit where one unit does not suit both.
bool one_unit_suits(const Range& minutes);

/// For a sentence: "20 minutes", "1.5 to 2 hours", "7 years".
std::string duration_words(const Range& minutes);

}  // namespace gallipot
