// Joins the rows that may be meant.
#include "indexer/measures/lookup.h"

#include <algorithm>

namespace gallipot::measuring {
namespace {

constexpr std::size_t longest_why = 200;  // reasons beyond this would only be more of the same

void join(One& to, const Extent& e, const std::string& why) {
  to.extent = hull(to.extent, e);
  if (to.why.find(why) == std::string::npos && to.why.size() < longest_why) to.why += "; or " + why;
}

}  // namespace

bool is_for(const Held& held, StuffClass stuff_class) {
  if (held.of.empty()) return true;
  switch (stuff_class) {
    case StuffClass::unknown:
      return held.names("dry") || held.names("heap") || held.names("liquid") || held.names("ale");
    case StuffClass::dry:
      return held.names("dry");
    case StuffClass::heap:
      return held.names("heap") || (held.names("dry") && !held.names("struck"));
    case StuffClass::thick:
    case StuffClass::liquid:
      return held.names("liquid");
    case StuffClass::ale:
      return held.names("ale");
  }
  return false;
}

bool is_spoon(std::string_view measure) { return measure.ends_with("spoon"); }

void weigh(One& one, const Stuff& stuff, std::string_view of) {
  const StuffClass c = stuff.stuff_class;
  const bool by_weight = c == StuffClass::dry || c == StuffClass::heap || c == StuffClass::thick;
  if (one.unit != Amount::Unit::millilitre || !by_weight) return;
  one.extent = product(one.extent, stuff.density);
  one.unit = Amount::Unit::gram;
  one.why.append(", of ").append(of).append(" by its usual weight");
}

std::optional<One> one_of(const std::vector<Held>& rows, StuffClass as, const Stuff& stuff, const Place& place) {
  const bool known_country =
      std::any_of(rows.begin(), rows.end(), [&](const Held& h) { return h.may_be_in(place.country); });
  const std::string_view country = known_country ? place.country : std::string_view{};
  const auto may_hold = [&](const Held& h) {
    return h.may_be_in(country) && h.period.holds(place.year) && h.extent.low > 0;
  };
  const auto named = [&](const Held& h) { return !place.of.empty() && h.names(place.of); };
  const bool named_for_certain = std::any_of(rows.begin(), rows.end(), [&](const Held& h) {
    const bool everywhere = h.country.empty() || !country.empty();
    return named(h) && may_hold(h) && everywhere && (h.period.always() || place.year != 0);
  });
  std::optional<One> out;
  for (const bool by_name : {true, false}) {
    for (const Held& h : rows) {
      if (!may_hold(h) || named(h) != by_name) continue;
      if (!by_name && (named_for_certain || !is_for(h, as))) continue;
      One one{h.unit, h.extent, h.why, {}};
      weigh(one, stuff, place.of);
      if (!out)
        out = std::move(one);
      else if (out->unit == one.unit)
        join(*out, one.extent, one.why);
      else
        continue;
      out->rows.push_back(&h);
    }
  }
  return out;
}

std::optional<One> one_counted(const MeasureTables& tables, const Place& place, std::string_view measure) {
  std::string key(place.of);
  key.append("/").append(measure);
  const auto rows = tables.counted.find(key);
  if (rows == tables.counted.end()) return std::nullopt;
  std::optional<One> out;
  for (const Counted& c : rows->second) {
    if (!c.period.holds(place.year)) continue;
    if (!out)
      out = One{Amount::Unit::gram, c.extent, c.why, {}};
    else
      join(*out, c.extent, c.why);
  }
  return out;
}

const Bend* bend_of(const MeasureTables& tables, std::string_view note, std::string_view measure) {
  if (note.empty()) return nullptr;
  std::string key(note);
  if (is_spoon(measure)) {
    const auto at = tables.bends.find(key + "/spoon");
    if (at != tables.bends.end()) return &at->second;
  }
  const auto at = tables.bends.find(key + "/*");
  return at == tables.bends.end() ? nullptr : &at->second;
}

}  // namespace gallipot::measuring
