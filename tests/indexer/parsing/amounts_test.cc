// Printed numbers and amounts, on invented print.
#include "indexer/parsing/amounts.h"

#include <gtest/gtest.h>

#include "indexer/parsing/numbers.h"

namespace gallipot::parsing {
namespace {

const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  return **loaded;
}

/// A recipe of one paragraph, tagged.
struct Print {
  explicit Print(std::string text) {
    recipe.text = std::move(text);
    recipe.parts = {{Part::Kind::paragraph, {0, static_cast<std::uint32_t>(recipe.text.size())}}};
    words = Words(recipe.text);
    row = tag(recipe, words, lexicon());
  }
  Recipe recipe;
  Words words;
  Row row;
};

struct Number {
  const char* text;
  double low, high;
  std::uint32_t words;
};

TEST(Numbers, AreReadInWordsAndFigures) {
  const Number cases[] = {{"seven apples", 7, 7, 1},
                          {"twenty-five walnuts", 25, 25, 3},
                          {"1,000 walnuts", 1000, 1000, 1},
                          {"2½ pints", 2.5, 2.5, 2},
                          {"2-1/2 pints", 2.5, 2.5, 5},
                          {"1/2 pint", 0.5, 0.5, 3},
                          {"one-half cup", 0.5, 0.5, 3},
                          {"three quarters of a pound", 0.75, 0.75, 2},
                          {"one and a half pounds", 1.5, 1.5, 4},
                          {"a dozen eggs", 12, 12, 2},
                          {"half a dozen eggs", 6, 6, 3},
                          {"a dozen and a half of eggs", 18, 18, 5},
                          {"two hundred and fifty", 250, 250, 4},
                          {"four or five cloves", 4, 5, 3},
                          {"3 to 4 cups", 3, 4, 3},
                          {"from ten to twelve plums", 10, 12, 4},
                          {"between two and three pints", 2, 3, 4},
                          {"a couple of lemons", 2, 2, 3}};
  for (const auto& c : cases) {
    const Print print(c.text);
    const auto n = number_at(print.row, 0);
    EXPECT_NEAR(n.value.low, c.low, 1e-6) << c.text;
    EXPECT_NEAR(n.value.high, c.high, 1e-6) << c.text;
    EXPECT_EQ(n.words, c.words) << c.text;
  }
}

TEST(Numbers, AreNotMadeOfOtherWords) {
  for (const char* text : {"the pan", "butter", "from the oven", "between the leaves", "-"}) {
    const Print print(text);
    EXPECT_EQ(number_at(print.row, 0).words, 0u) << text;
  }
}

struct Amount {
  const char* text;
  double low, high;
  const char* measure;
};

TEST(Amounts, CarryNumberAndMeasure) {
  const Amount cases[] = {{"a pound of rice", 1, 1, "pound"},
                          {"half a pint of cream", 0.5, 0.5, "pint"},
                          {"a quarter of an ounce of mace", 0.25, 0.25, "ounce"},
                          {"a pound and a half of flour", 1.5, 1.5, "pound"},
                          {"a pound and a quarter of flour", 1.25, 1.25, "pound"},
                          {"a pound and two ounces of flour", 1.125, 1.125, "pound"},
                          {"1 lb. of figs", 1, 1, "pound"},
                          {"2 oz. butter", 2, 2, "ounce"},
                          {"two heaped tablespoonfuls of flour", 2, 2, "tablespoon"},
                          {"an ounce or two of butter", 1, 2, "ounce"},
                          {"half a pound to a pound of figs", 0.5, 1, "pound"},
                          {"three large slices of ham", 3, 3, "slice"},
                          {"four cloves of garlic", 4, 4, "clove"}};
  for (const auto& c : cases) {
    const Print print(c.text);
    const auto amounts = find_amounts(print.row);
    ASSERT_FALSE(amounts.empty()) << c.text;
    ASSERT_TRUE(amounts[0].quantity) << c.text;
    EXPECT_NEAR(amounts[0].quantity->low, c.low, 1e-6) << c.text;
    EXPECT_NEAR(amounts[0].quantity->high, c.high, 1e-6) << c.text;
    EXPECT_EQ(amounts[0].measure, c.measure) << c.text;
  }
}

TEST(Amounts, WithoutNumberKeepTheMeasure) {
  const Print print("a few blades of mace");
  const auto amounts = find_amounts(print.row);
  ASSERT_EQ(amounts.size(), 1u);
  EXPECT_FALSE(amounts[0].quantity);
  EXPECT_EQ(amounts[0].measure, "blade");
  EXPECT_TRUE(amounts[0].vague);
}

TEST(Amounts, DoNotTakeTimesAndLengths) {
  const Print print("boil it two hours in a pan");
  for (const auto& a : find_amounts(print.row)) EXPECT_FALSE(a.quantity && a.quantity->low == 2);
}

TEST(Amounts, KeepTheWordsThatBendThem) {
  const Print print("a large heaped teaspoonful of salt");
  const auto amounts = find_amounts(print.row);
  ASSERT_EQ(amounts.size(), 1u);
  EXPECT_EQ(amounts[0].note, "large heaped");
}

TEST(Amounts, KnowHowManyOfOneMakeTheOther) {
  EXPECT_EQ(measures_in("pound", "ounce"), 16);
  EXPECT_EQ(measures_in("gallon", "quart"), 4);
  EXPECT_EQ(measures_in("ounce", "gallon"), 0);
}

}  // namespace
}  // namespace gallipot::parsing
