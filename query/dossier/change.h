// What does "turn the ginger down by a third" change? Words of a cook into changes of amounts.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/lexicon.h"
#include "query/dossier/dossier.h"

namespace gallipot {

/// One change of one stuff.
struct Change {
  enum class Kind : unsigned char { times, set, add };
  std::string stuff;  ///< as the trial names it; empty: of everything
  Kind kind = Kind::times;
  double figure = 1;  ///< factor, or an amount in `unit`; of Kind::add it may be negative
  std::string unit;   ///< "g", "ml" or "count"; empty for times
  std::string words;  ///< the clause that asks for it
};

/// Reads clauses parted by commas, semicolons, full stops, "and", "but", "then": "ginger down by a third", "halve the
/// salt and the sugar", "20 % more vinegar", "leave out the anchovies", "set the mace to 3 g", "add 5 g of cinnamon",
/// "everything by half". A stuff goes by any of its printed names; of several in the trial that a word may mean the one
/// named so is taken, else the one made of it ("pepper": black pepper).
/// Faults: a clause without a stuff, with a stuff that the trial has not (unless it is added or set), or that does not
/// say by how much - with the way to say it.
Outcome<std::vector<Change>> read_changes(std::string_view words, const std::vector<TrialAmount>& amounts,
                                          const Lexicon& lexicon);

/// The amounts after the changes, in order; what is added comes last, what is left out goes. Faults: a change in grams
/// of a stuff told in millilitres or by the piece, more taken away than there is.
Outcome<std::vector<TrialAmount>> changed(std::vector<TrialAmount> amounts, const std::vector<Change>& changes);

}  // namespace gallipot
