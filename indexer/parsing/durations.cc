// Reads numbers and units of time off the row of words, left to right, from each unit word backwards.
#include "indexer/parsing/durations.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <string_view>

namespace gallipot::steps {
namespace {

struct Named {
  std::string_view name;
  double value;
};

// English number words; "couple" and "dozen" count as numbers before a unit of time.
constexpr std::array<Named, 38> number_words = {{
    {"a", 1},           {"an", 1},           {"one", 1},      {"two", 2},        {"three", 3},
    {"four", 4},        {"five", 5},         {"six", 6},      {"seven", 7},      {"eight", 8},
    {"nine", 9},        {"ten", 10},         {"eleven", 11},  {"twelve", 12},    {"thirteen", 13},
    {"fourteen", 14},   {"fifteen", 15},     {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18},
    {"nineteen", 19},   {"twenty", 20},      {"thirty", 30},  {"forty", 40},     {"fourty", 40},
    {"fifty", 50},      {"sixty", 60},       {"seventy", 70}, {"eighty", 80},    {"ninety", 90},
    {"couple", 2},      {"dozen", 12},       {"half", 0.5},   {"quarter", 0.25}, {"third", 1.0 / 3},
    {"quarters", 0.25}, {"thirds", 1.0 / 3}, {"eigth", 8},
}};

// In minutes. A month is 30 days and a year 365.
constexpr std::array<Named, 24> units = {{
    {"second", 1.0 / 60}, {"seconds", 1.0 / 60}, {"minute", 1},       {"minutes", 1},    {"min", 1},
    {"mins", 1},          {"minuts", 1},         {"hour", 60},        {"hours", 60},     {"hr", 60},
    {"hrs", 60},          {"day", 1440},         {"days", 1440},      {"week", 10080},   {"weeks", 10080},
    {"fortnight", 20160}, {"fortnights", 20160}, {"month", 43200},    {"months", 43200}, {"year", 525600},
    {"years", 525600},    {"se'nnight", 10080},  {"sennight", 10080}, {"houre", 60},
}};

template <std::size_t N>
std::optional<double> named(const std::array<Named, N>& table, std::string_view key) {
  for (const Named& n : table)
    if (n.name == key) return n.value;
  return std::nullopt;
}

bool is_fraction_word(std::string_view k) {
  return k == "half" || k == "quarter" || k == "third" || k == "quarters" || k == "thirds";
}

/// A number that ends just before word `end`; where it begins and what it is worth.
struct Number {
  std::size_t first = 0;
  double value = 0;
  bool article = false;  ///< "a", "an": no number where the unit is not what is counted
};

std::optional<double> digits(std::string_view key) {
  const auto slash = key.find('/');
  if (slash != std::string_view::npos) {
    const auto over = digits(key.substr(0, slash)), under = digits(key.substr(slash + 1));
    if (!over || !under || *under == 0) return std::nullopt;
    return *over / *under;
  }
  double v = 0;
  const auto [p, e] = std::from_chars(key.data(), key.data() + key.size(), v);
  if (e != std::errc{} || p != key.data() + key.size()) return std::nullopt;
  return v;
}

class Reader {
 public:
  explicit Reader(const Words& words) : w_(words.all()) {}

  std::string_view key(std::size_t i) const { return i < w_.size() ? w_[i].key : std::string_view{}; }
  std::string_view before(std::size_t end, std::size_t n) const {
    return end >= n ? w_[end - n].key : std::string_view{};
  }

  /// The number that ends before word `end`, reading leftwards.
  std::optional<Number> number(std::size_t end) const {
    if (auto n = printed_number(end)) return n;
    return worded_number(end);
  }

 private:
  const std::vector<Word>& w_;

  // "3", "1/2", "1-1/2", "1½", "1 1/2", "2 and 1/2"
  std::optional<Number> printed_number(std::size_t end) const {
    if (end == 0 || w_[end - 1].kind != Word::Kind::number) return std::nullopt;
    const auto last = digits(w_[end - 1].key);
    if (!last) return std::nullopt;
    Number n{end - 1, *last, false};
    bool fraction = w_[end - 1].key.find('/') != std::string_view::npos;
    if (end >= 3 && before(end, 2) == "/" && w_[end - 1].glued && w_[end - 3].kind == Word::Kind::number) {
      const auto over = digits(w_[end - 3].key);
      if (!over || *last == 0) return std::nullopt;
      n = {end - 3, *over / *last, false};
      fraction = true;
    }
    if (!fraction) return n;
    std::size_t at = n.first;
    if (at >= 2 && (w_[at - 1].key == "-" || w_[at - 1].key == "and" || w_[at - 1].key == "&")) --at;
    if (at >= 1 && w_[at - 1].kind == Word::Kind::number && w_[at - 1].key.find('/') == std::string_view::npos) {
      const auto whole = digits(w_[at - 1].key);
      if (whole && !(at >= 2 && w_[at - 2].key == "/")) n = {at - 1, *whole + n.value, false};
    } else if (at >= 1 && at < n.first && w_[at].key != "-") {
      if (const auto whole = named(number_words, w_[at - 1].key)) n = {at - 1, *whole + n.value, false};
    }
    return n;
  }

  // "three", "twenty-five", "half an", "three quarters of an", "one and a half", "a couple of"
  std::optional<Number> worded_number(std::size_t end) const {
    std::size_t at = end;
    const std::string_view last = before(end, 1);
    if ((last == "of" || last == "an" || last == "a") && end >= 2) {
      std::size_t f = end - 1;
      if (last != "of" && before(end, 2) == "of") f = end - 2;
      if (const auto part = fraction_ending(f)) return part;
      if (last == "of" && before(end, 2) == "couple")
        return Number{end >= 3 && before(end, 3) == "a" ? end - 3 : end - 2, 2, false};
      if (last == "of") return std::nullopt;
    }
    if (const auto part = fraction_ending(end)) return whole_before(*part);
    const auto v = named(number_words, last);
    if (!v) return std::nullopt;
    at = end - 1;
    Number n{at, *v, last == "a" || last == "an"};
    if (*v < 10 && !n.article && at >= 1) {  // "twenty-five", "five and twenty"
      std::size_t tens = w_[at - 1].key == "-" && at >= 2 ? at - 2 : at - 1;
      const auto t = named(number_words, w_[tens].key);
      if (t && *t >= 20) n = {tens, *t + *v, false};
    } else if (*v >= 20 && at >= 2 && w_[at - 1].key == "and") {
      const auto ones = named(number_words, w_[at - 2].key);
      if (ones && *ones >= 1 && *ones < 10 && w_[at - 2].key.size() > 2) n = {at - 2, *v + *ones, false};
    }
    return n;
  }

  // "half", "quarter", "a quarter", "three-quarters", "three fourths", "one-half"
  std::optional<Number> fraction_ending(std::size_t end) const {
    const std::string_view k = before(end, 1);
    const bool fourths = k == "fourths" || k == "fourth";
    if (!is_fraction_word(k) && !fourths) return std::nullopt;
    const double unit = fourths ? 0.25 : *named(number_words, k);
    Number n{end - 1, unit, false};
    std::size_t at = end - 1;
    if (at >= 1 && w_[at - 1].key == "-") --at;
    if (at == 0) return n;
    const std::string_view count = w_[at - 1].key;
    if (count == "a" || count == "one" || count == "the" || count == "an") return Number{at - 1, unit, false};
    if (count == "three" || count == "two" || count == "3" || count == "2")
      if (k != "half") return Number{at - 1, unit * (count == "three" || count == "3" ? 3 : 2), false};
    return n;
  }

  // "one and a half", "two and three quarters": the whole number before the fraction
  Number whole_before(const Number& part) const {
    if (part.first < 2 || w_[part.first - 1].key != "and") return part;
    const Word& whole = w_[part.first - 2];
    const auto v = whole.kind == Word::Kind::number ? digits(whole.key) : named(number_words, whole.key);
    if (!v || *v < 1) return part;
    return Number{part.first - 2, *v + part.value, false};
  }
};

bool joins_range(std::string_view k) { return k == "or" || k == "to" || k == "-" || k == "--" || k == "and"; }

// What comes after the unit: "an hour AND A HALF", "two hours AND TEN MINUTES", "a day OR TWO".
void extend(const Words& words, const Reader& r, double unit, Duration& d) {
  std::size_t i = d.last;
  if (r.key(i) == "and") {
    std::size_t j = i + 1;
    if (r.key(j) == "a" || r.key(j) == "an" || r.key(j) == "one" || r.key(j) == "three") ++j;
    if (r.key(j) == "-") ++j;
    const std::string_view k = r.key(j);
    const double times = r.key(i + 1) == "three" ? 3 : 1;
    const bool of_unit = r.key(j + 1) == "of" && named(units, r.key(j + 3));
    if (is_fraction_word(k) ||
        (words[std::min(j, words.size() - 1)].key.find('/') != std::string_view::npos && j < words.size())) {
      const double part = is_fraction_word(k) ? *named(number_words, k) * times : digits(k).value_or(0);
      const auto other = named(units, r.key(of_unit ? j + 3 : j + 1));
      // "an hour and a quarter of an hour" never stands for two times; "and half hour" names its unit again
      const double of = other && j + 1 < words.size() ? *other : unit;
      if (!(other && *other > unit)) {
        d.minutes.low += part * of;
        d.minutes.high += part * of;
        d.last = static_cast<std::uint32_t>(of_unit ? j + 4 : other ? j + 2 : j + 1);
      }
      return;
    }
    // "one hour and ten minutes"
    for (std::size_t end = i + 2; end <= i + 5 && end < words.size(); ++end) {
      const auto other = named(units, words[end].key);
      if (!other) continue;
      const auto n = r.number(end);
      if (n && n->first == i + 1 && *other < unit && !n->article) {
        d.minutes.low += n->value * *other;
        d.minutes.high += n->value * *other;
        d.last = static_cast<std::uint32_t>(end + 1);
      }
      return;
    }
  } else if (r.key(i) == "or" && (r.key(i + 1) == "two" || r.key(i + 1) == "three" || r.key(i + 1) == "so")) {
    if (named(units, r.key(i + 2)) || r.key(i + 1) == "so") return;  // "an hour or two hours": a range of two times
    d.minutes.high = (r.key(i + 1) == "two" ? 2 : 3) * unit;
    d.last = static_cast<std::uint32_t>(i + 2);
  }
}

// A number and its unit that end before the word after `at` (the unit word).
std::optional<Duration> at_unit(const Words& words, const Reader& r, std::size_t at, double unit) {
  std::size_t end = at;
  if (end > 0 && words[end - 1].key == "-") --end;  // "two-hour"
  if (end > 0 && (words[end - 1].key == "good" || words[end - 1].key == "full" || words[end - 1].key == "whole" ||
                  words[end - 1].key == "long"))
    --end;
  const auto n = r.number(end);
  if (!n) return std::nullopt;
  Duration d;
  d.first = static_cast<std::uint32_t>(n->first);
  d.last = static_cast<std::uint32_t>(at + 1);
  d.minutes = {n->value * unit, n->value * unit};
  // "three or four hours", "from ten to fifteen minutes", "15-20 minutes", "a quarter to half an hour"
  if (n->first >= 2 && joins_range(words[n->first - 1].key)) {
    const std::string_view by = words[n->first - 1].key;
    const auto low = r.number(n->first - 1);
    const bool between = by != "and" || (low && low->first >= 1 && words[low->first - 1].key == "between");
    if (low && !low->article && between && low->value < n->value && low->value > 0) {
      d.first = static_cast<std::uint32_t>(low->first);
      d.minutes.low = low->value * unit;
    }
  }
  extend(words, r, unit, d);
  return d;
}

// "over night", "all night", "a night": a night's rest in the larder, 8 to 12 hours.
std::optional<Duration> night(const Words& words, std::size_t i) {
  const std::string_view k = words[i].key;
  const std::string_view p = i > 0 ? words[i - 1].key : std::string_view{};
  const std::string_view pp = i > 1 ? words[i - 2].key : std::string_view{};
  Duration d;
  d.minutes = {480, 720};
  d.last = static_cast<std::uint32_t>(i + 1);
  d.first = static_cast<std::uint32_t>(i);
  if (k == "overnight") return d;
  if (k != "night") return std::nullopt;
  if (p == "-" && pp == "over")
    d.first -= 2;
  else if (p == "over" || p == "all" || p == "one")
    d.first -= 1;
  else if (p == "a" || p == "the") {
    const bool lasts = pp == "for" || pp == "stand" || pp == "lie" || pp == "lay" || pp == "during" ||
                       pp == "through" || pp == "over" || pp == "remain";
    if (!lasts) return std::nullopt;
    d.first -= 1;
  } else
    return std::nullopt;
  return d;
}

/// Joins "an hour to an hour and a half", "2 hours or 3 hours" into one range.
void join_ranges(const Words& words, std::vector<Duration>& found) {
  std::vector<Duration> kept;
  for (const Duration& d : found) {
    if (!kept.empty()) {
      Duration& p = kept.back();
      const bool next = p.last + 1 == d.first;
      const std::string_view by = next ? words[p.last].key : std::string_view{};
      const bool plain = p.minutes.low == p.minutes.high && p.minutes.high < d.minutes.high;
      const bool between = by == "and" && p.first > 0 && words[p.first - 1].key == "between";
      if (plain && (by == "or" || by == "to" || by == "-" || by == "--" || between)) {
        p.minutes.high = d.minutes.high;
        p.last = d.last;
        continue;
      }
      if (d.first < p.last) continue;
    }
    kept.push_back(d);
  }
  found = std::move(kept);
}

}  // namespace

std::vector<Duration> find_durations(const Words& words) {
  std::vector<Duration> found;
  const Reader r(words);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Word& w = words[i];
    if (w.kind != Word::Kind::word || w.key.size() < 3) continue;
    const char c = w.key[0];  // the first letters of all words of time
    if (c != 's' && c != 'm' && c != 'h' && c != 'd' && c != 'w' && c != 'f' && c != 'y' && c != 'n' && c != 'o')
      continue;
    std::optional<Duration> d = night(words, i);
    if (!d)
      if (const auto unit = named(units, w.key)) d = at_unit(words, r, i, *unit);
    if (!d) continue;
    if (w.key == "second" && d->last == i + 1) continue;  // "a second time"
    d->span = {words[d->first].span.begin, words[d->last - 1].span.end};
    found.push_back(*d);
    i = std::max<std::size_t>(i, d->last - 1);
  }
  join_ranges(words, found);
  for (Duration& d : found) d.span = {words[d.first].span.begin, words[d.last - 1].span.end};
  return found;
}

}  // namespace gallipot::steps
