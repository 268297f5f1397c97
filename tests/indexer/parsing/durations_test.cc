#include "indexer/parsing/durations.h"

#include <gtest/gtest.h>

#include <string>

namespace gallipot::steps {
namespace {

struct Case {
  const char* text;
  std::vector<Range> minutes;
};

std::ostream& operator<<(std::ostream& out, const Case& c) { return out << '"' << c.text << '"'; }

class DurationsTest : public testing::TestWithParam<Case> {};

TEST_P(DurationsTest, AreReadAsMinutes) {
  const std::string text = GetParam().text;
  const Words words(text);
  std::vector<Range> found;
  for (const Duration& d : find_durations(words)) found.push_back(d.minutes);
  ASSERT_EQ(found.size(), GetParam().minutes.size()) << text;
  for (std::size_t i = 0; i < found.size(); ++i) {
    EXPECT_NEAR(found[i].low, GetParam().minutes[i].low, 0.01) << text;
    EXPECT_NEAR(found[i].high, GetParam().minutes[i].high, 0.01) << text;
  }
}

INSTANTIATE_TEST_SUITE_P(Plain, DurationsTest,
                         testing::Values(Case{"boil half an hour", {{30, 30}}}, Case{"boil it an hour", {{60, 60}}},
                                         Case{"simmer for three quarters of an hour", {{45, 45}}},
                                         Case{"a quarter of an hour in the oven", {{15, 15}}},
                                         Case{"let it stand a fortnight", {{20160, 20160}}},
                                         Case{"twenty-five minutes", {{25, 25}}},
                                         Case{"five and twenty minutes", {{25, 25}}}, Case{"1/2 hour", {{30, 30}}},
                                         Case{"½ hour", {{30, 30}}}, Case{"for 20 minutes, or until done", {{20, 20}}},
                                         Case{"3 hrs.", {{180, 180}}}, Case{"a couple of days", {{2880, 2880}}},
                                         Case{"half-hour", {{30, 30}}}, Case{"stir six months", {{259200, 259200}}},
                                         Case{"a good half hour", {{30, 30}}}));

INSTANTIATE_TEST_SUITE_P(WithAFraction, DurationsTest,
                         testing::Values(Case{"an hour and a half", {{90, 90}}}, Case{"1-1/2 hours", {{90, 90}}},
                                         Case{"1½ hours", {{90, 90}}}, Case{"two and a half hours", {{150, 150}}},
                                         Case{"two hours and a quarter", {{135, 135}}},
                                         Case{"one and one-half hours", {{90, 90}}},
                                         Case{"an hour and three-quarters", {{105, 105}}},
                                         Case{"1 hour and 10 minutes", {{70, 70}}}));

INSTANTIATE_TEST_SUITE_P(Ranges, DurationsTest,
                         testing::Values(Case{"three or four hours", {{180, 240}}},
                                         Case{"from ten to fifteen minutes", {{10, 15}}},
                                         Case{"15 to 20 minutes", {{15, 20}}}, Case{"10-15 minutes", {{10, 15}}},
                                         Case{"two or three days", {{2880, 4320}}}, Case{"1/2 to 3/4 hour", {{30, 45}}},
                                         Case{"an hour or two", {{60, 120}}},
                                         Case{"between two and three hours", {{120, 180}}},
                                         Case{"an hour or an hour and a half", {{60, 90}}},
                                         Case{"1 to 1-1/2 hour", {{60, 90}}}, Case{"a day or two", {{1440, 2880}}}));

INSTANTIATE_TEST_SUITE_P(Nights, DurationsTest,
                         testing::Values(Case{"soak over night", {{480, 720}}}, Case{"soak overnight", {{480, 720}}},
                                         Case{"let it lie all night", {{480, 720}}},
                                         Case{"soak over-night", {{480, 720}}}));

INSTANTIATE_TEST_SUITE_P(AreNone, DurationsTest,
                         testing::Values(Case{"the next day skim it", {}}, Case{"the night before", {}},
                                         Case{"second-best flour", {}}, Case{"wash it a second time", {}},
                                         Case{"a pound of flour", {}}, Case{"", {}}, Case{"every day", {}},
                                         Case{"late in the year", {}}));

TEST(DurationsTest, KnowWhereTheyStand) {
  const std::string text = "Simmer from ten to fifteen minutes, and serve.";
  const Words words(text);
  const auto found = find_durations(words);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].span.in(text), "ten to fifteen minutes");
}

}  // namespace
}  // namespace gallipot::steps
