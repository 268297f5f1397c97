// Interval arithmetic on amounts of nought and more.
#include "indexer/measures/amount.h"

#include <algorithm>

namespace gallipot {
namespace {

std::string joined(const std::string& a, const std::string& b) {
  if (a.empty() || a == b) return b;
  if (b.empty()) return a;
  return a + "; " + b;
}

Amount amount_of(Amount::Unit unit, const Extent& e, std::string why) {
  return {unit, e.low, e.likely, e.high, std::move(why)};
}

}  // namespace

Extent sum(const Extent& a, const Extent& b) { return {a.low + b.low, a.likely + b.likely, a.high + b.high}; }

Extent product(const Extent& a, const Extent& b) { return {a.low * b.low, a.likely * b.likely, a.high * b.high}; }

Extent quotient(const Extent& a, const Extent& b) { return {a.low / b.high, a.likely / b.likely, a.high / b.low}; }

Extent hull(const Extent& a, const Extent& b) { return {std::min(a.low, b.low), a.likely, std::max(a.high, b.high)}; }

const char* unit_name(Amount::Unit unit) {
  switch (unit) {
    case Amount::Unit::gram:
      return "g";
    case Amount::Unit::millilitre:
      return "ml";
    case Amount::Unit::count:
      return "count";
  }
  return "count";
}

Amount sum(const Amount& a, const Amount& b) {
  return amount_of(a.unit, sum(a.extent(), b.extent()), joined(a.why, b.why));
}

Amount times(const Amount& a, double factor) { return times(a, Extent{factor, factor, factor}); }

Amount times(const Amount& a, const Extent& factor) { return amount_of(a.unit, product(a.extent(), factor), a.why); }

Amount ratio(const Amount& part, const Amount& whole, double per) {
  const Extent asked{per, per, per};
  return amount_of(part.unit, product(quotient(part.extent(), whole.extent()), asked), joined(part.why, whole.why));
}

Amount chained(const Amount& ab, const Amount& bc) {
  return amount_of(ab.unit, product(ab.extent(), bc.extent()), joined(ab.why, bc.why));
}

bool overlap(const Amount& a, const Amount& b) { return a.low <= b.high && b.low <= a.high; }

Amount in_grams(const Amount& volume, const Extent& density) {
  if (volume.unit != Amount::Unit::millilitre) return volume;
  return amount_of(Amount::Unit::gram, product(volume.extent(), density), volume.why);
}

Amount in_millilitres(const Amount& weight, const Extent& density) {
  if (weight.unit != Amount::Unit::gram) return weight;
  return amount_of(Amount::Unit::millilitre, quotient(weight.extent(), density), weight.why);
}

}  // namespace gallipot
