// Comparing against what is published: order statistics, outliers, alignment, comma-separated values.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/alignment.h"
#include "query/comparing/chance.h"
#include "query/comparing/statistics.h"
#include "query/comparing/trend.h"
#include "query/reporting/amounts.h"
#include "query/reporting/csv.h"

namespace gallipot {
namespace {

// Hyndman and Fan 1996, definition 7: h = (n - 1) p + 1. The example is the common textbook one of five figures whose
// 40th percentile is 29 by this definition (26 by definition 6).
TEST(Published, QuantileByHyndmanAndFanSeven) {
  EXPECT_NEAR(quantile({15, 20, 35, 40, 50}, 0.40), 29, 1e-12);
  EXPECT_NEAR(quantile({15, 20, 35, 40, 50}, 0), 15, 1e-12);
  EXPECT_NEAR(quantile({15, 20, 35, 40, 50}, 1), 50, 1e-12);
  // Twelve measurements of the NIST/SEMATECH e-Handbook 7.2.6.2 (figures from memory); by 1 + p (N - 1) the 90th
  // percentile lies nine tenths of the way from the tenth to the eleventh in order.
  const std::vector<double> sorted{95.0610, 95.0925, 95.1065, 95.1195, 95.1442, 95.1567,
                                   95.1591, 95.1682, 95.1772, 95.1937, 95.1959, 95.1990};
  EXPECT_NEAR(quantile(sorted, 0.9), 95.1937 + 0.9 * (95.1959 - 95.1937), 1e-9);
}

TEST(Published, QuartilesTakeFiguresInAnyOrder) {
  const Quartiles q = quartiles({9, 1, 3, 7, 5});
  EXPECT_EQ(q.lower, 3);
  EXPECT_EQ(q.median, 5);
  EXPECT_EQ(q.upper, 7);
}

// Iglewicz and Hoaglin 1993 by NIST/SEMATECH e-Handbook 1.3.5.17: M = 0.6745 (x - median) / MAD, beyond 3.5 is
// labelled. Worked by hand: median 3.5, deviations 1.4 0.4 0.2 0 0.4 0.5 9.5 -> MAD 0.4.
TEST(Published, ModifiedZScore) {
  const auto scores = modified_z_scores({2.1, 3.1, 3.3, 3.5, 3.9, 4.0, 13.0});
  ASSERT_TRUE(scores);
  EXPECT_NEAR((*scores)[0], 0.6745 * -1.4 / 0.4, 1e-9);
  EXPECT_NEAR((*scores)[3], 0, 1e-9);
  EXPECT_NEAR((*scores)[6], 0.6745 * 9.5 / 0.4, 1e-9);
  EXPECT_EQ(std::count_if(scores->begin(), scores->end(), [](double m) { return std::abs(m) > stands_out; }), 1);
}

TEST(Published, ModifiedZScoreWhereMostAreEqual) {
  const auto scores = modified_z_scores({2, 2, 2, 2, 12});
  ASSERT_TRUE(scores);
  EXPECT_NEAR((*scores)[4], 10 / (1.2533 * 2), 1e-9);
  EXPECT_FALSE(modified_z_scores({2, 2, 2}));
}

// The median absolute deviation of 1 .. 9 is 2; times 1.4826 it is 2.9652, as the manual of R's mad() gives it.
TEST(Published, MedianAbsoluteDeviation) {
  EXPECT_EQ(median_absolute_deviation({1, 2, 3, 4, 5, 6, 7, 8, 9}), 2);
  EXPECT_NEAR(1.4826 * median_absolute_deviation({9, 1, 8, 2, 7, 3, 6, 4, 5}), 2.965204, 1e-4);
  // As a factor: figures that double each time lie ln 2 apart, so the factor is 2 to the power 2.9652.
  EXPECT_NEAR(robust_factor({1, 2, 4, 8, 16, 32, 64, 128, 256}), std::pow(2, 2.9652), 1e-3);
}

// Fisher 1935, The Design of Experiments: eight cups of tea, four of each sort. With all eight told rightly 1 in 70
// one-sided; with six told rightly 17 in 70 (0.2429, as in the manual of R's fisher.test after Agresti 1990). Both
// tables are symmetrical, so that the two-sided values are twice those.
TEST(Published, FishersTea) {
  EXPECT_NEAR(fisher_exact({4, 0, 0, 4}), 2.0 / 70, 1e-12);
  EXPECT_NEAR(fisher_exact({3, 1, 1, 3}), 34.0 / 70, 1e-12);
  EXPECT_NEAR(fisher_exact({2, 2, 2, 2}), 1, 1e-12);
  EXPECT_NEAR(least_fisher({3, 1, 1, 3}), 2.0 / 70, 1e-12);
}

// Fisher 1970, Statistical Methods for Research Workers, 21.02: convictions of like-sex twins of criminals; two-sided
// 0.0005367 (R's fisher.test; figure from memory). The lower tail by hand: (C(17,2) C(13,10) + C(17,1) C(13,11) +
// C(13,12)) / C(30,12).
TEST(Published, FishersTwins) {
  const double lower = (136.0 * 286 + 17.0 * 78 + 13) / 86493225;
  EXPECT_NEAR(lower, 0.00046518, 1e-8);
  EXPECT_NEAR(fisher_exact({2, 10, 15, 3}), 0.0005367, 1e-7);
  EXPECT_NEAR(fisher_exact({10, 2, 3, 15}), fisher_exact({2, 10, 15, 3}), 1e-12);
}

// Tarone 1990, with the example of the manual of R's package MHTdiscrete: three binomial tests whose least values are
// 0.5^8, 0.25^5 and 0.4^6; all three count, and of the values 0.0352, 0.0156 and 0.0410 only the second stands (three
// times it is 0.0469).
TEST(Published, TaronesCount) {
  const std::vector<double> least{std::pow(0.5, 8), std::pow(0.25, 5), std::pow(0.4, 6)};
  EXPECT_EQ(tests_that_count(least, 0.05), 3U);
  EXPECT_NEAR(3 * 0.015625, 0.0468750, 1e-12);
  // Tests that can never come out below the level cost nothing.
  EXPECT_EQ(tests_that_count({0.001, 0.3, 0.4, 0.5, 0.6}, 0.05), 1U);
  EXPECT_EQ(tests_that_count({}, 0.05), 0U);
}

// Hollander and Wolfe 1973, p. 187: lightness of nine lots of tuna and a panel's marks. T = 26 of 36 pairs agree, tau
// 0.4444; one-sided 0.0597 (the manual of R's cor.test), so 0.1194 two-sided.
TEST(Published, KendallsTauOfTuna) {
  const double light[] = {44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1};
  const double marks[] = {2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8};
  std::vector<Dated> points;
  for (std::size_t i = 0; i < 9; ++i) points.push_back({light[i], marks[i]});
  const auto rank = kendall(points);
  ASSERT_TRUE(rank);
  EXPECT_NEAR(rank->tau, 16.0 / 36, 1e-12);
  EXPECT_NEAR(rank->p, 2 * 0.05972, 1e-4);
}

TEST(Published, KendallByAllOrders) {
  // Of the 24 orders of four, two agree or disagree in all six pairs.
  const auto rank = kendall({{1, 1}, {2, 2}, {3, 3}, {4, 4}});
  ASSERT_TRUE(rank);
  EXPECT_NEAR(rank->p, 2.0 / 24, 1e-12);
  EXPECT_FALSE(kendall({{1, 1}, {1, 2}}));
  EXPECT_FALSE(kendall({{1, 3}, {2, 3}}));
  const auto tied = kendall({{1, 1}, {1, 2}, {2, 2}, {3, 4}, {4, 3}});
  ASSERT_TRUE(tied);
  EXPECT_NEAR(tied->tau, 6 / std::sqrt(9.0 * 9.0), 1e-12);
}

// Sen 1968, section 6: seven points whose slope is 4 (from memory).
TEST(Published, SensSlope) {
  const double when[] = {1, 2, 3, 4, 10, 12, 18}, what[] = {9, 15, 19, 20, 45, 55, 78};
  std::vector<Dated> points;
  for (std::size_t i = 0; i < 7; ++i) points.push_back({when[i], what[i]});
  const auto slope = theil_sen(points);
  ASSERT_TRUE(slope);
  EXPECT_NEAR(slope->likely, 4, 1e-12);
  EXPECT_LT(slope->low, 4);
  EXPECT_GT(slope->high, 4);
}

// The manual of R's package statpsych (after Hollander and Wolfe 1999): estimate 0.5, 95 in 100 within 0.324 and 0.75.
TEST(Published, TheilsSlopeWithItsEnds) {
  const double y[] = {21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19};
  const double x[] = {67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51};
  std::vector<Dated> points;
  for (std::size_t i = 0; i < 15; ++i) points.push_back({x[i], y[i]});
  const auto slope = theil_sen(points);
  ASSERT_TRUE(slope);
  EXPECT_NEAR(slope->likely, 0.5, 1e-9);
  EXPECT_NEAR(slope->low, 0.3243243, 0.02);
  EXPECT_NEAR(slope->high, 0.75, 0.03);
}

// Needleman and Wunsch 1970. The well-known teaching pair GATTACA / GCATGCG (match 1, mismatch -1, gap -1; from memory)
// has the optimal score 0.
TEST(Published, NeedlemanWunschScore) {
  const std::string a = "GCATGCG", b = "GATTACA";
  const auto score = [&](std::size_t i, std::size_t j) { return a[i] == b[j] ? 1.0 : -1.0; };
  const Aligned aligned = align(a.size(), b.size(), score, -1);
  EXPECT_EQ(aligned.score, 0);
  double total = 0;
  std::string left, right;
  for (const Pairing& pair : aligned.pairs) {
    total += pair.left && pair.right ? score(*pair.left, *pair.right) : -1;
    if (pair.left) left += a[*pair.left];
    if (pair.right) right += b[*pair.right];
  }
  EXPECT_EQ(total, aligned.score);
  EXPECT_EQ(left, a);
  EXPECT_EQ(right, b);
}

/// The best score of all alignments, by trying each: slow and plain, to check the fast one.
double best_of_all(const std::string& a, const std::string& b, std::size_t i, std::size_t j, double gap) {
  if (i == a.size() && j == b.size()) return 0;
  double best = -1e9;
  if (i < a.size() && j < b.size())
    best = std::max(best, (a[i] == b[j] ? 2.0 : -3.0) + best_of_all(a, b, i + 1, j + 1, gap));
  if (i < a.size()) best = std::max(best, gap + best_of_all(a, b, i + 1, j, gap));
  if (j < b.size()) best = std::max(best, gap + best_of_all(a, b, i, j + 1, gap));
  return best;
}

TEST(Published, NeedlemanWunschIsTheBestOfAllAlignments) {
  const char* words[] = {"", "a", "ab", "abc", "bca", "cab", "aabb", "abab", "cbabc"};
  for (const std::string a : words)
    for (const std::string b : words) {
      const auto score = [&](std::size_t i, std::size_t j) { return a[i] == b[j] ? 2.0 : -3.0; };
      EXPECT_NEAR(align(a.size(), b.size(), score, -0.5).score, best_of_all(a, b, 0, 0, -0.5), 1e-9) << a << " " << b;
    }
}

TEST(Published, ProgressiveAlignmentKeepsEveryElementInItsOrder) {
  const std::vector<std::string> rows{"chop-salt", "salt", "", "chopboil", "boil-salt-seal"};
  std::vector<std::size_t> lengths;
  for (const auto& row : rows) lengths.push_back(row.size());
  const auto columns = align_all(lengths, [&](std::size_t a, std::size_t i, std::size_t b, std::size_t j) {
    return rows[a][i] == rows[b][j] ? 1.0 : 0.0;
  });
  for (std::size_t r = 0; r < rows.size(); ++r) {
    std::string read;
    for (const auto& column : columns) {
      ASSERT_EQ(column.size(), rows.size());
      if (column[r]) read += rows[r][*column[r]];
    }
    EXPECT_EQ(read, rows[r]);
  }
  for (const auto& column : columns) {
    char only = 0;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (!column[r]) continue;
      if (only == 0) only = rows[r][*column[r]];
      EXPECT_EQ(rows[r][*column[r]], only);
    }
  }
}

// RFC 4180, section 2: the examples of rules 4 to 7.
TEST(Published, CommaSeparatedValues) {
  EXPECT_EQ(csv_record({"aaa", "bbb", "ccc"}), "aaa,bbb,ccc\r\n");
  EXPECT_EQ(csv_record({"aaa", "b\r\nbb", "ccc"}), "aaa,\"b\r\nbb\",ccc\r\n");
  EXPECT_EQ(csv_record({"aaa", "b\"bb", "ccc"}), "aaa,\"b\"\"bb\",ccc\r\n");
  EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
  EXPECT_EQ(csv_field(" spaces are part of a field "), " spaces are part of a field ");
}

// Review of Particle Physics, Introduction, "Rounding": 0.827 +- 0.119 is written 0.83 +- 0.12, and 0.827 +- 0.367 as
// 0.8 +- 0.4.
TEST(Published, DigitsByTheWidthOfTheRange) {
  EXPECT_EQ(decimals_of(0.827 - 0.119, 0.827, 0.827 + 0.119), 2);
  EXPECT_EQ(decimals_of(0.827 - 0.367, 0.827, 0.827 + 0.367), 1);
  EXPECT_EQ(write_figure(0.827, 2), "0.83");
}

}  // namespace
}  // namespace gallipot
