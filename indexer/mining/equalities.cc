// Pairs the amounts of a passage: chains of names for one amount, joined by a verb to another such chain.
#include "indexer/mining/equalities.h"

#include <algorithm>
#include <cmath>

#include "indexer/mining/cues.h"

namespace gallipot::mining {
namespace {

/// Which of the two is told: true for `a`, which stands first.
bool tells_first(const Term& a, const Term& b, Tie tie) {
  if (a.vagueness != b.vagueness) return a.vagueness > b.vagueness;
  if (a.one && tie == Tie::stated && b.quantity.high < 1) return true;  // "a dessert-spoonful is half a table-spoonful"
  return a.quantity.high <= b.quantity.high;                            // the larger is told in the smaller
}

Told told(const Term& a, const Term& b, bool first) {
  const Term& subject = first ? a : b;
  const Term& other = first ? b : a;
  Told out;
  out.measure = subject.measure;
  out.unit = other.measure;
  out.equals = {other.quantity.low / subject.quantity.high, other.quantity.high / subject.quantity.low};
  out.of = !subject.of.empty() ? subject.of : other.of;
  if (subject.counted) out.of.clear();
  out.words = {std::min(a.at.begin, b.at.begin), std::max({a.at.end, b.at.end, b.end})};
  return out;
}

class Pairing {
 public:
  Pairing(const Passage& passage, Sizes& sizes, bool tabular) : p_(passage), sizes_(sizes), tabular_(tabular) {}

  std::vector<Told> all() {
    const auto& terms = p_.terms();
    for (std::size_t i = 0; i + 1 < terms.size();) i = pair_from(i);
    return std::move(out_);
  }

 private:
  bool fits(const Term& a, const Term& b, Tie tie) {
    if (tie != Tie::stated && (a.measure.ends_with(b.measure) || b.measure.ends_with(a.measure))) return false;
    const auto closeness = tie == Tie::stated || tabular_ ? Closeness::stated : Closeness::implied;
    if (a.quantity.low <= 0 || b.quantity.low <= 0) return false;
    if (tie == Tie::stated && (a.counted ? b : a).vagueness == 0 && (a.counted || b.counted)) return true;
    const double mean_a = (a.quantity.low + a.quantity.high) / 2, mean_b = (b.quantity.low + b.quantity.high) / 2;
    return may_equal(sizes_, mean_a, a.measure, mean_b, b.measure, closeness);
  }

  /// The sentence of term i has an equality already.
  bool sentence_states(std::size_t i) const {
    return !out_.empty() && p_.row().tags[p_.terms()[i].at.begin].sentence == stated_sentence_;
  }

  Tie tie(std::size_t i, std::size_t j) {
    const auto& terms = p_.terms();
    const Term b = as_printed(i, j);
    const Tie t = tie_of(p_, terms[i], b, {tabular_, sentence_states(i)});
    if (t == Tie::none) return t;
    if (terms[i].bare && b.bare && t != Tie::stated) return Tie::none;
    if ((terms[i].counted || b.counted) && t != Tie::stated && !egg_for_weight(terms[i], b, t)) return Tie::none;
    if (t == Tie::alias && (terms[i].bare || (b.bare && !named_anew(i, j)))) return Tie::none;
    if (t == Tie::beside && b.bare) return Tie::none;
    const bool unknown = terms[i].vagueness > 1 && b.vagueness > 1 && t == Tie::alias;
    if (unknown && terms[i].one && b.one) return Tie::none;  // "a basin or a bowl": either will do
    return fits(terms[i], b, t) ? t : Tie::none;
  }

  /// "one pound or ten eggs": in old cakes eggs are weighed; other counted things after "or" are other things.
  static bool egg_for_weight(const Term& a, const Term& b, Tie t) {
    const Term& counted = a.counted ? a : b;
    const Term& other = a.counted ? b : a;
    return t == Tie::alias && counted.measure == "egg" && other.vagueness == 0;
  }

  /// "ounces or squares", "one pint (pound) of meal": as many of the one as of the other.
  bool named_anew(std::size_t i, std::size_t j) const {
    const auto& terms = p_.terms();
    if (made_plain(terms[i], terms[j])) return true;
    if (terms[i].vagueness > 1 && terms[j].vagueness > 1) return false;        // "a cup or glass": either will do
    if (in_bulk(terms[i].measure) || in_bulk(terms[j].measure)) return false;  // "a keg or barrel"
    const auto& row = p_.row();
    const auto from = terms[i].at.end, to = terms[j].at.begin;
    const bool bracketed = from < to && row.key(from) == "(";
    if (from == to || to - from > (bracketed ? 2U : 1U)) return false;
    if (bracketed && row.key(terms[j].at.end) != ")") return false;
    return row.key(to - 1) == "or" || (bracketed && to == from + 1);
  }

  bool in_bulk(const std::string& measure) const {
    const auto& size = sizes_.of(measure);
    return size && size->unit == Amount::Unit::millilitre && size->high > 8000;
  }

  /// "two cups of sugar (teacups)": which cup is meant.
  bool made_plain(const Term& a, const Term& b) const {
    const bool bracketed = b.at.begin > 0 && p_.row().key(b.at.begin - 1) == "(" && p_.row().key(b.at.end) == ")";
    return bracketed && b.bare && a.measure != b.measure && b.measure.ends_with(a.measure);
  }

  /// The second of two terms as the first bends it: "ounces or squares" are as many of each.
  Term as_printed(std::size_t i, std::size_t j) const {
    Term b = p_.terms()[j];
    const Term& a = p_.terms()[i];
    if (!a.bare && b.bare && named_anew(i, j) && (a.quantity.high >= 1 || b.vagueness <= 1)) b.quantity = a.quantity;
    return b;
  }

  void emit(const Term& a, const Term& b, Tie t) {
    if (a.measure == b.measure || !fits(a, b, t)) return;
    auto one = told(apiece(a, b), b, tells_first(a, b, t));
    const auto* word = sizes_.lexicon().measure(one.measure);
    if (word && word->kind == "piece" && one.of.empty()) return;  // "a head weighing twenty pounds"
    const auto key = p_.row().key(one.words.end);
    if (key == ")" || key == "]") ++one.words.end;
    out_.push_back(std::move(one));
    stated_sentence_ = p_.row().tags[a.at.begin].sentence;
    if (out_.back().of.empty() && !a.counted) out_.back().of = label_before(a);
  }

  /// "Two onions weighing two ounces each": the weight is of one.
  Term apiece(const Term& a, const Term& b) const {
    Term one = a;
    if (p_.row().key(b.at.end) == "each" || p_.row().key(b.at.end) == "apiece") one.quantity = {1, 1};
    return one;
  }

  /// "Wheat flour. 1 lb. is 1 quart", "Flour is reckoned at": the stuff stands before the amount.
  std::string label_before(const Term& a) const {
    const auto& row = p_.row();
    const auto most = tabular_ ? 5U : 4U;
    auto from = a.at.begin;
    while (from > 0 && from + most > a.at.begin && (tabular_ || !row.point(from - 1))) --from;
    return p_.stuff_between(from, a.at.begin);
  }

  /// Reads the statement that begins with term i, if any; the term to go on with.
  std::size_t pair_from(std::size_t i) {
    const auto& terms = p_.terms();
    std::size_t next = i + 1;
    Tie t = tie(i, next);
    if (t == Tie::none && next + 1 < terms.size() && terms[next].bare) {
      if (const Tie over = tie(i, next + 1); over == Tie::stated || over == Tie::alias) t = over, ++next;
    }
    if (t == Tie::none) return i + 1;
    const Term a = terms[i];
    const Term b = as_printed(i, next);
    emit(a, b, t);
    if (t == Tie::alias) {  // "A or B, will fill C": C is as much as A and as B
      const auto last = chain(a, next);
      if (last + 1 >= terms.size() || tie(last, last + 1) != Tie::stated) return last + 1;
      emit(a, terms[last + 1], Tie::stated);
      if (last != i) emit(terms[last], terms[last + 1], Tie::stated);
      return last + 1;
    }
    const auto last = chain(a.one && tells_first(a, b, t) ? a : b, next);  // "A is B, or C"
    return t == Tie::stated && last == next ? next : last + 1;             // "A = B = C"
  }

  /// Further names of the amount whose last name is term `at`: each is told with `subject`.
  std::size_t chain(const Term& subject, std::size_t at) {
    const auto& terms = p_.terms();
    while (at + 1 < terms.size() && tie(at, at + 1) == Tie::alias) {
      emit(subject, as_printed(at, at + 1), Tie::alias);
      ++at;
    }
    return at;
  }

  const Passage& p_;
  Sizes& sizes_;
  bool tabular_;
  std::vector<Told> out_;
  std::uint32_t stated_sentence_ = 0;
};

}  // namespace

std::vector<Told> equalities(const Passage& passage, Sizes& sizes, bool tabular) {
  return Pairing(passage, sizes, tabular).all();
}

}  // namespace gallipot::mining
