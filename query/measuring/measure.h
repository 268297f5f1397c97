// What does a printed amount come to? The words are read as a recipe's are, and the register, the tables of heats and
// the books of a shelf are asked. The model only; query/reporting renders it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/heats.h"
#include "indexer/measures/register.h"
#include "indexer/text/range.h"

namespace gallipot {

struct MeasureQuestion {
  std::string words;    ///< as printed: "half a small teacup of cream"
  std::string of;       ///< the stuff, where the words do not name it; may be empty
  int year = 0;         ///< of printing; 0 where unknown
  std::string country;  ///< ISO 3166; empty where unknown
  std::string book;     ///< id; may be empty
};

struct MeasureAnswer {
  /// What the words turned out to be.
  enum class Kind : unsigned char {
    amount,     ///< `reading`
    heat,       ///< `heat`, `range`: an oven, a stage of sugar, a strength
    no_figure,  ///< the print gives none and none is made up; `why` says so
  };
  Kind kind = Kind::amount;
  MeasureQuestion asked;
  Range quantity{1, 1};
  std::string measure, size, of;  ///< as read; `of` under the lexicon's name
  Reading reading;
  std::string us, metric;       ///< by the spoons and cups of today; empty where there is no volume
  const Heat* heat = nullptr;   ///< lives as long as the Heats
  std::optional<Extent> range;  ///< of the heat; nothing where none of its witnesses is of that place and time
  std::string why;

  /// The question as the register takes it. Views into this answer.
  Measured measured() const;
};

/// Faults: no amount in the words; a measure that nobody knows (the nearest known ones in `mend`); an amount that is
/// negative or absurd; an unknown stuff; a year outside 1500 to 1950.
Outcome<MeasureAnswer> measure(const MeasureQuestion& question, const Register& measures, const Heats& heats,
                               const Lexicon& lexicon);

/// A plain metric or printed amount as the cook gives it for a decision: "90ml", "85-95 ml", "3 oz", "half a gill",
/// for one of what `answer` measures. Faults: it cannot be read, or is no amount of the kind.
Outcome<Decision> decision_of(const std::string& given, const MeasureAnswer& answer, const Register& measures,
                              const Lexicon& lexicon);

/// The volume by the spoons and cups of today: "1/4 cup + 2 tbsp". `cup`, `tablespoon`, `teaspoon` in millilitres.
std::string by_cup_and_spoon(double millilitres, double cup, double tablespoon, double teaspoon);

}  // namespace gallipot
