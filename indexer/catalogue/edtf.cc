// EDTF dates as the years they allow.
#include <algorithm>
#include <cctype>

#include "indexer/catalogue/shelf_list.h"

namespace gallipot {
namespace {

constexpr int kAbout = 5;  ///< years either side of an approximate year; our reading, the standard lays down none

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Two digits, or X for one unspecified, between `low` and `high` where both are digits.
bool two_digits(std::string_view s, int low, int high) {
  if (s.size() != 2) return false;
  if (s == "XX") return true;
  if (!is_digit(s[0]) || (!is_digit(s[1]) && s[1] != 'X')) return false;
  if (s[1] == 'X') return (s[0] - '0') * 10 + 9 >= low && (s[0] - '0') * 10 <= high;
  const int value = (s[0] - '0') * 10 + (s[1] - '0');
  return value >= low && value <= high;
}

int days_in(int year, int month) {
  if (month == 2) return (year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)) ? 29 : 28;
  return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

/// "hh:mm:ss" with an optional zone: "Z", "+05", "-04:30".
bool is_time(std::string_view s) {
  if (s.size() < 8 || s[2] != ':' || s[5] != ':') return false;
  if (!two_digits(s.substr(0, 2), 0, 23) || !two_digits(s.substr(3, 2), 0, 59) || !two_digits(s.substr(6, 2), 0, 59))
    return false;
  const auto zone = s.substr(8);
  if (zone.empty() || zone == "Z") return true;
  if (zone[0] != '+' && zone[0] != '-') return false;
  return two_digits(zone.substr(1, 2), 0, 23) &&
         (zone.size() == 3 || (zone.size() == 6 && zone[3] == ':' && two_digits(zone.substr(4), 0, 59)));
}

/// "1861", "186X", "18XX", "-0044", "Y17000".
std::optional<Years> year_of(std::string_view s) {
  if (s.starts_with("Y")) {
    s.remove_prefix(1);
    const bool before = s.starts_with("-");
    if (before) s.remove_prefix(1);
    if (s.size() < 5 || s.size() > 9 || !std::all_of(s.begin(), s.end(), is_digit)) return {};
    int value = 0;
    for (const char c : s) value = value * 10 + (c - '0');
    return before ? Years{-value, -value} : Years{value, value};
  }
  const bool before = s.starts_with("-");
  if (before) s.remove_prefix(1);
  if (s.size() != 4 || !is_digit(s[0]) || !is_digit(s[1])) return {};
  if ((!is_digit(s[2]) && s[2] != 'X') || (!is_digit(s[3]) && s[3] != 'X') || (s[2] == 'X' && s[3] != 'X')) return {};
  int low = 0, high = 0;
  for (const char c : s) {
    low = low * 10 + (c == 'X' ? 0 : c - '0');
    high = high * 10 + (c == 'X' ? 9 : c - '0');
  }
  return before ? Years{-high, -low} : Years{low, high};
}

/// One date, without a slash.
std::optional<Years> one_date(std::string_view s) {
  bool about = false;
  if (!s.empty() && (s.back() == '~' || s.back() == '?' || s.back() == '%')) {
    about = s.back() != '?';
    s.remove_suffix(1);
  }
  if (const auto t = s.find('T'); t != std::string_view::npos) {
    if (about || !is_time(s.substr(t + 1)) || t != 10) return {};
    s = s.substr(0, t);
  }
  const std::size_t dash = s.find('-', s.starts_with("-") || s.starts_with("Y-") ? 2 : 0);
  const auto years = year_of(s.substr(0, dash));
  if (!years) return {};
  if (dash != std::string_view::npos) {
    const auto rest = s.substr(dash + 1);
    const auto month = rest.substr(0, 2);
    const bool season = month == "21" || month == "22" || month == "23" || month == "24";
    if (s.starts_with("Y") || !(two_digits(month, 1, 12) || (season && rest.size() == 2))) return {};
    if (rest.size() > 2) {
      const bool exact = is_digit(month[0]) && is_digit(month[1]) && years->first == years->last;
      const int last = exact ? days_in(years->first, (month[0] - '0') * 10 + (month[1] - '0')) : 31;
      if (rest[2] != '-' || !two_digits(rest.substr(3), 1, last)) return {};
    }
  }
  return about ? Years{years->first - kAbout, years->last + kAbout} : *years;
}

}  // namespace

std::optional<Years> edtf_years(std::string_view date) {
  const auto slash = date.find('/');
  if (slash == std::string_view::npos) return one_date(date);
  const auto from = date.substr(0, slash), to = date.substr(slash + 1);
  const auto open = [](std::string_view s) { return s.empty() || s == ".."; };
  if (open(from) && open(to)) return {};
  // An end that is open or unknown says nothing of the year: the other end stands for the whole.
  const auto first = one_date(open(from) ? to : from);
  const auto last = one_date(open(to) ? from : to);
  if (!first || !last) return {};
  const Years years{first->first, last->last};
  if (years.first > years.last) return {};
  return years;
}

}  // namespace gallipot
