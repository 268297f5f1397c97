// Finding on the sample shelf: names, filters, spelling help, and what must rank low.
#include "query/finding/find.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "indexer/storing/schema.h"
#include "query/finding/sketch.h"
#include "query/finding/suggest.h"
#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

using Finding = SampleShelf;

TEST_F(Finding, FindsTheDishUnderOtherNames) {
  const auto recipes = found({"damson", "catsup"}, {}, 15);
  ASSERT_GE(recipes.size(), 10u);
  EXPECT_EQ(recipes.front().dish.base, "damson");
  const auto elsewise = std::count_if(recipes.begin(), recipes.end(), [](const ComparableRecipe& r) {
    return r.dish.kind != "catsup" && has(r, "damson");
  });
  EXPECT_GE(elsewise, 4) << "store sauces and soys of damsons are the same thing";
}

TEST_F(Finding, ScoresFallAndLieBetweenNoughtAndOne) {
  const auto answer = find(*shelf_, *lexicon_, {"quince", "marmalade"}, {}, 30);
  ASSERT_TRUE(answer.has_value());
  ASSERT_FALSE(answer->hits.empty());
  double before = 1;
  for (const auto& hit : answer->hits) {
    EXPECT_LE(hit.score, before);
    EXPECT_GE(hit.score, 0);
    EXPECT_FALSE(hit.why.empty());
    before = hit.score;
  }
  EXPECT_TRUE(answer->suggestion.empty());
}

TEST_F(Finding, FiltersHold) {
  Filter early_british, with_vinegar, no_vinegar, one_book;
  early_british.from = 1800;
  early_british.to = 1850;
  early_british.country = "GB";
  with_vinegar.with = {"vinegar"};
  no_vinegar.without = {"vinegar"};
  one_book.books = {"lantern-1906"};
  for (const auto& r : found({"damson", "sauce"}, early_british)) {
    EXPECT_GE(r.year, 1800);
    EXPECT_LE(r.year, 1850);
    EXPECT_EQ(r.country, "GB");
  }
  const auto with = found({"damson", "sauce"}, with_vinegar);
  EXPECT_FALSE(with.empty());
  const auto without = found({"damson", "sauce"}, no_vinegar);
  EXPECT_FALSE(without.empty());
  for (const auto& r : without) EXPECT_FALSE(has(r, "vinegar")) << r.id;
  for (const auto& r : found({"soup"}, one_book)) EXPECT_EQ(r.book, "lantern-1906");
}

TEST_F(Finding, AMisspeltWordGetsASuggestion) {
  const auto answer = find(*shelf_, *lexicon_, {"quinse", "marmelade"});
  ASSERT_TRUE(answer.has_value());
  EXPECT_NE(answer->suggestion.find("quince"), std::string::npos) << answer->suggestion;
}

TEST_F(Finding, WordsThatNameNothingAreAFault) {
  const auto answer = find(*shelf_, *lexicon_, {"to", "make", "a"});
  ASSERT_FALSE(answer.has_value());
  EXPECT_NE(answer.error().sentence().find("names a dish"), std::string::npos);
}

TEST_F(Finding, NothingOfTheKindIsNoFault) {
  const auto answer = find(*shelf_, *lexicon_, {"zyzzyva"});
  ASSERT_TRUE(answer.has_value());
  EXPECT_TRUE(answer->hits.empty());
}

TEST_F(Finding, RarityFallsWithHowCommonAWordIs) {
  Telling telling(*shelf_, *lexicon_);
  EXPECT_GT(telling.rarity(schema::ingredient, "damson"), telling.rarity(schema::ingredient, "salt"));
  EXPECT_TRUE(telling.stems_of("To make a very good").empty());
}

TEST(EditDistance, CountsSwapsOnceAndStopsAtTheBound) {
  EXPECT_EQ(edit_distance("quince", "quinse", 2), 1u);
  EXPECT_EQ(edit_distance("catsup", "catusp", 2), 1u);
  // Damerau (1964) and Levenshtein (1966); "kitten" and "sitting" are the usual worked example, from memory.
  EXPECT_EQ(edit_distance("kitten", "sitting", 5), 3u);
  EXPECT_EQ(edit_distance("kitten", "sitting", 1), 2u);
  EXPECT_EQ(edit_distance("", "ab", 5), 2u);
}

TEST(RankingTable, EveryFieldHasARow) {
  for (const auto& [name, member] : Ranking::fields()) {
    Ranking probe;
    EXPECT_TRUE(probe.set(name, 7)) << name;
    EXPECT_EQ(probe.*member, 7);
  }
  EXPECT_GT(built_in_ranking().name, 0);
  EXPECT_GT(built_in_ranking().candidates, 0);
}

TEST(Alike, IsOneForTheSameAndNoughtForStrangers) {
  Sketch a, b;
  a.title = {{"damson", 3}};
  a.bases = {{"damson", 3}};
  a.kinds = {{"catsup", 1}};
  a.families = {{"relish", 1}};
  a.stuff = {{"damson", 9}, {"salt", 0.5}};
  a.method = {{"boil", 1}};
  const auto same = alike(a, a, built_in_ranking());
  EXPECT_NEAR(same.name, 1, 1e-9);
  EXPECT_NEAR(same.stuff, 1, 1e-9);
  const auto strange = alike(a, b, built_in_ranking());
  EXPECT_EQ(strange.name, 0);
  EXPECT_EQ(strange.stuff, 0);
}

}  // namespace
}  // namespace gallipot
