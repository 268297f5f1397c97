// Gathers the mentions of each stuff into a line and says its amount.
#include "query/cooking/lines.h"

#include <algorithm>

#include "indexer/measures/amount.h"
#include "query/cooking/kitchen_measure.h"
#include "query/cooking/printed.h"
#include "query/cooking/rounding.h"

namespace gallipot {
namespace {

Fineness fineness_of(const std::string& kind) {
  return kind == "spice" || kind == "leaven" || kind == "herb" || kind == "drug" || kind == "colour" ||
                 kind == "gelling"
             ? Fineness::spice
             : Fineness::plain;
}

/// The holding that a mention belongs to.
std::size_t holding_of(const std::vector<Holding>& holdings, std::size_t mention) {
  for (std::size_t h = 0; h < holdings.size(); ++h) {
    const auto& mentions = holdings[h].mentions;
    if (std::find(mentions.begin(), mentions.end(), mention) != mentions.end()) return h;
  }
  return holdings.size();
}

bool told(const ComparableIngredient& i) { return i.metric || i.printed.relative || i.printed.per; }

/// The sum of the mentions' own amounts; nothing where none has one, or they do not add up.
std::optional<Amount> own_sum(const ComparableRecipe& recipe, const std::vector<std::size_t>& mentions, bool& more) {
  std::optional<Amount> out;
  const auto firm = [&](std::size_t i) {
    return !recipe.ingredients[i].printed.optional && recipe.ingredients[i].printed.alternative_of.empty();
  };
  const bool any_firm = std::any_of(mentions.begin(), mentions.end(), firm);
  for (const std::size_t i : mentions) {
    const ComparableIngredient& one = recipe.ingredients[i];
    if (one.printed.per || one.printed.relative || (any_firm && !firm(i))) continue;
    if (!one.metric) {
      more = more || (one.printed.quantity.has_value() && out.has_value());
      continue;
    }
    if (!out)
      out = one.metric;
    else if (out->unit == one.metric->unit && any_firm)
      out = sum(*out, *one.metric);
    else
      more = true;
  }
  return out;
}

struct Gathered {
  std::string name;
  std::vector<std::size_t> mentions;
};

std::vector<Gathered> gathered(const ComparableRecipe& recipe) {
  std::vector<Gathered> out;
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
    const std::string& name = recipe.ingredients[i].printed.name;
    auto at = std::find_if(out.begin(), out.end(), [&](const Gathered& g) { return g.name == name; });
    if (at == out.end()) at = out.insert(out.end(), Gathered{name, {}});
    at->mentions.push_back(i);
  }
  return out;
}

/// Whether all of a holding's telling mentions go by one name, so that its total is this name's.
bool one_name(const ComparableRecipe& recipe, const Holding& holding, const std::string& name) {
  return std::all_of(holding.mentions.begin(), holding.mentions.end(), [&](std::size_t i) {
    return recipe.ingredients[i].printed.name == name || !told(recipe.ingredients[i]);
  });
}

void tell_amount(SheetLine& line, const ComparableRecipe& recipe, const std::vector<Holding>& holdings,
                 const std::vector<std::size_t>& mentions) {
  const std::size_t h = holding_of(holdings, mentions.front());
  const bool ties = std::any_of(mentions.begin(), mentions.end(), [&](std::size_t i) {
    return recipe.ingredients[i].printed.per || recipe.ingredients[i].printed.relative;
  });
  if (h < holdings.size() && one_name(recipe, holdings[h], line.name)) {
    const Holding& holding = holdings[h];
    line.amount = total_of(holdings, h);
    line.how = holding.tie ? holding.tie->how : holding.how;
    if (!line.amount && holding.tie)
      line.rate = Rate{holding.tie->part, holding.tie->whole, holdings[holding.tie->to].name};
    line.more = ties && holding.more;
  }
  if (!line.amount) line.amount = own_sum(recipe, mentions, line.more);
}

/// What the print counts out plainly ("100 walnuts"), for the kitchen measure.
std::optional<Range> plainly_counted(const ComparableRecipe& recipe, const std::vector<std::size_t>& mentions) {
  std::optional<Range> out;
  for (const std::size_t i : mentions) {
    const Ingredient& one = recipe.ingredients[i].printed;
    if (!told(recipe.ingredients[i])) continue;
    if (out || !one.quantity || !one.measure.empty() || one.per || one.relative) return std::nullopt;
    out = one.quantity;
  }
  return out;
}

/// "Four pounds of fruit", after the gooseberries were named: the line to which a general word's amount belongs.
SheetLine* named_before(const SheetLine& line, std::vector<SheetLine>& before) {
  const bool general = line.name == "fruit" || line.name == "meat" || line.name == "fish" || line.name == "berry" ||
                       line.name == "vegetable";
  if (!general || !line.amount) return nullptr;
  const std::string kind = line.name == "berry" ? "fruit" : line.name;
  SheetLine* only = nullptr;
  for (SheetLine& one : before) {
    if (one.kind != kind || one.optional || one.amount || one.rate) continue;
    if (only != nullptr) return nullptr;
    only = &one;
  }
  return only;
}

}  // namespace

void scale_line(SheetLine& line, double factor, const Yardstick& yardstick) {
  if (line.siblings) line.siblings->amount = times(line.siblings->amount, factor);
  if (!line.amount) return;
  line.amount = as_weighed(times(*line.amount, factor));
  line.measure = measurable(*line.amount, fineness_of(line.kind));
  line.kitchen = kitchen_measure(line.name, line.kind, *line.amount, yardstick);
  if (!line.counted) return;
  line.counted = Range{line.counted->low * factor, line.counted->high * factor};
  if (line.amount->unit != Amount::Unit::gram) return;
  const std::string pieces = by_fraction((line.counted->low + line.counted->high) / 2);
  line.kitchen = line.name == "egg" ? pieces + ", " + line.kitchen + " of today's" : pieces;
}

std::vector<SheetLine> lines_of(const ComparableRecipe& recipe, const std::vector<Holding>& holdings, double factor,
                                const Yardstick& yardstick) {
  std::vector<SheetLine> out;
  for (const Gathered& stuff : gathered(recipe)) {
    if (stuff.name == recipe.dish.kind) continue;  // "an omelet", in a receipt for one
    SheetLine line;
    line.name = stuff.name;
    line.kind = recipe.ingredients[stuff.mentions.front()].kind;
    const bool any_told = std::any_of(stuff.mentions.begin(), stuff.mentions.end(),
                                      [&](std::size_t i) { return told(recipe.ingredients[i]); });
    line.quantified = std::any_of(stuff.mentions.begin(), stuff.mentions.end(),
                                  [&](std::size_t i) { return recipe.ingredients[i].printed.quantity.has_value(); });
    for (const std::size_t i : stuff.mentions)
      if (!any_told || told(recipe.ingredients[i]) || recipe.ingredients[i].printed.quantity)
        line.print.push_back(printed_at(recipe, recipe.ingredients[i].printed.span));
    line.optional = std::all_of(stuff.mentions.begin(), stuff.mentions.end(),
                                [&](std::size_t i) { return recipe.ingredients[i].printed.optional; });
    const std::string& other = recipe.ingredients[stuff.mentions.front()].printed.alternative_of;
    if (other != line.name) line.alternative_of = other;
    tell_amount(line, recipe, holdings, stuff.mentions);
    line.counted = plainly_counted(recipe, stuff.mentions);
    scale_line(line, factor, yardstick);
    if (SheetLine* named = named_before(line, out)) {
      named->amount = line.amount;
      named->print.insert(named->print.end(), line.print.begin(), line.print.end());
      scale_line(*named, 1, yardstick);
      continue;
    }
    out.push_back(std::move(line));
  }
  return out;
}

}  // namespace gallipot
