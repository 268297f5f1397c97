// Lineage against what is published: likeness of sets, sketches, local alignment.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "indexer/storing/shingles.h"
#include "query/grouping/passages.h"

namespace gallipot {
namespace {

using Marks = std::vector<std::uint64_t>;

// Leskovec, Rajaraman and Ullman, Mining of Massive Datasets, 3.1.1 with figure 3.1: two sets with three elements in
// their intersection and eight in their union have the similarity 3/8; 3.3.2 and example 3.8: S1 = {a, d}, S2 = {c},
// S3 = {b, d, e}, S4 = {a, c, d}, of which S1 and S4 are alike by 2/3, S1 and S3 by 1/4, S1 and S2 not at all.
TEST(Published, SimilarityOfSets) {
  EXPECT_DOUBLE_EQ(resemblance_of({1, 2, 3, 4, 5}, {3, 4, 5, 6, 7, 8}).resemblance, 3.0 / 8);
  const Marks s1{1, 4}, s2{3}, s3{2, 4, 5}, s4{1, 3, 4};
  EXPECT_DOUBLE_EQ(resemblance_of(s1, s4).resemblance, 2.0 / 3);
  EXPECT_DOUBLE_EQ(resemblance_of(s1, s3).resemblance, 1.0 / 4);
  EXPECT_DOUBLE_EQ(resemblance_of(s1, s2).resemblance, 0);
}

// Broder 1997, On the resemblance and containment of documents: containment of A in B is the intersection over A; and
// "a rose is a rose is a rose" has three distinct shingles (there of four words, and of three words as well).
TEST(Published, ContainmentAndShingles) {
  const auto both = resemblance_of({1, 2}, {1, 2, 3, 4, 5, 6, 7, 8, 9, 10});
  EXPECT_DOUBLE_EQ(both.of_first, 1);
  EXPECT_DOUBLE_EQ(both.of_second, 0.2);
  const std::map<char, std::uint64_t> word{{'a', 11}, {'r', 22}, {'i', 33}};
  Marks rose;
  for (const char c : std::string("ariariar")) rose.push_back(word.at(c));
  const auto shingles = shingles_of(rose);
  EXPECT_EQ(shingles.size(), 6u);
  EXPECT_EQ(std::set<std::uint64_t>(shingles.begin(), shingles.end()).size(), 3u);
}

// Broder 1997: the sketch that keeps the shingles that are 0 modulo m estimates both without bias. Two rows of 4000
// words of which the first is the first half of the second: resemblance 1/2, containment 1.
TEST(Published, SketchesEstimateResemblanceAndContainment) {
  Marks longer;
  for (std::uint64_t i = 0; i < 8000; ++i) longer.push_back(i * 2654435761ULL + 12345);
  const Marks shorter(longer.begin(), longer.begin() + 4000);
  const auto kept = [](const Marks& marks) {
    auto all = shingles_of(marks);
    std::erase_if(all, [](std::uint64_t s) { return !is_kept(s); });
    return all;
  };
  const auto a = kept(shorter), b = kept(longer);
  const auto n = static_cast<double>(b.size());
  EXPECT_NEAR(n, 8000.0 / shingle_sampling, 3 * std::sqrt(8000.0 * 3) / shingle_sampling);
  const auto estimate = resemblance_of(a, b);
  EXPECT_NEAR(estimate.resemblance, 0.5, 3 * std::sqrt(0.25 / n));
  EXPECT_DOUBLE_EQ(estimate.of_first, 1);
  EXPECT_NEAR(estimate.of_second, 0.5, 3 * std::sqrt(0.25 / n));
}

// Smith and Waterman 1981, Identification of common molecular subsequences, J. Mol. Biol. 147: AAUGCCAUUGACGG and
// CAGCCUCGCUUAG with 1 for a match, -1/3 for a mismatch and 1 + k/3 for a gap of k have the best segments GCCAUUG and
// GCC-UCG with the score 3.33. Its one gap is of length one, and 4/3 a letter is never cheaper than their gap.
TEST(Published, SmithWatermanSegments) {
  const auto row = [](const std::string& letters) {
    return std::vector<std::uint32_t>(letters.begin(), letters.end());
  };
  const std::string a = "AAUGCCAUUGACGG", b = "CAGCCUCGCUUAG";
  const auto wa = row(a), wb = row(b);
  const std::vector<float> one_a(a.size(), 1), one_b(b.size(), 1);
  const Passage best = best_passage({wa, one_a}, {wb, one_b}, {-1.0F / 3, -4.0F / 3});
  EXPECT_NEAR(best.score, 10.0 / 3, 1e-5);
  ASSERT_FALSE(best.pairs.empty());
  const auto [first_a, first_b] = best.pairs.front();
  const auto [last_a, last_b] = best.pairs.back();
  EXPECT_EQ(a.substr(first_a, last_a - first_a + 1), "GCCAUUG");
  EXPECT_EQ(b.substr(first_b, last_b - first_b + 1), "GCCUCG");
}

}  // namespace
}  // namespace gallipot
