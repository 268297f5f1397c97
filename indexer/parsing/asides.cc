// Takes out what is told in passing: stuff denied, stuff that the dish goes with, and words that only look like herbs.
#include "indexer/parsing/asides.h"

#include <algorithm>
#include <initializer_list>

#include "indexer/parsing/naming.h"

namespace gallipot::parsing {
namespace {

/// The first word of the mention with its determiner and amount.
std::uint32_t opening_of(const Row& row, const Mention& m) {
  auto i = m.phrase.begin;
  if (!m.amount_at.empty() && m.amount_at.begin < i) i = m.amount_at.begin;
  while (i > 0 && row.is(i - 1, definite | article | vague | little | about)) --i;
  return i;
}

/// Nothing but "and", "or", "nor" and a comma parts the mention from the one before.
bool joined(const Row& row, const Mention& before, const Mention& m) {
  const auto from = opening_of(row, m);
  if (from <= before.name.end) return false;
  for (auto i = before.name.end; i < from; ++i)
    if (row.key(i) != "," && row.key(i) != "and" && !row.is(i, or_word) && row.key(i) != "nor" &&
        row.key(i) != "either")
      return false;
  return true;
}

bool one_of(std::string_view key, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), key) != words.end();
}

/// "use NO salt", "WITHOUT any sugar", "WITHOUT adding water", "do NOT add any cream".
bool denied(const Row& row, const Mention& m) {
  auto i = m.phrase.begin;
  // "no" may have been read as a word that modifies the name
  for (auto j = m.phrase.begin; j < m.name.begin; ++j)
    if (row.key(j) == "no") return row.key(j + 1) != "more" && row.key(j + 1) != "less";
  bool any = false;
  while (i > 0 && row.is(i - 1, vague | article | little)) any = true, --i;
  while (i > 0 && one_of(row.key(i - 1), {"any", "more", "other", "further"})) {
    if (row.key(i - 1) != "any") return false;  // "no more sugar than": some is wanted
    any = true, --i;
  }
  if (i == 0) return false;
  if (row.key(i - 1) == "no" || row.key(i - 1) == "neither" || row.key(i - 1) == "nor") return true;
  if (row.is(i - 1, of_word) && i >= 3 && row.key(i - 2) == "addition") i -= row.is(i - 3, definite) ? 3 : 2;
  if (i >= 2 && one_of(row.key(i - 1), {"adding", "using"})) --i;
  if (i > 0 && row.key(i - 1) == "without")
    return i < 2 || row.key(i - 2) != "well";  // "does well without" is a choice
  if (any && i >= 2 && one_of(row.key(i - 1), {"add", "use", "put", "in", "need", "require", "want"})) {
    if (row.key(i - 1) == "in") --i;
    return i >= 2 && (row.key(i - 2) == "not" || row.key(i - 2) == "never");
  }
  return false;
}

/// The dishes that a sauce, a pickle or a pudding goes with.
bool goes_with_dishes(const Mention& m) {
  return m.food && (m.food->kind == "meat" || m.food->kind == "fish") && m.amount == kNone && !m.quantity;
}

/// "serve WITH FOWL", "eat it with roast mutton", "a good sauce FOR FISH".
bool served_with(const Row& row, const Mention& m) {
  if (!goes_with_dishes(m)) return false;
  const auto i = opening_of(row, m);
  if (i < 2) return false;
  if (row.key(i - 1) == "for")  // "For fish take" tells what the recipe is for
    return i == m.phrase.begin && !row.word(i - 1).capital && row.tags[i - 1].clause != i - 1;
  if (row.key(i - 1) != "with" && row.key(i - 1) != "to") return false;
  const auto begin = row.tags[i - 1].sentence;
  for (auto j = i - 1; j-- > 0 && i - j < 8 && row.tags[j].sentence == begin && row.key(j) != ";";) {
    if (one_of(row.key(j), {"serve", "served", "eat", "eaten", "relish", "accompaniment", "accompany"})) return true;
    if (row.tags[j].operation != kNone && row.lexicon->operations()[row.tags[j].operation].op != "serve") return false;
  }
  return false;
}

/// A weak form of a herb ("time") counts where another seasoning stands beside it.
bool lonely_herb(const Row& row, const std::vector<Mention>& mentions, std::size_t at) {
  const auto& m = mentions[at];
  if (!m.food || !m.food->weak || m.food->kind != "herb" || m.amount_kind == AmountKind::measured) return false;
  const auto seasons = [](const Mention& o) {
    return o.food && (o.food->kind == "herb" || o.food->kind == "spice" || o.food->base == "herb");
  };
  if (at > 0 && seasons(mentions[at - 1]) && joined(row, mentions[at - 1], m)) return false;
  return !(at + 1 < mentions.size() && seasons(mentions[at + 1]) && joined(row, m, mentions[at + 1]));
}

}  // namespace

void drop_asides(const Row& row, std::vector<Mention>& mentions) {
  std::vector<char> out(mentions.size(), 0);
  for (std::size_t j = 0; j < mentions.size(); ++j) {
    const auto& m = mentions[j];
    const bool after = j > 0 && joined(row, mentions[j - 1], m) && m.amount_kind == AmountKind::none;
    // what was said of the one before holds for what "or" joins to it
    const bool carried = after && out[j - 1] == 1 && row.key(opening_of(row, m) - 1) != "and";
    const bool served = after && out[j - 1] == 2 && goes_with_dishes(m);
    if (denied(row, m) || carried)
      out[j] = 1;
    else if (served_with(row, m) || served)
      out[j] = 2;
    else if (lonely_herb(row, mentions, j))
      out[j] = 3;
  }
  std::size_t j = 0;
  std::erase_if(mentions, [&](const Mention&) { return out[j++] != 0; });
}

}  // namespace gallipot::parsing
