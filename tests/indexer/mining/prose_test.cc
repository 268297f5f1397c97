// Statements in running text, in the forms in which cooks make them; all examples are invented.
#include "tests/indexer/mining/said.h"

namespace gallipot {
namespace {

class Prose : public testing::TestWithParam<Example> {};

TEST_P(Prose, SaysWhatItSays) {
  auto expected = GetParam().told;
  std::sort(expected.begin(), expected.end());
  EXPECT_EQ(said_in(amid(GetParam().print)), expected);
}

INSTANTIATE_TEST_SUITE_P(
    Verbs, Prose,
    testing::Values(Example{"Know that four saltspoonfuls make one teaspoonful.", {"saltspoon = 0.25 teaspoon"}},
                    Example{"In this house a common tea-cup will hold about a gill and a half.", {"teacup = 1.5 gill"}},
                    Example{"A quart of wheat flour weighs 1 lb. 2 oz. when it is new.", {"quart of flour = 18 ounce"}},
                    Example{"It is found that eight or ten eggs weigh a pound.", {"egg = 0.1-0.125 pound"}},
                    Example{"By a wine-glass is to be understood two ounces of liquid.", {"wineglass = 2 ounce"}},
                    Example{"A dessert-spoonful is the half of a table-spoonful.", {"dessertspoon = 0.5 tablespoon"}},
                    Example{"Three tea-spoonfuls are equal to one table-spoonful.", {"tablespoon = 3 teaspoon"}},
                    Example{"Half a gallon is a quarter of a peck.", {"peck = 2 gallon"}},
                    Example{"Two jills are half a pint.", {"pint = 4 gill"}},
                    Example{"About thirty drops of a thin liquid will fill a common tea-spoon.",
                            {"teaspoon = 30 drop"}},
                    Example{"The sherry glasses that are meant usually hold half a gill.", {"sherry-glass = 0.5 gill"}},
                    Example{"A bushel of good oats should weigh forty pounds.", {"bushel of oat = 40 pound"}},
                    Example{"Butter the size of an egg weighs two ounces.", {"size of an egg of butter = 2 ounce"}},
                    Example{"The pint is divided into sixteen ounces.", {"pint = 16 ounce"}},
                    Example{"Flour is reckoned at seven pounds to a gallon.", {"gallon of flour = 7 pound"}},
                    Example{"Two onions weighing about three ounces each are enough.", {"onion = 3 ounce"}},
                    Example{"A medium bunch of leeks weighing about a pound is wanted.", {"bunch of leek = 1 pound"}},
                    Example{"For Beer there is the Firkin of 9 gallons.", {"firkin of beer = 9 gallon"}}));

INSTANTIATE_TEST_SUITE_P(
    OneAmountNamedTwice, Prose,
    testing::Values(Example{"Stir in a gill (or wine-glassful) of brandy.", {"wineglass of brandy = 1 gill"}},
                    Example{"Allow 1/2 oz., or 1 tablespoonful, of ground coffee.",
                            {"tablespoon of coffee = 0.5 ounce"}},
                    Example{"Rub in a pound (twenty-two ounces) of butter.", {"pound of butter = 22 ounce"}},
                    Example{"Add a handful of sage (i. e. about two ounces) minced.", {"handful of sage = 2 ounce"}},
                    Example{"Pour on one and a quarter quarts (five cupfuls) of stock.", {"cup of stock = 0.25 quart"}},
                    Example{"Take one pint (pound) of meal.", {"pint of meal = 1 pound"}},
                    Example{"Grate one and a half ounces or squares of chocolate.", {"square of chocolate = 1 ounce"}},
                    Example{"Melt two ounces or squares of chocolate.", {"square of chocolate = 1 ounce"}},
                    Example{"Cream two cups of sugar (teacups) with it.", {"cup of sugar = 1 teacup"}},
                    Example{"Soak half a box, or one ounce, of gelatine.", {"box of gelatine = 2 ounce"}},
                    Example{"Beat one pound or ten eggs.", {"egg = 0.1 pound"}},
                    Example{"Four table-spoonfuls or half a jill, will fill a common wine glass.",
                            {"tablespoon = 0.125 gill", "wineglass = 0.5 gill", "wineglass = 4 tablespoon"}}));

INSTANTIATE_TEST_SUITE_P(
    VesselsNamedByWhatTheyHold, Prose,
    testing::Values(Example{"Fill it into a half-pint mug and set it by.", {"mug = 0.5 pint"}},
                    Example{"Pick a pint bowl of codfish fine.", {"bowl of codfish = 1 pint"}},
                    Example{"Soak a two-ounce package of gelatine.", {"package of gelatine = 2 ounce"}},
                    Example{"Put it into three pint bowls.", {"bowl = 1 pint"}},
                    Example{"Use a small (quarter of a pound) box of mustard.", {"box of mustard = 0.25 pound"}},
                    Example{"A quart black bottle holds in truth about a pint and a half.", {"bottle = 1.5 pint"}}));

INSTANTIATE_TEST_SUITE_P(
    SaysNothingOfMeasures, Prose,
    testing::Values(Example{"Take two cups of sugar, one cup of butter, three cups of flour and four eggs.", {}},
                    Example{"Take a pound of butter, or a pint of cream.", {}},
                    Example{"Add a glass of wine or a tablespoonful of brandy.", {}},
                    Example{"Boil it in a quart of water till it is reduced to a pint.", {}},
                    Example{"Allow a pound of sugar to a pint of juice.", {}},
                    Example{"Put one pound to each gallon.", {}}, Example{"Of sugar one pint to a quart of juice.", {}},
                    Example{"Add a pint or two of water, or a quart if it is thick.", {}},
                    Example{"Take either a pint or a quart as you need it.", {}},
                    Example{"A leg of mutton weighing six pounds is boiled two hours.", {}},
                    Example{"Choose a pan holding two quarts.", {}},
                    Example{"Lay it in a bowl containing a pint of white wine.", {}},
                    Example{"Put it away in a box or barrel.", {}}, Example{"Use a mug or a bowl for this.", {}},
                    Example{"Mix a tablespoonful of flour in a cup of milk; it is enough.", {}},
                    Example{"Three pints of milk will make two pounds of curd.", {}},
                    Example{"Beat six eggs in a pint of milk and bake twenty minutes.", {}},
                    Example{"Dr. Franklin took a basin of gruel, and it was his breakfast.", {}},
                    Example{"Two pounds of beef, half a pound of suet, a pound of currants.", {}},
                    Example{"1 pint of fruit is put in a 1-lb. jar.", {}}));

TEST(Mining, KeepsBookLinePageAndWords) {
  const auto all = statements_in(
      "<html><body><h2>SOUPS</h2>\n<p>Stir it.</p>\n<p><span class=\"pagenum\">[Pg 12]</span>Begin early.</p>\n"
      "<p>Take stock,\nand know that a wine-glass\nholds half a gill.</p></body></html>\n",
      "invented.htm");
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].book, "invented");
  EXPECT_EQ(all[0].line, 5u);
  EXPECT_EQ(all[0].page, "12");
  EXPECT_EQ(all[0].quote, "a wine-glass holds half a gill");
}

}  // namespace
}  // namespace gallipot
