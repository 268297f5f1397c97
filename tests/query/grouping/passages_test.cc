// Local alignment against a slow reference, and what a passage is.
#include "query/grouping/passages.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace gallipot {
namespace {

using Numbers = std::vector<std::uint32_t>;

/// The best score of all local alignments by plain recurrence from every pair of ends: slow, to check the fast one.
double best_score(const Numbers& a, const Numbers& b, const std::vector<float>& weights, const PassageCosts& costs) {
  std::vector<std::vector<double>> h(a.size() + 1, std::vector<double>(b.size() + 1, 0));
  double best = 0;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const double pair =
          a[i - 1] == b[j - 1] ? static_cast<double>(weights[i - 1]) : static_cast<double>(costs.unlike);
      double score = std::max(0.0, h[i - 1][j - 1] + pair);
      for (std::size_t k = 1; k <= i; ++k)
        score = std::max(score, h[i - k][j] + static_cast<double>(k) * static_cast<double>(costs.gap));
      for (std::size_t k = 1; k <= j; ++k)
        score = std::max(score, h[i][j - k] + static_cast<double>(k) * static_cast<double>(costs.gap));
      h[i][j] = score;
      best = std::max(best, score);
    }
  return best;
}

TEST(Passages, TheFastAlignmentScoresAsTheSlowOne) {
  std::mt19937 dice(7);
  for (int round = 0; round < 200; ++round) {
    Numbers a(dice() % 14), b(dice() % 14);
    for (auto& word : a) word = static_cast<std::uint32_t>(dice() % 5);
    for (auto& word : b) word = static_cast<std::uint32_t>(dice() % 5);
    std::vector<float> wa, wb;
    for (const auto word : a) wa.push_back(1.0F + static_cast<float>(word));
    for (const auto word : b) wb.push_back(1.0F + static_cast<float>(word));
    const Passage best = best_passage({a, wa}, {b, wb});
    ASSERT_NEAR(best.score, best_score(a, b, wa, {}), 1e-4);
    double told = 0;
    for (const auto& [i, j] : best.pairs) {
      ASSERT_EQ(a[i], b[j]);
      told += static_cast<double>(wa[i]);
    }
    ASSERT_GE(told, best.score - 1e-4);
  }
}

TEST(Passages, TheScoreIsTheSameFromEitherSide) {
  const Numbers a{1, 2, 3, 9, 4, 5, 6}, b{7, 1, 2, 3, 4, 5, 6, 8};
  const std::vector<float> wa(a.size(), 2), wb(b.size(), 2);
  EXPECT_EQ(best_passage({a, wa}, {b, wb}).score, best_passage({b, wb}, {a, wa}).score);
}

TEST(Passages, AMovedSentenceIsAPassageOfItsOwn) {
  const Numbers a{1, 2, 3, 4, 5, 11, 12, 13, 14, 15}, b{11, 12, 13, 14, 15, 90, 91, 1, 2, 3, 4, 5};
  const std::vector<float> wa(a.size(), 2), wb(b.size(), 2);
  const auto found = passages({a, wa}, {b, wb}, 8);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].pairs.size(), 5u);
  EXPECT_EQ(found[1].pairs.size(), 5u);
  std::vector<std::uint32_t> left;
  for (const auto& passage : found)
    for (const auto& [i, j] : passage.pairs) left.push_back(i);
  std::sort(left.begin(), left.end());
  EXPECT_EQ(std::adjacent_find(left.begin(), left.end()), left.end());
}

TEST(Passages, NothingSharedIsNoPassage) {
  const Numbers a{1, 2, 3}, b{4, 5}, none;
  const std::vector<float> wa(3, 2), wb(2, 2), wn;
  EXPECT_TRUE(best_passage({a, wa}, {b, wb}).pairs.empty());
  EXPECT_TRUE(passages({a, wa}, {none, wn}, 1).empty());
  EXPECT_TRUE(passages({none, wn}, {none, wn}, 1).empty());
}

}  // namespace
}  // namespace gallipot
