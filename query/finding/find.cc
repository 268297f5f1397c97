// Words in, recipes out.
#include "query/finding/find.h"

#include <fmt/format.h>

#include "query/finding/suggest.h"
#include "query/finding/weigh.h"

namespace gallipot {
namespace {

/// Clauses that say why a recipe is in the answer.
std::vector<std::string> reasons(const Weighed& found, const Sketch& asked) {
  std::vector<std::string> out;
  std::string shared;
  for (const auto& [base, weight] : asked.bases) {
    if (found.recipe.dish.base == base) shared = base;
  }
  if (asked.kinds.contains(found.recipe.dish.kind)) shared += (shared.empty() ? "" : " ") + found.recipe.dish.kind;
  if (!shared.empty()) out.push_back("named " + shared);
  std::string made_of;
  for (const auto& ingredient : found.recipe.ingredients) {
    if (asked.stuff.contains(ingredient.printed.name) && made_of.find(ingredient.printed.name) == std::string::npos)
      made_of += (made_of.empty() ? "" : ", ") + ingredient.printed.name;
  }
  if (!made_of.empty()) out.push_back("made of " + made_of);
  if (found.alike.stuff > 0.5)
    out.push_back(fmt::format("made as the others are ({:.0f} in 100)", found.alike.stuff * 100));
  if (out.empty()) out.push_back("its words are those of the dish");
  return out;
}

}  // namespace

Outcome<Found> find(const Shelf& shelf, const Lexicon& lexicon, const std::vector<std::string>& words,
                    const Filter& filter, std::size_t limit, const Ranking& ranking) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : " ") + word;
  Telling telling(shelf, lexicon);
  Weights stems;
  for (const auto& stem : telling.stems_of(text)) stems[stem] = 1;
  if (stems.empty())
    return fault("the search has no word that names a dish", "name one, such as: gallipot find plum pudding");
  const Sketch asked = sketch_of(words, lexicon, ranking, telling);
  Found out;
  out.suggestion = suggestion(shelf, lexicon, telling, words);
  for (const auto& found : weigh(shelf, lexicon, asked, stems, filter, ranking, telling, 0, limit))
    out.hits.push_back({found.docid, found.recipe.id, found.score, reasons(found, asked)});
  return out;
}

}  // namespace gallipot
