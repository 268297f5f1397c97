// The words between two amounts, read from the second back to the first.
#include "indexer/mining/ties.h"

#include <algorithm>

#include "indexer/mining/cues.h"

namespace gallipot::mining {
namespace {

using parsing::Row;

constexpr std::uint32_t longest_gap = 16;  // words

bool is_pronoun(std::string_view key) {
  return key == "it" || key == "them" || key == "they" || key == "you" || key == "we" || key == "he" || key == "she";
}

/// The words between two terms, and what was found going back from the second.
struct Gap {
  const Passage& passage;
  const Term& a;
  const Term& b;
  std::uint32_t begin = 0, end = 0;
  std::uint32_t at = 0;  ///< the word that ties, or end where none was met
  bool comma = false;    ///< a comma between it and the second term

  const Row& row() const { return passage.row(); }
  std::string_view key(std::uint32_t i) const { return row().key(i); }
  bool met() const { return at < end; }
};

/// Points that stand inside "i. e." and "viz."
bool in_abbreviation(const Gap& g, std::uint32_t i) {
  return g.key(i) == "." && i > g.begin && (g.passage.cues(i - 1) & alias) && g.key(i - 1) != "or";
}

/// A full stop between two words that ends no abbreviation. Those that end a measure's are mostly part of its amount;
/// "7 lbs. Avoirdupois to a gallon" is left.
bool sentence_ends(const Passage& passage, std::uint32_t from, std::uint32_t to) {
  const auto& row = passage.row();
  if (from > 0 && row.key(from) == "." && row.key(from - 1).size() <= 4 && from + 1 < to &&
      !row.is(from + 1, parsing::article | parsing::number | parsing::definite))
    ++from;
  for (std::uint32_t i = from; i < to; ++i) {
    const auto key = passage.row().key(i);
    if (key == "!" || key == "?") return true;
    if (key == "." && !(i > from && (passage.cues(i - 1) & alias) && passage.row().key(i - 1) != "or")) return true;
  }
  return false;
}

/// Where "i. e." begins, or the bracket directly before it.
std::uint32_t opening_of(const Gap& g, std::uint32_t at) {
  while (at > g.begin && ((g.passage.cues(at - 1) & alias) || g.key(at - 1) == ".") && g.key(at - 1) != "or") --at;
  return at > g.begin && (g.key(at - 1) == "(" || g.key(at - 1) == "[") ? at - 1 : at;
}

/// Goes back over words that may stand between the tying word and the second amount.
Gap look_back(const Passage& passage, const Term& a, const Term& b) {
  Gap g{passage, a, b, a.at.end, b.at.begin, b.at.begin};
  const Row& row = passage.row();
  for (std::uint32_t i = g.end; i-- > g.begin;) {
    const auto cues = passage.cues(i);
    const auto key = row.key(i);
    if (key == "=" || key == "\"" || key == "--" || key == ":" || key == "(" || key == "[" || key == ";" ||
        (cues & (verb | copula | alias))) {
      g.at = i;
      if ((cues & alias) && key != "or") g.at = opening_of(g, i);
      return g;
    }
    if (key == "," && !g.comma) {
      g.comma = true;
    } else if (!(cues & link) && !in_abbreviation(g, i) && !row.is(i, parsing::about | parsing::article)) {
      return g;
    }
  }
  return g;
}

/// The two amounts are of two different stuffs, so that they are two things and not one.
bool different_stuff(const Gap& g) { return !g.a.of.empty() && !g.b.of.empty() && g.a.of != g.b.of; }

/// Counts words from `from` to `to` that are not points; large where one of them cannot stand in a subject.
std::uint32_t subject_words(const Gap& g, std::uint32_t from, std::uint32_t to, bool strict) {
  std::uint32_t words = 0;
  for (std::uint32_t i = from; i < to; ++i) {
    const auto key = g.key(i);
    if (g.row().point(i)) {
      if (key == ";" || key == ":") return longest_gap;
      continue;
    }
    ++words;
    if (is_pronoun(key)) return longest_gap;
    if (strict && (key == "and" || key == "then" || key == "with" || key == "to" || key == "for" || key == "till" ||
                   key == "until" || key == "in" || (g.passage.cues(i) & allotted)))
      return longest_gap;
  }
  return words;
}

/// Whether the verb can have the first amount for its subject: "and fill a pint bowl", ", weigh a pound" are orders.
bool has_subject(const Gap& g, Setting setting) {
  const auto before = g.at > g.begin ? g.at - 1 : g.begin;
  const auto key = g.key(g.at);
  const bool order_like = key == "fill" || key == "make" || key == "weigh" || key == "hold" || key == "mean" ||
                          key == "contain" || key == "measures";
  if (g.at == g.begin) return true;
  if (g.key(before) == "and" || g.key(before) == "then") return false;
  return setting.tabular || !order_like || !g.row().point(before);
}

Tie by_verb(const Gap& g, Setting setting) {
  if (different_stuff(g) || !has_subject(g, setting)) return Tie::none;
  const bool strong = (g.passage.cues(g.at) & verb) != 0;
  const auto tying = g.key(g.at);
  const bool yields = tying == "make" || tying == "makes" || tying == "making";
  const bool filled = tying == "containing" || tying == "contains";
  if (filled && (g.b.counted || (!g.b.of.empty() && g.a.of != g.b.of)))
    return Tie::none;                                                        // a bowl with something in it
  if (yields && g.row().is(g.b.at.end, parsing::of_word)) return Tie::none;  // "will make four pounds of jam"
  auto lead = g.at;  // "is to be understood", "will generally weigh"
  while (lead > g.begin && ((g.passage.cues(lead - 1) & link) || g.row().is(lead - 1, parsing::auxiliary))) --lead;
  const auto words = subject_words(g, std::min(g.a.end, lead), lead, !strong || !setting.tabular);
  return words <= (strong ? 9u : 7u) ? Tie::stated : Tie::none;
}

/// The bracket that opens at `open` holds the second amount and little else.
bool closes_soon(const Gap& g) {
  const auto last = std::min(g.row().size(), std::max(g.b.at.end, g.b.end) + 9);
  for (std::uint32_t i = g.b.at.end; i < last; ++i) {
    const auto key = g.key(i);
    if (key == ")" || key == "]") return true;
    if (g.passage.cues(i) & allotted) return false;
  }
  return false;
}

/// Between the first amount and "or": its stuff and little else.
bool named_only(const Gap& g, std::uint32_t to) {
  std::uint32_t words = 0, commas = 0;
  for (std::uint32_t i = std::min(g.a.end, to); i < to; ++i) {
    const auto key = g.key(i);
    if (key == "(" && i + 1 == to) continue;
    if (key == ",") {
      if (++commas > 1) return false;
      continue;
    }
    if (g.row().hyphen(i) || in_abbreviation(g, i) || (g.passage.cues(i) & alias)) continue;
    if (g.row().point(i)) return false;
    if (g.row().is(i, parsing::preposition | parsing::auxiliary | parsing::number) || key == "and") return false;
    if (++words > 5) return false;
  }
  return true;
}

/// Whether the bracket around the second amount closes after it and its stuff; the mark of a note may stand before.
bool closes_at_once(const Gap& g) {
  auto close = g.key(g.b.at.end) == ")" || g.key(g.b.at.end) == "]" ? g.b.at.end : g.b.end;
  if (g.key(close) == ".") ++close;
  for (int i = 0; i < 4 && close < g.row().size() && g.row().word(close).glued && g.key(close) != ")"; ++i) ++close;
  const auto key = g.key(close);
  return key == ")" || key == "]";
}

Tie by_alias(const Gap& g) {
  if (different_stuff(g)) return Tie::none;
  const auto before = g.a.at.begin > 0 ? g.key(g.a.at.begin - 1) : std::string_view();
  if (before == "either" || before == "or" || !named_only(g, g.at)) return Tie::none;
  const bool bracketed = g.at > g.begin && g.key(g.at - 1) == "(";
  return bracketed && closes_at_once(g) ? Tie::stated : Tie::alias;
}

Tie by_bracket(const Gap& g) {
  if (different_stuff(g) || !closes_soon(g) || !named_only(g, g.at)) return Tie::none;
  return closes_at_once(g) ? Tie::stated : Tie::alias;
}

/// "reckoned at 7 lbs. to a gallon": a verb of measuring stands shortly before.
bool weighed_before(const Gap& g) {
  const auto from = g.a.at.begin > 5 ? g.a.at.begin - 5 : 0;
  for (auto i = from; i < g.a.at.begin; ++i)
    if (g.passage.cues(i) & verb) return true;
  return false;
}

/// "40 lbs. to the bushel", "four table-spoons to a wine-glass".
Tie by_share(const Gap& g, Setting setting) {
  auto last = g.end;
  while (last > g.begin && (last == g.end || g.row().is(last, parsing::definite | parsing::article | parsing::each)))
    --last;
  if (g.end == g.begin || !(g.passage.cues(last) & share)) return Tie::none;
  if (g.a.counted || !g.b.one || g.row().is(g.b.at.end, parsing::of_word) || !g.b.of.empty() || !g.a.of.empty())
    return Tie::none;
  if (last > g.a.at.end + 2) return Tie::none;
  const bool bulk = g.a.vagueness == 0 && (g.b.measure == "bushel" || g.b.measure == "peck" || g.b.measure == "barrel");
  if (!setting.tabular && !setting.stated && !bulk && !weighed_before(g)) return Tie::none;
  return Tie::stated;
}

/// "the firkin of nine gallons", "the butt, of 108 gallons".
Tie by_contents(const Gap& g) {
  const auto words = g.end - g.begin;
  const bool of =
      words > 0 && words <= 2 && g.row().is(g.end - 1, parsing::of_word) && (words == 1 || g.key(g.begin) == ",");
  const bool vessel = g.a.one && g.a.vagueness >= 1 && g.b.vagueness <= 1 && !g.b.bare;
  return of && vessel && g.b.of.empty() && !g.row().is(g.b.at.end, parsing::of_word) ? Tie::stated : Tie::none;
}

Tie beside(const Gap& g, Setting setting) {
  if (different_stuff(g) || (!setting.tabular && !setting.stated)) return Tie::none;
  if (!setting.tabular && !g.b.of.empty()) return Tie::none;
  const bool plain = g.a.of.empty() && g.b.one && !g.b.bare && g.end <= g.begin + 1;  // "and two quarts a pottle"
  if (!setting.tabular && !g.a.bare && !plain) return Tie::none;
  const auto from = std::min(std::max(g.a.end, g.begin), g.end);
  const auto to = g.met() ? g.at : g.end;
  const auto words = subject_words(g, from, to, true);
  return words <= (setting.tabular ? 5u : 1u) ? Tie::beside : Tie::none;
}

}  // namespace

Tie tie_of(const Passage& passage, const Term& a, const Term& b, Setting setting) {
  const Row& row = passage.row();
  if (b.at.begin < a.at.end || b.at.begin - a.at.end > longest_gap) return Tie::none;
  if (sentence_ends(passage, a.at.end, b.at.begin)) return Tie::none;
  const Gap g = look_back(passage, a, b);
  if (const auto tie = by_contents(g); tie != Tie::none) return tie;
  if (g.met()) {
    const auto key = row.key(g.at);
    const auto cues = passage.cues(g.at);
    if (key == "=") return different_stuff(g) ? Tie::none : Tie::stated;
    if (key == "(" || key == "[") return by_bracket(g);
    if (key == "--" || key == ":" || key == "\"") return beside(g, setting);
    if (key == ";") return Tie::none;
    if (const auto tie = by_share(g, setting); tie != Tie::none) return tie;
    if (cues & alias) return by_alias(g);
    return by_verb(g, setting);
  }
  if (const auto tie = by_share(g, setting); tie != Tie::none) return tie;
  return beside(g, setting);
}

}  // namespace gallipot::mining
