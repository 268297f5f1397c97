// Reads amounts: number, bending words, measure, and what may trail after the measure ("and a half", "or two").
#include "indexer/parsing/amounts.h"

#include <array>

#include "indexer/parsing/numbers.h"

namespace gallipot::parsing {
namespace {

/// A measure that counts stuff (not a length or a time) and begins at word i.
const MeasureWord* stuff_measure(const Row& row, std::uint32_t i) {
  if (i >= row.size()) return nullptr;
  const auto* m = row.measure(i);
  return m && m->kind != "length" && m->kind != "time" && m->kind != "price" ? m : nullptr;
}

/// "a STONE jar of": what the vessel is made of, no weight.
bool material(const Row& row, std::uint32_t i) {
  const auto after = i + row.tags[i].measure_words;
  const auto* vessel = after < row.size() ? row.measure(after) : nullptr;
  return vessel && vessel->kind == "container" && row.measure(i)->name == "stone";
}

/// The measure at i is really the stuff: "two cloves", "a leaf" with no "of" and no stuff after it.
bool rather_stuff(const Row& row, std::uint32_t i) {
  const auto& t = row.tags[i];
  if (t.food == kNone || t.food_words < t.measure_words) return false;
  if (t.food_words > t.measure_words) return true;
  const auto after = i + t.measure_words;
  return !row.is(after, of_word) && !(after < row.size() && row.tags[after].food != kNone);
}

/// Takes the measure at `i` (and the point of its abbreviation) into the amount; returns the word after it.
std::uint32_t take_measure(const Row& row, std::uint32_t i, PrintedAmount& a) {
  const auto* m = stuff_measure(row, i);
  a.measure = m->name;
  a.container = m->kind == "container";
  std::uint32_t end = i + row.tags[i].measure_words;
  a.measure_at = {i, end};
  if (row.key(end) == "." && row.word(end).glued && end + 1 < row.size()) {  // "lb." "oz."
    const auto& next = row.word(end + 1);
    const bool abbreviated = row.key(end - 1).size() <= 4 && row.key(end - 1) != "cup" && row.key(end - 1) != "cups";
    if (abbreviated && (next.kind == Word::Kind::point || !next.capital || row.tags[end + 1].food != kNone)) ++end;
  }
  return end;
}

struct Ratio {
  std::string_view larger, smaller;
  double count;
};

// Tables of weights and capacities of British and American trade (avoirdupois, apothecaries', wine and dry measure).
constexpr std::array<Ratio, 12> kRatios = {{{"pound", "ounce", 16},
                                            {"ounce", "drachm", 8},
                                            {"ounce", "dram", 16},
                                            {"gallon", "quart", 4},
                                            {"gallon", "pint", 8},
                                            {"quart", "pint", 2},
                                            {"pint", "gill", 4},
                                            {"quart", "gill", 8},
                                            {"bushel", "peck", 4},
                                            {"peck", "quart", 8},
                                            {"tablespoon", "teaspoon", 3},
                                            {"stone", "pound", 14}}};

/// "a pound AND A HALF", "a pound OR TWO", "a pound AND TWO OUNCES", "half a pound TO A POUND".
std::uint32_t take_tail(const Row& row, std::uint32_t at, PrintedAmount& a) {
  const bool joins = row.key(at) == "and" || row.is(at, or_word) || row.key(at) == "to";
  if (!joins || !a.quantity) {
    // "1 lb. 2 oz."
    if (a.quantity && !a.measure.empty() && at < row.size() && row.word(at).kind == Word::Kind::number) {
      const auto n = number_at(row, at);
      if (n.words && stuff_measure(row, at + n.words)) {
        PrintedAmount b;
        const auto end = take_measure(row, at + n.words, b);
        if (const double ratio = measures_in(a.measure, b.measure); ratio > 0) {
          a.quantity->low += n.value.low / ratio;
          a.quantity->high += n.value.high / ratio;
          return end;
        }
      }
    }
    return at;
  }
  const auto n = number_at(row, at + 1);
  if (!n.words) return at;
  const auto after = at + 1 + n.words;
  if (row.key(at) == "and" && n.fraction && n.value.high < 1 && !stuff_measure(row, after)) {
    a.quantity->low += n.value.low;
    a.quantity->high += n.value.high;
    return after;
  }
  std::uint32_t m = after;
  if (n.fraction && row.is(m, of_word) && row.is(m + 1, article))
    m += 2;
  else if (n.fraction && row.is(m, article))
    ++m;
  if (stuff_measure(row, m)) {
    PrintedAmount b;
    b.quantity = n.value;
    auto end = take_measure(row, m, b);
    if (row.key(at) == "and") {
      const double ratio = measures_in(a.measure, b.measure);
      if (ratio <= 0) return at;
      a.quantity->low += n.value.low / ratio;
      a.quantity->high += n.value.high / ratio;
      return end;
    }
    end = take_tail(row, end, b);
    if (b.measure == a.measure && b.quantity->high > a.quantity->high) {
      a.quantity->high = b.quantity->high;
      return end;
    }
    return at;
  }
  if (row.is(at, or_word) && !n.article && !n.fraction && n.value.low == n.value.high &&
      n.value.low > a.quantity->high && (a.article || !a.measure.empty()) && a.quantity->high >= 1 &&
      !(after < row.size() && row.tags[after].food != kNone)) {
    a.quantity->high = n.value.high;
    return after;
  }
  return at;
}

/// Bending words before a measure ("two LARGE HEAPED spoonfuls"): the measure's place, or kNone.
std::uint32_t measure_after(const Row& row, std::uint32_t at, std::string& note) {
  for (std::uint32_t i = at; i < row.size() && i < at + 6; ++i) {
    if (stuff_measure(row, i) && !material(row, i)) {
      if (rather_stuff(row, i)) return kNone;
      for (std::uint32_t j = at; j < i; ++j) {
        if (row.point(j)) continue;
        if (!note.empty()) note += ' ';
        note += row.key(j);
      }
      return i;
    }
    if (!row.is(i, bend | little) && !row.hyphen(i) && !(row.key(i) == "," && row.is(i + 1, bend))) return kNone;
  }
  return kNone;
}

/// Ends the amount at `end`: looks for "each" and "of".
void finish(const Row& row, std::uint32_t begin, std::uint32_t end, PrintedAmount& a) {
  a.all = {begin, end};
  std::uint32_t next = end;
  if (row.is(next, each) && (row.key(next) == "each" || row.key(next) == "apiece")) {
    a.each = true;
    ++next;
  }
  if (begin >= 1 && row.key(begin - 1) == "each") a.each = true;
  if (begin >= 2 && row.key(begin - 1) == "," && row.key(begin - 2) == "each") a.each = true;
  const bool celled = row.key(next) == "|" && row.is(next + 1, of_word);  // "3 | cups | of | flour"
  if (celled) ++next;
  if (row.is(next, of_word)) {
    a.of = true;
    ++next;
    if (celled && row.key(next) == "|") ++next;
    if (row.key(next) == "each") a.each = true, ++next;
  }
  a.next = next;
}

/// "half a pint", "a quarter of a pound", "three quarters of an ounce", "half of the butter".
std::uint32_t take_fraction_measure(const Row& row, std::uint32_t at, PrintedAmount& a) {
  std::uint32_t i = row.hyphen(at) ? at + 1 : at;
  bool of = false;
  if (row.is(i, of_word)) of = true, ++i;
  const bool art = row.is(i, article);
  if (art) ++i;
  std::string note;
  const auto m = measure_after(row, i, note);
  if (m != kNone && (art || !of)) {
    a.note = note;
    return take_measure(row, m, a);
  }
  if (of) {
    if (row.is(i, definite | pronoun))
      a.partial = true;
    else if (!art)
      a.elliptical = true;  // "three quarters of butter": of the measure named before
  } else if (!art) {
    a.partial = row.tags[i < row.size() ? i : at].food != kNone;  // "half Indian meal and half rye meal"
  }
  return art && !of ? i : at;  // "half a lemon"
}

/// Words that say how much without a number when "of" follows: "a small quantity of".
bool vague_noun(std::string_view key) {
  return key == "quantity" || key == "number" || key == "amount" || key == "deal" || key == "proportion" ||
         key == "sufficiency" || key == "seasoning" || key == "supply" || key == "variety" || key == "mixture" ||
         key == "addition";
}

/// "a small quantity of", "a sufficient number of": the word after "of", or `at`.
std::uint32_t past_vague_noun(const Row& row, std::uint32_t at) {
  std::uint32_t i = at;
  while (i < at + 4 && row.is(i, article | definite | bend | vague | little)) ++i;
  return i > at && vague_noun(row.key(i)) && row.is(i + 1, of_word) ? i + 1 : at;
}

/// How many words of a ditto mark stand at i: "ditto", "do.", a double comma, low or high.
std::uint32_t ditto_words(const Row& row, std::uint32_t i) {
  std::uint32_t end = i;
  if (row.key(i) == "ditto" || row.key(i) == "do") {
    const bool short_form = row.key(end++) == "do";
    if (short_form && row.key(end) == "." && row.word(end).glued) ++end;
  } else if (row.key(i) == "," && row.key(i + 1) == "," && row.word(i + 1).glued) {
    end += 2;
  }
  while (row.key(end) == "\"") ++end;
  return end - i;
}

/// The word that a hyphen ties to a number is neither measure nor stuff nor more of the number: it tells no count.
bool bound(const Row& row, std::uint32_t i) {
  return i < row.size() && row.word(i).kind == Word::Kind::word && row.tags[i].measure == kNone &&
         row.tags[i].food == kNone && !row.is(i, number | multiplier | fraction | bend | each);
}

/// A number and its measure.
std::optional<PrintedAmount> counted(const Row& row, std::uint32_t at) {
  const auto n = number_at(row, at);
  if (!n.words) return std::nullopt;
  PrintedAmount a;
  a.quantity = n.value;
  a.quantity_at = {at, at + n.words};
  a.article = n.article;
  std::uint32_t end = at + n.words;
  if (const auto marks = n.fraction ? ditto_words(row, end) : 0; marks > 0) {  // "½ do. of pepper"
    a.ditto = true;
    end += marks;
  } else if (n.fraction) {
    const auto after = take_fraction_measure(row, end, a);
    end = take_tail(row, after, a);
  } else {
    if (row.key(end) == "(" && end + 2 < row.size() && row.word(end + 1).kind == Word::Kind::number &&
        row.key(end + 2) == ")")
      end += 3;  // "four (4) tablespoons"
    const bool celled = row.key(end) == "|" && stuff_measure(row, end + 1);
    const auto from = row.hyphen(end) || celled ? end + 1 : end;
    if (row.hyphen(end) && bound(row, from)) return std::nullopt;  // "a fifteen-cent bone"
    if (from < row.size() && row.measure(from) && !stuff_measure(row, from)) return std::nullopt;  // "two hours"
    if (n.article && (row.is(from, vague | little) || (row.key(from) == "very" && row.is(from + 1, little)) ||
                      past_vague_noun(row, at) != at))
      return std::nullopt;  // "a few", "a very little", "a quantity of"
    if (const auto ditto = n.article ? 0 : ditto_words(row, from); ditto > 0) {
      a.ditto = true;
      finish(row, at, from + ditto, a);
      return a;
    }
    const auto m = measure_after(row, from, a.note);
    if (m != kNone) end = take_measure(row, m, a);
    if (m != kNone || !n.article) end = take_tail(row, end, a);
  }
  finish(row, at, end, a);
  return a;
}

/// The measure at i stands in the singular and opens its clause without a number: "Handful of raisins", "Speck salt".
bool opens_as_one(const Row& row, std::uint32_t i) {
  if (row.tags[i].clause != i) return false;
  const auto* m = row.measure(i);
  const auto last = row.key(i + row.tags[i].measure_words - 1);
  return m->kind != "weight" && m->kind != "container" && singular(last) == last;
}

/// "a few slices of", "some", "a very little", "enough", "slices of", "Handful of".
std::optional<PrintedAmount> uncounted(const Row& row, std::uint32_t at) {
  std::uint32_t i = at;
  PrintedAmount a;
  if (const auto noun = past_vague_noun(row, at); noun != at) {
    a.vague = true;
    finish(row, at, noun, a);
    return a;
  }
  if (row.is(i, article)) ++i;
  if (row.key(i) == "very" || row.key(i) == "good") ++i;
  if (row.is(i, vague) || (row.is(i, little) && (i > at || !row.is(i + 1, bend)))) {
    a.vague = true;
    const auto m = measure_after(row, i + 1, a.note);
    std::uint32_t end = i + 1;
    if (m != kNone) {
      end = take_measure(row, m, a);
      if (row.is(i, little) && !row.is(i, vague)) {  // "a little piece of": one piece
        if (i > at) {
          a.quantity = Range{1, 1};
          a.quantity_at = {at, at + 1};
          a.article = true;
        }
        a.vague = false;
      }
    }
    finish(row, at, end, a);
    return a;
  }
  if (row.is(at, article)) return std::nullopt;
  std::string note;
  const auto bent = row.tags[at].clause == at && row.is(at, bend) ? measure_after(row, at, note) : kNone;
  if (bent != kNone && bent > at && singular(row.key(bent)) == row.key(bent)) {  // "small teaspoon salt"
    const auto* m = row.measure(bent);
    const auto after = bent + row.tags[bent].measure_words;
    const bool stuff = row.is(after, of_word) || (after < row.size() && row.tags[after].food != kNone);
    if (stuff && m->kind != "container") {
      a.quantity = Range{1, 1};
      a.quantity_at = {at, bent};
      a.note = note;
      finish(row, at, take_measure(row, bent, a), a);
      return a;
    }
  }
  if (i != at) return std::nullopt;
  // a bare measure in the plural, or one that "of" ties to the stuff: "slices of bread", "bits of butter"
  if (!stuff_measure(row, at) || rather_stuff(row, at)) return std::nullopt;
  const auto after = at + row.tags[at].measure_words;
  const bool one = opens_as_one(row, at);
  const bool stuff = after < row.size() && row.tags[after].food != kNone && !row.point(after);
  if (!row.is(after, of_word) && !(one && stuff && row.listed[row.tags[at].line])) return std::nullopt;
  const auto end = take_measure(row, at, a);
  if (one) {
    a.quantity = Range{1, 1};
    a.quantity_at = {at, at};
  } else {
    a.vague = true;
  }
  finish(row, at, end, a);
  return a;
}

}  // namespace

double measures_in(std::string_view larger, std::string_view smaller) {
  for (const auto& r : kRatios)
    if (r.larger == larger && r.smaller == smaller) return r.count;
  return 0;
}

std::vector<PrintedAmount> find_amounts(const Row& row) {
  std::vector<PrintedAmount> out;
  for (std::uint32_t i = 0; i < row.size();) {
    const bool may = row.word(i).kind == Word::Kind::number ||
                     row.is(i, number | multiplier | fraction | article | vague | little) ||
                     row.tags[i].measure != kNone || row.key(i) == "from" || row.key(i) == "between";
    std::optional<PrintedAmount> a;
    if (may && row.word(i).kind != Word::Kind::point) {
      a = counted(row, i);
      if (!a) a = uncounted(row, i);
    }
    if (a) {
      i = a->all.end > i ? a->all.end : i + 1;
      out.push_back(std::move(*a));
    } else {
      ++i;
    }
  }
  return out;
}

}  // namespace gallipot::parsing
