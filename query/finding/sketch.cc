// Sketches and their likeness: cosines of weighted words, stuff and operations.
#include "query/finding/sketch.h"

#include <algorithm>
#include <cmath>

#include "indexer/lexicon/tables.h"
#include "indexer/normalizing/normalize.h"
#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

constexpr double made_of_share = 0.5;  ///< what "walnut" counts where "walnut juice" is called for

double cosine(const Weights& a, const Weights& b) {
  double dot = 0, aa = 0, bb = 0;
  for (const auto& [key, weight] : a) {
    aa += weight * weight;
    if (const auto it = b.find(key); it != b.end()) dot += weight * it->second;
  }
  for (const auto& [key, weight] : b) bb += weight * weight;
  return aa > 0 && bb > 0 ? dot / std::sqrt(aa * bb) : 0;
}

/// Share of the asked weight that the candidate covers, with a plain count of what it has beside as a drag.
double overlap(const Weights& asked, const Weights& has) {
  double shared = 0, all = 0;
  for (const auto& [key, weight] : asked) {
    all += weight;
    if (has.contains(key)) shared += weight;
  }
  return all > 0 ? shared / all : 0;
}

void add_dish(Sketch& sketch, const Dish& dish, const Lexicon& lexicon, Telling& telling) {
  if (!dish.base.empty()) {
    sketch.bases[dish.base] = telling.rarity(schema::dish_base, dish.base);
    if (const auto* food = lexicon.foodstuff(dish.base); food && !food->base.empty())
      sketch.bases[food->base] = made_of_share * telling.rarity(schema::dish_base, food->base);
  }
  if (!dish.kind.empty()) {
    sketch.kinds[dish.kind] = 1;
    for (const auto& kind : lexicon.dish_kinds())
      if (kind.name == dish.kind && !kind.family.empty()) sketch.families[kind.family] = 1;
  }
}

void add_stuff(Sketch& sketch, const std::string& name, double weight, const Lexicon& lexicon, Telling& telling) {
  double& own = sketch.stuff[name];
  own = std::max(own, weight * telling.rarity(schema::ingredient, name));
  const auto* food = lexicon.foodstuff(name);
  if (!food || food->base.empty() || food->base == name) return;
  double& base = sketch.stuff[food->base];
  base = std::max(base, made_of_share * weight * telling.rarity(schema::ingredient, food->base));
}

void scale_into(Weights& into, const Weights& from, double by) {
  for (const auto& [key, weight] : from) into[key] += weight * by;
}

void scale_into(Sketch& into, const Sketch& from, double by) {
  scale_into(into.title, from.title, by);
  scale_into(into.bases, from.bases, by);
  scale_into(into.kinds, from.kinds, by);
  scale_into(into.families, from.families, by);
  scale_into(into.stuff, from.stuff, by);
  scale_into(into.method, from.method, by);
}

}  // namespace

Telling::Telling(const Shelf& shelf, const Lexicon& lexicon)
    : database_(shelf.database()),
      documents_(std::max(1.0, static_cast<double>(database_.get_doccount()))),
      stems_(lexicon) {
  if (const auto table = load_table("silent-words")) {
    for (const auto& row : table->rows)
      for (auto& stem : stems_.of(row.cells.front())) silent_.insert(std::move(stem));
  }
}

double Telling::rarity(const std::string& term) {
  const auto [it, fresh] = known_.try_emplace(term, 0.0);
  if (fresh) {
    const auto n = static_cast<double>(database_.get_termfreq(term));
    it->second = std::max(0.0, std::log((documents_ - n + 0.5) / (n + 0.5)));
  }
  return it->second;
}

double Telling::rarity(std::string_view prefix, std::string_view word) { return rarity(schema::term(prefix, word)); }

std::vector<std::string> Telling::stems_of(std::string_view text) {
  auto out = stems_.of(text);
  std::erase_if(out, [&](const std::string& stem) { return silent_.contains(stem); });
  return out;
}

Sketch sketch_of(const ComparableRecipe& recipe, const Lexicon& lexicon, const Ranking& ranking, Telling& telling) {
  Sketch out;
  const auto& title = recipe.recipe.dish_title.empty() ? recipe.recipe.title : recipe.recipe.dish_title;
  for (const auto& stem : telling.stems_of(title)) out.title[stem] = telling.rarity(schema::title, stem);
  add_dish(out, recipe.dish, lexicon, telling);
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
    const auto& printed = recipe.ingredients[i].printed;
    const auto* food = lexicon.foodstuff(printed.name);
    const bool chief =
        !recipe.dish.base.empty() && (printed.name == recipe.dish.base || (food && food->base == recipe.dish.base));
    double weight = chief ? ranking.stuff_main : 1;
    if (printed.optional || !printed.alternative_of.empty()) weight *= 0.5;
    add_stuff(out, printed.name, weight, lexicon, telling);
  }
  for (const auto& step : recipe.steps) out.method[step.op] += telling.rarity(schema::operation, step.op);
  return out;
}

Sketch sketch_of(const std::vector<std::string>& words, const Lexicon& lexicon, const Ranking& ranking,
                 Telling& telling) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : " ") + word;
  Sketch out;
  for (const auto& stem : telling.stems_of(text)) out.title[stem] = telling.rarity(schema::title, stem);
  const Dish dish = dish_of(text, {}, {}, lexicon);
  add_dish(out, dish, lexicon, telling);
  if (lexicon.foodstuff(dish.base)) add_stuff(out, dish.base, ranking.stuff_main, lexicon, telling);
  return out;
}

Sketch mixed(const Sketch& first, const std::vector<const Sketch*>& others, double share) {
  Sketch out;
  if (others.empty()) share = 0;
  scale_into(out, first, 1 - share);
  for (const auto* other : others) scale_into(out, *other, share / static_cast<double>(others.size()));
  return out;
}

Alike alike(const Sketch& asked, const Sketch& candidate, const Ranking& r) {
  Alike out;
  const double parts = r.name_words + r.name_base + r.name_kind + r.name_family;
  if (parts > 0) {
    out.name =
        (r.name_words * cosine(asked.title, candidate.title) + r.name_base * overlap(asked.bases, candidate.bases) +
         r.name_kind * overlap(asked.kinds, candidate.kinds) +
         r.name_family * overlap(asked.families, candidate.families)) /
        parts;
  }
  out.stuff = cosine(asked.stuff, candidate.stuff);
  out.method = cosine(asked.method, candidate.method);
  return out;
}

}  // namespace gallipot
