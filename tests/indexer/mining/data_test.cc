// Every row of the miner's tables means something to the miner.
#include <cstdlib>

#include "indexer/lexicon/tables.h"
#include "indexer/mining/cues.h"
#include "indexer/mining/heat_names.h"
#include "indexer/mining/sizes.h"
#include "tests/indexer/mining/said.h"

namespace gallipot::mining {
namespace {

TEST(MiningData, EveryCueIsKnown) {
  const auto table = parse_table(built_in_table("measure-cues"), "measure-cues", "measure-cues.tsv");
  ASSERT_TRUE(table.has_value()) << table.error().sentence();
  static constexpr std::string_view known[] = {"verb",  "copula",   "link",   "alias", "head",
                                               "hot",   "gauge",    "test",   "proof", "size",
                                               "share", "allotted", "tester", "span",  "sign"};
  for (const auto& row : table->rows) {
    EXPECT_NE(cues_of(row.cells[0]), 0u) << row.cells[0];
    EXPECT_NE(std::find(std::begin(known), std::end(known), row.cells[1]), std::end(known)) << row.cells[1];
  }
}

TEST(MiningData, EveryVagueMeasureIsAMeasureOrAKind) {
  const auto table = parse_table(built_in_table("vague-measures"), "vague-measures", "vague-measures.tsv");
  ASSERT_TRUE(table.has_value()) << table.error().sentence();
  for (const auto& row : table->rows) {
    const bool kind =
        row.cells[0] == "stuff" || std::any_of(tables().measures().begin(), tables().measures().end(),
                                               [&](const MeasureWord& m) { return m.kind == row.cells[0]; });
    EXPECT_TRUE(kind || tables().measure(row.cells[0]) != nullptr) << row.cells[0];
    const int rank = std::atoi(std::string(row.cells[1]).c_str());
    EXPECT_TRUE(rank >= -1 && rank <= 5) << row.cells[0];
  }
}

TEST(MiningData, EveryHeatHasARoomOfDegrees) {
  const auto table = parse_table(built_in_table("heat-words"), "heat-words", "heat-words.tsv");
  ASSERT_TRUE(table.has_value()) << table.error().sentence();
  for (const auto& row : table->rows)
    EXPECT_LT(std::atof(std::string(table->cell(row, "low")).c_str()),
              std::atof(std::string(table->cell(row, "high")).c_str()))
        << row.cells[0];
  EXPECT_FALSE(stage_words().empty());
}

TEST(MiningSizes, WhatCannotBeEqualIsNot) {
  Sizes sizes(tables());
  EXPECT_TRUE(may_equal(sizes, 1, "cup", 0.5, "pint", Closeness::implied));
  EXPECT_FALSE(may_equal(sizes, 1, "cup", 2, "pint", Closeness::stated));
  EXPECT_TRUE(may_equal(sizes, 1, "pound", 22, "ounce", Closeness::stated));
  EXPECT_FALSE(may_equal(sizes, 1, "pound", 22, "ounce", Closeness::implied));
  EXPECT_TRUE(may_equal(sizes, 10, "egg", 1, "pound", Closeness::stated));
  EXPECT_FALSE(may_equal(sizes, 10, "egg", 1, "ounce", Closeness::stated));
  EXPECT_FALSE(may_equal(sizes, 1, "teaspoon", 1, "pound", Closeness::stated));
  EXPECT_GT(sizes.vagueness("teacup"), sizes.vagueness("gill"));
  EXPECT_GT(sizes.vagueness("quart"), sizes.vagueness("pound"));
  EXPECT_LT(sizes.vagueness("leg"), 0);
}

}  // namespace
}  // namespace gallipot::mining
