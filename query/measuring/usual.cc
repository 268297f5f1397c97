// Counts the measures of a shelf.
#include "query/measuring/usual.h"

#include <algorithm>
#include <map>
#include <set>

namespace gallipot {
namespace {

std::size_t authors_of(const Reading& reading) {
  std::set<std::string> who;
  for (const Attestation& a : reading.witnesses)
    if (!a.set_aside) who.insert(a.book.empty() ? a.who.substr(0, a.who.find_first_of(",:;")) : a.book);
  return who.size();
}

}  // namespace

Outcome<std::vector<UsualMeasure>> usual_measures(const Shelf& shelf, const Lexicon& lexicon, std::size_t count) {
  std::map<std::string, std::size_t> uses;
  const auto all = shelf.each([&](const ComparableRecipe& recipe) {
    for (const ComparableIngredient& i : recipe.ingredients)
      if (i.printed.quantity && !i.printed.measure.empty()) ++uses[i.printed.measure];
    return true;
  });
  if (!all) return tl::unexpected(all.error());
  std::vector<UsualMeasure> out;
  for (const auto& [measure, n] : uses) {
    const MeasureWord* word = lexicon.measure(measure);
    if (word != nullptr && word->kind == "household") out.push_back({measure, n, {}});
  }
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.uses > b.uses; });
  if (out.size() > count) out.resize(count);
  for (UsualMeasure& m : out)
    for (const char* country : {"GB", "US"}) {
      Measured asked;
      asked.measure = m.measure;
      asked.country = country;
      asked.of = "water";
      if (auto reading = shelf.measures()->read(asked); reading && reading->millilitres)
        m.places.push_back({country, *reading->millilitres, authors_of(*reading)});
    }
  return out;
}

}  // namespace gallipot
