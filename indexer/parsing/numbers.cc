// Reads printed numbers by descent: range > mixed number > cardinal or fraction.
#include "indexer/parsing/numbers.h"

#include <charconv>
#include <optional>
#include <string>

namespace gallipot::parsing {
namespace {

struct Read {
  double value = 0;
  std::uint32_t end = 0;  ///< word after it; equal to the start where nothing was read
  bool article = false;
  bool fraction = false;
};

/// Digits with or without thousands commas; nothing where they do not fill the word.
std::optional<double> digits(std::string_view key) {
  std::string plain;
  for (char c : key)
    if (c != ',') plain += c;
  double value = 0;
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (error != std::errc{} || end != plain.data() + plain.size()) return std::nullopt;
  return value;
}

bool numeral(const Row& row, std::uint32_t i) { return i < row.size() && row.word(i).kind == Word::Kind::number; }

/// "½" (one word, key "1/2") or "1/2" (three words).
std::optional<Read> figure_fraction(const Row& row, std::uint32_t i) {
  if (!numeral(row, i)) return std::nullopt;
  const auto key = row.key(i);
  if (const auto slash = key.find('/'); slash != std::string_view::npos) {
    const auto over = digits(key.substr(0, slash)), under = digits(key.substr(slash + 1));
    if (!over || !under || *under == 0) return std::nullopt;
    return Read{*over / *under, i + 1, false, false};
  }
  const bool slash =
      i + 2 < row.size() && (row.key(i + 1) == "/" || row.key(i + 1) == "\u2044") && row.word(i + 1).glued;
  if (slash && numeral(row, i + 2) && row.word(i + 2).glued) {
    const auto over = digits(key), under = digits(row.key(i + 2));
    if (over && under && *under > 0 && *over < *under * 4) return Read{*over / *under, i + 3, false, false};
  }
  return std::nullopt;
}

/// "7", "1,000", "2½", "2-1/2", "2 1/2", "1/2".
std::optional<Read> figures(const Row& row, std::uint32_t i) {
  if (const auto f = figure_fraction(row, i)) return f;
  if (!numeral(row, i)) return std::nullopt;
  const auto whole = digits(row.key(i));
  if (!whole) return std::nullopt;
  const std::uint32_t next = row.hyphen(i + 1) ? i + 2 : i + 1;
  if (const auto f = figure_fraction(row, next); f && f->value < 1)
    return Read{*whole + f->value, f->end, false, false};
  return Read{*whole, i + 1, false, false};
}

std::uint32_t past_hyphen(const Row& row, std::uint32_t i) { return row.hyphen(i) ? i + 1 : i; }

/// "twenty-five", "a hundred", "two dozen".
std::optional<Read> cardinal(const Row& row, std::uint32_t i) {
  Read read{0, i, false, false};
  if (row.is(i, number)) {
    read.value = row.tags[i].value;
    read.end = i + 1;
    const auto unit = past_hyphen(row, i + 1);
    if (read.value >= 20 && row.is(unit, number) && row.tags[unit].value < 10) {
      read.value += row.tags[unit].value;
      read.end = unit + 1;
    }
  } else if (row.is(i, article)) {
    read = {1, i + 1, true, false};
  } else if (row.is(i, multiplier)) {
    read.value = 1;
  } else if (const auto f = figures(row, i)) {
    read = *f;
  } else {
    return std::nullopt;
  }
  const auto times = read.end == i ? i : past_hyphen(row, read.end);
  if (row.is(times, multiplier)) {
    read.value *= row.tags[times].value;
    read.end = times + 1;
    read.article = false;
    if (row.key(times) == "couple" && row.is(times + 1, of_word)) read.end = times + 2;
    if (row.tags[times].value >= 100) {  // "a hundred and fifty"
      const auto rest = row.key(read.end) == "and" ? read.end + 1 : read.end;
      if (const auto more = row.is(rest, number) ? cardinal(row, rest) : std::nullopt) {
        read.value += more->value;
        read.end = more->end;
      }
    }
  }
  return read;
}

/// "half", "a half", "three quarters", "two-thirds", "half a dozen"; "one" of "one half" is no cardinal.
std::optional<Read> word_fraction(const Row& row, std::uint32_t i) {
  double times = 1;
  std::uint32_t at = i;
  if (!row.is(i, fraction)) {
    const auto before = cardinal(row, i);
    if (!before || before->value >= 20) return std::nullopt;
    times = before->value;
    at = past_hyphen(row, before->end);
    if (!row.is(at, fraction)) return std::nullopt;
  }
  Read read{times * row.tags[at].value, at + 1, false, true};
  if (read.value > 0.333 && read.value < 0.3334) read.value = 1.0 / 3;
  if (read.value > 0.666 && read.value < 0.667) read.value = 2.0 / 3;
  // "half a dozen", "half-dozen"
  auto dozen = past_hyphen(row, read.end);
  if (row.is(dozen, article)) dozen = past_hyphen(row, dozen + 1);
  if (row.is(dozen, multiplier)) return Read{read.value * row.tags[dozen].value, dozen + 1, false, false};
  return read;
}

/// "two and a half", "one and three quarters", "a dozen and a half".
Read with_fraction(const Row& row, Read whole, bool dozen) {
  if (whole.article || whole.fraction) return whole;
  const auto joined = row.hyphen(whole.end) ? whole.end + 1 : whole.end;
  const bool dashed = row.hyphen(joined + 1);
  if (row.key(joined) != "and") return whole;
  const auto more = word_fraction(row, dashed ? joined + 2 : joined + 1);
  if (!more || !more->fraction || more->value >= 1) return whole;
  whole.value += more->value * (dozen ? 12 : 1);
  whole.end = more->end;
  return whole;
}

std::optional<Read> single(const Row& row, std::uint32_t i) {
  if (const auto f = word_fraction(row, i)) return f;
  const auto whole = cardinal(row, i);
  if (!whole) return std::nullopt;
  const auto last = row.key(whole->end - 1);
  return with_fraction(row, *whole, last == "dozen");
}

}  // namespace

PrintedNumber number_at(const Row& row, std::uint32_t at) {
  PrintedNumber out;
  const bool from = row.key(at) == "from", between = row.key(at) == "between";
  const std::uint32_t start = from || between ? at + 1 : at;
  const auto first = single(row, start);
  if (!first) return out;
  out.value = {first->value, first->value};
  out.article = first->article;
  out.fraction = first->fraction;
  std::uint32_t end = first->end;
  if (!first->article) {
    std::uint32_t next = end;
    const bool dash = row.point(next) && (row.key(next) == "-" || row.key(next) == "--") && numeral(row, next + 1);
    const bool joins = row.is(next, or_word) || row.key(next) == "to" || (between && row.key(next) == "and") || dash;
    if (joins) {
      if (row.is(next + 1, about) && row.key(next) != "to") ++next;
      const auto second = single(row, next + 1);
      if (second && !second->article && second->value > first->value) {
        out.value.high = second->value;
        out.fraction = second->fraction;
        end = second->end;
        // "half or three quarters", "two to three dozen"
        if (!first->fraction && row.key(end - 1) == "dozen" && first->value < 12) out.value.low *= 12;
      } else if (from || between) {
        return {};
      }
    } else if (from || between) {
      return {};
    }
  } else if (from || between) {
    return {};
  }
  out.words = end - at;
  return out;
}

}  // namespace gallipot::parsing
