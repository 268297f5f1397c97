// Variants of a recipe: drawn and weighed by all that it is, then told apart in words.
#include "query/grouping/variants.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "indexer/storing/schema.h"
#include "query/finding/weigh.h"

namespace gallipot {
namespace {

/// The words of the recipe that tell most of it, weighted by rarity and repetition.
Weights telling_words(const ComparableRecipe& recipe, Telling& telling, std::size_t most) {
  Weights counts;
  for (const auto& stem : telling.stems_of(recipe.recipe.text)) counts[stem] += 1;
  std::vector<std::pair<double, std::string>> order;
  for (const auto& [stem, count] : counts) order.emplace_back(count * telling.rarity("Z", stem), stem);
  std::sort(order.begin(), order.end(),
            [](const auto& a, const auto& b) { return a.first != b.first ? a.first > b.first : a.second < b.second; });
  if (order.size() > most) order.resize(most);
  Weights out;
  for (const auto& [weight, stem] : order) out[stem] = 1;
  return out;
}

std::set<std::string> stuff_of(const ComparableRecipe& recipe) {
  std::set<std::string> out;
  for (const auto& ingredient : recipe.ingredients) out.insert(ingredient.printed.name);
  return out;
}

/// Names in `a` that `b` has (or has not), most telling first.
std::vector<std::string> told(const std::set<std::string>& a, const std::set<std::string>& b, bool shared,
                              Telling& telling) {
  std::vector<std::pair<double, std::string>> order;
  for (const auto& name : a)
    if (b.contains(name) == shared) order.emplace_back(telling.rarity(schema::ingredient, name), name);
  std::sort(order.begin(), order.end(),
            [](const auto& x, const auto& y) { return x.first != y.first ? x.first > y.first : x.second < y.second; });
  std::vector<std::string> out;
  for (auto& [weight, name] : order) out.push_back(std::move(name));
  return out;
}

std::string list(const std::vector<std::string>& names, std::size_t most) {
  std::string out;
  for (std::size_t i = 0; i < std::min(names.size(), most); ++i) out += (i ? ", " : "") + names[i];
  if (names.size() > most) out += fmt::format(" and {} more", names.size() - most);
  return out;
}

std::string reason(const Variant& variant, const ComparableRecipe& asked, const ComparableRecipe& found) {
  std::string name;
  if (!asked.dish.base.empty() && asked.dish.base == found.dish.base) name = asked.dish.base;
  if (!asked.dish.kind.empty() && asked.dish.kind == found.dish.kind)
    name += (name.empty() ? "" : " ") + asked.dish.kind;
  std::string out = name.empty() ? "under another name" : "the name " + name;
  out += variant.shared.empty() ? "; no stuff in common" : "; both have " + list(variant.shared, 5);
  if (!variant.lacks.empty()) out += "; without " + list(variant.lacks, 4);
  if (!variant.adds.empty()) out += "; with " + list(variant.adds, 4);
  return out;
}

}  // namespace

Outcome<VariantSet> variants_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view id, const Filter& filter,
                                std::size_t limit, const Ranking& ranking) {
  const auto recipe = shelf.recipe(id);
  if (!recipe) return tl::unexpected<Fault>(recipe.error());
  const auto docid = shelf.docid_of(id);
  Telling telling(shelf, lexicon);
  const Sketch asked = sketch_of(*recipe, lexicon, ranking, telling);
  const auto words = telling_words(*recipe, telling, 40);
  const auto own = stuff_of(*recipe);
  VariantSet out;
  out.of = recipe->id;
  for (const auto& found : weigh(shelf, lexicon, asked, words, filter, ranking, telling, docid.value_or(0), limit)) {
    const auto theirs = stuff_of(found.recipe);
    Variant v{found.recipe.id, found.score, found.alike.name, found.alike.stuff, found.alike.method, {}, {}, {}, {}};
    v.shared = told(own, theirs, true, telling);
    v.lacks = told(own, theirs, false, telling);
    v.adds = told(theirs, own, false, telling);
    v.reason = reason(v, *recipe, found.recipe);
    out.variants.push_back(std::move(v));
  }
  return out;
}

}  // namespace gallipot
