// How is an amount written? With no more digits than its range warrants, the unit after it, the range in brackets.
#pragma once

#include <string>

#include "indexer/measures/amount.h"
#include "indexer/parsing/parsed.h"

namespace gallipot {

/// An amount in parts, so that a table can line the figures up: "12.5", "g", "11-14" (an en dash between).
struct WrittenAmount {
  std::string figure;
  std::string unit;   ///< "g", "ml"; empty for a count
  std::string range;  ///< empty where both ends round to the figure itself

  std::string text() const;  ///< "12.5 g (11-14)"
};

/// Decimal places that the range low..high warrants: by the Particle Data Group's rule (Review of Particle Physics,
/// Introduction, "Rounding": the half-width to two digits where they are 10 to 35, to one digit where 36 to 94, to two
/// from 95), and never more than three significant digits of `likely`. Negative: tens (-1), hundreds (-2).
int decimals_of(double low, double likely, double high);

WrittenAmount write_amount(const Amount& amount);

/// The same for prose: from two thousand on in kg or l.
WrittenAmount write_large_amount(const Amount& amount);

/// A figure rounded to `decimals` (may be negative), without trailing noughts after the point.
std::string write_figure(double value, int decimals);

/// The ends of a range to one digit of its half-width, rounded outwards so that writing never narrows it: "11-14".
std::string write_ends(double low, double high, int decimals);

/// Minutes as a cook says them: "20 min", "1-2 h", "3 days" (an en dash between).
std::string write_minutes(const Range& minutes);

}  // namespace gallipot
