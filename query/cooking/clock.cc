// Reads and writes local times.
#include "query/cooking/clock.h"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>

namespace gallipot {
namespace {

using std::chrono::days;
using std::chrono::minutes;

/// The digits at the head of `text`, from `least` to `most` of them; -1 where there are fewer.
int take_number(std::string_view& text, std::size_t least, std::size_t most) {
  std::size_t n = 0;
  while (n < most && n < text.size() && text[n] >= '0' && text[n] <= '9') ++n;
  if (n < least) return -1;
  int value = 0;
  std::from_chars(text.data(), text.data() + n, value);
  text.remove_prefix(n);
  return value;
}

bool take_sign(std::string_view& text, std::string_view any_of) {
  if (text.empty() || any_of.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

tl::unexpected<Fault> no_start(std::string_view text) {
  return fault("\"" + std::string(text) + "\" is not a date and time",
               "write --start as year-month-day and hour, like 2027-03-06T09:00");
}

std::chrono::year_month_day date_of(LocalMinutes at) {
  return std::chrono::year_month_day{std::chrono::floor<days>(at)};
}

double rounded_to(double value, double step) { return std::round(value / step) * step; }

constexpr double hour = 60, day = 1440, week = 10080;

}  // namespace

Outcome<LocalMinutes> read_start(std::string_view text) {
  std::string_view rest = text;
  const int year = take_number(rest, 4, 4);
  if (year < 0 || !take_sign(rest, "-")) return no_start(text);
  const int month = take_number(rest, 1, 2);
  if (month < 0 || !take_sign(rest, "-")) return no_start(text);
  const int day_of_month = take_number(rest, 1, 2);
  if (day_of_month < 0) return no_start(text);
  int at_hour = 9, at_minute = 0;
  if (!rest.empty()) {
    if (!take_sign(rest, "Tt ")) return no_start(text);
    at_hour = take_number(rest, 1, 2);
    if (at_hour < 0 || at_hour > 23 || !take_sign(rest, ":")) return no_start(text);
    at_minute = take_number(rest, 2, 2);
    if (at_minute < 0 || at_minute > 59) return no_start(text);
    if (take_sign(rest, ":")) {
      const int seconds = take_number(rest, 2, 2);
      if (seconds < 0 || seconds > 59) return no_start(text);
    }
    if (!rest.empty()) return no_start(text);
  }
  const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                         std::chrono::day{static_cast<unsigned>(day_of_month)}};
  if (!date.ok())
    return fault("the calendar has no day " + std::string(text.substr(0, 10)),
                 "look the date up and write --start anew");
  if (year < 1970 || year > 2999)
    return fault("the year " + std::to_string(year) + " is out of reach", "start between 1970 and 2999");
  return LocalMinutes{std::chrono::local_days{date}} + minutes{at_hour * 60 + at_minute};
}

int minute_of_day(LocalMinutes at) { return static_cast<int>((at - std::chrono::floor<days>(at)).count()); }

LocalMinutes later(LocalMinutes at, double by) { return at + minutes{std::llround(by)}; }

std::string write_time(LocalMinutes at) {
  const int m = minute_of_day(at);
  return fmt::format("{:02}:{:02}", m / 60, m % 60);
}

std::string write_local(LocalMinutes at) {
  const auto date = date_of(at);
  return fmt::format("{:04}-{:02}-{:02}T{}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()), write_time(at));
}

std::string write_day(LocalMinutes at) {
  static constexpr std::array<const char*, 7> weekdays = {"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                          "Thursday", "Friday", "Saturday"};
  static constexpr std::array<const char*, 12> months = {"January",   "February", "March",    "April",
                                                         "May",       "June",     "July",     "August",
                                                         "September", "October",  "November", "December"};
  const auto date = date_of(at);
  const std::chrono::weekday weekday{std::chrono::local_days{date}};
  return fmt::format("{} {} {} {}", weekdays[weekday.c_encoding()], static_cast<unsigned>(date.day()),
                     months[static_cast<unsigned>(date.month()) - 1], static_cast<int>(date.year()));
}

std::string write_span(double span) {
  if (span < 1) return "1 min";
  if (span < 10) return fmt::format("{:.0f} min", std::round(span));
  if (span < 1.5 * hour) return fmt::format("{:.0f} min", rounded_to(span, 5));
  if (span < 24 * hour) {
    const double whole = rounded_to(span, span < 6 * hour ? 15 : 60);
    const auto h = static_cast<int>(whole / hour);
    const auto rest = static_cast<int>(whole - h * hour);
    return rest == 0 ? fmt::format("{} h", h) : fmt::format("{} h {} min", h, rest);
  }
  if (span < 21 * day) {
    const double n = rounded_to(span / day, span < 3 * day ? 0.5 : 1);
    return fmt::format("{:g} {}", n, n == 1 ? "day" : "days");
  }
  if (span < 20 * week) return fmt::format("{:.0f} weeks", std::round(span / week));
  if (span < 365 * day * 1.5) return fmt::format("{:.0f} months", std::round(span / (30.4 * day)));
  return fmt::format("{:g} years", rounded_to(span / (365.25 * day), 0.5));
}

std::string write_span(double low, double high) {
  const std::string a = write_span(low), b = write_span(high);
  if (a == b) return a;
  // "20 to 30 min", not "20 min to 30 min".
  const auto unit = [](const std::string& s) { return s.substr(s.find(' ')); };
  if (a.find(' ') == a.rfind(' ') && unit(a) == unit(b)) return a.substr(0, a.find(' ')) + " to " + b;
  return a + " to " + b;
}

}  // namespace gallipot
