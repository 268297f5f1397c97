// Heats of ovens, fat and boiled sugar, and the strength of spirits; all examples are invented.
#include "tests/indexer/mining/said.h"

namespace gallipot {
namespace {

class Heat : public testing::TestWithParam<Example> {};

TEST_P(Heat, IsTold) {
  auto expected = GetParam().told;
  std::sort(expected.begin(), expected.end());
  EXPECT_EQ(said_in(amid(GetParam().print)), expected);
}

INSTANTIATE_TEST_SUITE_P(
    Degrees, Heat,
    testing::Values(Example{"A slow oven is from 250° to 300° F.", {"slow oven = 250-300 degree Fahrenheit"}},
                    Example{"Crack, 310 degrees.", {"crack of sugar = 310 degree"}},
                    Example{"Small Ball, 236°-238°.", {"small ball of sugar = 236-238 degree"}},
                    Example{"The Feather, 232.", {"feather of sugar = 232 degree"}},
                    Example{"Cook the syrup to the soft ball, 238° Fahrenheit.",
                            {"soft ball of sugar = 238 degree Fahrenheit"}},
                    Example{"Keep it at the simmering point, which is 185°.", {"simmering of water = 185 degree"}},
                    Example{"Water freezes at 32° Fahr.", {"freezing of water = 32 degree Fahrenheit"}},
                    Example{"The fat should stand at 385 degrees.", {"hot fat = 385 degree"}},
                    Example{"The room should be at 70 degrees when the dough is set.", {}},
                    Example{"Set the gauge at an angle of 40 degrees to the oven.", {}}));

INSTANTIATE_TEST_SUITE_P(
    Tests, Heat,
    testing::Values(
        Example{"The oven is right when you can hold your hand in it while you count twenty.", {"oven = 20 count"}},
        Example{"The oven should brown a teaspoonful of flour in five minutes.", {"oven = 5 minute"}},
        Example{"If a bit of bread browns in the fat in forty seconds, the fat is hot enough.",
                {"hot fat = 40 second"}},
        Example{"At candy height it will fly like flakes of snow.", {"candy height of sugar = ?"}},
        Example{"Cook the sugar until it makes a soft ball when dropped in cold water.", {"soft ball of sugar = ?"}},
        Example{"Bake in a hot oven twenty minutes.", {}}, Example{"Drop the ball of dough in cold water.", {}},
        Example{"Crack an egg with your fingers over the basin.", {}},
        Example{"Wind the thread about your finger and sew up the bird.", {}}));

INSTANTIATE_TEST_SUITE_P(Strength, Heat,
                         testing::Values(Example{"Take fourth proof brandy.", {"proof of brandy = 4 proof"}},
                                         Example{"Use spirit sixty degrees above proof.",
                                                 {"proof = 60 degree above proof"}},
                                         Example{"It is the proof of the pudding.", {}}));

}  // namespace
}  // namespace gallipot
