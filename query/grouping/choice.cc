// Chooses by name and by likeness, and says so.
#include "query/grouping/choice.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/normalizing/normalize.h"
#include "query/finding/weigh.h"
#include "query/grouping/variants.h"

namespace gallipot {
namespace {

constexpr std::size_t considered = 240;  // recipes weighed for one choice

/// A dish asked for by name, word by word.
class Name {
 public:
  Name(const std::string& words, const Lexicon& lexicon, Telling& telling)
      : telling_(telling), whole_(dish_of(words, {}, {}, lexicon)) {
    for (std::size_t begin = 0; begin < words.size();) {
      const std::size_t end = std::min(words.find(' ', begin), words.size());
      const std::string word = words.substr(begin, end - begin);
      begin = end + 1;
      const auto stems = telling.stems_of(word);
      if (!stems.empty()) words_.push_back({stems.front(), dish_of(word, {}, {}, lexicon)});
    }
  }

  bool is_borne_by(const ComparableRecipe& recipe) const {
    if (words_.empty()) return false;
    const Dish& dish = recipe.dish;
    if (!whole_.kind.empty() && !dish.kind.empty() && whole_.kind != dish.kind) return false;
    if (!whole_.kind.empty() && !whole_.base.empty() && whole_.kind == dish.kind && whole_.base == dish.base) return true;
    const auto& title = recipe.recipe.dish_title.empty() ? recipe.recipe.title : recipe.recipe.dish_title;
    const auto stems = telling_.stems_of(title);
    return std::all_of(words_.begin(), words_.end(), [&](const Word& word) {
      if (std::find(stems.begin(), stems.end(), word.stem) != stems.end()) return true;
      if (!word.dish.kind.empty() && word.dish.kind == dish.kind) return true;
      return !word.dish.base.empty() && word.dish.base == dish.base;
    });
  }

 private:
  struct Word {
    std::string stem;
    Dish dish;
  };
  Telling& telling_;
  Dish whole_;
  std::vector<Word> words_;
};

struct Scored {
  Considered recipe;
  double stuff = 0;
};

std::string cited(const Considered& one) {
  return fmt::format("\xE2\x80\x9C{}\xE2\x80\x9D ({}{})", one.title, one.year > 0 ? fmt::format("{}, ", one.year) : "",
                     one.id);
}

std::string recipes(std::size_t count) { return fmt::format("{} recipe{}", count, count == 1 ? "" : "s"); }

/// How they were chosen, and the first few that were left out.
std::vector<std::string> told(const Choice& choice, const std::string& name, std::size_t over, const Wanted& wanted) {
  std::vector<std::string> out;
  const auto named = static_cast<std::size_t>(
      std::count_if(choice.taken.begin(), choice.taken.end(), [](const Considered& one) { return one.named; }));
  const std::size_t others = choice.taken.size() - named;
  if (named > 0)
    out.push_back(fmt::format("Chosen: {} that bear{} the name \xE2\x80\x9C{}\xE2\x80\x9D in some spelling{}.",
                              recipes(named), named == 1 ? "s" : "", name,
                              others == 0 ? "" : fmt::format(", and {} under other names that the search holds for much the same", others)));
  else
    out.push_back(fmt::format("No recipe bears the name \xE2\x80\x9C{}\xE2\x80\x9D; chosen: {} likest to what it asks "
                              "for.",
                              name, recipes(others)));
  if (over > 0)
    out.push_back(fmt::format("{} more belong too, but {} are the most that were asked for.", over,
                              wanted.limit));
  if (!choice.left_out.empty()) {
    std::string nearest;
    for (std::size_t i = 0; i < choice.left_out.size() && i < 3; ++i)
      nearest += (i == 0 ? "" : ", ") + cited(choice.left_out[i]);
    out.push_back("Left out as less alike, the nearest first: " + nearest + ".");
  }
  return out;
}

/// Parts what was considered, best first, into what is taken and what is not.
Choice parted(std::vector<Scored> all, const std::string& name, const Wanted& wanted) {
  Choice out;
  std::size_t over = 0;
  const double best = all.empty() ? 0 : all.front().recipe.score;
  for (Scored& one : all) {
    const double part = best > 0 ? one.recipe.score / best : 0;
    const bool alike = part >= alike_enough && one.stuff >= of_the_same_stuff;
    const bool belongs = one.recipe.named ? part >= namesake : alike && !wanted.by_name_only;
    if (belongs && out.taken.size() < wanted.limit)
      out.taken.push_back(std::move(one.recipe));
    else if (belongs)
      ++over;
    else if (out.left_out.size() < most_left_out)
      out.left_out.push_back(std::move(one.recipe));
  }
  out.words = told(out, name, over, wanted);
  return out;
}

Considered considered_as(const ComparableRecipe& recipe, double score, const Name& name) {
  return {recipe.id, recipe.recipe.title, recipe.year, score, name.is_borne_by(recipe)};
}

}  // namespace

Outcome<Choice> chosen_by_dish(const Shelf& shelf, const Lexicon& lexicon, const std::string& words,
                               const Filter& filter, const Wanted& wanted, const Ranking& ranking) {
  Telling telling(shelf, lexicon);
  Weights stems;
  for (const auto& stem : telling.stems_of(words)) stems[stem] = 1;
  if (stems.empty())
    return fault("no word of \"" + words + "\" names a dish", "name one, such as: --dish \"plum pudding\"");
  const Name name(words, lexicon, telling);
  const Sketch asked = sketch_of(std::vector<std::string>{words}, lexicon, ranking, telling);
  std::vector<Scored> all;
  for (const auto& found : weigh(shelf, lexicon, asked, stems, filter, ranking, telling, 0, considered))
    all.push_back({considered_as(found.recipe, found.score, name), found.alike.stuff});
  if (all.empty()) return Choice{};
  return parted(std::move(all), words, wanted);
}

Outcome<Choice> chosen_by_recipe(const Shelf& shelf, const Lexicon& lexicon, const std::string& id,
                                 const Filter& filter, const Wanted& wanted, const Ranking& ranking) {
  const auto recipe = shelf.recipe(id);
  if (!recipe) return tl::unexpected<Fault>(recipe.error());
  const auto set = variants_of(shelf, lexicon, id, filter, considered, ranking);
  if (!set) return tl::unexpected<Fault>(set.error());
  Telling telling(shelf, lexicon);
  const Dish& dish = recipe->dish;
  const std::string words = dish.base.empty() || dish.kind.empty() ? recipe->recipe.title : dish.base + " " + dish.kind;
  const Name name(words, lexicon, telling);
  std::vector<Scored> all{{considered_as(*recipe, 1, name), 1}};
  all.front().recipe.named = true;
  for (const Variant& variant : set->variants)
    if (const auto found = shelf.recipe(variant.id))
      all.push_back({considered_as(*found, variant.score, name), variant.stuff});
  return parted(std::move(all), words, wanted);
}

}  // namespace gallipot
