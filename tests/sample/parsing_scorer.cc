// The figures for what stands inside a recipe: ingredients, amounts, operations, durations, page and signature.
#include <algorithm>
#include <cmath>
#include <set>

#include "tests/sample/likeness.h"
#include "tests/sample/scorer.h"

namespace gallipot::sample {
namespace {

struct Pair {
  const GoldIngredient* gold;
  const Ingredient* mine;
};

bool same_amount(const GoldIngredient& gold, const Ingredient& mine) {
  return same_range(gold.quantity, mine.quantity, 0.01) && measure_key(gold.measure) == measure_key(mine.measure);
}

// Pairs ingredients by name, each of ours once; of two with one name, that with the same amount goes first.
std::vector<Pair> pair_up(const GoldRecipe& gold, const ComparableRecipe& recipe, bool head_only) {
  std::vector<const Ingredient*> free;
  for (const ComparableIngredient& one : recipe.ingredients) free.push_back(&one.printed);
  std::vector<Pair> pairs;
  for (const GoldIngredient& wanted : gold.ingredients) {
    auto best = free.end();
    for (auto at = free.begin(); at != free.end(); ++at) {
      if (!same_name(wanted, (*at)->name, head_only)) continue;
      if (best == free.end() || (!same_amount(wanted, **best) && same_amount(wanted, **at))) best = at;
    }
    if (best == free.end()) continue;
    pairs.push_back({&wanted, *best});
    free.erase(best);
  }
  return pairs;
}

void score_ingredients(const GoldRecipe& gold, const ComparableRecipe& recipe, Parsing& score) {
  score.ingredients.found += recipe.ingredients.size();
  for (const ComparableIngredient& one : recipe.ingredients) {
    score.quantities.found += one.printed.quantity.has_value();
    score.relatives.found += one.printed.relative.has_value();
    score.per_units.found += one.printed.per.has_value();
  }
  score.ingredients.hits += pair_up(gold, recipe, false).size();
  for (const auto& [wanted, mine] : pair_up(gold, recipe, true)) {
    score.quantities.hits += wanted->quantity && same_amount(*wanted, *mine);
    score.relatives.hits +=
        wanted->relative && mine->relative && std::abs(*wanted->relative - mine->relative->factor) < 0.01;
    score.per_units.hits += wanted->per && mine->per &&
                            measure_key(wanted->per->measure) == measure_key(mine->per->measure) &&
                            std::abs(wanted->per->quantity - mine->per->quantity) < 0.01;
  }
}

void score_steps(const GoldRecipe& gold, const ComparableRecipe& recipe, Parsing& score) {
  const auto operations = [](const std::vector<Step>& steps) {
    std::vector<std::string> out;
    for (const Step& step : steps) out.push_back(step.op);
    return out;
  };
  score.operations.found += recipe.steps.size();
  score.operations.hits += common_subsequence(operations(gold.steps), operations(recipe.steps));
  std::vector<std::optional<Range>> free;
  for (const Step& step : recipe.steps)
    if (step.minutes) free.push_back(step.minutes);
  score.durations.found += free.size();
  for (const Step& step : gold.steps) {
    const auto hit =
        std::find_if(free.begin(), free.end(), [&](const auto& mine) { return same_range(mine, step.minutes, 0.05); });
    if (hit == free.end()) continue;
    ++score.durations.hits;
    free.erase(hit);
  }
}

void score_print(const GoldRecipe& gold, const ComparableRecipe& recipe, Parsing& score) {
  if (!gold.page.empty()) {
    ++score.pages.found;
    score.pages.hits += recipe.recipe.page == gold.page;
  }
  if (recipe.recipe.contributor.empty()) return;
  ++score.contributors.found;
  score.contributors.hits += same_words(recipe.recipe.contributor, gold.contributor);
}

void count_wanted(const GoldRecipe& gold, Parsing& score) {
  score.ingredients.wanted += gold.ingredients.size();
  for (const GoldIngredient& one : gold.ingredients) {
    score.quantities.wanted += one.quantity.has_value();
    score.relatives.wanted += one.relative.has_value();
    score.per_units.wanted += one.per.has_value();
  }
  score.operations.wanted += gold.steps.size();
  for (const Step& step : gold.steps) score.durations.wanted += step.minutes.has_value();
  score.pages.wanted += !gold.page.empty();
  score.contributors.wanted += !gold.contributor.empty();
}

std::string shown(const std::string& name, const std::optional<Range>& quantity, const std::string& measure) {
  std::string out = name;
  if (!quantity) return out;
  const auto number = [](double x) {
    std::string digits = std::to_string(x);
    return digits.substr(0, digits.find('.') + 3);
  };
  out += " (" + number(quantity->low);
  if (quantity->high != quantity->low) out += "-" + number(quantity->high);
  return out + (measure.empty() ? "" : " ") + measure + ")";
}

// What was missed and what was put in, on one line, so that the commonest error can be read off.
void take_notes(const GoldRecipe& gold, const ComparableRecipe& recipe, std::vector<std::string>& notes) {
  const std::vector<Pair> pairs = pair_up(gold, recipe, false);
  std::string line = gold.place.book + ":" + std::to_string(gold.place.line) + " " + gold.title.substr(0, 30) + ":";
  const std::size_t bare = line.size();
  for (const GoldIngredient& wanted : gold.ingredients) {
    const auto pair = std::find_if(pairs.begin(), pairs.end(), [&](const Pair& one) { return one.gold == &wanted; });
    if (pair == pairs.end())
      line += " -" + shown(wanted.names.front(), wanted.quantity, wanted.measure);
    else if (wanted.quantity.has_value() != pair->mine->quantity.has_value() ||
             (wanted.quantity && !same_amount(wanted, *pair->mine)))
      line += " ~" + shown(wanted.names.front(), wanted.quantity, wanted.measure) + "=" +
              shown("", pair->mine->quantity, pair->mine->measure);
  }
  for (const ComparableIngredient& one : recipe.ingredients)
    if (std::none_of(pairs.begin(), pairs.end(), [&](const Pair& pair) { return pair.mine == &one.printed; }))
      line += " +" + shown(one.printed.name, one.printed.quantity, one.printed.measure);
  if (recipe.recipe.page != gold.page) line += " page " + recipe.recipe.page + " for " + gold.page;
  if (plain_words(recipe.recipe.contributor) != plain_words(gold.contributor))
    line += " signed \"" + recipe.recipe.contributor + "\" for \"" + gold.contributor + "\"";
  if (line.size() > bare) notes.push_back(line);
}

}  // namespace

Parsing score_parsing(const std::vector<GoldRecipe>& gold, const Answer& answer) {
  Parsing score;
  for (const GoldRecipe& one : gold) {
    if (one.household) continue;
    ++score.recipes;
    count_wanted(one, score);
    const ComparableRecipe* recipe = answer.at(one.place);
    if (!recipe) {
      score.notes.push_back(one.place.book + ":" + std::to_string(one.place.line) + " not found: " + one.title);
      continue;
    }
    ++score.located;
    score_ingredients(one, *recipe, score);
    score_steps(one, *recipe, score);
    score_print(one, *recipe, score);
    take_notes(one, *recipe, score.notes);
  }
  return score;
}

}  // namespace gallipot::sample
