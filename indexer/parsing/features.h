// The evidence on which a mention is judged, as features told to a sink. Used alike by the model and by its trainer.
#pragma once

#include <algorithm>

#include "indexer/parsing/decide.h"

namespace gallipot::parsing {

namespace evidence {

inline std::string_view name_of(AmountKind kind) {
  switch (kind) {
    case AmountKind::none:
      return "none";
    case AmountKind::measured:
      return "measured";
    case AmountKind::counted:
      return "counted";
    case AmountKind::article:
      return "article";
    case AmountKind::vague:
      return "vague";
    case AmountKind::vague_measured:
      return "vague-measured";
    case AmountKind::relative:
      return "relative";
    case AmountKind::partial:
      return "partial";
    case AmountKind::joint:
      return "joint";
  }
  return "";
}

inline std::string_view part_name(Part::Kind kind) {
  switch (kind) {
    case Part::Kind::paragraph:
      return "paragraph";
    case Part::Kind::list_item:
      return "list";
    case Part::Kind::table_row:
      return "table";
    case Part::Kind::verse:
      return "verse";
    case Part::Kind::note:
      return "note";
    case Part::Kind::remark:
      return "remark";
    case Part::Kind::signature:
      return "signature";
    case Part::Kind::subtitle:
      return "subtitle";
  }
  return "";
}

/// A word before or after, as evidence: points and numbers by their sort.
inline std::string_view word(const Row& row, std::uint32_t i) {
  if (i >= row.size()) return "^";
  if (row.word(i).kind == Word::Kind::number || row.is(i, number)) return "#";
  return row.key(i);
}

/// Where the noun phrase with its determiner and amount begins.
inline std::uint32_t begin_of(const Row& row, const Mention& m) {
  std::uint32_t i = m.phrase.begin;
  if (!m.amount_at.empty() && m.amount_at.begin < i) i = m.amount_at.begin;
  while (i > 0 && row.is(i - 1, definite | article | vague | little | about)) --i;
  return i;
}

inline std::string_view determiner(const Row& row, const Mention& m) {
  if (m.phrase.begin == 0) return "none";
  const auto i = m.phrase.begin - 1;
  if (row.is(i, definite | article | vague | little)) return row.key(i);
  if (row.is(i, of_word) && i > 0 && row.is(i - 1, pronoun)) return "of";
  return "none";
}

/// How the stuff was met before: "new", "taken" (accepted under this name), "base" (the same thing under another name),
/// "passed" (named, not accepted).
inline std::string_view history(const Circumstances& c, std::uint32_t at, std::string_view& how) {
  const auto& all = *c.mentions;
  const auto& m = all[at];
  std::string_view status = "new";
  how = "";
  for (std::uint32_t j = at; j-- > 0;) {
    const auto& o = all[j];
    if (o.text == m.text) {
      if (c.accepted[j]) {
        how = name_of(o.amount_kind);
        return "taken";
      }
      if (status == "new") status = "passed";
    } else if (c.accepted[j] && status != "base" && !m.base.empty() && o.base == m.base) {
      status = "base";
      how = name_of(o.amount_kind);
    }
  }
  return status;
}

}  // namespace evidence

/// Tells every feature of mention `at` to `sink(name, a, b, c)`.
template <typename Sink>
void features(const Circumstances& c, std::uint32_t at, Sink&& sink) {
  using namespace evidence;
  const Row& row = *c.row;
  const auto& all = *c.mentions;
  const Mention& m = all[at];
  const auto& first = row.tags[m.name.begin];
  const auto amount = name_of(m.amount_kind);
  std::string_view how;
  const auto past = history(c, at, how);
  const auto det = determiner(row, m);
  const auto begin = begin_of(row, m);
  const auto before = begin == 0 ? std::string_view("^") : word(row, begin - 1);
  const auto before2 = begin < 2 ? std::string_view("^") : word(row, begin - 2);
  const auto after = word(row, m.name.end);
  const auto after2 = word(row, m.name.end + 1);
  const auto opening = word(row, first.clause < row.size() ? first.clause : m.name.begin);
  const std::string_view kind = m.food ? std::string_view(m.food->kind) : "unknown";
  const bool listed = row.listed[first.line];
  bool listed_before = c.has_list;
  for (std::uint32_t s = 0; s < first.sentence && !listed_before; ++s) listed_before = c.listing[s] != 0;
  const std::string_view place = listed                      ? "list"
                                 : c.listing[first.sentence] ? "listing"
                                 : listed_before             ? "after-list"
                                 : first.sentence == 0       ? "first"
                                                             : "later";
  const std::string_view part = row.recipe->parts.empty() ? "" : part_name(row.recipe->parts[first.line].kind);
  const std::string_view plenty = c.measured >= 5 ? "many" : (c.measured > 0 ? "some" : "none");
  const auto tenth = static_cast<std::size_t>(m.name.begin) * 5 / std::max<std::size_t>(row.size(), 1);
  std::uint32_t sentence_begin = m.name.begin;
  while (sentence_begin > 0 && row.tags[sentence_begin - 1].sentence == first.sentence) --sentence_begin;
  const bool in_title = std::find(c.title.begin(), c.title.end(), m.text) != c.title.end() ||
                        std::find(c.title.begin(), c.title.end(), m.base) != c.title.end();
  const bool variant = (*c.variant)[m.name.begin];

  sink("bias", "", "", "");
  sink("amount", amount, "", "");
  sink("past", past, how, "");
  sink("det", det, "", "");
  sink("amount+past", amount, past, how);
  sink("det+past", det, past, amount);
  sink("place", place, amount, past);
  sink("part", part, past, "");
  sink("plenty", plenty, amount, past);
  sink("stage", std::string_view("012345").substr(tenth, 1), past, amount);
  sink("sentence", word(row, sentence_begin), past, "");
  if (row.word(m.name.begin).key != m.text) sink("printed", row.word(m.name.begin).key, "", "");
  if (begin == m.name.begin && (begin == first.clause || row.is(begin - 1, conjunction)) &&
      row.is(m.name.end, definite | article | pronoun))
    sink("verb-like", past, "", "");
  sink("kind", kind, "", "");
  sink("kind+amount", kind, amount, past);
  sink("before", before, "", "");
  sink("before+past", before, past, "");
  sink("before2", before2, before, "");
  sink("after", after, "", "");
  sink("after+past", after, past, "");
  sink("after2", after, after2, "");
  sink("opening", opening, "", "");
  sink("opening+past", opening, past, "");
  sink("name", m.text, "", "");
  sink("name+past", m.text, past, "");
  if (!m.measure.empty()) sink("measure", m.measure, past, "");
  const auto& about_it = c.sentences[first.sentence];
  sink("talk", about_it.imperatives == 0 ? "none" : (about_it.imperatives == 1 ? "one" : "more"),
       about_it.auxiliaries == 0 ? "none" : (about_it.auxiliaries == 1 ? "one" : "more"), past);
  if (at + 1 < all.size()) {
    const auto& next = all[at + 1];
    const auto gap = m.name.end;
    const auto from = begin_of(row, next);
    if (from >= gap && from - gap <= 2)
      sink("next", word(row, from == gap ? gap : from - 1), name_of(next.amount_kind), past);
  }
  if (in_title) sink("title", past, det, place);
  if (in_title) sink("title+kind", kind, past, "");
  if (m.food && m.food->weak) sink("weak", amount, det, "");
  if (m.per_base) sink("per-base", past, "", "");
  if (m.back_reference) sink("back", past, amount, "");
  if (!m.food) sink("unknown", amount, place, "");
  if (variant) sink("variant", past, amount, "");
  if (m.optional) sink("optional", past, amount, "");
  if (m.alternative_to != kNone) sink("alternative", c.accepted[m.alternative_to] ? "taken" : "passed", past, "");
  if (m.phrase.begin < m.name.begin) {
    sink("modifier", word(row, m.name.begin - 1), "", "");
    sink("modifier+past", word(row, m.name.begin - 1), past, "");
  }
  if (row.word(m.name.begin).capital && m.name.begin != first.clause) sink("capital", past, "", "");
  // joined to the mention before by "and" or a comma alone: what held for that one mostly holds here
  if (at > 0) {
    const auto gap = all[at - 1].name.end;
    const bool joined = begin >= gap && begin - gap <= 2 && begin > gap;
    if (joined)
      sink("joined", word(row, begin - 1), c.accepted[at - 1] ? "taken" : "passed", past);
    else
      sink("apart", c.accepted[at - 1] ? "taken" : "passed", past, det);
  }
  if (m.name.end < row.size() && row.tags[m.name.end].operation != kNone)
    sink("operation-after", row.lexicon->operations()[row.tags[m.name.end].operation].form, past, "");
  if (begin > 0 && row.tags[begin - 1].operation != kNone) {
    const auto& o = row.lexicon->operations()[row.tags[begin - 1].operation];
    sink("operation-before", o.op, o.form, past);
  }
  // the nearest verb of the kitchen before it in the clause
  for (std::uint32_t i = begin; i-- > 0 && row.tags[i].sentence == first.sentence && begin - i < 14;) {
    if (row.tags[i].operation == kNone) continue;
    const auto& verb = row.lexicon->operations()[row.tags[i].operation];
    sink("verb", verb.op, past, det);
    break;
  }
}

}  // namespace gallipot::parsing
