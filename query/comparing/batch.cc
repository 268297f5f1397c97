// Weighs the whole of a recipe.
#include "query/comparing/batch.h"

#include <algorithm>
#include <map>

#include "indexer/measures/amount.h"

namespace gallipot {
namespace {

/// Alternatives and what only others are told by are no part of it.
bool counts_in_batch(const Holding& holding) { return !holding.mentions.empty() && holding.alternative_of.empty(); }

}  // namespace

std::optional<std::size_t> root_of(const std::vector<Holding>& holdings) {
  std::map<std::size_t, std::size_t> told;
  for (const Holding& holding : holdings)
    if (holding.tie) ++told[holding.tie->to];
  std::optional<std::size_t> best;
  for (const auto& [to, count] : told)
    if (!best || count > told[*best]) best = to;
  return best;
}

std::optional<Amount> weight_of(const Amount& amount, const std::string& kind) {
  if (amount.unit == Amount::Unit::gram) return amount;
  const bool liquid = kind == "water" || kind == "liquor" || kind == "drink" || kind == "dairy" ||
                      kind == "condiment" || kind == "sauce";
  if (amount.unit != Amount::Unit::millilitre || !liquid) return std::nullopt;
  return Amount{Amount::Unit::gram, amount.low * 0.91, amount.likely, amount.high * 1.05, amount.why};
}

std::optional<Amount> batch(const std::vector<Holding>& holdings, std::optional<std::size_t> root) {
  std::optional<Amount> out;
  for (std::size_t h = 0; h < holdings.size(); ++h) {
    if (!counts_in_batch(holdings[h])) continue;
    const auto part = root ? against(holdings, h, *root, 1, Amount::Unit::gram) : total_of(holdings, h);
    const auto weight = part ? weight_of(*part, holdings[h].kind) : std::nullopt;
    if (weight) out = out ? sum(*out, *weight) : *weight;
  }
  if (out) out->why = "all that can be weighed";
  return out;
}

bool has_absolute_weight(const std::vector<Holding>& holdings) {
  for (std::size_t h = 0; h < holdings.size(); ++h) {
    const auto total = total_of(holdings, h);
    if (counts_in_batch(holdings[h]) && total && weight_of(*total, holdings[h].kind)) return true;
  }
  return false;
}

std::optional<Amount> share_of_batch(const std::vector<Holding>& holdings, std::size_t holding, double per) {
  const bool absolute = has_absolute_weight(holdings);
  const auto root = absolute ? std::nullopt : root_of(holdings);
  if (!absolute && !root) return std::nullopt;
  const auto whole = batch(holdings, root);
  const auto part = root ? against(holdings, holding, *root, 1, Amount::Unit::gram) : total_of(holdings, holding);
  if (!whole || !part || whole->low <= 0) return std::nullopt;
  // What is told by volume stays so: millilitres to a kilogram of the batch.
  if (!counts_in_batch(holdings[holding]) || part->unit != Amount::Unit::gram) return ratio(*part, *whole, per);
  // The part is in the whole: where it is least, the rest alone varies, and so at the most.
  const double low = part->low > 0 ? part->low / (part->low + whole->high - part->high) * per : 0;
  const double high = part->high > 0 ? part->high / (part->high + whole->low - part->low) * per : 0;
  return Amount{part->unit, low, part->likely / whole->likely * per, high, part->why};
}

bool tells_its_batch(const std::vector<Holding>& holdings) {
  const auto root = has_absolute_weight(holdings) ? std::nullopt : root_of(holdings);
  std::size_t named = 0, weighed = 0;
  for (std::size_t h = 0; h < holdings.size(); ++h) {
    if (!counts_in_batch(holdings[h])) continue;
    ++named;
    const auto part = root ? against(holdings, h, *root, 1, Amount::Unit::gram) : total_of(holdings, h);
    if (part && weight_of(*part, holdings[h].kind)) ++weighed;
  }
  return weighed >= 2 && weighed * 2 >= named;
}

}  // namespace gallipot
