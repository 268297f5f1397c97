// What the rest of the shelf has of a stuff, asked of the sample shelf.
#include "query/comparing/surroundings.h"

#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

using Around = SampleShelf;

TEST_F(Around, SugarIsMeasuredInManyAndGraniteInNone) {
  const Yardstick yardstick = Yardstick::load(Register::load().value()).value();
  const Surroundings ask = surroundings_on(*shelf_, yardstick, {});
  const auto sugar = ask("sugar", Amount::Unit::gram);
  ASSERT_TRUE(sugar);
  EXPECT_GE(sugar->recipes, fewest_elsewhere);
  EXPECT_LE(sugar->recipes, most_elsewhere);
  EXPECT_GT(sugar->middle.likely, 0);
  EXPECT_LE(sugar->least, sugar->middle.low);
  EXPECT_GE(sugar->most, sugar->middle.high);
  EXPECT_LE(sugar->middle.high, 1000);  // a part of the whole
  EXPECT_FALSE(ask("granite", Amount::Unit::gram));
}

TEST_F(Around, TheSameQuestionHasTheSameAnswer) {
  const Yardstick yardstick = Yardstick::load(Register::load().value()).value();
  const auto first = surroundings_on(*shelf_, yardstick, {})("sugar", Amount::Unit::gram);
  const auto again = surroundings_on(*shelf_, yardstick, {})("sugar", Amount::Unit::gram);
  ASSERT_TRUE(first && again);
  EXPECT_EQ(first->middle.likely, again->middle.likely);
  EXPECT_EQ(first->recipes, again->recipes);
}

TEST_F(Around, RecipesComparedAreLeftOut) {
  const Yardstick yardstick = Yardstick::load(Register::load().value()).value();
  std::set<std::string> all;
  ASSERT_TRUE(shelf_->each([&](const ComparableRecipe& recipe) {
    all.insert(recipe.id);
    return true;
  }));
  EXPECT_FALSE(surroundings_on(*shelf_, yardstick, all)("sugar", Amount::Unit::gram));
}

}  // namespace
}  // namespace gallipot
