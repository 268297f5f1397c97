// Amounts of a passage: those that the grammar of recipes finds, and measures that stand without a number.
#include "indexer/mining/passage.h"

#include <algorithm>
#include <utility>

#include "indexer/mining/cues.h"
#include "indexer/parsing/amounts.h"
#include "indexer/parsing/numbers.h"

namespace gallipot::mining {
namespace {

using parsing::Extent;
using parsing::PrintedAmount;
using parsing::Row;

bool tells_no_size(const MeasureWord& m) { return m.kind == "length" || m.kind == "time"; }

/// Things of which one is much like another; a leg of mutton is as heavy as the butcher cuts it.
bool much_alike(const Foodstuff& stuff) {
  return stuff.kind == "egg" || stuff.kind == "fruit" || stuff.kind == "vegetable" || stuff.kind == "nut" ||
         stuff.kind == "spice" || stuff.kind == "herb";
}

/// "1 lb. 2 oz.", "one pound and two ounces" as the smaller of the two, which alone says it in whole numbers.
void tell_in_smaller(const Row& row, const PrintedAmount& a, Term& term) {
  for (std::uint32_t i = a.measure_at.end; i < a.all.end; ++i) {
    const auto* m = row.measure(i);
    if (!m || m->name == a.measure) continue;
    const double ratio = parsing::measures_in(a.measure, m->name);
    if (ratio <= 0) continue;
    term.measure = m->name;
    term.quantity = {term.quantity.low * ratio, term.quantity.high * ratio};
    term.one = false;
    return;
  }
}

/// First word after `at` that is no modifier of what follows.
std::uint32_t past_modifiers(const Row& row, std::uint32_t at, std::uint32_t most) {
  std::uint32_t i = at;
  while (i < row.size() && i < at + most && row.tags[i].food == parsing::kNone && !row.point(i) &&
         !row.is(i, parsing::number | parsing::auxiliary | parsing::conjunction | parsing::preposition) &&
         !row.measure(i))
    ++i;
  return i;
}

}  // namespace

Passage::Passage(std::string text, Sizes& sizes) {
  recipe_.text = std::move(text);
  words_ = Words(recipe_.text);
  row_ = parsing::tag(recipe_, words_, sizes.lexicon());
  cues_.resize(row_.size());
  for (std::uint32_t i = 0; i < row_.size(); ++i)
    if (row_.word(i).kind == Word::Kind::word) cues_[i] = cues_of(row_.key(i));
  find_terms(sizes);
}

void Passage::find_terms(Sizes& sizes) {
  add_amounts(sizes);
  add_bare(sizes);
  std::sort(terms_.begin(), terms_.end(), [](const Term& a, const Term& b) { return a.at.begin < b.at.begin; });
  join_compounds();
  name_stuffs();
  for (Term& term : terms_) term.vagueness = sizes.vagueness(term.measure);
  std::erase_if(terms_, [](const Term& t) { return t.vagueness < 0; });
  for (Term& term : terms_)
    if (term.measure == "measuring cup") term.measure = "cup";  // the cup that is meant where a book says "cup"
}

/// Inside "the size of an egg": no egg is counted there.
bool Passage::in_likeness(std::uint32_t word) const {
  for (auto i = word > 6 ? word - 6 : 0; i < word; ++i)
    if (const auto* m = row_.measure(i); m && m->kind == "size" && i + row_.tags[i].measure_words > word) return true;
  return false;
}

void Passage::add_amounts(Sizes& sizes) {
  for (const auto& a : parsing::find_amounts(row_)) {
    if (!a.quantity || a.partial || a.vague || in_likeness(a.all.begin)) continue;
    if (!a.measure.empty() && sizes.vagueness(a.measure) < 0) continue;
    Term term;
    term.at = a.all;
    term.end = a.next;
    term.quantity = *a.quantity;
    term.one = a.quantity->low == 1 && a.quantity->high == 1;
    if (!a.measure.empty()) {
      const auto* m = sizes.lexicon().measure(a.measure);
      if (m && tells_no_size(*m)) continue;
      term.measure = a.measure;
      tell_in_smaller(row_, a, term);
      if (term.measure == a.measure) read_vessel(sizes, term);
    } else {
      const auto food = past_modifiers(row_, a.next, 3);
      if (food >= row_.size() || row_.tags[food].food == parsing::kNone) continue;
      const auto* stuff = row_.food(food);
      if (!much_alike(*stuff) || !sizes.of_one(stuff->name)) continue;
      term.measure = stuff->name;
      term.counted = true;
      term.at.end = term.end = food + row_.tags[food].food_words;
    }
    terms_.push_back(std::move(term));
  }
}

/// "a half-pint mug", "a quart black bottle", "small (quarter of a pound) box": the thing is the vessel, and the amount
/// says what it holds.
void Passage::read_vessel(const Sizes& sizes, Term& term) const {
  if (sizes.vagueness(term.measure) > 1) return;
  auto at = term.at.end;
  if (row_.hyphen(at) || row_.key(at) == ")") ++at;
  if (at < row_.size() && !row_.point(at) && !row_.measure(at) && row_.tags[at].food == parsing::kNone &&
      !row_.is(at, ~static_cast<std::uint32_t>(parsing::bend)))
    ++at;  // "black"
  const auto* vessel = at < row_.size() ? row_.measure(at) : nullptr;
  if (!vessel || (vessel->kind != "household" && vessel->kind != "container" && vessel->name != "square")) return;
  if (vessel->name == "measure") return;    // "a good half-pint measure"
  if (sizes.vagueness(vessel->name) < 0) {  // "a 1-lb. jar": not a pound of anything
    term.measure = vessel->name;
    return;
  }
  if (sizes.vagueness(vessel->name) < 2) return;
  auto number = term.at.begin;  // "two half-pint tumblers": the number that stands next to the measure
  for (auto i = term.at.begin + 1; i < term.at.end; ++i) {
    const auto n = parsing::number_at(row_, i);
    if (n.words && n.fraction && row_.key(i - 1) != "and" && !row_.is(i - 1, parsing::article)) number = i;
  }
  const auto n = parsing::number_at(row_, number);
  term.holds = number > term.at.begin && n.words ? n.value : term.quantity;
  term.holds_in = term.measure;
  const auto end = at + row_.tags[at].measure_words;
  const auto last = row_.key(end - 1);
  if (singular(last) != last && term.holds.low >= 2 && !row_.hyphen(term.at.end)) term.holds = {1, 1};
  term.quantity = {1, 1};
  term.one = true;
  term.measure = vessel->name;
  term.at.end = term.end = end;
  if (row_.is(end, parsing::of_word)) ++term.end;
}

/// "4 kitchen cupfuls", "four such tea-spoons": a number with one or two other words between it and the measure.
bool Passage::read_number_before(const Sizes& sizes, Term& term) const {
  for (std::uint32_t between = 1; between <= 2 && between <= term.at.begin; ++between) {
    const auto last = term.at.begin - between;
    const auto* part = row_.measure(last);
    const bool bends = part && sizes.vagueness(part->name) < 0;  // "8 round tablespoonfuls"
    if (row_.point(last) || (row_.tags[last].food != parsing::kNone && !bends) ||
        (row_.is(last, ~static_cast<std::uint32_t>(parsing::bend | parsing::definite)) && !bends))
      return false;
    for (std::uint32_t length = 1; length <= 4 && length <= last; ++length) {
      const auto n = parsing::number_at(row_, last - length);
      if (n.words != length) continue;
      term.at.begin = last - length;
      term.quantity = n.value;
      term.one = n.value.low == 1 && n.value.high == 1;
      return true;
    }
  }
  return false;
}

void Passage::add_bare(const Sizes& sizes) {
  const auto taken = [&](std::uint32_t i) {
    return std::any_of(terms_.begin(), terms_.end(), [&](const Term& t) { return t.at.holds(i); });
  };
  std::vector<Term> bare;
  for (std::uint32_t i = 0; i < row_.size(); ++i) {
    const auto* m = row_.measure(i);
    if (!m || taken(i)) continue;
    const bool renamed = i >= 2 && taken(i - 2) && (row_.key(i - 1) == "or" || row_.key(i - 1) == "(");
    if (sizes.vagueness(m->name) < 0 || (!Sizes::may_stand_bare(*m) && !renamed)) continue;
    if (row_.tags[i].measure_words == 1 && row_.key(i).size() < 3) continue;  // "C", "Dr."
    const auto words = row_.tags[i].measure_words;
    Term term;
    term.at = {i, i + words};
    term.end = i + words;
    while (term.at.begin > 0 && row_.is(term.at.begin - 1, parsing::bend) && !taken(term.at.begin - 1)) --term.at.begin;
    if (row_.is(term.end, parsing::of_word)) ++term.end;
    term.measure = m->name;
    term.bare = !read_number_before(sizes, term);
    if (term.bare) term.one = true;
    const bool bracketed = i > 0 && row_.key(i - 1) == "(" && row_.key(term.at.end) == ")";
    if (term.bare && bracketed) read_vessel(sizes, term);  // "one (ounce) square"
    bare.push_back(std::move(term));
    i += words - 1;
  }
  terms_.insert(terms_.end(), bare.begin(), bare.end());
}

/// "one pound, two ounces": one amount, told in ounces.
void Passage::join_compounds() {
  for (std::size_t i = 0; i + 1 < terms_.size();) {
    Term& large = terms_[i];
    const Term& small = terms_[i + 1];
    const auto gap = small.at.begin - large.at.end;
    const bool joined = gap == 0 || (gap == 1 && (row_.key(large.at.end) == "," || row_.key(large.at.end) == "and"));
    const double ratio = joined && !small.bare && !large.bare ? parsing::measures_in(large.measure, small.measure) : 0;
    if (ratio > 0 && small.quantity.high < ratio) {
      large.quantity = {large.quantity.low * ratio + small.quantity.low,
                        large.quantity.high * ratio + small.quantity.high};
      large.measure = small.measure;
      large.at.end = small.at.end;
      large.end = small.end;
      large.one = false;
      terms_.erase(terms_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    } else {
      ++i;
    }
  }
}

/// The word at which the stuff of a term can begin: past "or one ounce, OF gelatine", "(twenty-two ounces) OF butter".
std::uint32_t Passage::stuff_begin(const Term& term) const {
  auto at = term.end;
  while (row_.point(at) && at < term.end + 2 && (row_.key(at) == "," || row_.key(at) == ")" || row_.key(at) == "."))
    ++at;
  return at > term.end && row_.is(at, parsing::of_word) ? at + 1 : term.end;
}

void Passage::name_stuffs() {
  for (std::size_t i = 0; i < terms_.size(); ++i) {
    Term& term = terms_[i];
    if (term.counted) continue;
    const auto food = past_modifiers(row_, stuff_begin(term), 5);
    const auto limit = i + 1 < terms_.size() ? terms_[i + 1].at.begin : row_.size();
    if (term.measure.starts_with("size of")) {  // "butter the size of an egg"
      const auto from = term.at.begin > 3 ? term.at.begin - 3 : 0;
      term.of = stuff_between(from, term.at.begin);
      while (!term.of.empty() && term.at.begin > from && row_.tags[term.at.begin].food == parsing::kNone)
        --term.at.begin;
      if (!term.of.empty()) continue;
    }
    if (food >= limit || row_.tags[food].food == parsing::kNone) continue;
    term.of = row_.food(food)->name;
    term.end = std::min(food + row_.tags[food].food_words, limit);
  }
}

std::string Passage::stuff_between(std::uint32_t begin, std::uint32_t end) const {
  for (std::uint32_t i = begin; i < end && i < row_.size(); ++i)
    if (row_.tags[i].food != parsing::kNone && i + row_.tags[i].food_words <= end) return row_.food(i)->name;
  return {};
}

}  // namespace gallipot::mining
