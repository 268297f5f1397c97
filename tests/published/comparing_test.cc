// Comparing against what is published: order statistics, outliers, alignment, comma-separated values.
#include <gtest/gtest.h>

#include <algorithm>

#include "query/comparing/alignment.h"
#include "query/comparing/statistics.h"
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
