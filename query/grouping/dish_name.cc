// Titles to plain names and keys.
#include "query/grouping/dish_name.h"

#include <algorithm>
#include <array>
#include <set>
#include <vector>

#include "indexer/text/words.h"

namespace gallipot {
namespace {

using Row = std::vector<Word>;

/// Words that may stand before a name and are no part of it; several may stand one after another. Longest first.
constexpr std::array<std::string_view, 10> leads = {"how to make", "receipt for", "recipe for", "to make", "another",
                                                    "an",          "the",         "a",          "or",      "ditto"};
/// And after it.
constexpr std::array<std::string_view, 3> tails = {"another way", "and c", "c"};

/// How many words of `phrase` stand at `at`; 0 where it does not stand there whole.
std::size_t covers(const std::vector<const Word*>& words, std::size_t at, std::string_view phrase) {
  std::size_t count = 0;
  while (!phrase.empty()) {
    const std::string_view word = phrase.substr(0, phrase.find(' '));
    if (at + count >= words.size() || words[at + count]->key != word) return 0;
    ++count;
    phrase.remove_prefix(std::min(phrase.size(), word.size() + 1));
  }
  return count;
}

/// Takes off what is no part of the name; never all of it. "A la mode beef" keeps its first word.
void drop_leads(std::vector<const Word*>& words) {
  for (bool again = true; again;) {
    again = false;
    for (const auto lead : leads) {
      const std::size_t n = covers(words, 0, lead);
      if (n == 0 || n >= words.size() || (lead == "a" && words[1]->key == "la")) continue;
      words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(n));
      again = true;
    }
  }
}

void drop_tails(std::vector<const Word*>& words) {
  for (const auto tail : tails) {
    const auto n = static_cast<std::size_t>(std::count(tail.begin(), tail.end(), ' ')) + 1;
    if (words.size() > n && covers(words, words.size() - n, tail) == n) words.resize(words.size() - n);
  }
}

/// Words and numbers of a title, without brackets and what stands in them.
std::vector<const Word*> outside_brackets(const Row& row) {
  std::vector<const Word*> out;
  int depth = 0;
  for (const Word& word : row) {
    if (word.key == "(" || word.key == "[") ++depth;
    if (word.kind != Word::Kind::point && depth == 0) out.push_back(&word);
    if ((word.key == ")" || word.key == "]") && depth > 0) --depth;
  }
  return out;
}

/// Takes "No. 2", "number two" or "2" off the end.
void drop_number(std::vector<const Word*>& words) {
  while (!words.empty() && words.back()->kind == Word::Kind::number) words.pop_back();
  if (words.size() > 1 && (words.back()->key == "no" || words.back()->key == "number")) words.pop_back();
}

const std::string& dish_title_of(const Recipe& recipe) {
  return recipe.dish_title.empty() ? recipe.title : recipe.dish_title;
}

/// Whether the words name the stuff, or one made of it or that it is made of.
bool names(const Row& row, const std::string& stuff, const Lexicon& lexicon) {
  const Foodstuff* wanted = lexicon.foodstuff(stuff);
  for (std::size_t at = 0; at < row.size(); ++at) {
    const auto match = lexicon.foodstuff_phrases().longest(row, at);
    if (match.words == 0) continue;
    const Foodstuff& found = lexicon.foodstuffs()[match.value];
    if (found.name == stuff || found.base == stuff) return true;
    if (wanted != nullptr && !wanted->base.empty() && (found.name == wanted->base || found.base == wanted->base))
      return true;
  }
  return std::any_of(row.begin(), row.end(), [&](const Word& word) { return word.key == stuff; });
}

/// Which telling stems the title has, in order of the alphabet, without those of `but`.
std::string other_words(std::string_view title, std::string_view but, Telling& telling) {
  const auto stems = telling.stems_of(title);
  std::set<std::string> kept(stems.begin(), stems.end());
  for (const auto& stem : telling.stems_of(but)) kept.erase(stem);
  std::string out;
  for (const auto& stem : kept) out += (out.empty() ? "" : " ") + stem;
  return out;
}

}  // namespace

std::string plain_title(const Recipe& recipe) {
  const Words words(dish_title_of(recipe));
  auto kept = outside_brackets(words.all());
  drop_number(kept);
  drop_leads(kept);
  drop_tails(kept);
  std::string out;
  for (const Word* word : kept) out += (out.empty() ? "" : " ") + std::string(word->key);
  return out;
}

std::string dish_key(const ComparableRecipe& recipe, const Lexicon& lexicon, Telling& telling) {
  const std::string title = plain_title(recipe.recipe);
  const Words words(title);
  const Dish& dish = recipe.dish;
  if (!dish.kind.empty()) {
    if (!dish.base.empty() && names(words.all(), dish.base, lexicon)) return dish.base + "|" + dish.kind;
    return "|" + dish.kind + "|" + other_words(title, dish.kind, telling);
  }
  const std::string rest = other_words(title, {}, telling);
  return rest.empty() ? std::string() : "|" + rest;
}

}  // namespace gallipot
