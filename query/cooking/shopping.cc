// Merges the lines of several sheets.
#include "query/cooking/shopping.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/measures/amount.h"
#include "query/cooking/bulk.h"
#include "query/cooking/kitchen_measure.h"

namespace gallipot {
namespace {

bool listed(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// The unit that names the stuff, else the one for its kind.
const ShopUnit* unit_for(const ShoppingLine& line, const Kitchen& kitchen) {
  const ShopUnit* by_kind = nullptr;
  for (const ShopUnit& unit : kitchen.shop_units) {
    if (listed(unit.names, line.name)) return &unit;
    if (by_kind == nullptr && unit.names.empty() && listed(unit.kinds, line.kind)) by_kind = &unit;
  }
  return by_kind;
}

void add_amount(ShoppingLine& line, const Amount& amount, const Yardstick& yardstick) {
  if (!line.amount) {
    line.amount = amount;
    return;
  }
  if (line.amount->unit == amount.unit) {
    line.amount = sum(*line.amount, amount);
    return;
  }
  const auto a = in_grams(line.name, *line.amount, yardstick), b = in_grams(line.name, amount, yardstick);
  if (a && b)
    line.amount = sum(*a, *b);
  else
    line.more = true;
}

std::string by_weight(const Amount& amount) {
  const char* small = amount.unit == Amount::Unit::gram ? "g" : "ml";
  const char* large = amount.unit == Amount::Unit::gram ? "kg" : "l";
  if (amount.likely >= 1000) return fmt::format("{:.2g} {}", std::ceil(amount.likely / 100) / 10, large);
  const double step = amount.likely > 100 ? 10 : amount.likely > 20 ? 5 : 1;
  return fmt::format("{:g} {}", std::ceil(amount.likely / step) * step, small);
}

std::string in_shop_units(const ShoppingLine& line, const Kitchen& kitchen, const Yardstick& yardstick,
                          std::string& shelf) {
  const ShopUnit* unit = unit_for(line, kitchen);
  if (unit != nullptr) shelf = unit->aisle;
  if (!line.amount) return {};
  if (line.amount->unit == Amount::Unit::count) return fmt::format("{:g}", std::ceil(line.amount->likely - 0.05));
  if (unit == nullptr) return by_weight(*line.amount);
  if (unit->unit == "piece") {
    const auto piece = piece_of(line.name, yardstick);
    const auto grams = in_grams(line.name, *line.amount, yardstick);
    if (!piece || !grams) return by_weight(*line.amount);
    const double pieces = std::max(1.0, std::ceil(grams->likely / piece->likely - 0.1));
    return pieces > 40 ? by_weight(*grams) : fmt::format("{:.0f} (about {})", pieces, by_weight(*grams));
  }
  if (unit->size <= 0) return by_weight(*line.amount);
  std::optional<Amount> amount = *line.amount;
  if (amount->unit != unit->of)
    amount = unit->of == Amount::Unit::gram ? in_grams(line.name, *amount, yardstick)
                                            : in_millilitres(line.name, line.kind, *amount, yardstick);
  if (!amount) return by_weight(*line.amount);
  const double packs = std::max(1.0, std::ceil(amount->likely / unit->size - 0.02));
  const std::string size = by_weight({unit->of, 0, unit->size, 0, {}});
  return fmt::format("{:.0f} {} of {}", packs, packs == 1 ? unit->unit : unit->plural, size);
}

/// What is fetched from the tap or cannot be bought.
bool bought(const SheetLine& line) { return line.kind != "water" && line.kind != "household" && !line.kind.empty(); }

}  // namespace

ShoppingList shopping_for(const std::vector<Sheet>& sheets, const Kitchen& kitchen, const Yardstick& yardstick) {
  ShoppingList out;
  for (std::size_t s = 0; s < sheets.size(); ++s) {
    out.recipes.push_back(sheets[s].citation);
    out.titles.push_back(sheets[s].title);
    out.factors.push_back(sheets[s].batch.factor);
    for (const std::string& caution : sheets[s].cautions)
      if (!listed(out.cautions, caution)) out.cautions.push_back(caution);
    for (const SheetLine& line : sheets[s].lines) {
      if (!bought(line)) continue;
      auto at = std::find_if(out.lines.begin(), out.lines.end(), [&](const auto& l) { return l.name == line.name; });
      if (at == out.lines.end()) {
        ShoppingLine fresh;
        fresh.name = line.name;
        fresh.kind = line.kind;
        fresh.optional = true;
        at = out.lines.insert(out.lines.end(), std::move(fresh));
      }
      at->wanted_by.push_back(s);
      at->optional = at->optional && line.optional;
      if (!line.alternative_of.empty() && !listed(at->instead_of, line.alternative_of))
        at->instead_of.push_back(line.alternative_of);
      if (line.amount)
        add_amount(*at, *line.amount, yardstick);
      else
        at->more = true;
      at->more = at->more || line.more;
    }
  }
  for (ShoppingLine& line : out.lines) line.buy = in_shop_units(line, kitchen, yardstick, line.shelf);
  std::stable_sort(out.lines.begin(), out.lines.end(), [](const ShoppingLine& a, const ShoppingLine& b) {
    return a.shelf != b.shelf ? a.shelf < b.shelf : a.name < b.name;
  });
  return out;
}

}  // namespace gallipot
