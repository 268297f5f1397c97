// Rounds to steps that get finer until one falls inside the range.
#include "query/cooking/rounding.h"

#include <algorithm>
#include <cmath>

namespace gallipot {

Amount as_weighed(const Amount& amount) {
  Amount out = amount;
  if (amount.unit == Amount::Unit::count) return out;
  out.low = std::min(amount.low, amount.likely * (1 - weighing));
  out.high = std::max(amount.high, amount.likely * (1 + weighing));
  return out;
}

double usual_step(double value, Fineness fineness) {
  if (value > 10000) return 50;
  if (value > 1000) return 10;
  if (value > 100) return 5;
  if (fineness == Fineness::spice || value < 10) return 0.5;
  return 1;
}

namespace {

constexpr double steps_in_a_range = 8;

/// The largest round step that is no more than `most`; 0 where that is very small.
double step_within(double most) {
  double out = 0;
  for (const double step : {0.5, 1.0, 2.0, 5.0, 10.0, 25.0, 50.0, 100.0, 250.0, 500.0, 1000.0})
    if (step <= most) out = step;
  return out;
}

}  // namespace

double measurable(const Amount& amount, Fineness fineness) {
  const double usual = amount.unit == Amount::Unit::count ? 1 : usual_step(amount.likely, fineness);
  const double first = std::max(usual, step_within((amount.high - amount.low) / steps_in_a_range));
  for (const double part : {1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.001}) {
    const double step = first * part;
    const double rounded = std::round(amount.likely / step) * step;
    if (rounded > 0 && rounded >= amount.low && rounded <= amount.high) return rounded;
  }
  return std::clamp(amount.likely, amount.low, amount.high);
}

}  // namespace gallipot
