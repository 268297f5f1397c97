// A lawful measure directly before a vessel.
#include "indexer/mining/vessels.h"

#include "indexer/text/words.h"

namespace gallipot::mining {
namespace {

/// Vessels that a kitchen measures with; of others ("a two-quart pan") the size is told so that the right one is taken.
bool measures_with(std::string_view vessel) {
  return vessel == "cup" || vessel == "teacup" || vessel == "coffee-cup" || vessel == "breakfast-cup" ||
         vessel == "glass" || vessel == "tumbler" || vessel == "mug" || vessel == "bowl" || vessel == "basin" ||
         vessel == "goblet" || vessel == "box" || vessel == "package";
}

}  // namespace

std::vector<Told> vessels(const Passage& passage, Sizes& sizes) {
  std::vector<Told> out;
  const auto& terms = passage.terms();
  const auto& row = passage.row();
  for (std::size_t i = 0; i + 1 < terms.size(); ++i) {
    const Term& held = terms[i];
    const Term& vessel = terms[i + 1];
    if (!vessel.bare || held.bare || held.vagueness > 1 || !measures_with(vessel.measure)) continue;
    if (!held.of.empty() || row.is(held.at.end, parsing::of_word)) continue;
    const bool hyphened = row.hyphen(held.at.end);
    if (vessel.at.begin != held.at.end + (hyphened ? 1U : 0U)) continue;
    Told told;
    told.measure = vessel.measure;
    told.unit = held.measure;
    told.of = vessel.of;
    told.equals = held.quantity;
    const auto last = row.key(vessel.at.end - 1);
    if (singular(last) != last && held.quantity.low >= 2) told.equals = {1, 1};  // "three pint bowls"
    told.words = {held.at.begin, vessel.end};
    if (may_equal(sizes, 1, told.measure, (told.equals.low + told.equals.high) / 2, told.unit, Closeness::stated))
      out.push_back(std::move(told));
  }
  return out;
}

}  // namespace gallipot::mining
