// Who is taken into a comparison, who is left out, and what is said of it.
#include "query/grouping/choice.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

using Choosing = SampleShelf;

bool says(const Choice& choice, const std::string& words) {
  return std::any_of(choice.words.begin(), choice.words.end(),
                     [&](const std::string& sentence) { return sentence.find(words) != std::string::npos; });
}

TEST_F(Choosing, TheNameIsKnownInEverySpelling) {
  const auto choice = chosen_by_dish(*shelf_, *lexicon_, "damson catsup");
  ASSERT_TRUE(choice.has_value());
  ASSERT_GE(choice->taken.size(), 2U);
  const auto ketchup = chosen_by_dish(*shelf_, *lexicon_, "damson ketchup");
  ASSERT_TRUE(ketchup.has_value());
  const auto named = [](const Choice& one) {
    std::vector<std::string> out;
    for (const Considered& recipe : one.taken)
      if (recipe.named) out.push_back(recipe.id);
    std::sort(out.begin(), out.end());
    return out;
  };
  EXPECT_EQ(named(*choice), named(*ketchup));
  EXPECT_TRUE(says(*choice, "bear"));
}

TEST_F(Choosing, ByNameOnlyNoneUnderAnotherName) {
  Wanted wanted;
  wanted.by_name_only = true;
  const auto choice = chosen_by_dish(*shelf_, *lexicon_, "quince marmalade", {}, wanted);
  ASSERT_TRUE(choice.has_value());
  ASSERT_FALSE(choice->taken.empty());
  for (const Considered& one : choice->taken) EXPECT_TRUE(one.named) << one.title;
  EXPECT_FALSE(choice->left_out.empty());
  EXPECT_TRUE(says(*choice, "Left out"));
}

TEST_F(Choosing, ALimitIsKeptAndSaid) {
  Wanted wanted;
  wanted.limit = 2;
  const auto all = chosen_by_dish(*shelf_, *lexicon_, "quince marmalade");
  const auto few = chosen_by_dish(*shelf_, *lexicon_, "quince marmalade", {}, wanted);
  ASSERT_TRUE(all.has_value() && few.has_value());
  ASSERT_GT(all->taken.size(), 2U);
  EXPECT_EQ(few->taken.size(), 2U);
  EXPECT_EQ(few->taken[0].id, all->taken[0].id);
  EXPECT_TRUE(says(*few, std::to_string(all->taken.size() - 2) + " more belong"));
}

TEST_F(Choosing, OfARecipeItselfComesFirst) {
  const auto seed = found({"quince", "marmalade"}, {}, 1).front().id;
  const auto choice = chosen_by_recipe(*shelf_, *lexicon_, seed);
  ASSERT_TRUE(choice.has_value());
  ASSERT_GE(choice->taken.size(), 3U);
  EXPECT_EQ(choice->taken.front().id, seed);
  EXPECT_FALSE(chosen_by_recipe(*shelf_, *lexicon_, "lantern-1906/9999").has_value());
}

TEST_F(Choosing, NothingIsTakenForADishThatTheShelfHasNot) {
  const auto choice = chosen_by_dish(*shelf_, *lexicon_, "zzyzx");
  ASSERT_TRUE(choice.has_value());
  EXPECT_TRUE(choice->taken.empty());
  EXPECT_FALSE(chosen_by_dish(*shelf_, *lexicon_, "the").has_value());
}

}  // namespace
}  // namespace gallipot
