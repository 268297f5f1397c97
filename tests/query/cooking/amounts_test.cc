// Amounts of a sheet: scaling and rounding keep to the interval, whatever the amount and the factor.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "query/comparing/interval.h"
#include "query/cooking/kitchen_measure.h"
#include "query/cooking/lines.h"
#include "query/cooking/rounding.h"
#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using kitchen_bench::yardstick;

/// Amounts from a hundredth of a gram to a hundred kilos, from exact to wide open.
std::vector<Amount> many_amounts() {
  std::mt19937 random(1861);
  std::uniform_real_distribution<double> magnitude(-2, 5), width(0, 1.5);
  std::vector<Amount> out;
  for (int i = 0; i < 2000; ++i) {
    const double likely = std::pow(10.0, magnitude(random));
    const double low = i % 5 == 0 ? likely : likely / (1 + width(random));
    const double high = i % 7 == 0 ? likely : likely * (1 + width(random));
    const auto unit = i % 3 == 0 ? Amount::Unit::millilitre : Amount::Unit::gram;
    out.push_back({unit, low, likely, high, "by the test"});
  }
  return out;
}

const std::vector<double> factors = {0.01, 0.1, 1.0 / 3, 0.5, 1, 1.5, 2, 7, 30, 200};

SheetLine line_of(const Amount& amount) {
  SheetLine line;
  line.name = "sugar";
  line.kind = "sweet";
  line.amount = amount;
  return line;
}

TEST(SheetAmounts, ScaledByAThenByBIsScaledByAB) {
  for (const Amount& amount : many_amounts()) {
    for (const double a : factors) {
      SheetLine twice = line_of(amount), once = line_of(amount);
      scale_line(twice, a, yardstick());
      scale_line(twice, 0.7, yardstick());
      scale_line(once, a * 0.7, yardstick());
      EXPECT_NEAR(twice.amount->low, once.amount->low, 1e-9 * once.amount->low);
      EXPECT_NEAR(twice.amount->likely, once.amount->likely, 1e-9 * once.amount->likely);
      EXPECT_NEAR(twice.amount->high, once.amount->high, 1e-9 * once.amount->high);
    }
  }
}

TEST(SheetAmounts, TheIntervalNeverShrinks) {
  for (const Amount& amount : many_amounts()) {
    for (const double factor : factors) {
      SheetLine line = line_of(amount);
      scale_line(line, factor, yardstick());
      EXPECT_LE(line.amount->low, amount.low * factor * (1 + 1e-12));
      EXPECT_GE(line.amount->high, amount.high * factor * (1 - 1e-12));
      EXPECT_GE((line.amount->high - line.amount->low) / line.amount->likely, 2 * weighing * (1 - 1e-9));
    }
  }
}

TEST(SheetAmounts, WhatIsMeasuredOutLiesInsideTheInterval) {
  for (const Amount& amount : many_amounts()) {
    for (const Fineness fineness : {Fineness::spice, Fineness::plain}) {
      const Amount widened = as_weighed(amount);
      const double measured = measurable(widened, fineness);
      EXPECT_GE(measured, widened.low);
      EXPECT_LE(measured, widened.high);
    }
  }
}

TEST(SheetAmounts, AreRoundedToWhatCanBeMeasured) {
  EXPECT_DOUBLE_EQ(usual_step(3, Fineness::spice), 0.5);
  EXPECT_DOUBLE_EQ(usual_step(60, Fineness::spice), 0.5);
  EXPECT_DOUBLE_EQ(usual_step(60, Fineness::plain), 1);
  EXPECT_DOUBLE_EQ(usual_step(250, Fineness::plain), 5);
  EXPECT_DOUBLE_EQ(usual_step(250, Fineness::spice), 5);
  const auto grams = [](double likely) { return as_weighed({Amount::Unit::gram, likely, likely, likely, {}}); };
  EXPECT_DOUBLE_EQ(measurable(grams(453.59237), Fineness::plain), 455);
  EXPECT_DOUBLE_EQ(measurable(grams(28.349523), Fineness::spice), 28.5);
  EXPECT_DOUBLE_EQ(measurable(grams(0.26), Fineness::spice), 0.26) << "half a gram would be outside";
  // Between 10 and 50 nothing finer than fives is known.
  EXPECT_DOUBLE_EQ(measurable({Amount::Unit::gram, 10, 24.3, 50, {}}, Fineness::spice), 25);
}

TEST(SheetAmounts, KitchenMeasuresCountInPlainFractions) {
  EXPECT_EQ(by_spoon_and_cup(5), "1 tsp");
  EXPECT_EQ(by_spoon_and_cup(2.5), "\xC2\xBD tsp");
  EXPECT_EQ(by_spoon_and_cup(30), "2 tbsp");
  EXPECT_EQ(by_spoon_and_cup(240), "1 cup");
  EXPECT_EQ(by_spoon_and_cup(300), "1 \xC2\xBC cups");
  EXPECT_EQ(by_spoon_and_cup(0.5), "a pinch");
  EXPECT_EQ(kitchen_measure("beef", "meat", {Amount::Unit::gram, 450, 455, 460, {}}, yardstick()), "");
  EXPECT_EQ(kitchen_measure("flour", "grain", {Amount::Unit::gram, 9000, 9500, 10000, {}}, yardstick()), "")
      << "forty cups are weighed, not counted";
}

}  // namespace
}  // namespace gallipot
