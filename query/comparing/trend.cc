// Kendall's tau and the slope of Theil and Sen.
#include "query/comparing/trend.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr std::size_t most_exact = 50;
constexpr double two_sided_95 = 1.959963985;  // of the normal curve

int sign(double value) { return (value > 0) - (value < 0); }

/// Sizes of the groups of equal values.
std::vector<double> ties(const std::vector<Dated>& points, double Dated::*part) {
  std::map<double, double> counts;
  for (const Dated& point : points) counts[point.*part] += 1;
  std::vector<double> out;
  for (const auto& [value, count] : counts)
    if (count > 1) out.push_back(count);
  return out;
}

template <typename Term>
double summed(const std::vector<double>& groups, Term term) {
  double out = 0;
  for (const double t : groups) out += term(t);
  return out;
}

struct Score {
  double s = 0;         // pairs that agree less pairs that do not
  double variance = 0;  // of s where nothing goes with anything
  double tau = 0;
  bool tied = false;
  bool any = false;  // both times and figures differ somewhere
};

Score score_of(const std::vector<Dated>& points) {
  Score out;
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t j = i + 1; j < points.size(); ++j)
      out.s += sign(points[j].when - points[i].when) * sign(points[j].what - points[i].what);
  const auto n = static_cast<double>(points.size());
  const auto t = ties(points, &Dated::when), u = ties(points, &Dated::what);
  const auto pairs = [](double x) { return x * (x - 1) / 2; };
  const auto fives = [](double x) { return x * (x - 1) * (2 * x + 5); };
  const auto triples = [](double x) { return x * (x - 1) * (x - 2); };
  const double in_time = pairs(n) - summed(t, pairs), in_figures = pairs(n) - summed(u, pairs);
  out.any = in_time > 0 && in_figures > 0;
  if (!out.any) return out;
  out.tied = !t.empty() || !u.empty();
  out.tau = out.s / std::sqrt(in_time * in_figures);
  out.variance =
      (fives(n) - summed(t, fives) - summed(u, fives)) / 18 + 2 * summed(t, pairs) * summed(u, pairs) / (n * (n - 1));
  if (n > 2) out.variance += summed(t, triples) * summed(u, triples) / (9 * n * (n - 1) * (n - 2));
  return out;
}

/// The chance that |S| of `n` figures in blind order is at least `s`: orders counted by their swaps.
double exact_chance(std::size_t n, double s) {
  std::vector<double> share{1};  // of orders with 0, 1, 2 ... swaps
  for (std::size_t k = 2; k <= n; ++k) {
    std::vector<double> next(share.size() + k - 1, 0);
    for (std::size_t swaps = 0; swaps < share.size(); ++swaps)
      for (std::size_t more = 0; more < k; ++more) next[swaps + more] += share[swaps] / static_cast<double>(k);
    share = std::move(next);
  }
  const double most = static_cast<double>(n) * static_cast<double>(n - 1) / 2;
  double out = 0;
  for (std::size_t swaps = 0; swaps < share.size(); ++swaps)
    if (std::abs(most - 2 * static_cast<double>(swaps)) >= std::abs(s) - 0.5) out += share[swaps];
  return std::min(1.0, out);
}

}  // namespace

std::optional<RankTrend> kendall(const std::vector<Dated>& points) {
  if (points.size() < 2) return std::nullopt;
  const Score score = score_of(points);
  if (!score.any) return std::nullopt;
  if (!score.tied && points.size() <= most_exact) return RankTrend{score.tau, exact_chance(points.size(), score.s)};
  const double z = std::max(0.0, std::abs(score.s) - 1) / std::sqrt(score.variance);
  return RankTrend{score.tau, std::erfc(z / std::sqrt(2.0))};
}

std::optional<Slope> theil_sen(const std::vector<Dated>& points) {
  std::vector<double> slopes;
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t j = i + 1; j < points.size(); ++j) {
      const double apart = points[j].when - points[i].when;
      if (apart != 0) slopes.push_back((points[j].what - points[i].what) / apart);
    }
  if (slopes.empty()) return std::nullopt;
  std::sort(slopes.begin(), slopes.end());
  const double reach = two_sided_95 * std::sqrt(std::max(0.0, score_of(points).variance));
  const auto count = static_cast<double>(slopes.size());
  const auto at = [&](double rank) {  // from one
    return slopes[static_cast<std::size_t>(std::clamp(rank, 1.0, count)) - 1];
  };
  return Slope{quantile(slopes, 0.5), at(std::floor((count - reach) / 2)), at(std::ceil((count + reach) / 2) + 1)};
}

}  // namespace gallipot
