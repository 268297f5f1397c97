// Who bears witness to what a measure held, and what do many witnesses say together?
//
// The rule, for one measure in one place and time:
//   1. Each author counts once; what one says several times over is taken together. Who tells the measure in another
//      household measure ("four tablespoons") is heard only where fewer than three tell it in a legal one,
//      and not at all where that is itself so vague that its high is over two and a half times its low (drops, bowls).
//   2. Of three or more, one who says more than twice or less than half of what the middling one says is set aside.
//   3. The likely value is the median; low and high are the tenth percentile of the low and the ninetieth of the high
//      readings, of fewer than five the least and the greatest (percentiles: Hyndman and Fan 1996, definition 7).
//   4. Nobody fills a cup to the hair: the range is widened by a tenth, and for want of witnesses by 15 % more over
//      their number: by a quarter for one, by an eighth for six.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/measures/lookup.h"
#include "indexer/measures/statement.h"

namespace gallipot::measuring {

/// One witness to one measure, turned into millilitres (and grams, where it weighs a stuff).
struct Voice {
  std::string measure, of, country;
  int year = 0;
  std::string said;               ///< "0.5 gill"
  Extent millilitres;             ///< for one; noughts where it tells only a weight
  std::optional<Extent> grams;    ///< for one, where it tells a weight
  std::string who;                ///< "Leslie 1840, tables of measures", or the title and year of a book of the shelf
  std::string author;             ///< counts once: "Leslie 1840", or the book's id
  std::string book, page, quote;  ///< of a book of the shelf; empty for a published row
  std::uint32_t line = 0;
  bool at_second_hand = false;  ///< told in another household measure, with all the doubt of that
};

/// What witnesses say together.
struct Verdict {
  Extent extent;
  Extent said;                  ///< the same before it is widened: rules 1 to 3
  double least = 0, most = 0;   ///< of what they say, those set aside not counted
  std::size_t authors = 0;      ///< who count
  std::vector<bool> set_aside;  ///< per reading
};

/// One reading an author and its author.
struct Testimony {
  Extent held;
  std::string_view author;
};

/// How much too full or too empty a measure is filled by hand and eye. Source: common practice, from memory.
inline constexpr double by_eye = 0.10;

/// Rule 1: so many authors who tell a measure in legal ones do without the others.
inline constexpr std::size_t enough_at_first_hand = 3;

/// How much wider an interval is made, for hand and eye and for want of witnesses: rule 4.
double tolerance_of(std::size_t authors);

/// `readings` must not be empty.
Verdict verdict_of(const std::vector<Testimony>& readings);

/// A witness's words as a voice. Nothing where they come to no figure: the unit is unknown, or a weight of a stuff of
/// unknown density.
std::optional<Voice> voice_of(const MeasureTables& tables, const Witnessed& words);

}  // namespace gallipot::measuring
