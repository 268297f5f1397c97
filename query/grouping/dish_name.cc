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

constexpr std::array<std::string_view, 6> leads = {"to", "make", "a", "an", "the", "how"};

bool is_lead(std::string_view key) { return std::find(leads.begin(), leads.end(), key) != leads.end(); }

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
  std::size_t first = 0;
  while (first + 1 < kept.size() && is_lead(kept[first]->key)) ++first;
  std::string out;
  for (std::size_t i = first; i < kept.size(); ++i) {
    if (!out.empty()) out += kept[i]->glued && kept[i]->kind == Word::Kind::number ? "" : " ";
    out += kept[i]->key;
  }
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
