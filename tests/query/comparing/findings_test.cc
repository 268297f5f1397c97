// What a comparison says in words, and when it says that an amount is out of line.
#include "query/comparing/findings.h"

#include "query/comparing/duration.h"
#include "query/comparing/sentences.h"
#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::lay_out;
using bench::Receipt;
using bench::row;
using bench::says;

const Dish chutney{"apple", "chutney"};

Receipt with_ginger(int n, double ounces) {
  return Receipt("a/000" + std::to_string(n), 1800 + 10 * n, chutney)
      .has("four pounds of apples", "apple", 4, "pound")
      .has("ginger", "ginger", ounces, "ounce", "spice");
}

TEST(Findings, SixTimesTheGingerOfItsSiblingsIsOutOfLine) {
  std::vector<ComparableRecipe> recipes;
  const double ounces[] = {0.9, 1, 1.1, 1, 1.2, 6.3};
  for (int i = 0; i < 6; ++i) recipes.push_back(with_ginger(i + 1, ounces[i]).recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  const Row* ginger = row(*made, "ginger");
  ASSERT_TRUE(ginger);
  EXPECT_TRUE(ginger->cells[5].out_of_line);
  EXPECT_FALSE(ginger->cells[4].out_of_line);
  EXPECT_EQ(ginger->note, "F has 6.3 x the median of 5 others (6.3 to 6.3)");
  EXPECT_TRUE(says(*made, "ginger: F has 6.3 x"));
}

TEST(Findings, AWitnessWithAllOutOfLineIsToldOnceAndItsBasisDoubted) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 6; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, chutney)
                          .has("apples", "apple", i == 6 ? 0.5 : 4 + 0.1 * i, "pound")
                          .has("ginger", "ginger", 1, "ounce", "spice")
                          .has("sugar", "sugar", 2, "pound", "sweet")
                          .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "F has far more sugar and ginger than the others; perhaps it is its apple that is out."));
  EXPECT_FALSE(says(*made, "Out of line: ginger"));
}

TEST(Findings, FourAmountsAreTooFewToCallOneOutOfLine) {
  const auto made = lay_out({with_ginger(1, 1).recipe(), with_ginger(2, 1.1).recipe(), with_ginger(3, 0.9).recipe(),
                             with_ginger(4, 9).recipe()});
  ASSERT_TRUE(made);
  EXPECT_TRUE(row(*made, "ginger")->note.empty());
}

TEST(Findings, LessThanTwiceIsNotOutOfLineHoweverAlikeTheRest) {
  const auto made = lay_out({with_ginger(1, 1).recipe(), with_ginger(2, 1).recipe(), with_ginger(3, 1).recipe(),
                             with_ginger(4, 1).recipe(), with_ginger(5, 1.5).recipe()});
  ASSERT_TRUE(made);
  EXPECT_TRUE(row(*made, "ginger")->note.empty());
}

TEST(Findings, ARangeThatMeetsTheOthersIsNotOutOfLine) {
  // Teaspoons here hold 3 to 7 g: three of them (9 to 21) meet one of 10 g by weight.
  std::vector<ComparableRecipe> recipes;
  const double ounces[] = {0.18, 0.17, 0.17, 0.18, 0.36};
  for (int i = 0; i < 5; ++i) recipes.push_back(with_ginger(i + 1, ounces[i]).recipe());
  recipes.push_back(Receipt("b/0001", 1890, chutney)
                        .has("four pounds of apples", "apple", 4, "pound")
                        .has("three teaspoons of ginger", "ginger", 3, "teaspoon", "spice")
                        .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_FALSE(row(*made, "ginger")->cells[5].out_of_line);
}

TEST(Findings, AllButTwoBoilItAndTheTwoAreTheOldest) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 6; ++i) {
    Receipt receipt("a/000" + std::to_string(i), 1800 + 10 * i, chutney);
    receipt.does("chop").does(i <= 2 ? "stand" : "boil");
    recipes.push_back(receipt.recipe());
  }
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "All but two boil it (not A and B); those that do not are the oldest."));
}

TEST(Findings, WhatComesToTheSameIsCountedWithIt) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 4; ++i)
    recipes.push_back(
        Receipt("a/000" + std::to_string(i), 1800 + 10 * i, chutney).does(i == 2 ? "simmer" : "boil").recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "All four boil or simmer it."));
}

TEST(Findings, VinegarWithAndWithout) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 5; ++i) {
    Receipt receipt("a/000" + std::to_string(i), 1800 + 10 * i, chutney);
    receipt.has("apples", "apple");
    if (i == 2 || i == 3) receipt.has("vinegar", "vinegar", 0, {}, "condiment");
    if (i == 5) receipt.has("distilled vinegar", "distilled vinegar", 0, {}, "condiment");
    recipes.push_back(receipt.recipe());
  }
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "Vinegar: 3 with, 2 without (without: A and D)."));
}

TEST(Findings, SaysWhomItCouldNotBringToTheBasis) {
  const auto made =
      lay_out({with_ginger(1, 1).recipe(), with_ginger(2, 1).recipe(),
               Receipt("b/0001", 1890, chutney).has("some apples", "apple").has("ginger", "ginger").recipe()});
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "C stands as printed"));
}

TEST(Findings, HowLongIsSaidAsTheRecipesSayIt) {
  std::vector<ComparableRecipe> recipes;
  const double minutes[] = {20, 45, 240};
  for (int i = 0; i < 3; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, chutney).does("boil", minutes[i]).recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "All three boil it. Three say how long: from 20 minutes (A) to 4 hours (C)."));
  EXPECT_EQ(duration_words({90, 120}), "1.5 to 2 hours");
  EXPECT_EQ(duration_words({60, 60}), "1 hour");
}

TEST(Findings, ATooLongListOfSiglaIsLeftToTheTable) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 10; i < 30; ++i) {
    Receipt receipt("a/00" + std::to_string(i), 1800 + i, chutney);
    receipt.has("apples", "apple");
    if (i % 2 == 0) receipt.has("vinegar", "vinegar", 0, {}, "condiment");
    recipes.push_back(receipt.recipe());
  }
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "Vinegar: 10 with, 10 without."));
}

TEST(Findings, BadSetsAreToldInASentenceAndStillShown) {
  const auto alone = lay_out({with_ginger(1, 1).recipe()});
  ASSERT_TRUE(alone);
  EXPECT_TRUE(says(*alone, "One recipe alone"));
  EXPECT_TRUE(row(*alone, "ginger")->cells[0].per_basis);
  const auto unlike =
      lay_out({Receipt("a/0001", 1800, {"apple", "chutney"}).has("apples", "apple", 1, "pound").recipe(),
               Receipt("b/0001", 1810, {"sponge", "cake"}).has("flour", "flour", 1, "pound").recipe()});
  ASSERT_TRUE(unlike);
  EXPECT_TRUE(says(*unlike, "They have no ingredient in common."));
  EXPECT_EQ(unlike->rows.size(), 2U);
  const auto bare = lay_out({Receipt("a/0001", 1800, chutney).has("apples", "apple").recipe(),
                             Receipt("b/0001", 1810, chutney).has("some apples", "apple").recipe()});
  ASSERT_TRUE(bare);
  EXPECT_TRUE(says(*bare, "No recipe here gives an amount that can be told in figures"));
  EXPECT_EQ(row(*bare, "apple")->witnesses, 2U);
  const auto nothing = lay_out(
      {Receipt("a/0001", 1800, chutney).does("boil").recipe(), Receipt("b/0001", 1810, chutney).does("boil").recipe()});
  ASSERT_TRUE(nothing);
  EXPECT_TRUE(says(*nothing, "No ingredient was read"));
  EXPECT_EQ(nothing->steps.size(), 1U);
}

TEST(Findings, SiglaAreListedAsInASentence) {
  EXPECT_EQ(sigla_list({"A"}), "A");
  EXPECT_EQ(sigla_list({"A", "C"}), "A and C");
  EXPECT_EQ(sigla_list({"A", "C", "D"}), "A, C and D");
}

}  // namespace
}  // namespace gallipot
