// Quantiles and modified z-scores.
#include "query/comparing/statistics.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace gallipot {

double quantile(const std::vector<double>& sorted, double p) {
  const double at = static_cast<double>(sorted.size() - 1) * p;
  const auto below = static_cast<std::size_t>(at);
  if (below + 1 >= sorted.size()) return sorted.back();
  return sorted[below] + (at - static_cast<double>(below)) * (sorted[below + 1] - sorted[below]);
}

Quartiles quartiles(std::vector<double> figures) {
  std::sort(figures.begin(), figures.end());
  return {quantile(figures, 0.25), quantile(figures, 0.5), quantile(figures, 0.75)};
}

double median_absolute_deviation(const std::vector<double>& figures) {
  const double middle = quartiles(figures).median;
  std::vector<double> away;
  away.reserve(figures.size());
  for (const double x : figures) away.push_back(std::abs(x - middle));
  return quartiles(std::move(away)).median;
}

double robust_factor(const std::vector<double>& figures) {
  std::vector<double> logs;
  for (const double x : figures)
    if (x > 0) logs.push_back(std::log(x));
  if (logs.empty()) return 0;
  const double middle = median_absolute_deviation(logs);
  if (middle > 0) return std::exp(1.4826 * middle);
  const double centre = quartiles(logs).median;
  double away = 0;
  for (const double x : logs) away += std::abs(x - centre);
  return std::exp(1.2533 * away / static_cast<double>(logs.size()));
}

std::optional<std::vector<double>> modified_z_scores(const std::vector<double>& figures) {
  if (figures.empty()) return std::nullopt;
  const double middle = quartiles(figures).median;
  std::vector<double> away;
  away.reserve(figures.size());
  for (const double x : figures) away.push_back(std::abs(x - middle));
  const double spread = quartiles(away).median;
  const double mean = std::accumulate(away.begin(), away.end(), 0.0) / static_cast<double>(away.size());
  if (mean <= 0) return std::nullopt;
  std::vector<double> out;
  out.reserve(figures.size());
  for (const double x : figures)
    out.push_back(spread > 0 ? 0.6745 * (x - middle) / spread : (x - middle) / (1.2533 * mean));
  return out;
}

}  // namespace gallipot
