// Ingredients of whole recipes, on invented print in the ways that old books have.
#include <gtest/gtest.h>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/parse.h"

namespace gallipot {
namespace {

const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  return **loaded;
}

struct Parsed {
  Recipe recipe;
  std::vector<Ingredient> all;

  const Ingredient* named(std::string_view name) const {
    for (const auto& i : all)
      if (i.name == name) return &i;
    return nullptr;
  }
};

Parsed parsed(std::string title, const std::vector<std::string>& lines, Part::Kind kind = Part::Kind::paragraph) {
  Parsed p;
  p.recipe.title = std::move(title);
  for (const auto& line : lines) {
    if (!p.recipe.text.empty()) p.recipe.text += ' ';
    const auto begin = static_cast<std::uint32_t>(p.recipe.text.size());
    p.recipe.text += line;
    p.recipe.parts.push_back({&line == &lines.back() && lines.size() > 1 ? Part::Kind::paragraph : kind,
                              {begin, static_cast<std::uint32_t>(p.recipe.text.size())}});
  }
  p.all = parse_ingredients(p.recipe, Words(p.recipe.text), lexicon());
  return p;
}

void expect_amount(const Parsed& p, std::string_view name, double low, double high, std::string_view measure) {
  const auto* i = p.named(name);
  ASSERT_TRUE(i) << name;
  ASSERT_TRUE(i->quantity) << name;
  EXPECT_NEAR(i->quantity->low, low, 1e-6) << name;
  EXPECT_NEAR(i->quantity->high, high, 1e-6) << name;
  EXPECT_EQ(i->measure, measure) << name;
}

TEST(Ingredients, OfRunningProse) {
  const auto p = parsed(
      "A Plain Cake", {"Take a pound and a half of fine flour, half a pound of butter, three or four eggs well beaten, "
                       "and a little nutmeg; mix the flour with the butter, then add the eggs, and bake it an hour."});
  expect_amount(p, "flour", 1.5, 1.5, "pound");
  expect_amount(p, "butter", 0.5, 0.5, "pound");
  expect_amount(p, "egg", 3, 4, "");
  ASSERT_TRUE(p.named("nutmeg"));
  EXPECT_FALSE(p.named("nutmeg")->quantity);
  EXPECT_EQ(p.all.size(), 4u) << "what is named again is no new ingredient";
}

TEST(Ingredients, OfAListWithItsMethod) {
  const auto p = parsed("Seed Biscuits",
                        {"2 cups flour", "½ cup sugar", "1 tablespoonful caraway seeds", "A pinch of salt",
                         "Mix the flour and sugar, add the seeds, roll thin and bake in a quick oven."},
                        Part::Kind::list_item);
  expect_amount(p, "flour", 2, 2, "cup");
  expect_amount(p, "sugar", 0.5, 0.5, "cup");
  expect_amount(p, "caraway seed", 1, 1, "tablespoon");
  expect_amount(p, "salt", 1, 1, "pinch");
  EXPECT_EQ(p.all.size(), 4u);
}

TEST(Ingredients, PartsOfThings) {
  const auto p = parsed("Lemon Cream",
                        {"Take the juice of two lemons, the yolks of six eggs, and the rind of half a lemon grated; "
                         "put to them a pint of cream."});
  expect_amount(p, "lemon juice", 2, 2, "");
  expect_amount(p, "egg yolk", 6, 6, "");
  expect_amount(p, "lemon peel", 0.5, 0.5, "");
  expect_amount(p, "cream", 1, 1, "pint");
}

TEST(Ingredients, JointAmountsAreFullOnEach) {
  const auto p = parsed("Spiced Pears",
                        {"Add to six pounds of pears a teaspoonful each of mace and cloves, and a quart of vinegar."});
  expect_amount(p, "mace", 1, 1, "teaspoon");
  expect_amount(p, "clove", 1, 1, "teaspoon");
}

TEST(Ingredients, EllipsisTakesTheMeasureBefore) {
  const auto p =
      parsed("Gingerbread", {"Take three tablespoonfuls of ginger, two of cinnamon, and a pound of treacle."});
  expect_amount(p, "cinnamon", 2, 2, "tablespoon");
}

TEST(Ingredients, AmountsPerUnit) {
  const auto p = parsed(
      "Plum Jam",
      {"Stone the plums, and to every pound of fruit allow three quarters of a pound of loaf sugar; boil it an hour."});
  expect_amount(p, "sugar", 0.75, 0.75, "pound");
  const auto* sugar = p.named("sugar");
  ASSERT_TRUE(sugar->per);
  EXPECT_EQ(sugar->per->quantity, 1);
  EXPECT_EQ(sugar->per->measure, "pound");
  EXPECT_EQ(sugar->per->of, "fruit");
}

TEST(Ingredients, AmountsByComparison) {
  const auto p =
      parsed("Walnut Sauce",
             {"To the liquor put an ounce of mace, half as much cloves, and the weight of six eggs in sugar."});
  const auto* cloves = p.named("clove");
  ASSERT_TRUE(cloves && cloves->relative);
  EXPECT_EQ(cloves->relative->factor, 0.5);
  EXPECT_EQ(cloves->relative->to, "mace");
  const auto* sugar = p.named("sugar");
  ASSERT_TRUE(sugar && sugar->relative);
  EXPECT_EQ(sugar->relative->factor, 6);
  EXPECT_EQ(sugar->relative->to, "egg");
  EXPECT_EQ(sugar->relative->by, Relative::By::weight);
}

TEST(Ingredients, AlternativesInheritTheAmount) {
  const auto p =
      parsed("A Crust", {"Rub half a pound of lard or butter into two pounds of flour, and wet it with cold water."});
  expect_amount(p, "butter", 0.5, 0.5, "pound");
  EXPECT_EQ(p.named("butter")->alternative_of, "lard");
}

TEST(Ingredients, SizesAreMeasures) {
  const auto p = parsed(
      "A Thickening",
      {"Take a pint of milk, a piece of butter the size of an egg, and a spoonful of flour; stir it over the fire."});
  expect_amount(p, "butter", 1, 1, "size of an egg");
  EXPECT_FALSE(p.named("egg"));
}

TEST(Ingredients, ForThoseWhoLikeThem) {
  const auto p = parsed(
      "A Broth", {"Boil four pounds of beef in a gallon of water with salt. Add a glass of sherry if you like it."});
  ASSERT_TRUE(p.named("sherry"));
  EXPECT_TRUE(p.named("sherry")->optional);
  ASSERT_TRUE(p.named("beef"));
  EXPECT_FALSE(p.named("beef")->optional);
}

TEST(Ingredients, SpansLieInTheTextAndHoldTheirParts) {
  const auto p = parsed("A Pudding",
                        {"Take “half a pint” of cream, Sugar, one pound; 2½ oz. of butter, and the whites of 3 eggs."});
  ASSERT_FALSE(p.all.empty());
  for (const auto& i : p.all) {
    EXPECT_LE(i.span.end, p.recipe.text.size());
    EXPECT_LE(i.span.begin, i.name_span.begin) << i.name;
    EXPECT_GE(i.span.end, i.name_span.end) << i.name;
    if (i.quantity && !i.quantity_span.empty()) {
      EXPECT_LE(i.span.begin, i.quantity_span.begin) << i.name;
      EXPECT_GE(i.span.end, i.quantity_span.end) << i.name;
    }
    EXPECT_GT(i.confidence, 0.5);
  }
  expect_amount(p, "sugar", 1, 1, "pound");
  expect_amount(p, "egg white", 3, 3, "");
}

TEST(Ingredients, UnitsAreOfWhatIsPrintedAfterThem) {
  const auto per_of = [](const std::string& text, std::string_view name) -> std::string {
    const auto p = parsed("Bullace Sauce", {text});
    const auto* i = p.named(name);
    return i && i->per ? i->per->of : "(none)";
  };
  EXPECT_EQ(per_of("Bake the bullaces with a spoonful of salt and rub them through a hair sieve. To every quart of the "
                   "pulp put half an ounce of mace and a pound of sugar.",
                   "mace"),
            "pulp");
  EXPECT_EQ(per_of("Cover the bullaces with a quart of vinegar; then to each pint of the clear liquor add a drachm of "
                   "mace.",
                   "mace"),
            "liquor");
  EXPECT_EQ(per_of("Strain the juice from the skins, and to every gallon put two pounds of sugar.", "sugar"), "juice");
  EXPECT_EQ(per_of("INGREDIENTS.--To every lb. of bullaces allow 6 oz. of sugar.", "sugar"), "bullace");
  EXPECT_EQ(per_of("Boil the vinegar, and stir into each quart of it two ounces of mace.", "mace"), "vinegar");
  EXPECT_EQ(per_of("Allow half a lb. of sugar to every lb. bullaces.", "sugar"), "bullace");
  EXPECT_EQ(per_of("To every pound of bullaces allow half a pound of sugar.", "sugar"), "bullace");
}

TEST(Ingredients, DittoMarksTakeTheMeasureOfTheLineAbove) {
  const auto p = parsed("Spice for Pickling",
                        {"2 oz. ginger", "1 \" allspice", "3 do. mace", "1 lb. salt", "Bruise them and mix them well."},
                        Part::Kind::list_item);
  expect_amount(p, "ginger", 2, 2, "ounce");
  expect_amount(p, "allspice", 1, 1, "ounce");
  expect_amount(p, "mace", 3, 3, "ounce");
  expect_amount(p, "salt", 1, 1, "pound");
  const auto q = parsed("A Store Sauce", {"Soy, two tablespoonfuls. Walnut ketchup, four ditto. 1 teaspoonful of salt, "
                                          "1/2 do. of pepper. Shake them together."});
  expect_amount(q, "walnut ketchup", 4, 4, "tablespoon");
  expect_amount(q, "black pepper", 0.5, 0.5, "teaspoon");
}

TEST(Ingredients, EitherOpensAListOfAlternatives) {
  const auto p =
      parsed("A Forcemeat", {"Take four ounces of either ham, tongue, veal, or rabbit, two (2) tablespoonfuls of "
                             "suet, and an egg; pound them well."});
  for (const auto* name : {"ham", "tongue", "veal", "rabbit"}) {
    ASSERT_TRUE(p.named(name)) << name;
    expect_amount(p, name, 4, 4, "ounce");
  }
  for (const auto* name : {"tongue", "veal", "rabbit"}) EXPECT_EQ(p.named(name)->alternative_of, "ham") << name;
  expect_amount(p, "suet", 2, 2, "tablespoon");
}

TEST(Ingredients, WhatIsDeniedIsNotWanted) {
  const auto p =
      parsed("Plain Pease", {"Take a quart of pease, and boil them in two quarts of water without any sugar or butter. "
                             "No vinegar is wanted. Use no salt, but add a sprig of mint."});
  EXPECT_TRUE(p.named("mint"));
  for (const auto* name : {"sugar", "butter", "vinegar", "salt"}) EXPECT_FALSE(p.named(name)) << name;
}

TEST(Ingredients, PronounsTakeTheirAmountToTheStuff) {
  const auto p = parsed("To Keep Damsons", {"Gather damsons on a dry day; take a peck of them, and put to them two "
                                            "pounds of sugar and a little cinnamon."});
  expect_amount(p, "damson", 1, 1, "peck");
  const auto titled = parsed("Pickled Mushrooms", {"Take a gallon of these and a pint of vinegar, and boil them."});
  expect_amount(titled, "mushroom", 1, 1, "gallon");
}

TEST(Ingredients, AWeightToldByAVerbIsTheAmountOfAPiece) {
  const auto p = parsed("A Spiced Round", {"To a round of beef weighing about twenty pounds take half a pound of salt, "
                                           "two onions weighing an ounce each, and a quart of vinegar."});
  expect_amount(p, "beef", 20, 20, "pound");
  expect_amount(p, "onion", 2, 2, "");
}

TEST(Ingredients, AmountsInParenthesesAndPastReferences) {
  const auto p =
      parsed("A Marbled Cream", {"Colour one half with melted chocolate (one ounce), and put to the other two "
                                 "tea-spoonfuls of rum (No. 9), or brandy (No. 12)."});
  expect_amount(p, "chocolate", 1, 1, "ounce");
  expect_amount(p, "rum", 2, 2, "teaspoon");
  expect_amount(p, "brandy", 2, 2, "teaspoon");
}

TEST(Ingredients, ANumberTiedToAnotherWordIsNoCount) {
  const auto p =
      parsed("A Broth", {"Fifteen-cent soup bone, three quarts of water, and a stone jar of pickled onions."});
  expect_amount(p, "water", 3, 3, "quart");
  for (const auto& i : p.all) {
    EXPECT_FALSE(i.quantity && i.quantity->low == 15) << i.name;
    EXPECT_NE(i.measure, "stone") << i.name;
  }
}

TEST(Ingredients, CellsPartedByBarsAreOneAmount) {
  const auto p = parsed("A Riddle Cake", {"3 1/2 | cups | of | flour | Proverbs 4", "2 | cups | of | sugar | Ruth 9"},
                        Part::Kind::table_row);
  expect_amount(p, "flour", 3.5, 3.5, "cup");
  expect_amount(p, "sugar", 2, 2, "cup");
}

TEST(Ingredients, ServingNotesAndTimeAreNoStuff) {
  const auto p =
      parsed("A Brown Sauce",
             {"Take half a pint of ale, an ounce of sugar, a sprig of parsley, time, and sage. Stir it all the "
              "time. Serve with fowl or game; it is also good for fish. Eat it with roast mutton."});
  for (const auto* name : {"ale", "sugar", "thyme", "sage"}) EXPECT_TRUE(p.named(name)) << name;
  for (const auto* name : {"fowl", "game", "fish", "mutton"}) EXPECT_FALSE(p.named(name)) << name;
  const auto q = parsed("A Cake", {"Beat a pound of butter with a pound of sugar, and stir it for a long time."});
  EXPECT_FALSE(q.named("thyme"));
}

TEST(Ingredients, NothingFromNothing) {
  EXPECT_TRUE(parsed("", {""}).all.empty());
  EXPECT_TRUE(parsed("Of Kitchens", {"A kitchen should be light and airy, and the floor of stone."}).all.empty());
}

TEST(Ingredients, AnyBytesAreReadWithoutHarm) {
  for (const char* text : {"1/", "/2 a of of", "-- - --", "of each", "a a a a", "½½½ half half a dozen dozen",
                           "the juice of", "to every", "the weight of in", "as much as", "(((", "\"\"\" 3 \" \" sugar",
                           "or or or", "size of a", "yolks and whites and"})
    for (const auto& i : parsed(text, {text}).all) EXPECT_LE(i.span.end, std::string_view(text).size());
}

TEST(Tables, OfTheGrammarAndTheModelAreWhole) {
  for (const char* name : {"grammar-words", "mention-weights"}) {
    const auto table = parse_table(built_in_table(name), name, name);
    ASSERT_TRUE(table) << (table ? "" : table.error().sentence());
    EXPECT_GT(table->rows.size(), 100u) << name;
    for (const auto& row : table->rows) EXPECT_FALSE(row.cells[0].empty()) << name << ':' << row.line;
  }
}

}  // namespace
}  // namespace gallipot
