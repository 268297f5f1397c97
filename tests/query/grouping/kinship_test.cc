// Kinship and changes on the sample shelf: what must hold of any two texts.
#include "query/grouping/kinship.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "query/grouping/changes.h"
#include "query/grouping/dish_name.h"
#include "query/grouping/kin_texts.h"
#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

class KinshipTest : public SampleShelf {
 protected:
  /// Some recipes of each book.
  static std::vector<ComparableRecipe> some(std::size_t every) {
    std::vector<ComparableRecipe> out;
    std::size_t n = 0;
    (void)shelf_->each([&](const ComparableRecipe& r) {
      if (n++ % every == 0) out.push_back(r);
      return true;
    });
    return out;
  }
};

TEST_F(KinshipTest, ATextIsKinToItselfInFull) {
  KinTexts texts(*shelf_, *lexicon_);
  for (const auto& recipe : some(5)) {
    if (recipe.recipe.text.size() < 80) continue;
    const KinText text = texts.asked(recipe);
    const Kinship kinship = kinship_of(text, text);
    EXPECT_EQ(kinship.of_first, 1) << recipe.id;
    EXPECT_EQ(kinship.of_second, 1) << recipe.id;
    EXPECT_TRUE(kinship.copy) << recipe.id;
    EXPECT_TRUE(changes_between({recipe, text.row}, {recipe, text.row}).empty()) << recipe.id;
  }
}

TEST_F(KinshipTest, SharesChangePlacesWithTheTexts) {
  KinTexts texts(*shelf_, *lexicon_);
  const auto recipes = some(9);
  for (std::size_t i = 0; i + 1 < recipes.size(); ++i) {
    const KinText a = texts.asked(recipes[i]), b = texts.asked(recipes[i + 1]);
    const Kinship there = kinship_of(a, b), back = kinship_of(b, a);
    EXPECT_EQ(there.tied(), back.tied()) << recipes[i].id;
    EXPECT_GE(most_in_common(a, b).evidence + 1e-6, there.signs.evidence) << recipes[i].id;
    EXPECT_NEAR(there.of_first, back.of_second, 0.05) << recipes[i].id;
    EXPECT_GE(most_in_common(a, b).share + 1e-6, there.signs.share) << recipes[i].id;
  }
}

TEST_F(KinshipTest, ChangesAppliedToTheSourceGiveTheWitness) {
  KinTexts texts(*shelf_, *lexicon_);
  const auto recipes = some(4);
  std::size_t changes = 0;
  for (std::size_t i = 0; i + 1 < recipes.size(); ++i) {
    const KinText a = texts.asked(recipes[i]), b = texts.asked(recipes[i + 1]);
    const auto all = changes_between({recipes[i], a.row}, {recipes[i + 1], b.row});
    changes += all.size();
    EXPECT_EQ(applied(all, a.row, b.row), b.row.words) << recipes[i].id << " " << recipes[i + 1].id;
  }
  EXPECT_GT(changes, 100u);
}

TEST_F(KinshipTest, SpellingsNumbersAndMeasuresAreOneWord) {
  WordRows rows(*shelf_, *lexicon_);
  const auto same = [&](const std::string& one, const std::string& other) {
    EXPECT_EQ(rows.of(one).words, rows.of(other).words) << one << " / " << other;
  };
  same("Take two table-spoonfuls", "take 2 tablespoonfuls");
  same("catchup", "catsup");
  same("shalots", "eschalots");
  same("half a pint", "1/2 a pint");
  same("\u00bd an ounce", "1/2 an oz.");
  same("strew'd", "strewed");
  same("Boyl the sallads", "boil the salads");
  EXPECT_NE(rows.of("walnut").words, rows.of("mushroom").words);
  const WordRow a = rows.of("two spoonfuls, half a pint, three hours");
  EXPECT_EQ(std::count(a.sorts.begin(), a.sorts.end(), WordRow::Sort::number), 3);
}

TEST_F(KinshipTest, PlainTitlesKeepTheNameAlone) {
  const auto plain = [](const std::string& title) {
    Recipe recipe;
    recipe.title = title;
    return plain_title(recipe);
  };
  EXPECT_EQ(plain("To make CATCHUP of DAMSONS"), "catchup of damsons");
  EXPECT_EQ(plain("PUDDING. No. 2"), "pudding");
  EXPECT_EQ(plain("Orange Pudding, another way"), "orange pudding");
  EXPECT_EQ(plain("Sauce for Fish, &c."), "sauce for fish");
  EXPECT_EQ(plain("A la mode Beef"), "a la mode beef");
  EXPECT_EQ(plain("Jelly (very fine)"), "jelly");
  EXPECT_EQ(plain("Another"), "another");
}

}  // namespace
}  // namespace gallipot
