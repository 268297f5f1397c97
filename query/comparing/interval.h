// Arithmetic on amounts: every operation keeps the whole range that its parts allow (Moore 1966, Interval Analysis), so
// that no figure comes out surer than what it was made of. Units must agree; the caller sees to that.
#pragma once

#include "indexer/measures/amount.h"

namespace gallipot {

/// The sum of two amounts in one unit.
Amount sum(const Amount& a, const Amount& b);

/// An amount times a plain number of nought or more.
Amount times(const Amount& a, double factor);

/// `part` for each `whole`, `per` of it asked: low is the least part by the most whole. `whole.low` must be over
/// nought. The answer is in the unit of `part`.
Amount ratio(const Amount& part, const Amount& whole, double per);

/// The product of two ratios: so much of a for one of b, by so much of b for one of c. The answer is in the unit of
/// `ab`.
Amount chained(const Amount& ab, const Amount& bc);

/// Whether two amounts in one unit have a value in common.
bool overlap(const Amount& a, const Amount& b);

}  // namespace gallipot
