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
    if (!may_equal(sizes, 1, vessel.measure, (vessel.holds.low + vessel.holds.high) / 2, vessel.holds_in,
                   Closeness::stated))
      continue;
    out.push_back({vessel.measure, vessel.of, vessel.holds_in, vessel.holds, {vessel.at.begin, vessel.end}, {}});
  }
  return out;
}

}  // namespace gallipot::mining
