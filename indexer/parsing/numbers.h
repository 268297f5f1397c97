// How is a printed number read? Words, digits, fractions and ranges.
#pragma once

#include "indexer/parsing/parsed.h"
#include "indexer/parsing/row.h"

namespace gallipot::parsing {

struct PrintedNumber {
  Range value;
  std::uint32_t words = 0;  ///< how many Words of the row it covers; 0 where no number begins
  bool article = false;     ///< "a", "an": one, if what follows is counted at all
  bool fraction = false;    ///< a bare fraction in words ("half", "three quarters"): "of a" may follow
};

/// The number that begins at word `at`: "7", "2-1/2", "½", "one and a half", "three or four", "a dozen and a half",
/// "from ten to twelve", "an". An ordinal ("a third time") is read as a fraction: the caller looks at what follows.
PrintedNumber number_at(const Row& row, std::uint32_t at);

}  // namespace gallipot::parsing
