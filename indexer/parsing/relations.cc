// Amounts that lean on another stuff: by comparison and per unit.
#include "indexer/parsing/relations.h"

#include <algorithm>

#include "indexer/parsing/numbers.h"

namespace gallipot::parsing {
namespace {

struct Comparison {
  double factor = 1;
  Relative::By by = Relative::By::measure;
  std::uint32_t end = 0;     ///< first word after it
  std::uint32_t to = kNone;  ///< mention that it compares with, where the words name one
};

/// The first mention whose name begins in [from, until).
std::uint32_t mention_in(const std::vector<Mention>& mentions, std::uint32_t from, std::uint32_t until) {
  const auto at = std::lower_bound(mentions.begin(), mentions.end(), from,
                                   [](const Mention& m, std::uint32_t w) { return m.name.begin < w; });
  return at != mentions.end() && at->name.begin < until ? static_cast<std::uint32_t>(at - mentions.begin()) : kNone;
}

bool amount_noun(std::string_view key) {
  return key == "quantity" || key == "quantities" || key == "amount" || key == "weight" || key == "measure" ||
         key == "proportion" || key == "bulk";
}

/// "half", "twice", "two thirds" before "as much" or "the quantity".
double factor_before(const Row& row, std::uint32_t& begin) {
  if (begin == 0) return 1;
  const auto key = row.key(begin - 1);
  if (key == "twice" || key == "double") return --begin, 2;
  if (key == "thrice") return --begin, 3;
  if (key == "times" && begin >= 2 && row.is(begin - 2, number)) {
    const double n = row.tags[begin - 2].value;
    begin -= 2;
    return n;
  }
  for (std::uint32_t back = std::min<std::uint32_t>(4, begin); back > 0; --back) {
    const auto n = number_at(row, begin - back);
    if (n.words == back && n.fraction) {
      begin -= back;
      return n.value.low;
    }
  }
  return 1;
}

/// A comparison whose key words begin at i. `begin` moves back over its factor.
std::optional<Comparison> comparison_at(const Row& row, std::uint32_t i, std::uint32_t& begin) {
  Comparison c;
  begin = i;
  if (row.key(i) == "as" && (row.key(i + 1) == "much" || row.key(i + 1) == "many")) {
    c.factor = factor_before(row, begin);
    c.end = i + 2;
    return c;
  }
  const bool alike = row.key(i) == "same" || row.key(i) == "equal" || row.key(i) == "like";
  if (alike) {
    std::uint32_t j = i + 1;
    if (amount_noun(row.key(j))) {
      if (row.key(j) == "weight") c.by = Relative::By::weight;
      ++j;
    } else if (row.key(i) != "same") {
      return std::nullopt;
    }
    if (!row.is(j, of_word)) return std::nullopt;
    c.end = j + 1;
    if (begin > 0 && row.is(begin - 1, definite | article)) --begin;
    return c;
  }
  if (row.key(i) == "weight" && i > 0 &&
      (row.key(i - 1) == "its" || row.key(i - 1) == "their" || row.key(i - 1) == "the") &&
      (row.key(i + 1) == "in" || (row.is(i + 1, of_word) && row.key(i - 1) != "the"))) {
    begin = i - 1;
    c.factor = factor_before(row, begin);
    c.by = Relative::By::weight;
    c.end = i + 2;
    return c;
  }
  if (amount_noun(row.key(i)) && i > 0 && row.is(i - 1, definite)) {
    begin = i - 1;
    c.factor = factor_before(row, begin);
    if (begin == i - 1 || !row.is(i + 1, of_word)) return std::nullopt;  // "the quantity" without a factor says nothing
    if (row.key(i) == "weight") c.by = Relative::By::weight;
    c.end = i + 2;
    return c;
  }
  return std::nullopt;
}

/// "the weight of six eggs in sugar": factor 6 to egg.
std::optional<Comparison> weight_of(const Row& row, const std::vector<Mention>& mentions, std::uint32_t i,
                                    std::uint32_t& begin) {
  if (row.key(i) != "weight" || !row.is(i + 1, of_word)) return std::nullopt;
  const auto to = mention_in(mentions, i + 2, i + 8);
  if (to == kNone || row.key(mentions[to].name.end) != "in") return std::nullopt;
  Comparison c;
  c.by = Relative::By::weight;
  c.to = to;
  if (mentions[to].quantity && mentions[to].measure.empty()) c.factor = mentions[to].quantity->low;
  c.end = mentions[to].name.end + 1;
  begin = i > 0 && row.is(i - 1, definite) ? i - 1 : i;
  return c;
}

bool amount_told(const Mention& m) { return m.amount_kind != AmountKind::none && m.amount_kind != AmountKind::partial; }

/// What a comparison leans on when it names nothing: the last stuff with an amount before it, else the last stuff.
std::uint32_t leant_on(const std::vector<Mention>& mentions, std::uint32_t before) {
  std::uint32_t last = kNone;
  for (std::uint32_t j = before; j-- > 0;) {
    if (amount_told(mentions[j])) return j;
    if (last == kNone) last = j;
  }
  return last;
}

/// What juice and the like are called when they need no other name.
bool plain_base(const Row& row, std::uint32_t i) {
  const auto key = row.key(i);
  return key == "pulp" || key == "juice" || key == "liquor" || key == "liquid" || key == "syrup" || key == "fruit" ||
         key == "jelly" || key == "broth" || key == "pickle" || key == "wort";
}

/// What "to every quart" measures when it does not say: the last juice or liquor told of before word `at`, else the
/// last fruit or vegetable; empty where there is neither.
std::string plain_base_before(const Row& row, const std::vector<Mention>& mentions, std::uint32_t at) {
  const auto far = at > 80 ? at - 80 : 0;
  for (auto i = at; i-- > far;)
    if (plain_base(row, i) && row.is(i - 1, definite)) return std::string(row.key(i));
  for (auto m = mentions.rbegin(); m != mentions.rend(); ++m) {
    const bool grown = m->food && (m->food->kind == "fruit" || m->food->kind == "vegetable");
    if (grown && m->name.end <= at && m->name.end >= far) return m->text;
  }
  return {};
}

/// What a unit without a name measures: the last stuff before with an amount, else the last one, but no seasoning.
std::uint32_t measured_by(const std::vector<Mention>& mentions, std::uint32_t before) {
  const auto seasons = [](const Mention& m) {
    return m.food && (m.food->kind == "spice" || m.food->kind == "condiment" || m.food->kind == "herb" ||
                      m.food->kind == "leaven");
  };
  const auto known = [&](const Mention& m) { return m.food && !seasons(m); };
  for (auto j = before; j-- > 0;)
    if (known(mentions[j]) && amount_told(mentions[j])) return j;
  for (auto j = before; j-- > 0;)
    if (known(mentions[j])) return j;
  return kNone;
}

/// What "it" means at word `at`: juice or liquor told of since the last mention, else that mention.
std::string plain_base_after(const Row& row, const Mention& last, std::uint32_t at) {
  for (auto i = at; i-- > last.name.end;)
    if (plain_base(row, i) && row.is(i - 1, definite)) return std::string(row.key(i));
  return last.text;
}

struct Unit {
  PerUnit per;
  Extent all;                  ///< "to every quart of the liquor"
  std::uint32_t base = kNone;  ///< the mention it names
};

/// A verb that adds stuff, or another order of the kitchen.
bool orders(const Row& row, std::uint32_t i) {
  const auto key = row.key(i);
  if (key == "put" || key == "add" || key == "take" || key == "allow" || key == "use") return true;
  const auto o = row.tags[i].operation;
  return o != kNone && row.lexicon->operations()[o].form == "imperative";
}

/// The words of a unit's base that the lexicon does not name: "of the PULP", "of your clear LIQUOR". Empty where no
/// noun is printed. `bare` tells that the unit has no measure ("to every FRUIT").
Extent printed_base(const Row& row, std::uint32_t from, bool bare) {
  std::uint32_t i = from;
  const bool of = row.is(i, of_word);
  if (of) ++i;
  while (row.is(i, definite) || row.key(i) == "this" || row.key(i) == "that") ++i;
  if (i == from && !bare && !plain_base(row, i)) return {};
  std::uint32_t head = kNone;
  for (auto j = i; j < row.size() && j < i + 4; ++j) {
    if (row.word(j).kind != Word::Kind::word ||
        row.is(j, preposition | conjunction | auxiliary | pronoun | article | number | fraction | vague | or_word))
      break;
    if (plain_base(row, j)) return {i, j + 1};
    const bool first = j == i && of;  // "of the MASH": an order cannot stand there
    if (!first && orders(row, j)) break;
    const auto key = row.key(j);
    const bool manner = row.is(j, bend) || key.ends_with("ly") || (key.size() > 4 && key.ends_with("ed"));
    if (!manner) head = j;
    if (!of && !bare) break;
  }
  return head == kNone ? Extent{} : Extent{i, head + 1};
}

/// "every quart", "each two pounds", "a gallon", after "to", "for", "in".
std::optional<Unit> unit_at(const Row& row, const std::vector<PrintedAmount>& amounts,
                            const std::vector<Mention>& mentions, std::uint32_t i) {
  const auto key = row.key(i);
  if (key != "to" && key != "for" && key != "in" && key != "into" && key != "with" && key != "per") return std::nullopt;
  const bool every = key == "per" || row.is(i + 1, each);
  const std::uint32_t at = key == "per" ? i + 1 : (every ? i + 2 : i + 1);
  if (key == "per" && row.measure(at) == nullptr) return std::nullopt;
  Unit u;
  u.all = {i, at};
  const auto found =
      std::find_if(amounts.begin(), amounts.end(), [&](const PrintedAmount& a) { return a.all.begin == at; });
  if (found != amounts.end() &&
      (every || (found->quantity && (!found->measure.empty() || (found->of && !found->article))))) {
    u.per.quantity = found->quantity ? found->quantity->low : 1;
    u.per.measure = found->measure;
    u.all.end = found->all.end;
  } else if (every && at < row.size() && row.measure(at) && !row.point(at)) {
    u.per.measure = row.measure(at)->name;
    u.all.end = at + row.tags[at].measure_words;
    const auto point = u.all.end;  // "every lb. of fruit", "every lb. fruit"
    if (row.key(point) == "." && row.word(point).glued && point + 1 < row.size() &&
        row.word(point + 1).kind == Word::Kind::word && !row.word(point + 1).capital)
      ++u.all.end;
  } else if (every && at < row.size() && row.word(at).kind == Word::Kind::word && row.tags[at].measure == kNone) {
    u.per.measure.clear();
  } else {
    return std::nullopt;
  }
  const auto base = mention_in(mentions, u.all.end, u.all.end + 6);
  bool joined = base != kNone;
  for (auto j = u.all.end; joined && j < mentions[base].name.begin; ++j)
    joined = !plain_base(row, j) && (!orders(row, j) || row.is(j - 1, of_word | definite)) &&
             (!row.point(j) || row.hyphen(j)) &&
             (!row.is(j, conjunction | preposition | auxiliary | number | article | fraction) || row.is(j, of_word)) &&
             row.word(j).kind != Word::Kind::number;
  if (joined) {
    u.base = base;
    u.per.of = mentions[base].text;
    u.all.end = mentions[base].name.end;
  } else {
    const auto printed = printed_base(row, u.all.end, u.per.measure.empty());
    if (!printed.empty()) {
      u.per.of = singular(row.key(printed.end - 1));
      u.all.end = printed.end;
    }
  }
  return u;
}

/// "To a pound of cherries TAKE a pound of sugar": the first order after the unit tells that it is one.
bool takes_after(const Row& row, std::uint32_t i) {
  while (i < row.size() && (row.point(i) || row.tags[i].operation == kNone) && row.key(i) != "put" &&
         row.key(i) != "take" && row.key(i) != "allow" && row.tags[i].sentence == row.tags[i > 0 ? i - 1 : 0].sentence)
    ++i;
  return row.key(i) == "take" || row.key(i) == "allow";
}

/// Nothing but the phrase's end between the mention and word `at`: "a pound of sugar | to each pound".
bool ends_right_before(const Row& row, const Mention& m, std::uint32_t at) {
  for (auto i = m.name.end; i < at; ++i)
    if (orders(row, i) || (row.point(i) && row.key(i) != "," && !row.hyphen(i)) || row.is(i, conjunction)) return false;
  return at - m.name.end <= 6;
}

}  // namespace

void relate_amounts(const Row& row, std::vector<Mention>& mentions) {
  for (std::uint32_t i = 0; i < row.size(); ++i) {
    const auto key = row.key(i);
    if (key != "as" && key != "same" && key != "equal" && key != "like" && !amount_noun(key)) continue;
    std::uint32_t begin = i;
    auto c = weight_of(row, mentions, i, begin);
    if (!c) c = comparison_at(row, i, begin);
    if (!c) continue;
    const auto target = mention_in(mentions, c->end, c->end + 7);
    if (target == kNone) continue;
    bool near = true;
    for (auto j = c->end; near && j < mentions[target].phrase.begin; ++j)
      near = row.is(j, of_word | definite | bend) || row.hyphen(j);
    auto& m = mentions[target];
    if (!near || amount_told(m)) continue;
    auto to = c->to;
    // "as much cream as you have peaches"
    if (to == kNone && row.key(m.name.end) == "as") to = mention_in(mentions, m.name.end + 1, m.name.end + 6);
    if (to == kNone) to = leant_on(mentions, target);
    Relative r;
    r.factor = c->factor;
    r.by = c->by;
    r.to = to == kNone ? "" : mentions[to].text;
    m.relative = r;
    m.amount_kind = AmountKind::relative;
    m.amount_at = {begin, c->end};
    for (auto j = target + 1; j < mentions.size(); ++j) {  // "the same quantity of mace, cloves, and amber"
      auto& next = mentions[j];
      bool joined = !amount_told(next);
      for (auto k = mentions[j - 1].name.end; joined && k < next.phrase.begin; ++k)
        joined = row.key(k) == "and" || row.key(k) == ",";
      if (!joined || next.phrase.begin == mentions[j - 1].name.end) break;
      next.relative = r;
      next.amount_kind = AmountKind::relative;
      next.amount_at = {begin, c->end};
    }
  }
}

void relate_units(const Row& row, const std::vector<PrintedAmount>& amounts, std::vector<Mention>& mentions) {
  for (std::uint32_t i = 0; i + 1 < row.size(); ++i) {
    const auto unit = unit_at(row, amounts, mentions, i);
    if (!unit) continue;
    const bool every = row.key(i) == "per" || row.is(i + 1, each);
    const auto after = mention_in(mentions, unit->all.end, row.size());
    // backwards: the amount stands before and closes with the unit
    std::uint32_t before = kNone;
    for (std::uint32_t j = 0; j < mentions.size() && mentions[j].name.end <= i; ++j) before = j;
    const bool back = before != kNone && amount_told(mentions[before]) && !mentions[before].per_base &&
                      row.tags[mentions[before].name.begin].sentence == row.tags[i].sentence &&
                      ends_right_before(row, mentions[before], i);
    const auto first = row.tags[i].clause;
    const bool opens = first == i || first + 1 == i || row.is(i - 1, conjunction) || (i > 0 && orders(row, i - 1));
    auto of = unit->per;
    const bool it = row.is(unit->all.end, of_word) && row.key(unit->all.end + 1) == "it";
    if (of.of.empty() && it && !back && before != kNone)  // "boil the vinegar; to each quart of it"
      of.of = plain_base_after(row, mentions[before], i);
    if (of.of.empty() && !back) of.of = plain_base_before(row, mentions, i);
    if (of.of.empty()) {
      const auto upto = back ? before : (after == kNone ? static_cast<std::uint32_t>(mentions.size()) : after);
      const auto base = measured_by(mentions, upto);
      if (base != kNone) of.of = mentions[base].text;
    }
    const bool article_unit = !every && row.is(i + 1, article);
    if (back && (every || row.key(i) == "to")) {
      if (of.measure.empty() && !every) of.measure = mentions[before].measure;  // "one pound of sugar to two of plums"
      const auto amount = mentions[before].amount;
      for (auto j = before + 1; j-- > 0 && (j == before || (amount != kNone && mentions[j].amount == amount));)
        mentions[j].per = of;
    } else if (every || (opens && row.key(i) == "to" && article_unit &&
                         (!row.word(i).capital || takes_after(row, unit->all.end)))) {
      const auto sentence = row.tags[i].sentence;
      for (auto j = after; j != kNone && j < mentions.size(); ++j) {
        auto& m = mentions[j];
        if (row.tags[m.name.begin].sentence != sentence) break;
        if (j == unit->base || !amount_told(m) || m.amount_kind == AmountKind::vague) continue;
        m.per = of;
      }
    } else {
      continue;
    }
    if (unit->base != kNone) {
      auto& b = mentions[unit->base];
      b.per_base = true;
      b.quantity.reset();
      b.measure.clear();
      b.quantity_at = b.measure_at = {};
      b.per.reset();
    }
  }
}

}  // namespace gallipot::parsing
