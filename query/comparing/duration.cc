// Chooses the unit and says it.
#include "query/comparing/duration.h"

#include <fmt/format.h>

#include <cmath>
#include <iterator>

namespace gallipot {

Duration plainest(const Range& minutes) {
  static constexpr double lengths[] = {1, 60, 24 * 60, 7 * 24 * 60, 365 * 24 * 60};
  const auto plain = [](double value) { return std::abs(value * 4 - std::round(value * 4)) < 1e-6; };
  Duration out{minutes.low, minutes.high, Duration::Unit::minute};
  for (std::size_t i = 0; i < std::size(lengths); ++i) {
    const double low = minutes.low / lengths[i], high = minutes.high / lengths[i];
    if (low >= 1 && plain(low) && plain(high)) out = {low, high, static_cast<Duration::Unit>(i)};
  }
  return out;
}

bool one_unit_suits(const Range& minutes) {
  const Duration said = plainest(minutes);
  return plainest({minutes.high, minutes.high}).unit == said.unit || said.high < 100;
}

std::string duration_words(const Range& minutes) {
  static constexpr const char* names[] = {"minute", "hour", "day", "week", "year"};
  if (!one_unit_suits(minutes))
    return duration_words({minutes.low, minutes.low}) + " to " + duration_words({minutes.high, minutes.high});
  const Duration said = plainest(minutes);
  const char* name = names[static_cast<std::size_t>(said.unit)];
  const char* plural = said.high == 1 ? "" : "s";
  if (said.low == said.high) return fmt::format("{:.4g} {}{}", said.low, name, plural);
  return fmt::format("{:.4g} to {:.4g} {}{}", said.low, said.high, name, plural);
}

}  // namespace gallipot
