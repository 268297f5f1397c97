// The sheet as a whole: batch, lines, what is told by another stuff, what the print rests on, bad input.
#include "query/cooking/cook.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

const char* const relish =
    "Take four pounds of damsons, two pounds of loaf sugar, a pint of vinegar, an ounce of ginger, and salt to your "
    "taste. Boil the damsons in the vinegar half an hour, rub them through a hair sieve, add the sugar and spice, and "
    "boil it till thick. Bottle it when cold, and cork it close.";

TEST(Cook, LinesRestOnWordsOfThePrint) {
  const auto sheet = cooked(receipt("Damson Relish", relish));
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  const SheetLine* sugar = line(*sheet, "sugar");
  ASSERT_NE(sugar, nullptr);
  ASSERT_TRUE(sugar->amount && sugar->measure);
  EXPECT_NEAR(sugar->amount->likely, 907.2, 0.1);
  EXPECT_NEAR(*sugar->measure, 905, 5.1);
  ASSERT_FALSE(sugar->print.empty());
  EXPECT_NE(sugar->print.front().words.find("loaf sugar"), std::string::npos);
  EXPECT_EQ(sugar->print.front().page, "7");
  for (const SheetLine& one : sheet->lines)
    for (const Printed& print : one.print) EXPECT_EQ(print.span.in(sheet->text), print.words);
  for (const Task& task : sheet->plan.tasks) EXPECT_EQ(task.print.span.in(sheet->text), task.print.words);
  const SheetLine* salt = line(*sheet, "salt");
  ASSERT_NE(salt, nullptr);
  EXPECT_FALSE(salt->amount) << "to taste is left so";
}

TEST(Cook, ScaleMultipliesEveryAmount) {
  const auto recipe = receipt("Damson Relish", relish);
  Wanted half;
  half.scale = 0.5;
  const auto whole = cooked(recipe);
  const auto sheet = cooked(recipe, half);
  ASSERT_TRUE(whole && sheet);
  for (std::size_t i = 0; i < whole->lines.size(); ++i) {
    if (!whole->lines[i].amount) continue;
    EXPECT_NEAR(sheet->lines[i].amount->likely, whole->lines[i].amount->likely / 2, 1e-9) << whole->lines[i].name;
  }
  EXPECT_NE(sheet->batch.why.find("0.5 times"), std::string::npos);
}

TEST(Cook, HaveScalesToTheBasket) {
  const auto recipe =
      receipt("Lemon Sauce", "Take four lemons, eight ounces of sugar and a pint of water; boil it an hour.");
  Wanted wanted;
  wanted.have = "6 lemons";
  const auto sheet = cooked(recipe, wanted);
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  EXPECT_DOUBLE_EQ(sheet->batch.factor, 1.5) << "six of the four that the print counts, exactly";
  wanted.have = "1 pound of sugar";
  const auto by_weight = cooked(recipe, wanted);
  ASSERT_TRUE(by_weight) << by_weight.error().sentence();
  EXPECT_NEAR(by_weight->batch.factor, 2, 1e-6);
}

TEST(Cook, WhatIsToldByTheFruitIsReckonedForARoundBatch) {
  const auto recipe = receipt("Plum Jam", "To every pound of plums put twelve ounces of sugar. Boil it half an hour.");
  const auto sheet = cooked(recipe);
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  EXPECT_EQ(sheet->batch.basis, "plum");
  ASSERT_TRUE(line(*sheet, "sugar") && line(*sheet, "sugar")->amount);
  EXPECT_NEAR(line(*sheet, "sugar")->amount->likely, 750, 1);
  EXPECT_NE(sheet->batch.why.find("does not say how much"), std::string::npos);
  Wanted wanted;
  wanted.have = "3 pounds of plums";
  const auto basket = cooked(recipe, wanted);
  ASSERT_TRUE(basket) << basket.error().sentence();
  ASSERT_TRUE(line(*basket, "sugar")->amount);
  EXPECT_NEAR(line(*basket, "sugar")->amount->likely, 1020.6, 1);
}

TEST(Cook, YieldIsReached) {
  const auto recipe = receipt("Damson Relish", relish);
  Wanted wanted;
  wanted.yield = "1l";
  const auto sheet = cooked(recipe, wanted);
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  ASSERT_TRUE(sheet->made.millilitres);
  EXPECT_NEAR(sheet->made.millilitres->likely, 1000, 10);
  EXPECT_LE(sheet->made.millilitres->low, sheet->made.millilitres->likely);
  EXPECT_GE(sheet->made.millilitres->high, sheet->made.millilitres->likely);
}

TEST(Cook, ARecipeWithoutAmountsSaysSo) {
  const auto sheet = cooked(receipt("A Sauce", "Take damsons, sugar and vinegar, and boil them till thick."));
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  bool said = false;
  for (const std::string& note : sheet->notes) said = said || note.find("gives no amounts") != std::string::npos;
  EXPECT_TRUE(said);
  EXPECT_FALSE(sheet->made.grams);
  EXPECT_FALSE(sheet->made.why_not.empty());
}

TEST(Cook, AnEmptyRecipeIsNoFault) {
  const auto sheet = cooked(receipt("Of Economy", ""));
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  EXPECT_GE(sheet->notes.size(), 2U);
  EXPECT_TRUE(sheet->plan.tasks.empty());
}

struct Bad {
  Wanted wanted;
  const char* says;
};

TEST(Cook, BadInputIsOneSentence) {
  const auto recipe = receipt("Damson Relish", relish);
  const auto scaled = [](double by) {
    Wanted wanted;
    wanted.scale = by;
    return wanted;
  };
  const auto yield = [](const char* text) {
    Wanted wanted;
    wanted.yield = text;
    return wanted;
  };
  const auto have = [](const char* text) {
    Wanted wanted;
    wanted.have = text;
    return wanted;
  };
  const auto start = [](const char* text) {
    Wanted wanted;
    wanted.start = text;
    return wanted;
  };
  Wanted both = scaled(2);
  both.yield = "1l";
  const std::vector<Bad> all = {{scaled(0), "cannot be scaled"},
                                {scaled(-1), "cannot be scaled"},
                                {scaled(std::nan("")), "cannot be scaled"},
                                {scaled(1e9), "no batch"},
                                {yield("much"), "not an amount"},
                                {yield("0 l"), "makes nothing"},
                                {yield("3 bushels"), "not a unit"},
                                {yield("100000 l"), "no batch"},
                                {have("some plums"), "no amount"},
                                {have("3 xyzzies"), "no ingredient"},
                                {have("3 oranges"), "has no orange"},
                                {start("tomorrow"), "not a date"},
                                {start("2027-02-30T09:00"), "calendar has no day"},
                                {start("2027-03-06T25:00"), "not a date"},
                                {both, "set twice"}};
  for (const Bad& bad : all) {
    const auto sheet = cooked(recipe, bad.wanted);
    ASSERT_FALSE(sheet) << bad.says;
    EXPECT_NE(sheet.error().sentence().find(bad.says), std::string::npos) << sheet.error().sentence();
    EXPECT_FALSE(sheet.error().mend.empty()) << bad.says;
    EXPECT_EQ(sheet.error().sentence().find('\n'), std::string::npos);
  }
}

TEST(Cook, AYieldThatCannotBeComputedIsAFault) {
  Wanted wanted;
  wanted.yield = "1l";
  const auto sheet = cooked(receipt("A Sauce", "Take damsons, sugar and vinegar, and boil them."), wanted);
  ASSERT_FALSE(sheet);
  EXPECT_NE(sheet.error().what.find("cannot be computed"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
