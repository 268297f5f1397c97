// Words, gaps, vessels, yield, keeping and the shopping list of a sheet.
#include <gtest/gtest.h>

#include <algorithm>

#include "query/cooking/gaps.h"
#include "query/cooking/glossary.h"
#include "query/cooking/keeping.h"
#include "query/cooking/shopping.h"
#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

bool glosses(const ComparableRecipe& recipe, const std::string& term) {
  const auto all = glosses_of(recipe, kitchen());
  return std::any_of(all.begin(), all.end(), [&](const Gloss& g) { return g.term == term; });
}

TEST(Glossary, TellsOnlyTheTermsOfThisRecipe) {
  const auto recipe =
      receipt("Buns", "Take a pound of flour, half a pint of barm, two ounces of moist sugar, and bake them.");
  EXPECT_TRUE(glosses(recipe, "yeast (liquid)"));
  EXPECT_TRUE(glosses(recipe, "moist sugar"));
  EXPECT_FALSE(glosses(recipe, "isinglass"));
}

TEST(Glossary, GoesByTheYearOfThePrint) {
  const std::string text = "Take a pound of flour and a gill of yeast.";
  EXPECT_TRUE(glosses(receipt("Rolls", text, book("a", 1820)), "yeast (liquid)"));
  EXPECT_FALSE(glosses(receipt("Rolls", text, book("a", 1910)), "yeast (liquid)"));
  EXPECT_TRUE(glosses(receipt("Rolls", text, book("a", 1910)), "yeast (by then also pressed)"));
}

TEST(Glossary, ALongerPhraseHidesTheShorter) {
  EXPECT_TRUE(glosses(receipt("Cake", "Take a pound of flour and two ounces of citron."), "citron"));
  EXPECT_FALSE(glosses(receipt("Sweetmeat", "Take four pounds of citron melon and boil it."), "citron"));
  EXPECT_TRUE(glosses(receipt("Sweetmeat", "Take four pounds of citron melon and boil it."), "citron melon"));
}

TEST(Glossary, SaysWhereThePrintHasIt) {
  const auto all = glosses_of(receipt("Sauce", "Put in an ounce of Jamaica pepper."), kitchen());
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all.front().print.words, "Jamaica pepper");
  EXPECT_NE(all.front().now.find("Allspice"), std::string::npos);
}

std::vector<ComparableRecipe> siblings(const std::vector<std::string>& texts) {
  std::vector<ComparableRecipe> out;
  for (std::size_t i = 0; i < texts.size(); ++i)
    out.push_back(receipt("Plum Sauce", texts[i], book("book-" + std::to_string(i), 1800 + static_cast<int>(i))));
  return out;
}

const Gap* gap(const Sheet& sheet, Gap::Kind kind) {
  for (const Gap& one : sheet.gaps)
    if (one.kind == kind) return &one;
  return nullptr;
}

TEST(Gaps, WhatMostSiblingsSayIsBorrowedWithCountAndPlace) {
  const auto recipe = receipt("Plum Sauce", "Take four pounds of plums and a pint of vinegar. Boil them. Bottle it.");
  const auto sheet =
      cooked(recipe, {},
             siblings({"Take four pounds of plums and a pint of vinegar. Boil them close covered two hours.",
                       "Take three pounds of plums and a quart of vinegar. Boil them, covered, two hours.",
                       "Take a peck of plums and a quart of vinegar. Boil them, covered close, three hours.",
                       "Take two pounds of plums and a pint of vinegar. Boil them two hours."}));
  ASSERT_TRUE(sheet) << sheet.error().sentence();
  const Gap* cover = gap(*sheet, Gap::Kind::cover);
  ASSERT_NE(cover, nullptr);
  EXPECT_TRUE(cover->borrowed());
  EXPECT_EQ(cover->answers.front().words, "covered");
  EXPECT_EQ(cover->answers.front().by.size(), 3U);
  EXPECT_EQ(cover->asked, 4U);
  EXPECT_EQ(sheet->siblings[cover->answers.front().by.front().sibling].book.id, "book-0");
  const Gap* time = gap(*sheet, Gap::Kind::time);
  ASSERT_NE(time, nullptr);
  EXPECT_TRUE(time->borrowed());
  ASSERT_TRUE(time->answers.front().minutes);
  EXPECT_DOUBLE_EQ(time->answers.front().minutes->low, 120);
  const auto boil = std::find_if(sheet->plan.tasks.begin(), sheet->plan.tasks.end(),
                                 [](const Task& task) { return task.op == "boil"; });
  ASSERT_NE(boil, sheet->plan.tasks.end());
  EXPECT_EQ(boil->from, Task::From::siblings) << "the plan takes the borrowed time and says so";
}

TEST(Gaps, WhereSiblingsDisagreeNothingIsBorrowedAndBothAreTold) {
  const auto recipe = receipt("Plum Sauce", "Take four pounds of plums and a pint of vinegar. Boil them.");
  const auto sheet = cooked(recipe, {},
                            siblings({"Take four pounds of plums and a pint of vinegar. Boil them covered.",
                                      "Take four pounds of plums and a pint of vinegar. Boil them uncovered.",
                                      "Take four pounds of plums and a pint of vinegar. Boil them covered.",
                                      "Take four pounds of plums and a pint of vinegar. Boil them uncovered."}));
  ASSERT_TRUE(sheet);
  const Gap* cover = gap(*sheet, Gap::Kind::cover);
  ASSERT_NE(cover, nullptr);
  EXPECT_FALSE(cover->borrowed());
  EXPECT_EQ(cover->answers.size(), 2U);
}

TEST(Gaps, NothingIsAskedThatThePrintTells) {
  const auto recipe =
      receipt("Plum Sauce", "Take four pounds of plums and a pint of vinegar. Boil them uncovered one hour.");
  const auto sheet =
      cooked(recipe, {},
             siblings({"Take four pounds of plums and a pint of vinegar. Boil them covered two hours.",
                       "Take four pounds of plums and a pint of vinegar. Boil them covered two hours.",
                       "Take four pounds of plums and a pint of vinegar. Boil them covered two hours."}));
  ASSERT_TRUE(sheet);
  EXPECT_EQ(gap(*sheet, Gap::Kind::cover), nullptr);
  EXPECT_EQ(gap(*sheet, Gap::Kind::time), nullptr);
}

TEST(Gaps, ToTasteIsLeftSoWithWhatSiblingsUse) {
  const auto recipe =
      receipt("Plum Sauce", "Take four pounds of plums, a pint of vinegar, and salt to your taste. Boil them.");
  const std::string some = "Take four pounds of plums, a pint of vinegar and two ounces of salt. Boil them.";
  const auto sheet = cooked(recipe, {}, siblings({some, some, some}));
  ASSERT_TRUE(sheet);
  const SheetLine* salt = line(*sheet, "salt");
  ASSERT_NE(salt, nullptr);
  EXPECT_FALSE(salt->amount);
  ASSERT_TRUE(salt->siblings);
  EXPECT_EQ(salt->siblings->by.size(), 3U);
  EXPECT_NEAR(salt->siblings->amount.likely, 56.7, 0.5);
}

TEST(Made, TellsEachLossAndKeepsTheOrderOfItsFigures) {
  const auto sheet = cooked(receipt("Plum Sauce",
                                    "Take four pounds of plums and a pint of vinegar. Boil them one hour, and rub them "
                                    "through a sieve."));
  ASSERT_TRUE(sheet && sheet->made.grams);
  const Made& made = sheet->made;
  EXPECT_GE(made.parts.size(), 3U);
  double left = 0;
  for (const Made::Part& part : made.parts) {
    EXPECT_LE(part.amount.low, part.amount.likely) << part.what;
    EXPECT_LE(part.amount.likely, part.amount.high) << part.what;
    EXPECT_FALSE(part.why.empty());
    left += part.lost ? -part.amount.likely : part.amount.likely;
  }
  EXPECT_NEAR(made.grams->likely, left, 1) << "the parts add up to what is made";
  EXPECT_GT(made.grams->low, 0);
}

TEST(Vessels, ThePotIsLargerThanTheBatchAndTheAcidIsMinded) {
  const auto sheet = cooked(
      receipt("Plum Sauce",
              "Take four pounds of plums and a quart of vinegar. Boil them one hour. Bottle it, and cork it well."));
  ASSERT_TRUE(sheet);
  ASSERT_FALSE(sheet->vessels.empty());
  EXPECT_EQ(sheet->vessels.front().what, "Stainless steel or enamelled pot");
  ASSERT_TRUE(sheet->vessels.front().holding);
  EXPECT_GT(sheet->vessels.front().holding->likely, 2900 * 1.2);
  const auto bottles = std::find_if(sheet->vessels.begin(), sheet->vessels.end(), [](const Vessel& v) {
    return v.what.find("Bottles") != std::string::npos || v.what.find("Jars") != std::string::npos;
  });
  ASSERT_NE(bottles, sheet->vessels.end());
  EXPECT_NE(bottles->size.find(" of "), std::string::npos) << bottles->size;
}

TEST(Keeping, ToldOnlyOfWhatIsMeantToKeep) {
  const auto soup = cooked(
      receipt("Pease Soup", "Take a quart of peas and two quarts of water; boil them two hours, and serve it hot."));
  ASSERT_TRUE(soup);
  EXPECT_FALSE(soup->keeping.meant_to_keep);
  const auto pickle = cooked(receipt(
      "Pickled Onions",
      "Take four pounds of onions, two quarts of vinegar and four ounces of salt. Boil the vinegar, and pour it on."));
  ASSERT_TRUE(pickle);
  const Keeping& keeping = pickle->keeping;
  ASSERT_TRUE(keeping.meant_to_keep);
  ASSERT_TRUE(keeping.acid && keeping.salt && keeping.vinegar_then);
  EXPECT_NEAR(keeping.salt->likely, 113.4 * 0.99 / (1814 + 2273 + 113) * 100, 0.3);
  EXPECT_LE(keeping.acid->low, keeping.acid->likely);
  EXPECT_LE(keeping.acid->likely, keeping.acid->high);
  bool meter = false, law = false;
  for (const Keeping::Guidance& one : keeping.guidance) {
    meter = meter || (one.says.find("meter") != std::string::npos && one.says.find("tested") != std::string::npos);
    law = law || one.says.find("licensed") != std::string::npos;
    EXPECT_EQ(one.says.find(" safe"), std::string::npos) << one.says;
  }
  EXPECT_TRUE(meter);
  EXPECT_TRUE(law);
}

TEST(Keeping, NoShareIsToldOfAWholeThatIsNotKnown) {
  const auto pickle = cooked(
      receipt("Pickled Onions", "Take some onions and cover them with two quarts of vinegar and four ounces of salt."));
  ASSERT_TRUE(pickle);
  ASSERT_TRUE(pickle->keeping.meant_to_keep);
  EXPECT_FALSE(pickle->keeping.salt);
  EXPECT_FALSE(pickle->keeping.no_amount.empty());
}

TEST(Shopping, MergesByIngredientInShopUnits) {
  const auto a = cooked(
      receipt("A Cake", "Take a pound of flour, half a pound of butter, four eggs and two lemons. Bake it one hour."));
  const auto b = cooked(receipt(
      "Another Cake", "Take two pounds of flour, six eggs, half a pound of sugar, and salt. Bake it one hour."));
  ASSERT_TRUE(a && b);
  const ShoppingList list = shopping_for({*a, *b}, kitchen(), yardstick());
  const auto find = [&](const std::string& name) -> const ShoppingLine* {
    for (const ShoppingLine& one : list.lines)
      if (one.name == name) return &one;
    return nullptr;
  };
  ASSERT_NE(find("flour"), nullptr);
  EXPECT_EQ(find("flour")->wanted_by, (std::vector<std::size_t>{0, 1}));
  EXPECT_NEAR(find("flour")->amount->likely, 3 * 453.59, 0.1);
  EXPECT_EQ(find("flour")->buy, "2 bags of 1 kg");
  ASSERT_NE(find("egg"), nullptr);
  EXPECT_EQ(find("egg")->buy.substr(0, 2), "9 ") << "ten small eggs of the time: " << find("egg")->buy;
  ASSERT_NE(find("salt"), nullptr);
  EXPECT_FALSE(find("salt")->amount);
  EXPECT_TRUE(find("salt")->more);
  EXPECT_EQ(find("water"), nullptr);
}

}  // namespace
}  // namespace gallipot
