// The rule by which witnesses become an interval, and words become witnesses.
#include "indexer/measures/evidence.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "indexer/measures/folding.h"

namespace gallipot::measuring {
namespace {

const MeasureTables& tables() {
  static const auto loaded = load_measure_tables({});
  EXPECT_TRUE(loaded.has_value());
  return *loaded;
}

Testimony says(double ml, std::string_view who) { return {{ml, ml, ml}, who}; }

TEST(Verdict, IsTheMedianWithinItsTolerance) {
  const auto one = verdict_of({says(60, "a")});
  EXPECT_DOUBLE_EQ(one.extent.likely, 60);
  EXPECT_DOUBLE_EQ(one.extent.low, 45);  // one witness: a quarter either way
  EXPECT_DOUBLE_EQ(one.extent.high, 75);
  const auto three = verdict_of({says(60, "a"), says(50, "b"), says(70, "c")});
  EXPECT_DOUBLE_EQ(three.extent.likely, 60);
  EXPECT_DOUBLE_EQ(three.said.low, 50);
  EXPECT_DOUBLE_EQ(three.said.high, 70);
  EXPECT_EQ(three.authors, 3u);
}

TEST(Verdict, AnAuthorCountsOnce) {
  const auto loud = verdict_of({says(60, "a"), says(60, "a"), says(60, "a"), says(80, "b"), says(90, "c")});
  EXPECT_DOUBLE_EQ(loud.extent.likely, 80);
  EXPECT_EQ(loud.authors, 3u);
}

TEST(Verdict, WhoIsOutOfLineIsSetAside) {
  const auto v = verdict_of({says(60, "a"), says(55, "b"), says(240, "c")});
  EXPECT_EQ(v.set_aside, (std::vector<bool>{false, false, true}));
  EXPECT_LT(v.extent.high, 100);
  // of two nobody can tell who is out of line
  EXPECT_EQ(verdict_of({says(60, "a"), says(240, "b")}).set_aside, (std::vector<bool>{false, false}));
}

TEST(Verdict, ManyWitnessesAreHeardByPercentiles) {
  std::vector<Testimony> many;
  std::vector<std::string> names;
  for (int i = 0; i < 11; ++i) names.push_back("author " + std::to_string(i));
  for (int i = 0; i < 11; ++i) many.push_back(says(50 + i, names[static_cast<std::size_t>(i)]));
  const auto v = verdict_of(many);
  EXPECT_DOUBLE_EQ(v.said.low, 51);  // definition 7: the second of eleven is the tenth percentile
  EXPECT_DOUBLE_EQ(v.said.high, 59);
  EXPECT_DOUBLE_EQ(v.said.likely, 55);
}

TEST(Voices, ArePutIntoMillilitresOfTheirTimeAndPlace) {
  const auto gill = [](const char* country, int year) {
    return voice_of(tables(), {"wineglass", "", country, "Someone 1800", year, 0.5, 0.5, "gill"})->millilitres.likely;
  };
  EXPECT_NEAR(gill("US", 1840), 59.147, 0.001);
  EXPECT_NEAR(gill("GB", 1800), 59.147, 0.001);
  EXPECT_NEAR(gill("GB", 1880), 71.033, 0.001);
}

TEST(Voices, WeighAStuffByItsDensity) {
  const auto flour = voice_of(tables(), {"cup", "flour", "US", "Someone 1880", 1880, 0.25, 0.25, "pound"});
  ASSERT_TRUE(flour.has_value());
  ASSERT_TRUE(flour->grams.has_value());
  EXPECT_NEAR(flour->grams->likely, 113.4, 0.1);
  EXPECT_LT(flour->millilitres.low, 236);
  EXPECT_GT(flour->millilitres.high, 236);
  const auto unknown = voice_of(tables(), {"cup", "no such stuff", "US", "Someone 1880", 1880, 1, 1, "pound"});
  ASSERT_TRUE(unknown.has_value());
  EXPECT_EQ(unknown->millilitres.low, 0);  // a weight of it, but no volume
}

TEST(Voices, ThatComeToNoFigureAreNone) {
  EXPECT_FALSE(voice_of(tables(), {"cup", "", "US", "Someone 1880", 1880, 1, 1, "five-cent glass"}));
  EXPECT_FALSE(voice_of(tables(), {"cup", "", "US", "Someone 1880", 1880, 2, 2, "dozen"}));
}

// Rows of the tables: every household measure has witnesses, and each of them is heard somewhere.
TEST(HouseholdTable, EveryRowHasAWitnessAndEveryWitnessARow) {
  const Folded folded = fold(tables(), {}, {});
  std::vector<bool> heard(folded.voices.size(), false);
  for (const auto& [measure, rows] : folded.tables.held)
    for (const Held& row : rows) {
      EXPECT_FALSE(row.source.empty()) << measure;
      EXPECT_LT(0, row.extent.low) << measure << ": nobody bears witness to " << row.why;
      EXPECT_LE(row.extent.low, row.extent.likely) << measure;
      EXPECT_LE(row.extent.likely, row.extent.high) << measure;
      for (const Voice& v : folded.voices)
        if (row.household && v.measure == measure && is_heard(folded.tables, row, v))
          heard[static_cast<std::size_t>(&v - folded.voices.data())] = true;
    }
  for (std::size_t i = 0; i < heard.size(); ++i)
    EXPECT_TRUE(heard[i]) << folded.voices[i].measure << ": " << folded.voices[i].who << " is heard nowhere";
}

TEST(HouseholdTable, NoWitnessIsLostForAnUnknownWord) {
  const Folded folded = fold(tables(), {}, {});
  for (const Witnessed& w : tables().witnesses)
    EXPECT_TRUE(std::any_of(folded.voices.begin(), folded.voices.end(),
                            [&](const Voice& v) { return v.measure == w.measure && v.who == w.source; }))
        << w.measure << ": " << w.source << " tells it in " << w.unit;
}

}  // namespace
}  // namespace gallipot::measuring
