// A lawful measure directly before a vessel.
#include "indexer/mining/vessels.h"

namespace gallipot::mining {
namespace {

/// Vessels that a kitchen measures with; of others ("a quart bottle") the size is told so that the right one is taken.
bool measures_with(std::string_view vessel) {
  return vessel == "cup" || vessel == "teacup" || vessel == "coffee-cup" || vessel == "breakfast-cup" ||
         vessel == "glass" || vessel == "tumbler" || vessel == "mug" || vessel == "bowl" || vessel == "basin" ||
         vessel == "goblet" || vessel == "box" || vessel == "package" || vessel == "square";
}

}  // namespace

std::vector<Told> vessels(const Passage& passage, Sizes& sizes) {
  std::vector<Told> out;
  for (const Term& vessel : passage.terms()) {
    if (vessel.holds_in.empty() || !measures_with(vessel.measure)) continue;
    if (vessel.holds_in == "stone") continue;  // what it is made of
    // a bowl or a basin may be of any size; what is called a cup is about a cup, and "a four-quart glass" is a jar
    const auto& held = sizes.of(vessel.holds_in);
    const bool drunk_from = vessel.measure == "glass" || vessel.measure == "tumbler" || vessel.measure == "goblet";
    if (drunk_from && held && held->likely * vessel.holds.high > 600) continue;
    if (vessel.measure.ends_with("cup") &&
        !may_equal(sizes, 1, vessel.measure, vessel.holds.high, vessel.holds_in, Closeness::stated))
      continue;
    out.push_back({vessel.measure, vessel.of, vessel.holds_in, vessel.holds, {vessel.at.begin, vessel.end}, {}});
  }
  return out;
}

}  // namespace gallipot::mining
