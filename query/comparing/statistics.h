// What is the middle of a handful of figures, and which stand out? Order statistics only: a shelf holds few witnesses,
// and one wild one must not move the rest.
#pragma once

#include <optional>
#include <vector>

namespace gallipot {

/// The p-quantile (0..1) of `sorted` (ascending, not empty): linear between order statistics, h = (n - 1) p + 1.
/// Source: Hyndman and Fan 1996, "Sample Quantiles in Statistical Packages", The American Statistician 50,
/// definition 7.
double quantile(const std::vector<double>& sorted, double p);

struct Quartiles {
  double lower = 0, median = 0, upper = 0;
};

/// Quartiles of figures in any order; at least one.
Quartiles quartiles(std::vector<double> figures);

/// Modified z-scores M_i = 0.6745 (x_i - median) / MAD, MAD the median of the absolute deviations from the median; a
/// score beyond 3.5 either way is held to stand out. Where more than half of the figures are equal (MAD is nought) the
/// mean absolute deviation times 1.2533 takes its place: (x_i - median) / (1.2533 mean). Nothing where all are equal.
/// Source: Iglewicz and Hoaglin 1993, How to Detect and Handle Outliers (ASQC Basic References in Quality Control 16),
/// as given in NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.17; the second form from memory.
std::optional<std::vector<double>> modified_z_scores(const std::vector<double>& figures);

inline constexpr double stands_out = 3.5;

/// The median absolute deviation from the median.
double median_absolute_deviation(const std::vector<double>& figures);

/// How far figures over nought spread, as a factor: exp(1.4826 MAD) of their logarithms, so that for a log-normal spread
/// about two thirds lie between the median divided by it and times it. Where more than half are equal the mean absolute
/// deviation times 1.2533 takes its place, as above. At least 1; 0 where no figure is over nought.
/// Source: 1.4826 makes the deviation that of the normal curve (Rousseeuw and Croux 1993, Journal of the American
/// Statistical Association 88).
double robust_factor(const std::vector<double>& figures);

}  // namespace gallipot
