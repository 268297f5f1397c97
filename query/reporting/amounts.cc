// Writes amounts and durations.
#include "query/reporting/amounts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gallipot {
namespace {

constexpr const char* dash = "\xE2\x80\x93";
constexpr int most_digits = 3;

int magnitude(double value) { return static_cast<int>(std::floor(std::log10(value))); }

}  // namespace

std::string WrittenAmount::text() const {
  std::string out = figure;
  if (!unit.empty()) out += " " + unit;
  if (!range.empty()) out += " (" + range + ")";
  return out;
}

int decimals_of(double low, double likely, double high) {
  const int by_digits = likely > 0 ? most_digits - 1 - magnitude(likely) : 0;
  const double half = (high - low) / 2;
  if (half <= 0) return by_digits;
  const int place = magnitude(half);
  const double leading = half / std::pow(10.0, place - 1);  // 10 .. 99.9
  // From 95 up the half-width is rounded to 100 of the next place: two digits of that are one of this.
  const int by_range = leading < 35.5 ? 1 - place : -place;
  return std::min(by_digits, by_range);
}

std::string write_figure(double value, int decimals) {
  if (decimals <= 0) {
    const double place = std::pow(10.0, -decimals);
    return fmt::format("{:.0f}", std::round(value / place) * place);
  }
  std::string out = fmt::format("{:.{}f}", value, decimals);
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out;
}

WrittenAmount write_amount(const Amount& amount) {
  WrittenAmount out;
  if (amount.unit != Amount::Unit::count) out.unit = unit_name(amount.unit);
  const int decimals = decimals_of(amount.low, amount.likely, amount.high);
  out.figure = write_figure(amount.likely, decimals);
  const std::string low = write_figure(amount.low, decimals), high = write_figure(amount.high, decimals);
  if (low != out.figure || high != out.figure) out.range = low + dash + high;
  return out;
}

std::string write_minutes(const Range& minutes) {
  struct Scale {
    double minutes;
    const char *one, *many;
  };
  static constexpr Scale scales[] = {
      {1, "min", "min"}, {60, "h", "h"}, {24 * 60, "day", "days"}, {7 * 24 * 60, "week", "weeks"}};
  // The largest scale in which the shorter end is still one or more, and a plain enough figure.
  const Scale* scale = &scales[0];
  for (const Scale& larger : scales) {
    const double low = minutes.low / larger.minutes, high = minutes.high / larger.minutes;
    const auto plain = [](double value) { return std::abs(value * 4 - std::round(value * 4)) < 1e-6; };
    if (low >= 1 && plain(low) && plain(high)) scale = &larger;
  }
  const double low = minutes.low / scale->minutes, high = minutes.high / scale->minutes;
  const char* unit = high > 1 ? scale->many : scale->one;
  if (low == high) return fmt::format("{:.4g} {}", low, unit);
  return fmt::format("{:.4g}{}{:.4g} {}", low, dash, high, unit);
}

}  // namespace gallipot
