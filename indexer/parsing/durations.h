// How long? Finds spans of time in the words of a recipe: "an hour and a half", "from ten to fifteen minutes", "over
// night".
#pragma once

#include <cstdint>
#include <vector>

#include "indexer/parsing/parsed.h"
#include "indexer/text/words.h"

namespace gallipot::steps {

/// A length of time as printed.
struct Duration {
  Span span;                ///< in the text of the words
  std::uint32_t first = 0;  ///< the Words that it covers: [first, last)
  std::uint32_t last = 0;
  Range minutes;  ///< a day is 24 hours, a month 30 days, a year 365; a night's rest is 8 to 12 hours
};

/// All lengths of time, in order. A date ("next day"), an age or an hour of the clock is none. Does not say what the
/// time is for, or whether anything is done for so long.
std::vector<Duration> find_durations(const Words& words);

}  // namespace gallipot::steps
