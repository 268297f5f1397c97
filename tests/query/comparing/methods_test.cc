// Methods laid side by side: what shares a row, what most do, where they cannot agree, who stands apart.
#include "query/comparing/methods.h"

#include <algorithm>

#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::lay_out;
using bench::Receipt;
using bench::says;

const Dish chutney{"apple", "chutney"};

std::vector<ComparableRecipe> four(const std::vector<double>& boiled) {
  std::vector<ComparableRecipe> out;
  for (std::size_t i = 0; i < boiled.size(); ++i)
    out.push_back(Receipt("a/000" + std::to_string(i + 1), 1800 + 10 * static_cast<int>(i), chutney)
                      .has("apples", "apple")
                      .does("chop")
                      .does("boil", boiled[i])
                      .does("bottle")
                      .recipe());
  return out;
}

TEST(Methods, AStepThatHalfHaveIsOfTheConsensus) {
  auto recipes = four({20, 30, 40, 50});
  recipes[0].steps.erase(recipes[0].steps.begin());
  recipes[1].steps.erase(recipes[1].steps.begin());
  recipes[2].steps.pop_back();
  recipes[1].steps.pop_back();
  recipes[0].steps.pop_back();
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  std::string consensus;
  for (const StepRow& row : made->steps)
    if (row.consensus) consensus += row.op + std::to_string(row.witnesses) + " ";
  EXPECT_EQ(consensus, "chop2 boil4 ");
  EXPECT_EQ(made->methods, 4U);
}

TEST(Methods, TimesOfARowHaveTheirEndsAndTheirMiddle) {
  const auto made = lay_out(four({20, 30, 0, 50}));
  ASSERT_TRUE(made);
  const auto boil =
      std::find_if(made->steps.begin(), made->steps.end(), [](const StepRow& row) { return row.op == "boil"; });
  ASSERT_NE(boil, made->steps.end());
  EXPECT_EQ(boil->timed, 3U);
  EXPECT_EQ(boil->minutes->low, 20);
  EXPECT_EQ(boil->minutes->high, 50);
  EXPECT_EQ(boil->middle, 30);
}

TEST(Methods, TwentyMinutesAndThreeHoursCannotBothBeMeant) {
  const auto made = lay_out(four({20, 180}));
  ASSERT_TRUE(made);
  ASSERT_EQ(made->conflicts.size(), 1U);
  EXPECT_EQ(made->witnesses[made->conflicts[0].shorter].siglum, "A");
  EXPECT_EQ(made->witnesses[made->conflicts[0].longer].siglum, "B");
  EXPECT_TRUE(says(*made, "They do not agree how long to boil: 20 minutes (A) or 3 hours (B)."));
  EXPECT_TRUE(lay_out(four({20, 30}))->conflicts.empty());
}

TEST(Methods, NoOneBoilsForSixWeeks) {
  const auto made = lay_out(four({20, 60480, 30}));
  ASSERT_TRUE(made);
  for (const StepRow& row : made->steps) {
    const double most = row.minutes ? row.minutes->high : 0;
    EXPECT_LE(most, 30) << row.op;
  }
  EXPECT_FALSE(says(*made, "weeks"));
}

TEST(Methods, StepsThatNameTheSameStuffFindOneAnother) {
  // Two boilings each; in the second recipe the first of them is of the vinegar, as is the second of the first recipe.
  const auto boils = [](const std::string& id, const std::vector<std::string>& stuffs) {
    Receipt receipt(id, 1800, chutney);
    ComparableRecipe recipe = receipt.recipe();
    for (const std::string& stuff : stuffs) {
      const auto begin = static_cast<std::uint32_t>(recipe.recipe.text.size());
      recipe.recipe.text += "boil the " + stuff + " ";
      ComparableIngredient ingredient;
      ingredient.printed.name = stuff;
      ingredient.printed.span =
          ingredient.printed.name_span = {begin + 9, begin + 9 + static_cast<std::uint32_t>(stuff.size())};
      recipe.ingredients.push_back(ingredient);
      recipe.steps.push_back({"boil", std::nullopt, {begin, static_cast<std::uint32_t>(recipe.recipe.text.size())}});
      recipe.steps.push_back({"strain", std::nullopt, {begin, begin}});
    }
    return recipe;
  };
  const auto made = lay_out({boils("a/0001", {"apple", "vinegar"}), boils("b/0001", {"vinegar"})});
  ASSERT_TRUE(made);
  for (const StepRow& row : made->steps) {
    if (row.op != "boil" || row.cells[1].op.empty()) continue;
    EXPECT_EQ(row.cells[0].stuffs, std::vector<std::string>{"vinegar"});
    ASSERT_EQ(row.stuffs.size(), 1U);
    EXPECT_EQ(row.stuffs[0].name, "vinegar");
  }
}

TEST(Methods, WhoLacksWhatMostDoAndWhoAloneDoesIt) {
  auto recipes = four({20, 30, 40, 50, 60});
  recipes[4] = Receipt("z/0001", 1890, chutney).has("mace", "mace").does("chop").does("bottle").does("smoke").recipe();
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  const Apart& last = made->witnesses[4].apart;
  EXPECT_EQ(last.lacks_stuffs, std::vector<std::string>{"apple"});
  EXPECT_EQ(last.lacks_steps, std::vector<std::string>{"boil"});
  EXPECT_EQ(last.alone_stuffs, std::vector<std::string>{"mace"});
  EXPECT_EQ(last.alone_steps, std::vector<std::string>{"smoke"});
  EXPECT_TRUE(made->witnesses[0].apart.lacks_steps.empty());
}

TEST(Methods, ABareListIsNotCountedAsDoingWithout) {
  auto recipes = four({20, 30, 40});
  recipes.push_back(Receipt("z/0001", 1890, chutney).has("apples", "apple").recipe());
  const auto made = lay_out(recipes);
  ASSERT_TRUE(made);
  EXPECT_EQ(made->methods, 3U);
  EXPECT_TRUE(says(*made, "All three that tell a method boil it."));
  EXPECT_TRUE(made->witnesses[3].apart.lacks_steps.empty());
}

}  // namespace
}  // namespace gallipot
