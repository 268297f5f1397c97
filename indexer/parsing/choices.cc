// What the cook may choose: alternatives, and stuff for those who like it.
#include <algorithm>
#include <array>

#include "indexer/parsing/naming.h"
#include "indexer/parsing/relations.h"

namespace gallipot::parsing {
namespace {

/// The word before the mention, its modifiers, determiner and amount.
std::uint32_t before_phrase(const Row& row, const Mention& m) {
  std::uint32_t i = m.phrase.begin;
  if (!m.amount_at.empty() && m.amount_at.begin < i) i = m.amount_at.begin;
  while (i > 0 && row.is(i - 1, definite | article | vague | little | about)) --i;
  return i == 0 ? kNone : i - 1;
}

/// The word after a reference in parentheses that stands at i ("basil (No. 397), or tarragon"); else i.
std::uint32_t past_reference(const Row& row, std::uint32_t i) {
  if (row.key(i) != "(") return i;
  for (auto end = i + 1; end < row.size() && end < i + 8; ++end)
    if (row.key(end) == ")") return end + 1;
  return i;
}

bool starts_with(const Row& row, std::uint32_t i, std::string_view a, std::string_view b) {
  return row.key(i) == a && row.key(i + 1) == b;
}

/// "if you like", "if liked", "may be added", "can be added", "if preferred", "if at hand".
bool choice_words(const Row& row, std::uint32_t i) {
  static constexpr std::array<std::string_view, 20> wishes = {
      "like", "liked",  "please",  "pleased",  "choose",    "chosen",     "wish", "wished",   "prefer", "preferred",
      "have", "desire", "desired", "approved", "agreeable", "convenient", "fond", "possible", "handy",  "relished"};
  if (row.key(i) == "if" || row.key(i) == "when" || row.key(i) == "where") {
    for (std::uint32_t j = i + 1; j < i + 7 && j < row.size() && !row.point(j); ++j)
      if (std::find(wishes.begin(), wishes.end(), row.key(j)) != wishes.end())
        return row.key(i) == "if" || row.key(j) != "have";
    return false;
  }
  if ((row.key(i) == "may" || row.key(i) == "can") && row.key(i + 1) == "be") {
    for (std::uint32_t j = i + 2; j < i + 5; ++j)
      if (row.key(j) == "added" || row.key(j) == "used" || row.key(j) == "substituted" || row.key(j) == "omitted")
        return true;
    return false;
  }
  return (row.key(i) == "you" && row.key(i + 1) == "may" &&
          (row.key(i + 2) == "add" || row.key(i + 2) == "put" || row.key(i + 2) == "use")) ||
         row.key(i) == "optional" || row.key(i) == "optionally" || starts_with(row, i, "some", "like") ||
         starts_with(row, i, "some", "add") || starts_with(row, i, "some", "people") || row.key(i) == "improvement";
}

/// A heading inside the recipe after which a variant is told.
bool variant_begins(const Row& row, std::uint32_t i) {
  const bool opens = i == 0 || row.tags[i].clause == i || row.tags[i].sentence != row.tags[i - 1].sentence;
  if (!opens || i < 12) return false;
  if (row.key(i) == "another" &&
      (row.point(i + 1) || row.key(i + 1) == "way" || row.key(i + 1) == "method" || row.key(i + 1) == "mode" ||
       row.key(i + 1) == "receipt" || row.key(i + 1) == "recipe"))
    return row.word(i).capital;
  return starts_with(row, i, "a", "cheap") && row.word(i).capital;
}

/// The mention and the one before are parted by a comma alone in a list that "either" opens.
bool either_list(const Row& row, const std::vector<Mention>& mentions, std::uint32_t at) {
  for (auto k = at; k > 0; --k) {
    const auto gap = mentions[k - 1].name.end;
    if (row.key(gap) != "," || gap + 1 != mentions[k].phrase.begin) return false;
    const auto first = mentions[k - 1].phrase.begin;
    if (first > 0 && row.key(first - 1) == "either") return true;
  }
  return false;
}

}  // namespace

void relate_alternatives(const Row& row, std::vector<Mention>& mentions) {
  for (std::uint32_t j = 1; j < mentions.size(); ++j) {
    auto& m = mentions[j];
    const auto& first = mentions[j - 1];
    if (m.name.begin == first.name.begin) continue;
    auto at = before_phrase(row, m);
    if (at == kNone || at < first.name.end) continue;
    if (row.key(at) == "else" || row.key(at) == "of") at -= at > 0 ? 1 : 0;
    if (!row.is(at, or_word) || row.tags[at].sentence != row.tags[first.name.begin].sentence) continue;
    const auto from = past_reference(row, first.name.end);
    if (from > at || at - from > 4) continue;
    bool joined = true;
    for (auto i = from; i < at && joined; ++i)
      joined = row.key(i) == "," || modifier(row, i) || row.is(i, article) || row.hyphen(i);
    if (!joined) continue;
    m.alternative_to = first.alternative_to != kNone ? first.alternative_to : j - 1;
    // "cream, milk, or custard": the one before is an alternative too where only a comma parts them
    if (j >= 2 && first.alternative_to == kNone && first.amount == kNone &&
        mentions[j - 2].name.end + 1 == first.phrase.begin && row.key(mentions[j - 2].name.end) == "," &&
        row.key(first.phrase.begin - 1) == ",") {
      const auto head = mentions[j - 2].alternative_to != kNone ? mentions[j - 2].alternative_to : j - 2;
      mentions[j - 1].alternative_to = head;
      m.alternative_to = head;
    }
    while (m.alternative_to > 0 && either_list(row, mentions, m.alternative_to)) {
      const auto head = m.alternative_to - 1;  // "of either ham, tongue, veal, or beef"
      for (auto k = head + 1; k <= j; ++k) mentions[k].alternative_to = head;
    }
    const auto& source = mentions[m.alternative_to];
    for (auto k = m.alternative_to + 1; k <= j; ++k) {
      auto& heir = mentions[k];
      if (heir.alternative_to != m.alternative_to || heir.amount_kind != AmountKind::none || heir.quantity ||
          heir.relative)
        continue;
      heir.quantity = source.quantity;
      heir.measure = source.measure;
      heir.relative = source.relative;
      heir.per = source.per;
    }
  }
}

std::vector<bool> mark_optional(const Row& row, std::vector<Mention>& mentions) {
  std::vector<bool> variant(row.size());
  bool inside = false;
  std::vector<std::uint32_t> chosen;  // words where a choice is told
  for (std::uint32_t i = 0; i < row.size(); ++i) {
    inside = inside || variant_begins(row, i);
    variant[i] = inside;
    if (choice_words(row, i)) chosen.push_back(i);
  }
  for (auto& m : mentions) {
    if (variant[m.name.begin]) m.optional = true;
    for (const auto c : chosen) {
      if (row.tags[c].sentence != row.tags[m.name.begin].sentence) continue;
      // the choice stands in the mention's own clause or the one beside it
      const auto low = std::min(c, m.name.begin), high = std::max(c, m.name.end);
      std::uint32_t points = 0;
      for (auto i = low; i < high; ++i)
        if (row.key(i) == ";" || row.key(i) == ":" || row.key(i) == "--")
          points += 2;
        else if (row.key(i) == ",")
          ++points;
      if (points <= 1) m.optional = true;
    }
    if (m.alternative_to != kNone && m.alternative_to < mentions.size() && mentions[m.alternative_to].optional)
      m.optional = true;
  }
  return variant;
}

}  // namespace gallipot::parsing
