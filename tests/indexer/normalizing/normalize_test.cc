#include "indexer/normalizing/normalize.h"

#include <gtest/gtest.h>

#include <string>

#include "indexer/normalizing/title_words.h"

namespace gallipot {
namespace {

const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  EXPECT_TRUE(loaded.has_value());
  return **loaded;
}

struct Named {
  const char *title, *base, *kind;
};

class DishTest : public testing::TestWithParam<Named> {};

TEST_P(DishTest, IsReadFromTheTitle) {
  const Dish d = dish_of(GetParam().title, {}, {}, lexicon());
  EXPECT_EQ(d.base, GetParam().base) << GetParam().title;
  EXPECT_EQ(d.kind, GetParam().kind) << GetParam().title;
}

INSTANTIATE_TEST_SUITE_P(
    Titles, DishTest,
    testing::Values(
        Named{"To make Catsup of Walnuts", "walnut", "catsup"}, Named{"WALNUT CATCHUP", "walnut", "catsup"},
        Named{"Walnut Ketchup for Fish Sauces", "walnut", "catsup"},
        Named{"A nice Indian Meal Pudding", "corn meal", "pudding"},
        Named{"A very good Palestine Soup", "palestine", "soup"}, Named{"Calf's Feet Jelly", "calf's foot", "jelly"},
        Named{"CALVES' FOOT JELLY", "calf's foot", "jelly"}, Named{"Pease Soup, green", "green pea", "soup"},
        Named{"Green Pea Soup", "green pea", "soup"}, Named{"To pickle Walnuts green", "walnut", "pickle"},
        Named{"Pickled Walnuts", "walnut", "pickle"}, Named{"To preserve Cucumbers", "cucumber", "preserve"},
        Named{"Marmalade of Quinces white", "quince", "marmalade"}, Named{"Raspberry Shrub", "raspberry", "shrub"},
        Named{"To pot Beef", "beef", "potted meat"}, Named{"Potted Cheese", "cheese", "potted meat"},
        Named{"Pickled Eggs", "egg", "pickle"}, Named{"An excellent Currant Cake without Eggs", "currant", "cake"}));

TEST(DishTest, FallsBackOnChapterAndChiefIngredient) {
  const Dish d = dish_of("Another way", "PICKLES", "onion", lexicon());
  EXPECT_EQ(d.kind, "pickle");
  EXPECT_EQ(d.base, "onion");
  EXPECT_EQ(dish_of("Sauce for all Seasons", "", "anchovy", lexicon()).kind, "sauce");
  const Dish none = dish_of("", "", "", lexicon());
  EXPECT_TRUE(none.base.empty());
  EXPECT_TRUE(none.kind.empty());
}

TEST(TitleWordsTest, EveryKindIsOneOfTheLexicon) {
  for (const TitleWord& w : TitleWords::built_in().words) {
    if (w.kind.empty()) continue;
    std::uint32_t value = 0;
    ASSERT_TRUE(lexicon().dish_kind_phrases().find(w.kind, value)) << w.kind;
    EXPECT_EQ(lexicon().dish_kinds()[value].name, w.kind);
  }
}

TEST(NormalizeTest, IdsHaveFourDigits) {
  EXPECT_EQ(recipe_id("sample", 7), "sample/0007");
  EXPECT_EQ(recipe_id("sample", 12345), "sample/12345");
}

TEST(NormalizeTest, PutsAmountsIntoTheBooksTimeAndPlace) {
  const auto measures = Register::load();
  ASSERT_TRUE(measures.has_value());
  Recipe recipe;
  recipe.ordinal = 3;
  recipe.title = recipe.dish_title = "Elder Vinegar";
  recipe.text = "Put a pint of vinegar to some elder flowers.";
  ParsedRecipe parsed;
  parsed.ingredients.resize(2);
  parsed.ingredients[0].name = "vinegar";
  parsed.ingredients[0].quantity = Range{1, 1};
  parsed.ingredients[0].measure = "pint";
  parsed.ingredients[1].name = "elder flower";
  Book book;
  book.id = "sample";
  book.country = "GB";
  book.years = Years{1790, 1790};
  auto r = normalize(recipe, parsed, book, 2, lexicon());
  weigh(r, **measures);
  EXPECT_EQ(r.id, "sample/0003");
  EXPECT_EQ(r.year, 1790);
  ASSERT_EQ(r.ingredients.size(), 2u);
  ASSERT_TRUE(r.ingredients[0].metric.has_value());
  EXPECT_NEAR(r.ingredients[0].metric->likely, 473.2, 0.1);
  EXPECT_EQ(r.ingredients[0].kind, "condiment");
  EXPECT_FALSE(r.ingredients[1].metric.has_value());
  EXPECT_EQ(r.dish.kind, "vinegar");
}

}  // namespace
}  // namespace gallipot
