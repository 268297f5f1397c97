// Contrasts, trends, merged sorts, spread, and what the rest of the shelf has.
#include <cmath>

#include "query/comparing/findings.h"
#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::lay_out;
using bench::Receipt;
using bench::row;
using bench::says;

const Dish chutney{"apple", "chutney"};

/// Vinegar from 1840 on, in twelve recipes of 1800 to 1910.
std::vector<ComparableRecipe> dozen(bool divided) {
  std::vector<ComparableRecipe> out;
  for (int i = 0; i < 12; ++i) {
    Receipt receipt("a/00" + std::to_string(10 + i), 1800 + 10 * i, chutney);
    receipt.has("apples", "apple", 4, "pound");
    if (divided ? i >= 6 : i % 2 == 0) receipt.has("vinegar", "vinegar", 1, "quart", "condiment");
    receipt.has("ginger", "ginger", 1 + 0.2 * i, "ounce", "spice");
    out.push_back(receipt.recipe());
  }
  return out;
}

TEST(Contrasts, WhatSplitsTheSetByItsYearsIsSaidWithItsChance) {
  const auto made = lay_out(dozen(true));
  ASSERT_TRUE(made);
  ASSERT_EQ(made->contrasts.size(), 1U);
  const Contrast& found = made->contrasts[0];
  EXPECT_EQ(found.thing, "vinegar");
  EXPECT_NEAR(found.p, 2.0 / 924, 1e-9);
  EXPECT_NEAR(found.among, found.p * static_cast<double>(found.tried), 1e-12);
  EXPECT_TRUE(says(*made, "Vinegar: 6 with, 6 without; all six with are of 1860 or later, but none of the six without"))
      << found.sentence;
}

TEST(Contrasts, WhatChanceExplainsIsNotSaid) {
  const auto made = lay_out(dozen(false));
  ASSERT_TRUE(made);
  EXPECT_TRUE(made->contrasts.empty());
  EXPECT_TRUE(says(*made, "Vinegar: 6 with, 6 without"));
}

TEST(Trends, TenDatedAmountsThatRiseAreATrend) {
  const auto made = lay_out(dozen(false));
  ASSERT_TRUE(made);
  ASSERT_EQ(made->trends.size(), 1U);
  EXPECT_EQ(made->trends[0].stuff, "ginger");
  EXPECT_NEAR(made->trends[0].tau, 1, 1e-12);
  EXPECT_GT(made->trends[0].decade, 1);
  EXPECT_EQ(made->trends[0].from, 1800);
  EXPECT_EQ(made->trends[0].to, 1910);
  EXPECT_TRUE(says(*made, "Ginger rises by about"));
}

TEST(Trends, NineAreTooFew) {
  auto recipes = dozen(false);
  recipes.resize(9);
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_TRUE(made->trends.empty());
}

TEST(Trends, AmountsAsPrintedGrowWithTheBatchAndTellNothing) {
  const auto made = lay_out(dozen(false), "as printed");
  ASSERT_TRUE(made);
  EXPECT_TRUE(made->trends.empty());
  for (const Row& one : made->rows) EXPECT_TRUE(one.out_of_line.empty()) << one.name;
}

TEST(Rows, WhatWasMergedUnderANameIsSeen) {
  const auto made =
      lay_out({Receipt("a/0001", 1800, chutney).has("moist sugar", "brown sugar", 1, "pound", "sweet").recipe(),
               Receipt("b/0001", 1810, chutney).has("sugar", "sugar", 1, "pound", "sweet").recipe()});
  ASSERT_TRUE(made);
  const Row* sugar = row(*made, "sugar");
  ASSERT_TRUE(sugar);
  EXPECT_EQ(sugar->witnesses, 2U);
  ASSERT_EQ(sugar->sorts.size(), 1U);
  EXPECT_EQ(sugar->sorts[0].name, "brown sugar");
  EXPECT_EQ(sugar->sorts[0].witnesses, Places{0});
}

TEST(Rows, TheSpreadIsAFactor) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 0; i < 5; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, chutney)
                          .has("apples", "apple", 4, "pound")
                          .has("ginger", "ginger", std::pow(2, i), "ounce", "spice")
                          .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_NEAR(row(*made, "ginger")->spread, std::pow(2, 1.4826), 1e-9);
}

TEST(Rows, TheBasisIsNoFigureForAWitnessThatDoesNotTellIt) {
  const auto made = lay_out({Receipt("a/0001", 1800, chutney).has("apples", "apple", 4, "pound").recipe(),
                             Receipt("b/0001", 1810, chutney).has("some apples", "apple").recipe()});
  ASSERT_TRUE(made);
  EXPECT_EQ(made->basis, "apple");
  EXPECT_TRUE(row(*made, "apple")->cells[0].per_basis);
  EXPECT_FALSE(row(*made, "apple")->cells[1].per_basis);
  EXPECT_EQ(row(*made, "apple")->measured, 1U);
}

TEST(Rows, GeneralWordsMeanTheDishesOwnFruitAndTheDishItselfIsNoPartOfIt) {
  const Dish vinegar{"raspberry", "shrub"};
  const auto made = lay_out({Receipt("a/0001", 1800, vinegar).has("raspberries", "raspberry", 4, "pound").recipe(),
                             Receipt("b/0001", 1810, vinegar)
                                 .has("two pounds of the berries", "berry", 2, "pound")
                                 .has("bottle the raspberry shrub", "raspberry shrub", 0, {}, "drink")
                                 .recipe()});
  ASSERT_TRUE(made);
  ASSERT_EQ(made->rows.size(), 1U);
  EXPECT_EQ(made->rows[0].name, "raspberry");
  EXPECT_EQ(made->rows[0].witnesses, 2U);
  ASSERT_EQ(made->rows[0].sorts.size(), 1U);
  EXPECT_EQ(made->rows[0].sorts[0].name, "berry");
}

TEST(Rows, ASpiceIsNeverTheBasisUnasked) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 0; i < 4; ++i)
    recipes.push_back(Receipt("a/000" + std::to_string(i), 1800 + i, {"", "pickle"})
                          .has("cauliflowers", "cauliflower")
                          .has("ginger", "ginger", 2, "ounce", "spice")
                          .has("mace", "mace", 1, "ounce", "spice")
                          .recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_NE(made->basis, "ginger");
  EXPECT_NE(made->basis, "mace");
  EXPECT_EQ(lay_out(recipes, "ginger")->basis, "ginger");
}

TEST(Elsewhere, MoreThanAnyOtherRecipeOfTheShelfIsSaid) {
  const auto one = [](int n, double ounces) {
    return Receipt("a/000" + std::to_string(n), 1800 + n, chutney)
        .has("four pounds of apples", "apple", 4, "pound")
        .has("mace", "mace", ounces, "ounce", "spice")
        .recipe();
  };
  const std::vector<ComparableRecipe> recipes{one(1, 0.1), one(2, 4)};
  const auto shelf = [](const std::string& stuff, Amount::Unit unit) -> std::optional<Elsewhere> {
    if (stuff != "mace" || unit != Amount::Unit::gram) return std::nullopt;
    return Elsewhere{{unit, 0.5, 1, 2, "made up"}, 0.1, 8, 40};
  };
  const auto made = compare(recipes, bench::books_of(recipes), bench::yardstick(), {}, shelf);
  ASSERT_TRUE(made);
  EXPECT_TRUE(says(*made, "Mace: B has more in a kilogram of the whole than any of 40 other recipes with it"));
  // Where both go as far it is the dish's way, not one recipe's.
  const std::vector<ComparableRecipe> both{one(1, 4), one(2, 4)};
  const auto alike = compare(both, bench::books_of(both), bench::yardstick(), {}, shelf);
  ASSERT_TRUE(alike);
  EXPECT_FALSE(says(*alike, "Mace: "));
}

}  // namespace
}  // namespace gallipot
