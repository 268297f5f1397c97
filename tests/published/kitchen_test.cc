// The kitchen's figures against the publications that they name.
#include <gtest/gtest.h>

#include <algorithm>

#include "query/cooking/keeping.h"
#include "query/cooking/kitchen_measure.h"
#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using kitchen_bench::kitchen;

void expect_sugar(const char* name, double published) {
  const auto at = kitchen().composition.find(name);
  ASSERT_NE(at, kitchen().composition.end()) << name;
  EXPECT_NEAR(at->second.sugar.likely, published, 0.06) << name;
  EXPECT_LE(at->second.sugar.low, published);
  EXPECT_GE(at->second.sugar.high, published);
}

// USDA National Nutrient Database for Standard Reference: sugars, total, in 100 g of the raw fruit.
TEST(PublishedKitchen, SugarsOfFruit) {
  expect_sugar("apple", 10.39);
  expect_sugar("plum", 9.92);
  expect_sugar("cherry", 12.82);
  expect_sugar("raspberry", 4.42);
  expect_sugar("strawberry", 4.89);
  expect_sugar("tomato", 2.63);
  expect_sugar("onion", 4.24);
  expect_sugar("pear", 9.75);
}

// Codex Alimentarius, Standard for Food Grade Salt (CXS 150-1985): not less than 97 per cent of the dry matter;
// Standard for Sugars (CXS 212-1999): white sugar, polarization not less than 99.7 degrees.
TEST(PublishedKitchen, SaltAndSugar) {
  EXPECT_DOUBLE_EQ(kitchen().composition.at("salt").salt.low, 97);
  EXPECT_GE(kitchen().composition.at("sugar").sugar.likely, 99);
}

// Penniston, Nakada, Holmes and Assimos 2008, Journal of Endourology 22: juice of fresh lemons holds 48 g of citric
// acid a litre, of limes 46.
TEST(PublishedKitchen, CitricAcidOfLemonJuice) {
  EXPECT_NEAR(kitchen().composition.at("lemon juice").acid.likely, 4.8 / 1.03, 0.3);
  EXPECT_NEAR(kitchen().composition.at("lime juice").acid.likely, 4.6 / 1.03, 0.3);
}

// US Department of Agriculture, Circular 19 (1906): vinegar holds not less than 4 g of acetic acid in 100 ml.
TEST(PublishedKitchen, VinegarOfTheStandardsOf1906) {
  const Amount then = vinegar_strength(kitchen(), 1912, "US");
  EXPECT_LE(then.low, 4);
  EXPECT_GE(then.likely, 4);
  const Amount unknown = vinegar_strength(kitchen(), 0, "");
  EXPECT_LE(unknown.low, then.low) << "an unknown year and place is never narrower";
  EXPECT_GE(unknown.high, then.high);
}

// 21 CFR 101.9(b)(5)(viii): teaspoon 5 ml, tablespoon 15 ml, cup 240 ml.
TEST(PublishedKitchen, HouseholdMeasures) {
  EXPECT_DOUBLE_EQ(teaspoon_ml, 5);
  EXPECT_DOUBLE_EQ(tablespoon_ml, 15);
  EXPECT_DOUBLE_EQ(cup_ml, 240);
}

bool guided(const std::string& words, const std::string& source) {
  return std::any_of(kitchen().guidance.begin(), kitchen().guidance.end(), [&](const Guidance& one) {
    return one.says.find(words) != std::string::npos && one.source.find(source) != std::string::npos;
  });
}

// 21 CFR part 114: acidified foods, finished equilibrium pH of 4.6 or below. USDA, Complete Guide to Home Canning:
// vinegar of 5 per cent, tested processes. 21 CFR 150.110 and 150.160: soluble solids 43, 65 and 68 per cent.
TEST(PublishedKitchen, GuidanceNamesItsFiguresAndSources) {
  EXPECT_TRUE(guided("4.6", "part 114"));
  EXPECT_TRUE(guided("5 per cent", "Complete Guide to Home Canning"));
  EXPECT_TRUE(guided("tested process", "Complete Guide to Home Canning"));
  EXPECT_TRUE(guided("65 or 68", "150.160"));
  EXPECT_TRUE(guided("meter", "common practice"));
}

}  // namespace
}  // namespace gallipot
