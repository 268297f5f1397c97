// What rises or falls with the years.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/chance.h"
#include "query/comparing/findings.h"
#include "query/comparing/sentences.h"
#include "query/comparing/trend.h"

namespace gallipot {
namespace {

constexpr std::size_t most_trends = 5;

/// "falls by about 12 in 100 every ten years (3 to 20)", "doubles".
std::string pace(const Trend& trend) {
  if (trend.decade >= 2)
    return fmt::format("rises {:.2g}-fold every ten years ({:.2g} to {:.2g})", trend.decade, trend.low, trend.high);
  const bool falls = trend.decade < 1;
  const auto in_100 = [&](double factor) { return (falls ? 1 - factor : factor - 1) * 100; };
  const double a = in_100(falls ? trend.high : trend.low), b = in_100(falls ? trend.low : trend.high);
  return fmt::format("{} by about {:.2g} in 100 every ten years ({:.2g} to {:.2g})", falls ? "falls" : "rises",
                     in_100(trend.decade), a, b);
}

std::string said(const Trend& trend) {
  return fmt::format(
      "{} {}: {} dated amounts, {}\xE2\x80\x93{}; slope of Theil and Sen on logarithms, Kendall's tau {:.2f}, p = "
      "{:.2g} "
      "({:.2g} when all {} ingredients tried are allowed for).",
      capitalized(trend.stuff), pace(trend), trend.amounts, trend.from, trend.to, trend.tau, trend.p, trend.among,
      trend.tried);
}

/// The dated amounts of a row, as logarithms.
std::vector<Dated> dated(const Comparison& comparison, const Row& row) {
  std::vector<Dated> out;
  if (!row.median) return out;
  for (std::size_t w = 0; w < row.cells.size(); ++w) {
    const auto& amount = row.cells[w].per_basis;
    const int year = comparison.witnesses[w].recipe.year;
    if (year > 0 && amount && amount->unit == row.median->unit && amount->likely > 0)
      out.push_back({static_cast<double>(year), std::log(amount->likely)});
  }
  return out;
}

}  // namespace

std::vector<Trend> trends_of(const Comparison& comparison) {
  std::vector<Trend> out;
  if (comparison.per <= 0) return out;  // amounts as printed grow with the batch
  for (const Row& row : comparison.rows) {
    if (row.name == comparison.basis) continue;
    const std::vector<Dated> points = dated(comparison, row);
    if (points.size() < fewest_for_trends) continue;
    const auto rank = kendall(points);
    const auto slope = theil_sen(points);
    if (!rank || !slope) continue;
    Trend trend;
    trend.stuff = row.name;
    trend.decade = std::exp(10 * slope->likely);
    trend.low = std::exp(10 * slope->low);
    trend.high = std::exp(10 * slope->high);
    trend.tau = rank->tau;
    trend.p = rank->p;
    trend.amounts = points.size();
    const auto [first, last] = std::minmax_element(points.begin(), points.end(),
                                                   [](const Dated& a, const Dated& b) { return a.when < b.when; });
    trend.from = static_cast<int>(first->when);
    trend.to = static_cast<int>(last->when);
    out.push_back(std::move(trend));
  }
  const std::size_t tried = out.size();
  for (Trend& trend : out) {
    trend.tried = tried;
    trend.among = std::min(1.0, trend.p * static_cast<double>(tried));
    trend.sentence = said(trend);
  }
  std::erase_if(out, [](const Trend& trend) {
    return trend.among > level_of_chance || trend.decade == 1 || (trend.decade > 1) != (trend.tau > 0);
  });
  std::stable_sort(out.begin(), out.end(), [](const Trend& a, const Trend& b) { return a.p < b.p; });
  if (out.size() > most_trends) out.resize(most_trends);
  return out;
}

}  // namespace gallipot
