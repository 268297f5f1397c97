// Interval arithmetic on amounts of nought and more.
#include "query/comparing/interval.h"

namespace gallipot {
namespace {

std::string joined(const std::string& a, const std::string& b) {
  if (a.empty() || a == b) return b;
  if (b.empty()) return a;
  return a + "; " + b;
}

}  // namespace

Amount sum(const Amount& a, const Amount& b) {
  return {a.unit, a.low + b.low, a.likely + b.likely, a.high + b.high, joined(a.why, b.why)};
}

Amount times(const Amount& a, double factor) {
  return {a.unit, a.low * factor, a.likely * factor, a.high * factor, a.why};
}

Amount ratio(const Amount& part, const Amount& whole, double per) {
  return {part.unit, part.low / whole.high * per, part.likely / whole.likely * per, part.high / whole.low * per,
          joined(part.why, whole.why)};
}

Amount chained(const Amount& ab, const Amount& bc) {
  return {ab.unit, ab.low * bc.low, ab.likely * bc.likely, ab.high * bc.high, joined(ab.why, bc.why)};
}

bool overlap(const Amount& a, const Amount& b) { return a.low <= b.high && b.low <= a.high; }

}  // namespace gallipot
