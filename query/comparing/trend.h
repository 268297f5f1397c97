// Does a figure rise or fall with the years? By ranks only, so that one wild witness does not make a trend.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace gallipot {

/// One figure and when.
struct Dated {
  double when = 0;
  double what = 0;
};

struct RankTrend {
  double tau = 0;  ///< Kendall's tau-b, -1 .. 1
  double p = 1;    ///< two-sided: how often chance does as much
};

/// How surely `what` goes with `when`. Without ties and up to fifty points the chance is exact (all orders counted);
/// else by the normal curve with the variance corrected for ties and one taken off for continuity. Nothing where all
/// are of one time or all figures are one. Source: Kendall 1938, "A new measure of rank correlation", Biometrika 30;
/// Kendall 1970, Rank Correlation Methods, chapters 3 and 4.
std::optional<RankTrend> kendall(const std::vector<Dated>& points);

struct Slope {
  double likely = 0;
  double low = 0, high = 0;  ///< within these with 95 in 100
};

/// The middle of the slopes between all pairs of points that differ in time, with the ends that Kendall's statistic
/// allows. Nothing where no pair differs in time. Source: Theil 1950; Sen 1968, "Estimates of the regression
/// coefficient based on Kendall's tau", Journal of the American Statistical Association 63.
std::optional<Slope> theil_sen(const std::vector<Dated>& points);

}  // namespace gallipot
