// An amount is an interval with a likely value, in one unit, and the reason for it. Its arithmetic keeps the whole
// range that the parts allow (Moore 1966, Interval Analysis), so that no figure comes out surer than what it was made
// of, and a wider reading never yields a narrower result.
#pragma once

#include <string>

namespace gallipot {

/// A closed interval of positive numbers with its likely value.
struct Extent {
  double low = 0, likely = 0, high = 0;
  friend bool operator==(const Extent&, const Extent&) = default;
};

Extent sum(const Extent& a, const Extent& b);
Extent product(const Extent& a, const Extent& b);
/// `b.low` must be over nought.
Extent quotient(const Extent& a, const Extent& b);
/// The least interval that holds both; the likely value is that of `a`.
Extent hull(const Extent& a, const Extent& b);

struct Amount {
  enum class Unit : unsigned char { gram, millilitre, count };
  Unit unit = Unit::gram;
  double low = 0;
  double likely = 0;
  double high = 0;
  std::string why;  ///< which rule and evidence: "avoirdupois ounce", "wineglass, US 1870-1900, 9 witnesses"

  Extent extent() const { return {low, likely, high}; }
};

/// "g", "ml" or "count", as the export schema and UCUM spell them.
const char* unit_name(Amount::Unit unit);

/// The sum of two amounts in one unit.
Amount sum(const Amount& a, const Amount& b);

/// An amount times a plain number of nought or more.
Amount times(const Amount& a, double factor);
/// An amount times a number that is an interval itself.
Amount times(const Amount& a, const Extent& factor);

/// `part` for each `whole`, `per` of it asked: low is the least part by the most whole. `whole.low` must be over
/// nought. The answer is in the unit of `part`.
Amount ratio(const Amount& part, const Amount& whole, double per);

/// The product of two ratios: so much of a for one of b, by so much of b for one of c. The answer is in the unit of
/// `ab`.
Amount chained(const Amount& ab, const Amount& bc);

/// Whether two amounts in one unit have a value in common.
bool overlap(const Amount& a, const Amount& b);

/// A volume as a weight and a weight as a volume, by a density in grams a millilitre. An amount that is neither, or is
/// in that unit already, comes back as it was.
Amount in_grams(const Amount& volume, const Extent& density);
Amount in_millilitres(const Amount& weight, const Extent& density);

}  // namespace gallipot
