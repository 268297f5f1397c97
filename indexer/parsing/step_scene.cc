// Cuts the row of words into clauses and finds the verbs in them.
#include "indexer/parsing/step_scene.h"

#include <algorithm>
#include <initializer_list>

namespace gallipot::steps {
namespace {

// A point that ends a clause, and the character that says how strongly it does; 0 for one that does not.
char clause_end(const Words& words, std::size_t i) {
  const Word& w = words[i];
  if (w.kind != Word::Kind::point) return 0;
  const std::string_view k = w.key;
  if (k == "--") return '-';
  if (k.size() != 1) return 0;
  switch (k[0]) {
    case '.': {
      // a point after a short form, in the middle of a sentence ("2 lb. of sugar"), ends nothing
      const bool runs_on = i + 1 < words.size() && !words[i + 1].capital && words[i + 1].kind != Word::Kind::number;
      return runs_on && w.glued ? 0 : '.';
    }
    case '!':
    case '?': return '.';
    case ';':
    case ':': return ';';
    case ',':
    case '(':
    case ')': return ',';
    default: return 0;
  }
}

bool any_of(std::string_view k, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), k) != list.end();
}

// Whether a word that is as often a noun or an adjective stands as an imperative does: at the head of its clause or after
// "and", "then", "to", and with an object behind it ("CORE them", "and PEPPER the steak") or at the end ("boil, and CAN").
bool as_imperative(const Words& words, std::size_t at, std::uint32_t clause_first) {
  const std::string_view before = at > clause_first ? words[at - 1].key : std::string_view{};
  const bool leads = before.empty() || any_of(before, {"and", "then", "to", "or", "&", "should", "must", "may", "next", "also", "not"});
  if (!leads) return false;
  if (at + 1 >= words.size() || words[at + 1].kind == Word::Kind::number) return true;
  const std::string_view after = words[at + 1].key;
  if (words[at + 1].kind == Word::Kind::point) return before == "and" && (after == "." || after == ";" || after == ",");
  return any_of(after, {"it", "them", "the", "your", "a", "an", "some", "all", "each", "this", "these", "one", "two", "three", "four",
                        "six", "eight", "twelve", "half", "as", "well", "up", "and", "in", "on", "over", "with", "lightly", "very", "out"});
}

}  // namespace

std::uint32_t Scene::clause_of(std::uint32_t word) const {
  const auto it = std::upper_bound(clauses.begin(), clauses.end(), word,
                                   [](std::uint32_t w, const Clause& c) { return w < c.first; });
  return it == clauses.begin() ? 0 : static_cast<std::uint32_t>(it - clauses.begin() - 1);
}

Scene set_scene(const Words& words, const StepVerbs& verbs, const Lexicon& lexicon) {
  Scene s;
  s.words = &words;
  s.verbs = &verbs;
  s.lexicon = &lexicon;
  s.durations = find_durations(words);
  s.clauses.reserve(words.size() / 6 + 1);
  s.mentions.reserve(words.size() / 5 + 1);
  Clause now;
  auto close = [&](std::uint32_t at, char by) {
    now.last = at;
    now.ended_by = by;
    if (now.first < now.last) s.clauses.push_back(now);
    now.first = at + 1;
    if (by == '.') {
      ++now.sentence;
      now.sentence_first = at + 1;
    }
  };
  std::uint32_t in_clause = 0;
  for (std::uint32_t i = 0; i < words.size(); ++i) {
    if (const char by = clause_end(words, i)) {
      close(i, by);
      in_clause = 0;
      continue;
    }
    if (words[i].kind != Word::Kind::word) continue;
    const VerbReading r = verbs.find(words[i].key);
    if (!r.verb) continue;
    if (r.verb->ambiguous && (r.form == VerbForm::plain || r.form == VerbForm::third) && !as_imperative(words, i, now.first)) continue;
    // "let it boil" tells one step, and "boil" says which
    if (!s.mentions.empty() && s.mentions.back().verb->base == "let" && s.mentions.back().clause == s.clauses.size() &&
        i - s.mentions.back().word <= 6 && r.form == VerbForm::plain) {
      s.mentions.pop_back();
      --in_clause;
    }
    s.mentions.push_back({i, r.verb, r.form, static_cast<std::uint32_t>(s.clauses.size()), in_clause++});
  }
  close(static_cast<std::uint32_t>(words.size()), ' ');
  s.sentences = now.sentence + 1;
  return s;
}

}  // namespace gallipot::steps
