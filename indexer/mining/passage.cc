// Amounts of a passage: those that the grammar of recipes finds, and measures that stand without a number.
#include "indexer/mining/passage.h"

#include <algorithm>
#include <utility>

#include "indexer/mining/cues.h"
#include "indexer/parsing/amounts.h"

namespace gallipot::mining {
namespace {

using parsing::Extent;
using parsing::PrintedAmount;
using parsing::Row;

bool tells_no_size(const MeasureWord& m) { return m.kind == "length" || m.kind == "time"; }

/// Measures that stand without a number as often as with one: "the common kitchen cup", "wine-glasses usually hold".
bool may_stand_bare(const MeasureWord& m) {
  return m.kind == "household" || m.kind == "size" || m.kind == "price" || m.kind == "container" ||
         m.kind == "capacity" || m.kind == "weight" || m.name == "square" || m.name == "bunch";
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
}

void Passage::add_amounts(Sizes& sizes) {
  for (const auto& a : parsing::find_amounts(row_)) {
    if (!a.quantity || a.partial || a.vague) continue;
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
    } else {
      const auto food = past_modifiers(row_, a.next, 3);
      if (food >= row_.size() || row_.tags[food].food == parsing::kNone) continue;
      const auto* stuff = row_.food(food);
      if (!sizes.of_one(stuff->name)) continue;
      term.measure = stuff->name;
      term.counted = true;
      term.at.end = term.end = food + row_.tags[food].food_words;
    }
    terms_.push_back(std::move(term));
  }
}

void Passage::add_bare(Sizes& /*sizes*/) {
  const auto taken = [&](std::uint32_t i) {
    return std::any_of(terms_.begin(), terms_.end(), [&](const Term& t) { return t.at.holds(i); });
  };
  std::vector<Term> bare;
  for (std::uint32_t i = 0; i < row_.size(); ++i) {
    const auto* m = row_.measure(i);
    if (!m || !may_stand_bare(*m) || taken(i)) continue;
    const auto words = row_.tags[i].measure_words;
    Term term;
    term.at = {i, i + words};
    term.end = i + words;
    while (term.at.begin > 0 && row_.is(term.at.begin - 1, parsing::bend) && !taken(term.at.begin - 1)) --term.at.begin;
    if (row_.is(term.end, parsing::of_word)) ++term.end;
    term.measure = m->name;
    term.bare = term.one = true;
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

void Passage::name_stuffs() {
  for (std::size_t i = 0; i < terms_.size(); ++i) {
    Term& term = terms_[i];
    if (term.counted) continue;
    const auto food = past_modifiers(row_, term.end, 5);
    const auto limit = i + 1 < terms_.size() ? terms_[i + 1].at.begin : row_.size();
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
