#include "indexer/measures/heats.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

const Heats& heats() {
  static const auto loaded = Heats::load();
  EXPECT_TRUE(loaded.has_value()) << loaded.error().sentence();
  return **loaded;
}

std::string named(const char* words) {
  const Heat* heat = heats().named_in(words);
  return heat == nullptr ? "" : heat->name;
}

TEST(HeatNames, AreReadByTheLongest) {
  EXPECT_EQ(named("a slow oven"), "slow oven");
  EXPECT_EQ(named("bake it in a very slow oven"), "very slow oven");
  EXPECT_EQ(named("boil the sugar to the crack"), "crack");
  EXPECT_EQ(named("the little crack"), "small crack");
  EXPECT_EQ(named("hard crack"), "crack");
  EXPECT_EQ(named("crackers"), "");
  EXPECT_EQ(named("two cups"), "");
}

TEST(HeatNames, EveryRowHasASourceAndStandsInOrder) {
  for (const Heat& heat : heats().all()) {
    ASSERT_FALSE(heat.witnesses.empty()) << heat.name;
    for (const HeatWitness& w : heat.witnesses) {
      EXPECT_FALSE(w.source.empty()) << heat.name;
      EXPECT_LE(w.low, w.high) << heat.name;
    }
    const auto all = heat.extent({}, 0);
    ASSERT_TRUE(all.has_value()) << heat.name;
    EXPECT_TRUE(all->low <= all->likely && all->likely <= all->high) << heat.name;
  }
}

TEST(HeatNames, OvensGrowHotter) {
  double before = 0;
  for (const char* name : {"very slow oven", "slow oven", "moderate oven", "hot oven", "very hot oven"}) {
    const double likely = heats().named_in(name)->extent({}, 0)->likely;
    EXPECT_GT(likely, before) << name;
    before = likely;
  }
}

TEST(HeatNames, AWiderQuestionIsNeverAnsweredNarrower) {
  for (const Heat& heat : heats().all()) {
    const auto all = heat.extent({}, 0);
    for (const char* country : {"GB", "US"}) {
      const auto some = heat.extent(country, 1860);
      if (!some) continue;
      EXPECT_LE(all->low, some->low) << heat.name;
      EXPECT_GE(all->high, some->high) << heat.name;
    }
  }
}

}  // namespace
}  // namespace gallipot
