// Writes amounts and durations.
#include "query/reporting/amounts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/duration.h"

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
  if (write_figure(amount.low, decimals) != out.figure || write_figure(amount.high, decimals) != out.figure)
    out.range = write_ends(amount.low, amount.high, decimals);
  return out;
}

std::string write_ends(double low, double high, int decimals) {
  const double half = (high - low) / 2;
  const int finest = half > 0 ? std::min(-magnitude(half), decimals) : decimals;
  // A twentieth of the place is let go, so that 3.02 is not written as 4.
  constexpr double slack = 0.05;
  const auto end = [&](double value, bool up) {
    // An end that is small beside the width keeps a digit of its own: 3 to 40, not 0 to 40.
    const int places = value > 0 ? std::max(finest, -magnitude(value)) : finest;
    const double place = std::pow(10.0, -places);
    return write_figure((up ? std::ceil(value / place - slack) : std::floor(value / place + slack)) * place, places);
  };
  return end(low, false) + dash + end(high, true);
}

WrittenAmount write_large_amount(const Amount& amount) {
  if (amount.unit == Amount::Unit::count || amount.likely < 2000) return write_amount(amount);
  WrittenAmount out =
      write_amount({amount.unit, amount.low / 1000, amount.likely / 1000, amount.high / 1000, amount.why});
  out.unit = amount.unit == Amount::Unit::gram ? "kg" : "l";
  return out;
}

std::string write_minutes(const Range& minutes) {
  static constexpr const char* one[] = {"min", "h", "day", "week", "year"};
  static constexpr const char* many[] = {"min", "h", "days", "weeks", "years"};
  if (!one_unit_suits(minutes))
    return write_minutes({minutes.low, minutes.low}) + " to " + write_minutes({minutes.high, minutes.high});
  const Duration said = plainest(minutes);
  const char* unit = (said.high > 1 ? many : one)[static_cast<std::size_t>(said.unit)];
  if (said.low == said.high) return fmt::format("{:.4g} {}", said.low, unit);
  return fmt::format("{:.4g}{}{:.4g} {}", said.low, dash, said.high, unit);
}

}  // namespace gallipot
