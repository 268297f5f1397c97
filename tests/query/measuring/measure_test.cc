// Questions in the words of print.
#include "query/measuring/measure.h"

#include <gtest/gtest.h>

#include "query/measuring/nearest.h"

namespace gallipot {
namespace {

struct Room {
  std::shared_ptr<const Register> measures = Register::load().value();
  std::shared_ptr<const Heats> heats = Heats::load().value();
  std::shared_ptr<const Lexicon> lexicon = Lexicon::load().value();
};

const Room& room() {
  static const Room one;
  return one;
}

Outcome<MeasureAnswer> asked(MeasureQuestion question) {
  return measure(question, *room().measures, *room().heats, *room().lexicon);
}

MeasureAnswer answer(const char* words, int year = 1885, const char* country = "GB", const char* of = "") {
  const auto out = asked({words, of, year, country, {}});
  EXPECT_TRUE(out.has_value()) << words << ": " << (out ? "" : out.error().sentence());
  return out.value_or(MeasureAnswer{});
}

std::string fault_of(const char* words, int year = 0, const char* of = "") {
  const auto out = asked({words, of, year, {}, {}});
  EXPECT_FALSE(out.has_value()) << words;
  return out ? std::string() : out.error().sentence();
}

TEST(Measuring, ReadsNumberSizeMeasureAndStuff) {
  const auto a = answer("half a small teacup", 1885, "GB", "grated ginger");
  EXPECT_EQ(a.kind, MeasureAnswer::Kind::amount);
  EXPECT_EQ(a.quantity, (Range{0.5, 0.5}));
  EXPECT_EQ(a.measure, "teacup");
  EXPECT_EQ(a.size, "small");
  EXPECT_EQ(a.of, "ginger");
  EXPECT_EQ(a.reading.amount.unit, Amount::Unit::gram);
  ASSERT_TRUE(a.reading.millilitres.has_value());
  EXPECT_LT(a.reading.millilitres->low, 60);
  EXPECT_GT(a.reading.millilitres->high, 60);
  EXPECT_FALSE(a.us.empty());
  EXPECT_FALSE(a.metric.empty());
  EXPECT_FALSE(a.reading.witnesses.empty());
}

TEST(Measuring, AddsUpWhatIsPrintedTogether) {
  const auto a = answer("3 lb. 2 oz. of sugar");
  EXPECT_NEAR(a.reading.amount.likely, 3 * 453.59237 + 2 * 28.349523, 0.01);
  EXPECT_EQ(a.of, "sugar");
  EXPECT_NEAR(answer("pint and a half of milk", 1900, "US").reading.amount.likely, 1.5 * 473.176, 0.01);
}

TEST(Measuring, ReadsSizesOfThings) {
  const auto walnut = answer("butter the size of a walnut");
  EXPECT_EQ(walnut.measure, "size of a walnut");
  EXPECT_EQ(walnut.of, "butter");
  EXPECT_EQ(answer("a piece of butter as big as an egg").measure, "size of an egg");
  EXPECT_EQ(answer("as much cayenne as will lie on a sixpence").measure, "as much as will lie on a shilling");
}

TEST(Measuring, ReadsEggsByNumberAndByWeight) {
  const auto ten = answer("10 eggs", 1830);
  EXPECT_EQ(ten.reading.amount.unit, Amount::Unit::gram);
  const auto weight = answer("the weight of ten eggs in sugar", 1830);
  EXPECT_GT(weight.reading.amount.likely, ten.reading.amount.likely);  // in the shell
  EXPECT_LE(weight.reading.amount.low, 453.6);                         // ten to the pound
  EXPECT_GE(weight.reading.amount.high, 453.6);
}

TEST(Measuring, InventsNoFigure) {
  for (const char* words :
       {"flour, as much as will make it stiff", "as much flour as will make it stiff", "salt to your taste",
        "sugar enough to sweeten it", "a pennyworth of saffron", "a few blades of mace", "a knob of butter"}) {
    const auto a = answer(words);
    EXPECT_EQ(a.kind, MeasureAnswer::Kind::no_figure) << words;
    EXPECT_FALSE(a.why.empty()) << words;
  }
}

TEST(Measuring, ReadsHeatsStagesAndProof) {
  const auto slow = answer("a slow oven");
  ASSERT_EQ(slow.kind, MeasureAnswer::Kind::heat);
  EXPECT_EQ(slow.heat->name, "slow oven");
  ASSERT_TRUE(slow.range.has_value());
  EXPECT_LT(slow.range->high, 400);
  EXPECT_EQ(answer("boiled to the crack").heat->kind, Heat::Kind::sugar);
  // parts of alcohol: Britain's proof is 57.1, the States' is 50
  EXPECT_NEAR(answer("proof spirit", 1890, "GB").range->likely, 57.1, 0.1);
  EXPECT_NEAR(answer("proof spirit", 1890, "US").range->likely, 50, 0.1);
  EXPECT_NEAR(answer("30 over proof", 1890, "GB").range->likely, 57.1 * 1.3, 0.2);
  EXPECT_NEAR(answer("20 under proof", 1890, "GB").range->likely, 57.1 * 0.8, 0.2);
  EXPECT_NEAR(answer("90 proof", 1890, "US").range->likely, 45, 0.1);
  EXPECT_EQ(answer("proof vinegar").heat->kind, Heat::Kind::vinegar);
}

TEST(Measuring, FaultsAreSentencesWithTheNearest) {
  EXPECT_NE(fault_of("three flagons").find("no measure is called \"flagons\"; perhaps"), std::string::npos);
  EXPECT_NE(fault_of("two wineglases").find("wineglass"), std::string::npos);
  EXPECT_NE(fault_of("-2 cups of sugar").find("less than nothing"), std::string::npos);
  EXPECT_NE(fault_of("minus 2 cups").find("less than nothing"), std::string::npos);
  EXPECT_NE(fault_of("1000000 cups of sugar").find("no amount that a kitchen knows"), std::string::npos);
  EXPECT_NE(fault_of("0 cups of sugar").find("no amount that a kitchen knows"), std::string::npos);
  EXPECT_NE(fault_of("a pint", 1499).find("1500 to 1950"), std::string::npos);
  EXPECT_NE(fault_of("a pint", 1951).find("1500 to 1950"), std::string::npos);
  EXPECT_NE(fault_of("a pint", 0, "flobber").find("no stuff is called \"flobber\""), std::string::npos);
  EXPECT_NE(fault_of("   ").find("no amount is given"), std::string::npos);
  EXPECT_TRUE(asked({"a pint", "", 1500, "", ""}).has_value());
  EXPECT_TRUE(asked({"a pint", "", 1950, "", ""}).has_value());
}

TEST(Measuring, TakesADecisionForOne) {
  const auto half = answer("half a small teacup");
  const auto decide = [&](const char* given) { return decision_of(given, half, *room().measures, *room().lexicon); };
  EXPECT_EQ(decide("90ml")->likely, 180);
  EXPECT_EQ(decide("90ml")->measure, "teacup");
  EXPECT_EQ(decide("90ml")->size, "small");
  EXPECT_EQ(decide("85-95 ml")->low, 170);
  EXPECT_EQ(decide("0.1 l")->high, 200);
  EXPECT_EQ(decide("20 g")->unit, Amount::Unit::gram);
  EXPECT_NEAR(decide("half a gill")->likely, 2 * 71.03, 0.01);
  for (const char* no : {"", "ninety", "-3 ml", "0 ml", "95-85 ml", "a slow oven"})
    EXPECT_FALSE(decide(no).has_value()) << no;
  EXPECT_FALSE(decision_of("90ml", answer("a slow oven"), *room().measures, *room().lexicon).has_value());
}

TEST(Kitchen, VolumesAreToldByCupAndSpoon) {
  const auto us = [](double ml) { return by_cup_and_spoon(ml, 236.588, 14.787, 4.929); };
  EXPECT_EQ(us(236.6), "1 cup");
  EXPECT_EQ(us(90), "1/4 cup + 2 tbsp");
  EXPECT_EQ(us(14.8), "1 tbsp");
  EXPECT_EQ(us(4.9), "1 tsp");
  EXPECT_EQ(us(19.7), "1 tbsp + 1 tsp");
  EXPECT_EQ(us(1.2), "1/4 tsp");
  EXPECT_EQ(us(0.1), "less than 1/8 tsp");
  EXPECT_EQ(us(1000), "4 1/4 cups");
  EXPECT_EQ(by_cup_and_spoon(59.1, 250, 15, 5), "4 tbsp");
}

TEST(Nearest, WordsAreTheNearestFirst) {
  EXPECT_EQ(nearest_words("teacpu", {"pound", "teacup", "cup"}, 1), std::vector<std::string>{"teacup"});
  EXPECT_EQ(perhaps({"a", "b", "c"}), "perhaps \"a\", \"b\" or \"c\" is meant");
}

}  // namespace
}  // namespace gallipot
