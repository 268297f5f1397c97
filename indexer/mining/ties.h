// Does the print set two amounts equal? Looks at the words between them.
#pragma once

#include "indexer/mining/passage.h"

namespace gallipot::mining {

enum class Tie : unsigned char {
  none,
  stated,  ///< "are", "hold", "weigh", "=": one is the other
  alias,   ///< "or", "(", "i. e.": the same amount named anew
  beside,  ///< set side by side in a table, or as one of several in a sentence that has stated another
};

/// What is known of the place where the amounts stand.
struct Setting {
  bool tabular = false;  ///< under a head of measures, or among other statements
  bool stated = false;   ///< the sentence has set two amounts equal already
};

/// How `b` is tied to `a`, which stands before it. Judges the words alone: whether the amounts can be equal is for the
/// caller to see.
Tie tie_of(const Passage& passage, const Term& a, const Term& b, Setting setting);

}  // namespace gallipot::mining
