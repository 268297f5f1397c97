// Looks a printed amount up in the tables and carries its interval through to grams, millilitres or a count. Whatever
// the book leaves open (year, country, stuff) is answered by the union of all that it may mean, so that a wider reading
// never gives a narrower amount.
#include "indexer/measures/register.h"

#include <algorithm>

#include "indexer/measures/measure_tables.h"

namespace gallipot {
using measuring::Counted;
using measuring::Density;
using measuring::MeasureTables;
using measuring::StuffClass;

struct Register::Tables : MeasureTables {
  explicit Tables(MeasureTables t) : MeasureTables(std::move(t)) {}
};

namespace {

// One of the measure, before it is multiplied by the printed number.
struct One {
  Amount::Unit unit = Amount::Unit::gram;
  Extent extent;
  std::string why;
};

void join(One& to, const Extent& e, const std::string& why) {
  to.extent.low = std::min(to.extent.low, e.low);
  to.extent.high = std::max(to.extent.high, e.high);
  if (to.why.find(why) == std::string::npos && to.why.size() < 160) to.why += "; or " + why;
}

void multiply(Extent& e, const Extent& by) {
  e.low *= by.low;
  e.likely *= by.likely;
  e.high *= by.high;
}

bool is_any_of(const std::vector<std::string>& list, std::string_view name) {
  return std::find(list.begin(), list.end(), name) != list.end();
}

bool of_country(const measuring::Unit& u, std::string_view country) {
  return u.country.empty() || country.empty() || is_any_of(u.country, country);
}

bool of_class(const measuring::Unit& u, StuffClass c) {
  if (u.any_stuff) return true;
  const bool dry = is_any_of(u.of, "dry"), liquid = is_any_of(u.of, "liquid"), ale = is_any_of(u.of, "ale");
  switch (c) {
    case StuffClass::unknown:
      return dry || liquid || ale;
    case StuffClass::dry:
      return dry;
    case StuffClass::thick:
    case StuffClass::liquid:
      return liquid;
    case StuffClass::ale:
      return ale;
  }
  return false;
}

// A measure of capacity of a stuff that is given by weight.
void weigh(One& one, const Density& d, std::string_view of) {
  if (one.unit != Amount::Unit::millilitre) return;
  if (d.stuff_class != StuffClass::dry && d.stuff_class != StuffClass::thick) return;
  multiply(one.extent, d.extent);
  one.unit = Amount::Unit::gram;
  one.why += ", of " + std::string(of) + " by its usual weight";
}

// All rows of a measure that may be meant, joined. The first row of the table is the likeliest. A row that names the
// stuff stands in for those of its class, but only where it holds for certain: of a book whose country or year is not
// known the others may be true as well.
std::optional<One> one_of(const std::vector<measuring::Unit>& rows, StuffClass as, const Density& stuff,
                          const Measured& asked) {
  const bool known_country =
      std::any_of(rows.begin(), rows.end(), [&](const measuring::Unit& u) { return of_country(u, asked.country); });
  const std::string_view country = known_country ? asked.country : std::string_view{};
  auto may_hold = [&](const measuring::Unit& u) { return of_country(u, country) && u.period.holds(asked.year); };
  auto named = [&](const measuring::Unit& u) { return !asked.of.empty() && is_any_of(u.of, asked.of); };
  const bool named_for_certain = std::any_of(rows.begin(), rows.end(), [&](const measuring::Unit& u) {
    const bool everywhere = u.country.empty() || !country.empty();
    const bool always = (u.period.from == 0 && u.period.to == 0) || asked.year != 0;
    return named(u) && may_hold(u) && everywhere && always;
  });
  std::optional<One> out;
  for (const bool by_name : {true, false}) {
    for (const measuring::Unit& u : rows) {
      if (!may_hold(u) || named(u) != by_name) continue;
      if (!by_name && (named_for_certain || !of_class(u, as))) continue;
      One one{u.unit, u.extent, u.why};
      weigh(one, stuff, asked.of);
      if (!out)
        out = std::move(one);
      else if (out->unit == one.unit)
        join(*out, one.extent, one.why);
    }
  }
  return out;
}

std::optional<One> counted(const MeasureTables& t, const Measured& asked, std::string_view measure) {
  const auto rows = t.counted.find(std::string(asked.of) + "/" + std::string(measure));
  if (rows == t.counted.end()) return std::nullopt;
  std::optional<One> out;
  for (const Counted& c : rows->second) {
    if (!c.period.holds(asked.year)) continue;
    if (!out)
      out = One{Amount::Unit::gram, c.extent, c.why};
    else
      join(*out, c.extent, c.why);
  }
  return out;
}

void bend(const MeasureTables& t, One& one, const Measured& asked) {
  if (asked.note.empty()) return;
  const std::string note(asked.note);
  const bool spoon = asked.measure.size() >= 5 && asked.measure.substr(asked.measure.size() - 5) == "spoon";
  auto factor = t.bends.end();
  if (spoon) factor = t.bends.find(note + "/spoon");
  if (factor == t.bends.end()) factor = t.bends.find(note + "/*");
  if (factor == t.bends.end()) return;
  multiply(one.extent, factor->second);
  one.why = note + ": " + one.why;
}

}  // namespace

Outcome<std::shared_ptr<const Register>> Register::load(const std::string& overlay_folder) {
  auto tables = measuring::load_measure_tables(overlay_folder);
  if (!tables) return tl::unexpected(tables.error());
  auto out = std::make_shared<Register>();
  out->tables_ = std::make_shared<const Tables>(std::move(*tables));
  return std::shared_ptr<const Register>(std::move(out));
}

std::shared_ptr<const Register> Register::with(Layers layers) const {
  auto out = std::make_shared<Register>(*this);
  out->layers_ = std::make_shared<const Layers>(std::move(layers));
  return out;
}

std::optional<Amount> Register::amount(const Measured& asked) const {
  const MeasureTables& t = *tables_;
  if (!(asked.high > 0) || asked.low < 0 || asked.low > asked.high) return std::nullopt;
  const auto density = t.densities.find(asked.of);
  const Density stuff = density == t.densities.end() ? Density{} : density->second;
  // a level spoon holds of a dry stuff what it holds of water; only a rounded one holds more
  const StuffClass as =
      asked.note == "level" && stuff.stuff_class == StuffClass::dry ? StuffClass::liquid : stuff.stuff_class;

  std::optional<One> one = counted(t, asked, asked.measure);
  if (!one && asked.measure.empty()) one = One{Amount::Unit::count, {1, 1, 1}, "counted"};
  if (!one) {
    const auto rows = t.units.find(asked.measure);
    if (rows == t.units.end()) return std::nullopt;
    one = one_of(rows->second, as, stuff, asked);
    if (!one) return std::nullopt;
    if (one->unit == Amount::Unit::count) {
      if (const auto each = counted(t, asked, "")) {
        multiply(one->extent, each->extent);
        one->unit = Amount::Unit::gram;
        one->why += " of them, each " + each->why;
      }
    }
  }
  if (one->unit != Amount::Unit::count) bend(t, *one, asked);
  return Amount{one->unit, asked.low * one->extent.low, (asked.low + asked.high) / 2 * one->extent.likely,
                asked.high * one->extent.high, std::move(one->why)};
}

}  // namespace gallipot
