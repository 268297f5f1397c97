// A lawful measure directly before a vessel.
#include "indexer/mining/vessels.h"

#include "indexer/text/words.h"

namespace gallipot::mining {
namespace {

/// Vessels that a kitchen measures with; of others ("a two-quart pan") the size is told so that the right one is taken.
bool measures_with(std::string_view vessel) {
  return vessel == "cup" || vessel == "teacup" || vessel == "coffee-cup" || vessel == "breakfast-cup" ||
         vessel == "glass" || vessel == "tumbler" || vessel == "mug" || vessel == "bowl" || vessel == "basin" ||
         vessel == "goblet" || vessel == "box" || vessel == "package" || vessel == "square";
}

/// The word at which the vessel of an amount stands: "half-pint mug", "(quarter of a pound) box", "one (ounce) square".
std::uint32_t vessel_after(const Passage& passage, const Term& held) {
  const auto& row = passage.row();
  const auto end = held.at.end;
  if (row.key(end) == ")") return end + 1;
  if (held.bare) return parsing::kNone;
  return row.hyphen(end) ? end + 1 : end;
}

}  // namespace

std::vector<Told> vessels(const Passage& passage, Sizes& sizes) {
  std::vector<Told> out;
  const auto& row = passage.row();
  for (const Term& held : passage.terms()) {
    if (held.vagueness > 1 || held.counted) continue;
    const auto at = vessel_after(passage, held);
    const auto* vessel = at < row.size() ? row.measure(at) : nullptr;
    if (!vessel || !measures_with(vessel->name)) continue;
    const auto end = at + row.tags[at].measure_words;
    Told told;
    told.measure = vessel->name;
    told.unit = held.measure;
    told.of = passage.stuff_between(end, end + 5);
    told.equals = held.quantity;
    const auto last = row.key(end - 1);
    if (singular(last) != last && held.quantity.low >= 2) told.equals = {1, 1};  // "three pint bowls"
    told.words = {held.at.begin, end};
    if (may_equal(sizes, 1, told.measure, (told.equals.low + told.equals.high) / 2, told.unit, Closeness::stated))
      out.push_back(std::move(told));
  }
  return out;
}

}  // namespace gallipot::mining
