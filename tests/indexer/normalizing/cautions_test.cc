// Cautions: raised by words, by stuffs and by amounts; silent where they would be false alarms.
#include "indexer/normalizing/cautions.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

ComparableIngredient stuff(const std::string& name, const std::string& kind, double grams = 0) {
  ComparableIngredient out;
  out.printed.name = name;
  out.kind = kind;
  if (grams > 0) out.metric = Amount{Amount::Unit::gram, grams, grams, grams, "by the test"};
  return out;
}

struct Receipt {
  std::string text, title, chapter;
  std::vector<ComparableIngredient> stuffs;
};

std::vector<std::string> hazards(const Receipt& receipt) {
  Recipe recipe;
  recipe.text = receipt.text;
  recipe.title = recipe.dish_title = receipt.title;
  recipe.chapter = receipt.chapter;
  const Cautions& all = Cautions::built_in();
  std::vector<std::string> out;
  for (const std::size_t place : all.places_of(recipe, receipt.stuffs)) out.push_back(all.hazard(place));
  return out;
}

bool raises(const Receipt& receipt, const std::string& hazard) {
  const auto all = hazards(receipt);
  return std::find(all.begin(), all.end(), hazard) != all.end();
}

using Names = std::vector<std::string>;

TEST(Cautions, HoldAtLeastSixtyHazardsEachOnceWithASource) {
  const auto table = load_table("cautions");
  ASSERT_TRUE(table) << table.error().sentence();
  std::set<std::string> names;
  for (const auto& row : table->rows) {
    EXPECT_TRUE(names.insert(std::string(table->cell(row, "hazard"))).second) << row.line;
    EXPECT_FALSE(table->cell(row, "source").empty()) << row.line;
    EXPECT_FALSE(table->cell(row, "words").empty() && table->cell(row, "stuff").empty()) << row.line;
    EXPECT_TRUE(table->cell(row, "caution").ends_with('.')) << row.line;
  }
  EXPECT_GE(names.size(), 60U);
}

TEST(Cautions, NeverSayThatAThingIsSafe) {
  const auto table = load_table("cautions");
  ASSERT_TRUE(table);
  for (const auto& row : table->rows) {
    const std::string says(table->cell(row, "caution"));
    EXPECT_EQ(says.find(" safe"), std::string::npos) << says;
    EXPECT_EQ(says.find("harmless"), std::string::npos) << says;
  }
}

TEST(Cautions, AreRaisedByWholePhrases) {
  EXPECT_EQ(hazards({"Boil a copper halfpenny with two copper coins in it till green.", "", "", {}}),
            Names{"verdigris"});
  EXPECT_EQ(hazards({"Blanch six Bitter Almonds and pound them.", "", "", {}}), Names{"bitter almonds"});
  EXPECT_EQ(hazards({"Wash the spinach, boil it, and serve with truer cheer.", "", "", {}}),
            Names{});  // "truer" is no rue
  EXPECT_EQ(hazards({"Dish up the greens, potatoes and carrots together.", "", "", {}}), Names{});
}

TEST(Cautions, BayLaurelIsNoCherryLaurel) {
  EXPECT_FALSE(
      raises({"Put in a bay leaf, or two bay laurel leaves, and boil.", "", "", {}}, "laurel and peach leaves"));
  EXPECT_TRUE(raises({"Boil three laurel leaves in the cream.", "", "", {}}, "laurel and peach leaves"));
}

TEST(Cautions, BrassIsTroubleOnlyWhereItHoldsAcid) {
  const std::string text = "Boil it half an hour in a brass kettle.";
  EXPECT_FALSE(raises({text, "", "", {stuff("sugar", "sweet"), stuff("water", "water")}}, "copper vessel with acid"));
  EXPECT_TRUE(raises({text, "", "", {stuff("vinegar", "condiment")}}, "copper vessel with acid"));
  EXPECT_FALSE(raises({"Boil it, but never in a brass kettle.", "", "", {stuff("vinegar", "condiment")}},
                      "copper vessel with acid"));
}

TEST(Cautions, LookAtAmounts) {
  const std::string text = "Rub the beef with the salts, and let it lie.";
  const auto beef = stuff("beef", "meat", 5000);
  EXPECT_TRUE(raises({text, "", "", {beef, stuff("saltpetre", "drug", 60)}}, "saltpetre, a heavy dose"));
  EXPECT_FALSE(raises({text, "", "", {beef, stuff("saltpetre", "drug", 5)}}, "saltpetre, a heavy dose"));
  EXPECT_FALSE(raises({text, "", "", {stuff("saltpetre", "drug", 60)}}, "saltpetre, a heavy dose"))
      << "without the weight of the meat no share can be told";
  EXPECT_TRUE(raises({text, "", "", {beef, stuff("saltpetre", "drug", 5)}}, "saltpetre"));
  EXPECT_TRUE(raises({"Stir.", "", "", {stuff("nutmeg", "spice", 30)}}, "nutmeg, much"));
  EXPECT_FALSE(raises({"Stir.", "", "", {stuff("nutmeg", "spice", 5)}}, "nutmeg, much"));
}

TEST(Cautions, EggsAreRawOnlyWhereNothingIsCooked) {
  const std::vector<ComparableIngredient> eggs = {stuff("egg yolk", "egg", 40), stuff("olive oil", "fat", 200)};
  EXPECT_TRUE(raises({"Beat the yolks, and drop in the oil.", "A dressing", "SALADS", eggs}, "raw eggs"));
  EXPECT_FALSE(raises({"Beat the yolks, add the oil, and bake it.", "A dressing", "SALADS", eggs}, "raw eggs"));
  EXPECT_FALSE(raises({"Beat the yolks, and stir in the flour.", "A plain cake", "CAKES", eggs}, "raw eggs"));
  auto leavened = eggs;
  leavened.push_back(stuff("yeast", "leaven"));
  EXPECT_FALSE(raises({"Beat the yolks with the barm.", "Rolls", "", leavened}, "raw eggs"));
}

TEST(Cautions, AreSilencedByAWarningBeforeThem) {
  EXPECT_EQ(hazards({"Use sweet almonds instead of bitter almonds.", "", "", {}}), Names{});
  EXPECT_FALSE(raises({"Flavour with essence of bitter almonds.", "", "", {}}, "bitter almonds"));
}

TEST(Cautions, LookAtTitleAndChapter) {
  EXPECT_TRUE(raises({"Take the herbs.", "A draught", "MEDICAL RECEIPTS", {}}, "medical chapters"));
  EXPECT_TRUE(raises({"Take the herbs.", "For a cough", "", {}}, "medical receipts"));
  EXPECT_TRUE(raises({"Beat the turtle meat.", "Turtle Soup", "", {}}, "turtles"));
  EXPECT_FALSE(raises({"Take a calf's head.", "Mock Turtle Soup", "", {}}, "turtles"));
  EXPECT_TRUE(raises({"Bottle it and cork it.", "Ginger Beer", "", {}}, "ferments in closed bottles"));
  EXPECT_FALSE(raises({"Bottle it and cork it.", "Wine Vinegar Sauce", "", {}}, "ferments in closed bottles") &&
               raises({"Serve hot.", "Wine Sauce", "", {}}, "ferments in closed bottles"));
}

TEST(Cautions, EachSentenceIsToldOnce) {
  Recipe recipe;
  recipe.title = recipe.dish_title = "Mayonnaise";
  recipe.text = "Beat the yolks, and drop in the oil.";
  const std::vector<ComparableIngredient> eggs = {stuff("egg yolk", "egg", 40)};
  const auto all = Cautions::built_in().of(recipe, eggs);
  EXPECT_EQ(std::set<std::string>(all.begin(), all.end()).size(), all.size());
  EXPECT_EQ(all.size(), 1U);
}

TEST(Cautions, AWrongTableIsAFaultWithItsLine) {
  const std::string head = "hazard\twords\twhere\tstuff\tleast\talso\tunless\theat\tcaution\tsource\n";
  const auto place = Cautions::load(head + "lead\tlead\tmargin\t\t\t\t\t\tNo.\tinvented\n");
  ASSERT_FALSE(place.has_value());
  EXPECT_EQ(place.error().line, 2);
  const auto least = Cautions::load(head + "lead\tlead\ttext\tlead\tmuch\t\t\t\tNo.\tinvented\n");
  ASSERT_FALSE(least.has_value());
  EXPECT_EQ(least.error().line, 2);
  EXPECT_FALSE(Cautions::load("hazard\twords\tsource\nlead\tlead\tinvented\n").has_value());
}

}  // namespace
}  // namespace gallipot
