// Recipes side by side: order, sums, proportions, what cannot be told, and faults.
#include "query/comparing/compare.h"

#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::lay_out;
using bench::Receipt;
using bench::row;

const Dish damson_cheese{"damson", "cheese"};

TEST(Compare, WitnessesStandByYearThenIdAndTheUndatedLast) {
  const auto made =
      lay_out({Receipt("b/0001", 0, damson_cheese).recipe(), Receipt("d/0001", 1850, damson_cheese).recipe(),
               Receipt("c/0002", 1801, damson_cheese).recipe(), Receipt("c/0001", 1801, damson_cheese).recipe()});
  ASSERT_TRUE(made);
  std::string order;
  for (const Witness& witness : made->witnesses) order += witness.siglum + witness.recipe.id + " ";
  EXPECT_EQ(order, "Ac/0001 Bc/0002 Cd/0001 Db/0001 ");
}

TEST(Compare, TheTwentySeventhWitnessIsAA) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 0; i < 28; ++i)
    recipes.push_back(Receipt("a/" + std::to_string(1000 + i), 1800, damson_cheese).recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_EQ(made->witnesses[25].siglum, "Z");
  EXPECT_EQ(made->witnesses[26].siglum, "AA");
  EXPECT_EQ(made->witnesses[27].siglum, "AB");
}

TEST(Compare, BasisIsTheStuffThatTheDishIsNamedFor) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("six pounds of sugar", "sugar", 6, "pound", "sweet")
                                 .has("four pounds of damsons", "damson", 4, "pound")
                                 .recipe()});
  ASSERT_TRUE(made);
  EXPECT_EQ(made->basis, "damson");
  ASSERT_TRUE(row(*made, "sugar"));
  const Cell& sugar = row(*made, "sugar")->cells[0];
  ASSERT_TRUE(sugar.per_basis);
  EXPECT_NEAR(sugar.per_basis->likely, 1500, 1e-9);
  ASSERT_TRUE(sugar.amount);
  EXPECT_NEAR(sugar.amount->likely, 6 * 453.6, 1e-9);
}

TEST(Compare, TheBasisItselfIsExactHoweverWideItsAmount) {
  const auto made =
      lay_out({Receipt("a/0001", 1800, damson_cheese).has("a peck of damsons", "damson", 1, "peck").recipe()});
  ASSERT_TRUE(made);
  const auto& own = row(*made, "damson")->cells[0].per_basis;
  ASSERT_TRUE(own);
  EXPECT_EQ(own->low, 1000);
  EXPECT_EQ(own->high, 1000);
}

TEST(Compare, AProportionKeepsTheWholeRangeOfBothParts) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("a peck of damsons", "damson", 1, "peck")
                                 .has("a pint of sugar", "sugar", 1, "pint", "sweet")
                                 .recipe()});
  ASSERT_TRUE(made);
  const auto& sugar = row(*made, "sugar")->cells[0].per_basis;
  ASSERT_TRUE(sugar);
  EXPECT_NEAR(sugar->low, 400.0 / 7000 * 1000, 1e-9);
  EXPECT_NEAR(sugar->likely, 450.0 / 6000 * 1000, 1e-9);
  EXPECT_NEAR(sugar->high, 500.0 / 5000 * 1000, 1e-9);
}

TEST(Compare, MentionsOfOneStuffAddUpAndSortsOfItAreOneRow) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("two pounds of damsons", "damson", 2, "pound")
                                 .has("a pound of maple sugar", "maple sugar", 1, "pound", "sweet")
                                 .has("half a pound of brown sugar", "brown sugar", 0.5, "pound", "sweet")
                                 .recipe()});
  ASSERT_TRUE(made);
  ASSERT_TRUE(row(*made, "sugar"));
  const Cell& sugar = row(*made, "sugar")->cells[0];
  EXPECT_EQ(sugar.printed, "a pound of maple sugar; half a pound of brown sugar");
  EXPECT_NEAR(sugar.per_basis->likely, 750, 1e-9);
  EXPECT_FALSE(sugar.more);
}

TEST(Compare, AMentionWithoutAmountMakesTheSumALeast) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("two pounds of damsons", "damson", 2, "pound")
                                 .has("an ounce of salt", "salt", 1, "ounce", "condiment")
                                 .has("salt to your liking", "salt", 0, {}, "condiment")
                                 .recipe()});
  ASSERT_TRUE(made);
  EXPECT_TRUE(row(*made, "salt")->cells[0].more);
}

TEST(Compare, WhatHasNoAmountIsPresentWithItsWordsAndNoFigure) {
  const auto made =
      lay_out({Receipt("a/0001", 1800, damson_cheese)
                   .has("two pounds of damsons", "damson", 2, "pound")
                   .has("a few blades of mace", "mace", 0, {}, "spice")
                   .recipe(),
               Receipt("b/0001", 1810, damson_cheese).has("a pound of damsons", "damson", 1, "pound").recipe()});
  ASSERT_TRUE(made);
  const Row* mace = row(*made, "mace");
  ASSERT_TRUE(mace);
  EXPECT_TRUE(mace->cells[0].present);
  EXPECT_FALSE(mace->cells[0].per_basis);
  EXPECT_EQ(mace->cells[0].printed, "a few blades of mace");
  EXPECT_FALSE(mace->cells[1].present);
  EXPECT_EQ(mace->witnesses, 1U);
  EXPECT_FALSE(mace->median);
}

TEST(Compare, AnAlternativeIsShownAsSuchAndAddsNothing) {
  const auto made = lay_out({Receipt("a/0001", 1800, {"", "jam"})
                                 .has("two pounds of damsons", "damson", 2, "pound")
                                 .has("or plums", "plum", 2, "pound")
                                 .instead_of("damson")
                                 .has("one pound of sugar", "sugar", 1, "pound", "sweet")
                                 .recipe()},
                            "batch");
  ASSERT_TRUE(made);
  EXPECT_EQ(row(*made, "plum")->cells[0].alternative_of, "damson");
  EXPECT_NEAR(row(*made, "sugar")->cells[0].per_basis->likely, 1000.0 / 3, 1e-9);
}

TEST(Compare, AShareOfTheBatchNeverPassesTheBatch) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("a peck of damsons", "damson", 1, "peck")
                                 .has("a pound of sugar", "sugar", 1, "pound", "sweet")
                                 .recipe()},
                            "batch");
  ASSERT_TRUE(made);
  const auto& damson = row(*made, "damson")->cells[0].per_basis;
  ASSERT_TRUE(damson);
  EXPECT_NEAR(damson->low, 5000 / 5453.6 * 1000, 1e-9);
  EXPECT_NEAR(damson->high, 7000 / 7453.6 * 1000, 1e-9);
}

TEST(Compare, ASeasoningIsNoBasisAndLiquidsWeighInTheBatch) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 3; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, {"", "soup"})
                          .has("a quart of water", "water", i, "quart", "water")
                          .has("a teaspoon of pepper", "black pepper", 1, "teaspoon", "spice")
                          .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_EQ(made->basis, "water");
  const auto batch = lay_out(recipes, "batch");
  ASSERT_TRUE(batch);
  ASSERT_TRUE(batch->witnesses[0].basis);
  EXPECT_NEAR(batch->witnesses[0].basis->low, 940 * 0.91 + 3, 1e-9);
  EXPECT_NEAR(batch->witnesses[0].basis->high, 1140 * 1.05 + 7, 1e-9);
}

TEST(Compare, AsPrintedScalesNothing) {
  const auto made = lay_out({Receipt("a/0001", 1800, damson_cheese)
                                 .has("two pounds of damsons", "damson", 2, "pound")
                                 .has("one pound of sugar", "sugar", 1, "pound", "sweet")
                                 .recipe()},
                            "as printed");
  ASSERT_TRUE(made);
  EXPECT_EQ(made->per, 0);
  EXPECT_NEAR(row(*made, "sugar")->cells[0].per_basis->likely, 453.6, 1e-9);
}

TEST(Compare, MedianHasQuartilesAndTheEnds) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 1; i <= 5; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, damson_cheese)
                          .has("a pound of damsons", "damson", 1, "pound")
                          .has("sugar", "sugar", i, "pound", "sweet")
                          .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  const Row* sugar = row(*made, "sugar");
  ASSERT_TRUE(sugar && sugar->median);
  EXPECT_NEAR(sugar->median->low, 2000, 1e-6);
  EXPECT_NEAR(sugar->median->likely, 3000, 1e-6);
  EXPECT_NEAR(sugar->median->high, 4000, 1e-6);
  EXPECT_NEAR(sugar->least, 1000, 1e-6);
  EXPECT_NEAR(sugar->most, 5000, 1e-6);
}

TEST(Compare, FaultsSayWhatAndHowToMend) {
  EXPECT_FALSE(lay_out({}));
  const auto twice =
      lay_out({Receipt("a/0001", 1800, damson_cheese).recipe(), Receipt("a/0001", 1800, damson_cheese).recipe()});
  ASSERT_FALSE(twice);
  EXPECT_NE(twice.error().sentence().find("a/0001 is named twice"), std::string::npos);
  const auto missing = lay_out(
      {Receipt("a/0001", 1800, damson_cheese).has("a pound of damsons", "damson", 1, "pound").recipe()}, "vinegar");
  ASSERT_FALSE(missing);
  EXPECT_NE(missing.error().sentence().find("no recipe here has \"vinegar\""), std::string::npos);
  EXPECT_NE(missing.error().sentence().find("\"damson\""), std::string::npos);
}

TEST(Compare, StepsThatAnswerToOneAnotherShareARow) {
  const auto made =
      lay_out({Receipt("a/0001", 1800, damson_cheese).does("wash").does("boil", 60).does("strain").does("pot").recipe(),
               Receipt("b/0001", 1810, damson_cheese)
                   .does("simmer", 40)
                   .does("sieve")
                   .does("stand", 1440)
                   .does("pot")
                   .recipe()});
  ASSERT_TRUE(made);
  std::string rows;
  for (const StepRow& one : made->steps) rows += one.cells[0].op + "/" + one.cells[1].op + " ";
  EXPECT_EQ(rows, "wash/ boil/simmer strain/sieve /stand pot/pot ");
}

TEST(Compare, RecipesWithoutStepsOrIngredientsStillCompare) {
  const auto made = lay_out({Receipt("a/0001", 1800, {"", ""}).recipe(), Receipt("b/0001", 1810, {"", ""}).recipe()});
  ASSERT_TRUE(made);
  EXPECT_EQ(made->basis, "as printed");
  EXPECT_TRUE(made->rows.empty());
  EXPECT_TRUE(made->steps.empty());
}

}  // namespace
}  // namespace gallipot
