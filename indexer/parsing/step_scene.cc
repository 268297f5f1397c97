// Cuts the row of words into clauses and finds the verbs in them.
#include "indexer/parsing/step_scene.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <unordered_map>

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
    case '?':
      return '.';
    case ';':
    case ':':
      return ';';
    case ',':
    case '(':
    case ')':
      return ',';
    default:
      return 0;
  }
}

WordClass class_of(std::string_view k) {
  using W = WordClass;
  static const std::unordered_map<std::string_view, WordClass> table = {
      {"a", W::determiner},
      {"an", W::determiner},
      {"the", W::determiner},
      {"some", W::determiner},
      {"this", W::determiner},
      {"these", W::determiner},
      {"your", W::determiner},
      {"his", W::determiner},
      {"its", W::determiner},
      {"their", W::determiner},
      {"any", W::determiner},
      {"each", W::determiner},
      {"every", W::determiner},
      {"all", W::all},
      {"no", W::determiner},
      {"more", W::determiner},
      {"as", W::as},
      {"it", W::object},
      {"them", W::object},
      {"they", W::subject},
      {"you", W::subject},
      {"we", W::subject},
      {"i", W::subject},
      {"he", W::subject},
      {"she", W::subject},
      {"which", W::relative},
      {"that", W::relative},
      {"who", W::relative},
      {"is", W::be},
      {"are", W::be},
      {"be", W::be},
      {"been", W::be},
      {"being", W::be},
      {"was", W::be},
      {"were", W::be},
      {"have", W::have},
      {"has", W::have},
      {"had", W::have},
      {"having", W::have},
      {"should", W::modal},
      {"must", W::modal},
      {"may", W::modal},
      {"can", W::modal},
      {"will", W::modal},
      {"shall", W::modal},
      {"might", W::modal},
      {"would", W::modal},
      {"could", W::modal},
      {"do", W::doing},
      {"does", W::doing},
      {"don't", W::negation},
      {"not", W::negation},
      {"never", W::negation},
      {"to", W::to},
      {"and", W::conjunction},
      {"&", W::conjunction},
      {"or", W::alternative},
      {"but", W::but},
      {"then", W::then},
      {"next", W::then},
      {"so", W::then},
      {"afterwards", W::then},
      {"also", W::then},
      {"when", W::when},
      {"if", W::condition},
      {"till", W::till},
      {"until", W::till},
      {"before", W::when},
      {"after", W::when},
      {"while", W::when},
      {"whilst", W::when},
      {"unless", W::condition},
      {"in", W::preposition},
      {"into", W::preposition},
      {"on", W::preposition},
      {"upon", W::preposition},
      {"over", W::preposition},
      {"with", W::preposition},
      {"by", W::preposition},
      {"from", W::preposition},
      {"at", W::preposition},
      {"for", W::preposition},
      {"of", W::of},
      {"through", W::preposition},
      {"under", W::preposition},
      {"up", W::particle},
      {"down", W::particle},
      {"out", W::particle},
      {"off", W::particle},
      {"well", W::adverb},
      {"very", W::adverb},
      {"let", W::let},
      {"lets", W::let},
      {"again", W::adverb},
      {"together", W::adverb},
  };
  if (k.size() <= 10)
    if (const auto it = table.find(k); it != table.end()) return it->second;
  return k.size() > 4 && k.substr(k.size() - 2) == "ly" ? W::adverb : W::other;
}

bool any_of(std::string_view k, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), k) != list.end();
}

// Whether a word that is as often a noun or an adjective stands as an imperative does: at the head of its clause or
// after "and", "then", "to", and with an object behind it ("CORE them", "and PEPPER the steak") or at the end ("boil,
// and CAN").
bool as_imperative(const Words& words, std::size_t at, std::uint32_t clause_first) {
  const std::string_view before = at > clause_first ? words[at - 1].key : std::string_view{};
  const bool leads = before.empty() ||
                     any_of(before, {"and", "then", "to", "or", "&", "should", "must", "may", "next", "also", "not"});
  if (!leads) return false;
  if (at + 1 >= words.size() || words[at + 1].kind == Word::Kind::number) return true;
  const std::string_view after = words[at + 1].key;
  if (words[at + 1].kind == Word::Kind::point) return before == "and" && (after == "." || after == ";" || after == ",");
  return any_of(after, {"it",    "them", "the", "your",  "a",    "an",   "some",  "all",     "each", "this",
                        "these", "one",  "two", "three", "four", "six",  "eight", "twelve",  "half", "as",
                        "well",  "up",   "and", "in",    "on",   "over", "with",  "lightly", "very", "out"});
}

}  // namespace

std::string_view class_name(WordClass c) {
  static constexpr std::array<std::string_view, 25> names = {
      "word", "det", "all", "as",   "pron", "subj", "rel",  "be",   "have", "modal", "do",  "not", "to",
      "and",  "or",  "but", "then", "when", "if",   "till", "prep", "of",   "part",  "adv", "let"};
  return names[static_cast<std::size_t>(c)];
}

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
  s.classes.assign(words.size(), WordClass::other);
  for (std::uint32_t i = 0; i < words.size(); ++i) {
    if (words[i].kind == Word::Kind::word) s.classes[i] = class_of(words[i].key);
    if (const char by = clause_end(words, i)) {
      close(i, by);
      in_clause = 0;
      continue;
    }
    if (words[i].kind != Word::Kind::word) continue;
    const VerbReading r = verbs.find(words[i].key);
    if (!r.verb) continue;
    if (r.verb->ambiguous && (r.form == VerbForm::plain || r.form == VerbForm::third) &&
        !as_imperative(words, i, now.first))
      continue;
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
