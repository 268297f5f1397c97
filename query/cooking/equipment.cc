// Chooses pots and jars by room, and asks the table for the rest.
#include "query/cooking/equipment.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "indexer/measures/amount.h"
#include "indexer/text/words.h"
#include "query/cooking/made.h"
#include "query/cooking/printed.h"

namespace gallipot {
namespace {

constexpr double fine_scales_below = 10;  // grams

bool one_of(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

const Step* heat_step(const ComparableRecipe& recipe) {
  for (const Step& step : recipe.steps)
    if (step.op == "boil" || step.op == "simmer" || step.op == "stew" || step.op == "reduce" || step.op == "scald")
      return &step;
  return nullptr;
}

bool is_acid(const SheetLine& line) {
  return line.name.find("vinegar") != std::string::npos || line.name == "lemon juice" || line.name == "lemon" ||
         line.name == "verjuice" || line.kind == "fruit" || line.name == "tomato" || line.name == "rhubarb" ||
         line.name.find("wine") != std::string::npos;
}

double share_of_sugar(const std::vector<SheetLine>& lines) {
  double sweet = 0, all = 0;
  for (const SheetLine& line : lines) {
    const auto amount = counts(line) ? amount_or_siblings(line) : std::nullopt;
    if (!amount || amount->unit == Amount::Unit::count) continue;
    all += amount->likely;
    if (line.kind == "sweet") sweet += amount->likely;
  }
  return all > 0 ? sweet / all : 0;
}

/// Litres up to the next size in which pots are sold.
std::string pot_size(double millilitres) {
  static constexpr double sizes[] = {0.75, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50};
  for (const double size : sizes)
    if (millilitres <= size * 1000) return fmt::format("{:g} l or more", size);
  return "more than one of 50 l";
}

Vessel pot_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Step& heat,
              const std::optional<Amount>& room) {
  Vessel out;
  const bool acid = std::any_of(lines.begin(), lines.end(), is_acid);
  out.what = acid ? "Stainless steel or enamelled pot" : "Pot";
  const bool foams = share_of_sugar(lines) > 0.3;
  out.why = foams ? "two to three times the room of the batch, since sugar boils up"
                  : "half as large again as the batch, for the boil";
  if (acid) out.why += "; acid takes up copper, brass and bare iron";
  if (room) {
    const double least = foams ? 2 : 1.3, likely = foams ? 2.5 : 1.5, most = foams ? 3 : 2;
    out.holding =
        Amount{Amount::Unit::millilitre, room->low * least, room->likely * likely, room->high * most, out.why};
    out.size = pot_size(out.holding->likely);
  } else {
    out.why = "its size cannot be told: the amounts are not known" + std::string(acid ? "; acid takes up metals" : "");
  }
  out.print = printed_at(recipe, heat.span);
  return out;
}

Vessel jars_of(const Made& made, const ComparableRecipe& recipe) {
  Vessel out;
  out.what = made.liquid ? "Bottles with tight stoppers, heated clean" : "Jars with new lids, heated clean";
  out.why = "for what it makes";
  const Step* last = nullptr;
  for (const Step& step : recipe.steps)
    if (step.op == "bottle" || step.op == "seal" || step.op == "pot" || step.op == "fill") last = &step;
  if (last != nullptr) out.print = printed_at(recipe, last->span);
  if (!made.millilitres) {
    out.why = "how many cannot be told: " + made.why_not;
    return out;
  }
  const Amount& all = *made.millilitres;
  static constexpr double sizes[] = {100, 250, 500, 1000, 2000, 5000};
  double size = sizes[0];
  for (const double one : sizes) {
    size = one;
    if (all.likely / one <= 8) break;
  }
  const auto few = static_cast<long>(std::max(1.0, std::floor(all.low / size)));
  const auto many = static_cast<long>(std::ceil(all.high / size));
  const std::string each = size < 1000 ? fmt::format("{:g} ml", size) : fmt::format("{:g} l", size / 1000);
  const auto likely = std::max(1L, static_cast<long>(std::ceil(all.likely / size)));
  out.size = few == many ? fmt::format("{} of {}", many, each)
                         : fmt::format("about {} of {} ({} to {})", likely, each, few, many);
  out.holding = all;
  return out;
}

std::string sized(Tool::Size size, const std::optional<Amount>& room) {
  if (!room || size == Tool::Size::none) return {};
  if (size == Tool::Size::pot) return pot_size(room->likely * 1.5);
  return pot_size(room->likely * (size == Tool::Size::bowl ? 2 : 1.2));
}

}  // namespace

std::vector<Vessel> vessels_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Made& made,
                               bool keeps, const Kitchen& kitchen, const Yardstick& yardstick) {
  std::vector<Vessel> out;
  const auto room = room_for(lines, yardstick);
  const Step* heat = heat_step(recipe);
  if (heat != nullptr) out.push_back(pot_of(recipe, lines, *heat, room));
  std::set<std::string> have;
  const auto add = [&](const Tool& tool, Span span) {
    if (!have.insert(tool.what).second) return;
    Vessel vessel{tool.what, std::nullopt, sized(tool.size, room), tool.why, printed_at(recipe, span)};
    out.push_back(std::move(vessel));
  };
  const Words words(recipe.recipe.text);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto match = kitchen.tool_phrases.longest(words.all(), i);
    if (match.words == 0) continue;
    add(kitchen.tools[match.value], {words[i].span.begin, words[i + match.words - 1].span.end});
  }
  for (const Step& step : recipe.steps)
    for (const Tool& tool : kitchen.tools)
      if (one_of(tool.ops, step.op)) add(tool, step.span);
  if (keeps) out.push_back(jars_of(made, recipe));
  const bool fine = std::any_of(lines.begin(), lines.end(), [](const SheetLine& line) {
    return line.measure && line.amount->unit == Amount::Unit::gram && *line.measure < fine_scales_below;
  });
  if (std::any_of(lines.begin(), lines.end(), [](const SheetLine& l) { return l.amount.has_value(); }))
    out.push_back({fine ? "Scales to 1 g, and fine scales to 0.1 g" : "Scales to 1 g",
                   std::nullopt,
                   {},
                   fine ? "some amounts are under 10 g" : "to weigh by",
                   std::nullopt});
  if (keeps)
    out.push_back({"Acidity meter (pH), set against fresh buffers",
                   std::nullopt,
                   {},
                   "for anything that is kept at room temperature",
                   std::nullopt});
  return out;
}

}  // namespace gallipot
