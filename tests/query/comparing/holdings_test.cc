// Amounts told by another stuff: "to each quart of juice", "half as much", "the weight of six eggs".
#include "query/comparing/holdings.h"

#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::lay_out;
using bench::Receipt;
using bench::row;

const Dish spiced_plum{"plum", "pickle"};

TEST(Holdings, PerPoundOfTheBasisNeedsNoAmountOfIt) {
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("plums", "plum")
                                 .has("to every pound of plums half a pound of sugar", "sugar", 0.5, "pound", "sweet")
                                 .per(1, "pound", "plum")
                                 .recipe()});
  ASSERT_TRUE(made);
  EXPECT_EQ(made->basis, "plum");
  EXPECT_FALSE(made->witnesses[0].basis);
  const Cell& sugar = row(*made, "sugar")->cells[0];
  ASSERT_TRUE(sugar.per_basis);
  EXPECT_NEAR(sugar.per_basis->likely, 500, 1e-9);
  EXPECT_FALSE(sugar.amount);
  EXPECT_EQ(sugar.how, "per pound of plum");
}

TEST(Holdings, TiesAreFollowedThroughAnother) {
  // Sugar by the plums, vinegar by the sugar.
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("plums", "plum")
                                 .has("a pound of sugar to two of plums", "sugar", 1, "pound", "sweet")
                                 .per(2, "pound", "plum")
                                 .has("a pint of vinegar to each pound of sugar", "vinegar", 1, "pint", "condiment")
                                 .per(1, "pound", "sugar")
                                 .recipe()});
  ASSERT_TRUE(made);
  const auto& vinegar = row(*made, "vinegar")->cells[0].per_basis;
  ASSERT_TRUE(vinegar);
  EXPECT_EQ(vinegar->unit, Amount::Unit::millilitre);
  EXPECT_NEAR(vinegar->likely, 500 / 907.2 * 1000, 1e-6);
  EXPECT_NEAR(vinegar->low, 470 / 907.2 * 1000, 1e-6);
}

TEST(Holdings, FruitMeansTheFruitOfTheDish) {
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("a lemon", "lemon", 1)
                                 .has("four pounds of plums", "plum", 4, "pound")
                                 .has("half the weight of the fruit in sugar", "sugar", 0, {}, "sweet")
                                 .relative(0.5, "fruit", Relative::By::weight)
                                 .recipe()});
  ASSERT_TRUE(made);
  const Cell& sugar = row(*made, "sugar")->cells[0];
  ASSERT_TRUE(sugar.per_basis);
  EXPECT_NEAR(sugar.per_basis->likely, 500, 1e-9);
  ASSERT_TRUE(sugar.amount);
  EXPECT_NEAR(sugar.amount->likely, 2 * 453.6, 1e-9);
}

TEST(Holdings, AsMuchByMeasureTakesThePrintedMeasureOfTheOther) {
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("two pounds of plums", "plum", 2, "pound")
                                 .has("two ounces of ginger", "ginger", 2, "ounce", "spice")
                                 .has("half as much cloves", "clove", 0, {}, "spice")
                                 .relative(0.5, "ginger", Relative::By::measure)
                                 .has("as much mace as cloves", "mace", 0, {}, "spice")
                                 .relative(1, "clove", Relative::By::measure)
                                 .recipe()});
  ASSERT_TRUE(made);
  EXPECT_NEAR(row(*made, "clove")->cells[0].amount->likely, 28.35, 1e-9);
  EXPECT_NEAR(row(*made, "mace")->cells[0].amount->likely, 28.35, 1e-9);
}

TEST(Holdings, TheWeightOfSixEggsCountsEggs) {
  const Dish cake{"", "cake"};
  const auto made = lay_out({Receipt("a/0001", 1800, cake)
                                 .has("ten eggs", "egg", 10, {}, "egg")
                                 .has("the weight of six eggs in sugar", "sugar", 0, {}, "sweet")
                                 .relative(6, "egg", Relative::By::weight)
                                 .recipe()});
  ASSERT_TRUE(made);
  const auto& sugar = row(*made, "sugar")->cells[0].amount;
  ASSERT_TRUE(sugar);
  EXPECT_NEAR(sugar->low, 6 * 45, 1e-9);
  EXPECT_NEAR(sugar->high, 6 * 60, 1e-9);
}

TEST(Holdings, TheWeightOfTheEggsTakesThemAll) {
  const Dish cake{"", "cake"};
  const auto made = lay_out({Receipt("a/0001", 1800, cake)
                                 .has("ten eggs", "egg", 10, {}, "egg")
                                 .has("the weight of the eggs in sugar", "sugar", 0, {}, "sweet")
                                 .relative(1, "egg", Relative::By::weight)
                                 .recipe()});
  ASSERT_TRUE(made);
  const auto& sugar = row(*made, "sugar")->cells[0].amount;
  ASSERT_TRUE(sugar);
  EXPECT_NEAR(sugar->likely, 10 * 52, 1e-9);
}

TEST(Holdings, SugarPerPintOfJuiceComesToTheFruitByItsYield) {
  const Dish jelly{"currant", "jelly"};
  const auto made = lay_out({Receipt("a/0001", 1800, jelly)
                                 .has("currants", "currant")
                                 .has("to each pint of juice a pound of sugar", "sugar", 1, "pound", "sweet")
                                 .per(1, "pint", "juice")
                                 .recipe()},
                            "currant");
  ASSERT_TRUE(made) << made.error().sentence();
  const auto& sugar = row(*made, "sugar")->cells[0].per_basis;
  ASSERT_TRUE(sugar);
  const auto yield = bench::yardstick().yield("juice", "currant");
  ASSERT_TRUE(yield);
  EXPECT_NEAR(sugar->likely, 453.6 / 500 * yield->likely / yield->density * 1000, 1e-6);
  EXPECT_LT(sugar->low, sugar->likely);
  EXPECT_LT(sugar->likely, sugar->high);
}

TEST(Holdings, FruitJuiceIsTheJuiceOfTheDishesFruit) {
  const Dish jelly{"currant", "jelly"};
  const auto made = lay_out({Receipt("a/0001", 1800, jelly)
                                 .has("currants", "currant")
                                 .has("a pound of sugar to the pint of fruit juice", "sugar", 1, "pound", "sweet")
                                 .per(1, "pint", "fruit juice")
                                 .recipe()},
                            "currant juice");
  ASSERT_TRUE(made) << made.error().sentence();
  EXPECT_NEAR(row(*made, "sugar")->cells[0].per_basis->likely, 453.6 / 500 * 1000, 1e-6);
}

TEST(Holdings, ToEachPoundIsOfTheDishAndSaysSo) {
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("plums", "plum")
                                 .has("to each pound half a pound of sugar", "sugar", 0.5, "pound", "sweet")
                                 .per(1, "pound", "")
                                 .recipe()});
  ASSERT_TRUE(made);
  const Cell& sugar = row(*made, "sugar")->cells[0];
  ASSERT_TRUE(sugar.per_basis);
  EXPECT_NEAR(sugar.per_basis->likely, 500, 1e-9);
  EXPECT_EQ(sugar.how, "per pound, taken to be of plum");
}

TEST(Holdings, ALiquorOfUnknownYieldServesAsBasisButIsNotGuessed) {
  const Dish catsup{"walnut", "catsup"};
  const auto receipt = Receipt("a/0001", 1800, catsup)
                           .has("a hundred walnuts", "walnut", 100, {}, "nut")
                           .has("to each quart of liquor an ounce of mace", "mace", 1, "ounce", "spice")
                           .per(1, "quart", "liquor")
                           .recipe();
  const auto by_liquor = lay_out({receipt}, "walnut liquor");
  ASSERT_TRUE(by_liquor) << by_liquor.error().sentence();
  EXPECT_EQ(by_liquor->per_unit, Amount::Unit::millilitre);
  EXPECT_NEAR(row(*by_liquor, "mace")->cells[0].per_basis->likely, 28.35, 1e-9);
  const auto by_walnut = lay_out({receipt}, "walnut");
  ASSERT_TRUE(by_walnut);
  EXPECT_FALSE(row(*by_walnut, "mace")->cells[0].per_basis);
  EXPECT_TRUE(row(*by_walnut, "mace")->cells[0].present);
}

TEST(Holdings, ARingOfReferencesEnds) {
  const auto made = lay_out({Receipt("a/0001", 1800, spiced_plum)
                                 .has("as much mace as cloves", "mace", 0, {}, "spice")
                                 .relative(1, "clove", Relative::By::measure)
                                 .has("as much cloves as mace", "clove", 0, {}, "spice")
                                 .relative(1, "mace", Relative::By::measure)
                                 .has("their weight of ginger", "ginger", 0, {}, "spice")
                                 .relative(1, "nutmeg", Relative::By::weight)
                                 .has("and that of nutmeg", "nutmeg", 0, {}, "spice")
                                 .relative(1, "ginger", Relative::By::weight)
                                 .recipe()});
  ASSERT_TRUE(made);
  EXPECT_FALSE(row(*made, "clove")->cells[0].amount);
  EXPECT_FALSE(row(*made, "nutmeg")->cells[0].amount);
}

}  // namespace
}  // namespace gallipot
