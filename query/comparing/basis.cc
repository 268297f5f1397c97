// Chooses what amounts are told by, and brings them to it.
#include "query/comparing/basis.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "indexer/measures/amount.h"
#include "indexer/text/unicode.h"
#include "indexer/text/words.h"
#include "query/comparing/batch.h"

namespace gallipot {
namespace {

constexpr std::size_t fewest_for_base = 4;  // witnesses that tell the dish's own base, where fewer than half do
constexpr double least_share = 0.1;  // of the batch, for a stuff to be its chief ingredient

/// Whether a stuff of this kind only seasons, raises or sets others.
bool only_seasons(const Holding& holding) {
  static constexpr std::array<const char*, 7> kinds{"spice",  "herb", "leaven", "gelling",
                                                    "colour", "drug", "household"};
  return holding.name == "salt" ||
         std::any_of(kinds.begin(), kinds.end(), [&](const char* kind) { return holding.kind == kind; });
}

/// In which unit a stuff is told, and by how many witnesses.
struct Coverage {
  bool seasons = false;  // a spice, a leaven: never the chief ingredient
  std::array<std::size_t, 3> by_unit{};
  std::size_t weighed = 0;
  double share = 0;      // summed over witnesses: its part of the weighed batch
  double earliness = 0;  // summed over witnesses: 1 where it is named first

  Amount::Unit unit() const {
    return static_cast<Amount::Unit>(std::max_element(by_unit.begin(), by_unit.end()) - by_unit.begin());
  }
  std::size_t witnesses() const { return *std::max_element(by_unit.begin(), by_unit.end()); }
};

/// The unit in which `basis` serves a witness: that of its amount, or that of the ties to it.
std::optional<Amount::Unit> unit_as_basis(const std::vector<Holding>& holdings, std::size_t basis) {
  if (const auto total = total_of(holdings, basis)) return total->unit;
  for (const Holding& holding : holdings)
    if (holding.tie && holding.tie->to == basis) return holding.tie->whole.unit;
  if (holdings[basis].tie) return holdings[basis].tie->part.unit;
  return std::nullopt;
}

std::map<std::string, Coverage> coverage_of(const std::vector<std::vector<Holding>>& all) {
  std::map<std::string, Coverage> out;
  for (const auto& holdings : all) {
    const auto whole = tells_its_batch(holdings) ? batch(holdings, std::nullopt) : std::nullopt;
    for (std::size_t h = 0; h < holdings.size(); ++h) {
      const auto unit = unit_as_basis(holdings, h);
      if (!unit) continue;
      Coverage& coverage = out[holdings[h].name];
      coverage.seasons = coverage.seasons || only_seasons(holdings[h]);
      ++coverage.by_unit[static_cast<std::size_t>(*unit)];
      coverage.earliness += 1.0 / static_cast<double>(h + 1);
      const auto total = total_of(holdings, h);
      const auto weight = total ? weight_of(*total, holdings[h].kind) : std::nullopt;
      if (!weight || !whole || whole->likely <= 0) continue;
      coverage.share += weight->likely / whole->likely;
      ++coverage.weighed;
    }
  }
  return out;
}

double per_of(Amount::Unit unit) { return unit == Amount::Unit::count ? 1 : 1000; }

/// The commonest base of the witnesses' dishes, as a stuff; empty where fewer than half agree.
std::string common_base(const std::vector<Witness>& witnesses, const Yardstick& yardstick) {
  std::map<std::string, std::size_t> counts;
  for (const Witness& witness : witnesses)
    if (!witness.recipe.dish.base.empty()) ++counts[yardstick.stuff(witness.recipe.dish.base)];
  for (const auto& [base, count] : counts)
    if (count * 2 >= witnesses.size()) return base;
  return {};
}

std::string told_by(std::size_t some, std::size_t all) {
  if (some == all) return all == 1 ? "the recipe tells its amount" : fmt::format("all {} tell its amount", all);
  return fmt::format("{} of {} tell its amount", some, all);
}

}  // namespace

Basis choose_basis(const std::vector<Witness>& witnesses, const std::vector<std::vector<Holding>>& holdings,
                   const Yardstick& yardstick) {
  const auto all = coverage_of(holdings);
  const std::size_t count = witnesses.size();
  const std::string base = common_base(witnesses, yardstick);
  const auto whole = static_cast<std::size_t>(std::count_if(holdings.begin(), holdings.end(), tells_its_batch));
  const auto tells_enough = [&](const Coverage& coverage) {
    return coverage.witnesses() * 2 >= count ||
           (coverage.witnesses() >= fewest_for_base && coverage.witnesses() >= whole);
  };
  if (const auto found = all.find(base); found != all.end() && tells_enough(found->second)) {
    const Amount::Unit unit = found->second.unit();
    return {base, fmt::format("the dish is named for it and {}", told_by(found->second.witnesses(), count)),
            per_of(unit), unit};
  }
  const std::pair<const std::string, Coverage>* best = nullptr;
  double best_worth = 0;
  for (const auto& entry : all) {
    const Coverage& coverage = entry.second;
    if (coverage.seasons || coverage.witnesses() * 2 < count || coverage.unit() == Amount::Unit::count) continue;
    // A seasoning that all happen to measure makes a poor yardstick: small, and told by the spoonful.
    if (coverage.weighed > 0 && coverage.share < least_share * static_cast<double>(coverage.weighed)) continue;
    const double told = static_cast<double>(coverage.witnesses()) / static_cast<double>(count);
    const double share = coverage.share / static_cast<double>(count);
    const double early = coverage.earliness / static_cast<double>(count);
    const double worth = told + share + 0.5 * early;
    if (best == nullptr || worth > best_worth) {
      best = &entry;
      best_worth = worth;
    }
  }
  if (best != nullptr) {
    const Amount::Unit unit = best->second.unit();
    return {best->first, fmt::format("it is the chief ingredient and {}", told_by(best->second.witnesses(), count)),
            per_of(unit), unit};
  }
  if (whole * 2 >= count && whole > 0)
    return {whole_batch, "no one ingredient has an amount in half of the recipes, so all that can be weighed is taken",
            1000, Amount::Unit::gram};
  return {as_printed, "too few of the recipes give amounts that can be brought to one basis", 0, Amount::Unit::gram};
}

Outcome<Basis> named_basis(const std::string& asked, const std::vector<std::vector<Holding>>& holdings,
                           const Yardstick& yardstick) {
  const std::string plain = to_plain(asked);
  if (plain == whole_batch) return Basis{whole_batch, "as asked", 1000, Amount::Unit::gram};
  if (plain == as_printed || plain == "as-printed") return Basis{as_printed, "as asked", 0, Amount::Unit::gram};
  const auto all = coverage_of(holdings);
  for (const std::string& name : {yardstick.stuff(plain), yardstick.stuff(singular(plain))}) {
    const auto found = all.find(name);
    if (found == all.end()) continue;
    const Amount::Unit unit = found->second.unit();
    return Basis{name, "as asked", per_of(unit), unit};
  }
  bool listed = false;
  for (const auto& one : holdings)
    if (place_of(one, yardstick.stuff(plain)) || place_of(one, yardstick.stuff(singular(plain)))) listed = true;
  std::vector<std::pair<std::size_t, std::string>> likely;
  for (const auto& [name, coverage] : all) likely.emplace_back(coverage.witnesses(), name);
  std::sort(likely.begin(), likely.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::string offer;
  for (std::size_t i = 0; i < likely.size() && i < 4; ++i) offer += "\"" + likely[i].second + "\", ";
  return fault(listed ? "no recipe here gives an amount of \"" + asked + "\" to compare by"
                      : "no recipe here has \"" + asked + "\"",
               "take as basis " + offer + "\"batch\" or \"as printed\"");
}

std::optional<Amount> basis_amount(const std::vector<Holding>& holdings, const Basis& basis) {
  if (basis.name == as_printed) return std::nullopt;
  if (basis.name == whole_batch) return has_absolute_weight(holdings) ? batch(holdings, std::nullopt) : std::nullopt;
  const auto at = place_of(holdings, basis.name);
  if (!at) return std::nullopt;
  const auto total = total_of(holdings, *at);
  return total && total->unit == basis.unit ? total : std::nullopt;
}

std::optional<Amount> brought_to(const std::vector<Holding>& holdings, std::size_t holding, const Basis& basis) {
  if (basis.name == as_printed) return total_of(holdings, holding);
  if (basis.name == whole_batch)
    return tells_its_batch(holdings) ? share_of_batch(holdings, holding, basis.per) : std::nullopt;
  const auto at = place_of(holdings, basis.name);
  if (!at) return std::nullopt;
  return against(holdings, holding, *at, basis.per, basis.unit);
}

}  // namespace gallipot
