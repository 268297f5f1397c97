// The cook's corrections: kept safe, found again, applied where their words stand and nowhere else.
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "indexer/correcting/cuts.h"
#include "indexer/correcting/readings.h"
#include "indexer/keeping/whole_file.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

class CorrectionsFile : public ::testing::Test {
 protected:
  void TearDown() override {
    fs::remove(path_);
    fs::remove(path_ + ".lock");
  }
  const std::string path_ =
      corrections_beside((fs::temp_directory_path() / ("gallipot-corrections-" + std::to_string(::getpid()) + "-" +
                                                       ::testing::UnitTest::GetInstance()->current_test_info()->name()))
                             .string());
};

Correction amount(double low, double high, const char* measure) {
  Correction out;
  out.kind = Correction::Kind::amount;
  out.book = "plain-1850";
  out.line = 12;
  out.printed = "30 ounces of ginger";
  out.quantity = Range{low, high};
  out.measure = measure;
  out.was = "30 ounce";
  return out;
}

TEST_F(CorrectionsFile, ComesBackAsItWent) {
  Correction cut;
  cut.kind = Correction::Kind::begins;
  cut.book = "plain-1850";
  cut.line = 40;
  cut.printed = "ANOTHER WAY";
  cut.title = "Another Way with \"Plums\"";
  cut.note = "two recipes in one";
  ASSERT_TRUE(record_correction(path_, amount(3, 3, "ounce")).has_value());
  ASSERT_TRUE(record_correction(path_, cut).has_value());
  const auto all = read_corrections(path_);
  ASSERT_TRUE(all.has_value()) << all.error().sentence();
  ASSERT_EQ(all->all().size(), 2U);
  const auto& of_book = all->of("plain-1850");
  ASSERT_EQ(of_book.size(), 2U);
  EXPECT_EQ(of_book[0]->quantity, (Range{3, 3}));
  EXPECT_EQ(of_book[0]->was, "30 ounce");
  EXPECT_FALSE(of_book[0]->corrected.empty());
  EXPECT_EQ(of_book[1]->title, cut.title);
  EXPECT_TRUE(of_book[1]->of_cut());
  EXPECT_TRUE(all->of("other").empty());
}

TEST_F(CorrectionsFile, ALaterOneOnTheSameWordsTakesThePlace) {
  const auto first = record_correction(path_, amount(3, 3, "ounce"));
  Correction again = amount(4, 4, "ounce");
  again.was = "3 ounce";
  const auto second = record_correction(path_, again);
  ASSERT_TRUE(first.has_value() && second.has_value());
  EXPECT_NE(first->number, second->number);
  EXPECT_EQ(second->was, "30 ounce") << "what the program had read, not the correction before";
  EXPECT_EQ(read_corrections(path_)->all().size(), 1U);
  EXPECT_TRUE(withdraw_correction(path_, second->number).has_value());
  EXPECT_TRUE(read_corrections(path_)->empty());
  EXPECT_FALSE(withdraw_correction(path_, second->number).has_value());
}

TEST_F(CorrectionsFile, ADamagedFileIsToldAndLeft) {
  const auto refuses = [&](const std::string& bytes, const char* words) {
    std::ofstream(path_) << bytes;
    const auto read = read_corrections(path_);
    ASSERT_FALSE(read.has_value()) << bytes;
    EXPECT_NE(read.error().sentence().find(words), std::string::npos) << read.error().sentence();
    EXPECT_FALSE(record_correction(path_, amount(1, 1, "ounce")).has_value());
    EXPECT_EQ(read_whole_file(path_).value(), bytes);
  };
  refuses("{\n\"gallipot\": ", ":2");
  refuses("[]", "does not begin as one");
  refuses(R"({"gallipot":"corrections","version":9,"corrections":[]})", "version 9");
  refuses("{\"gallipot\":\"corrections\",\"version\":1,\"corrections\":[\n{\"kind\":\"colour\"}]}", ":2");
  refuses(
      R"({"gallipot":"corrections","version":1,"corrections":[{"number":1,"kind":"amount","book":"a","line":1,"printed":"x","quantity":[2,1]}]})",
      "runs backwards");
}

TEST_F(CorrectionsFile, WhatDoesNotSayWhereItHoldsIsRefused) {
  Correction nowhere = amount(1, 1, "ounce");
  nowhere.line = 0;
  EXPECT_FALSE(record_correction(path_, nowhere).has_value());
  EXPECT_FALSE(fs::exists(path_));
}

TEST_F(CorrectionsFile, TwoWritersLoseNothing) {
  const auto write = [&](std::uint32_t from) {
    for (std::uint32_t i = 0; i < 10; ++i) {
      Correction one = amount(1, 1, "ounce");
      one.line = from + i;
      ASSERT_TRUE(record_correction(path_, one).has_value());
    }
  };
  std::thread a(write, 100), b(write, 200);
  a.join();
  b.join();
  EXPECT_EQ(read_corrections(path_)->all().size(), 20U);
}

// A recipe of three lines: 11 the title, 12 and 13 the words.
ComparableRecipe recipe_of_three_lines() {
  ComparableRecipe out;
  out.id = "plain-1850/0001";
  out.book = "plain-1850";
  Recipe& r = out.recipe;
  r.ordinal = 1;
  r.title = "Damsons";
  r.line_start = 11;
  r.line_end = 13;
  r.text = "30 ounces of ginger, some salt. Again salt, and rose water to taste.";
  r.lines = {{0, 12}, {32, 13}};
  r.parts = {{Part::Kind::paragraph, {0, static_cast<std::uint32_t>(r.text.size())}}};
  const auto add = [&](const char* words, std::size_t from, const char* name, std::optional<Range> quantity,
                       const char* measure) {
    ComparableIngredient one;
    const auto at = static_cast<std::uint32_t>(r.text.find(words, from));
    one.printed.span = {at, at + static_cast<std::uint32_t>(std::string_view(words).size())};
    one.printed.name = name;
    one.printed.quantity = quantity;
    one.printed.measure = measure;
    out.ingredients.push_back(one);
  };
  add("30 ounces of ginger", 0, "ginger", Range{30, 30}, "ounce");
  add("salt", 0, "salt", std::nullopt, "");
  add("salt", 32, "salt", std::nullopt, "");
  return out;
}

Correction named(std::uint32_t line, const char* printed, const char* name) {
  Correction out;
  out.kind = Correction::Kind::ingredient;
  out.book = "plain-1850";
  out.line = line;
  out.printed = printed;
  out.name = name;
  out.stuff = "other";
  return out;
}

Corrections of(std::initializer_list<Correction> some) { return Corrections(std::vector<Correction>(some)); }

TEST(CorrectReadings, AnAmount) {
  auto recipe = recipe_of_three_lines();
  const auto corrections = of({amount(3, 4, "ounce")});
  correct_readings(recipe, corrections);
  EXPECT_EQ(recipe.ingredients[0].printed.quantity, (Range{3, 4}));
  const auto placed = corrections_in(recipe, corrections);
  ASSERT_EQ(placed.size(), 1U);
  EXPECT_EQ(placed[0].ingredient, 0U);
  EXPECT_EQ(placed[0].span.in(recipe.recipe.text), "30 ounces of ginger");
}

TEST(CorrectReadings, OfWordsThatStandTwiceTheOnesOnTheLine) {
  auto recipe = recipe_of_three_lines();
  correct_readings(recipe, of({named(13, "salt", "saltpetre")}));
  EXPECT_EQ(recipe.ingredients[1].printed.name, "salt");
  EXPECT_EQ(recipe.ingredients[2].printed.name, "saltpetre");
  EXPECT_EQ(recipe.ingredients[2].kind, "other");
}

TEST(CorrectReadings, WhatIsNoIngredientGoesAndWhatWasMissedComes) {
  auto recipe = recipe_of_three_lines();
  Correction much = amount(2, 2, "teaspoon");
  much.line = 13;
  much.printed = "rose water";
  const auto corrections = of({named(12, "30 ounces of ginger", ""), much, named(13, "rose water", "rose water")});
  correct_readings(recipe, corrections);
  ASSERT_EQ(recipe.ingredients.size(), 3U);
  EXPECT_EQ(recipe.ingredients[0].printed.name, "salt");
  EXPECT_EQ(recipe.ingredients[2].printed.name, "rose water");
  EXPECT_EQ(recipe.ingredients[2].printed.quantity, (Range{2, 2})) << "an amount finds an ingredient that was missed";
  const auto once = recipe.ingredients.size();
  correct_readings(recipe, corrections);
  EXPECT_EQ(recipe.ingredients.size(), once) << "twice is once";
  EXPECT_EQ(corrections_in(recipe, corrections).size(), 3U);
}

TEST(CorrectReadings, AnotherBookOrLineOrOtherWordsAreLeft) {
  std::vector<Correction> wrong(3, amount(1, 1, "ounce"));
  wrong[0].book = "plain-1851";
  wrong[1].line = 14;
  wrong[2].printed = "31 ounces of ginger";
  for (const Correction& one : wrong) {
    auto recipe = recipe_of_three_lines();
    const auto corrections = of({one});
    correct_readings(recipe, corrections);
    EXPECT_EQ(recipe.ingredients[0].printed.quantity, (Range{30, 30})) << correction_sentence(one);
    EXPECT_TRUE(corrections_in(recipe, corrections).empty()) << correction_sentence(one);
  }
}

Recipe cut(std::uint32_t ordinal, const char* title, std::uint32_t line, const char* text) {
  Recipe out;
  out.ordinal = ordinal;
  out.title = out.title_printed = out.dish_title = title;
  out.line_start = line;
  out.text = text;
  out.line_end = line + 2;
  out.page = out.page_end = std::to_string(line / 10);
  const auto half = static_cast<std::uint32_t>(out.text.find(". ") + 2);
  out.lines = {{0, line + 1}, {half, line + 2}};
  out.pages = {{half, "99"}};
  out.page_end = "99";
  out.parts = {{Part::Kind::paragraph, {0, half - 1}},
               {Part::Kind::paragraph, {half, static_cast<std::uint32_t>(out.text.size())}}};
  return out;
}

std::vector<Recipe> book() {
  return {cut(1, "Plums", 10, "Take plums. Stone them well."), cut(2, "The Oven", 20, "Let it be hot. Never open it."),
          cut(3, "Pears", 30, "Take pears. ANOTHER WAY.--Bake pears.")};
}

Correction of_cut(Correction::Kind kind, std::uint32_t line, const char* printed, const char* title = "") {
  Correction out;
  out.kind = kind;
  out.book = "plain-1850";
  out.line = line;
  out.printed = printed;
  out.title = title;
  return out;
}

std::vector<Fault> correct(std::vector<Recipe>& recipes, const Correction& one, const std::vector<Block>& blocks = {}) {
  return correct_cuts(recipes, blocks, {&one}, "plain.txt");
}

void expect_parts_cover(const Recipe& r) {
  ASSERT_FALSE(r.parts.empty());
  EXPECT_EQ(r.parts.front().span.begin, 0U);
  EXPECT_EQ(r.parts.back().span.end, r.text.size());
  for (std::size_t i = 1; i < r.parts.size(); ++i) EXPECT_EQ(r.parts[i].span.begin, r.parts[i - 1].span.end + 1);
}

TEST(CorrectCuts, NoRecipeIsDroppedAndNumbersStay) {
  auto recipes = book();
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::no_recipe, 20, "The Oven")).empty());
  ASSERT_EQ(recipes.size(), 2U);
  EXPECT_EQ(recipes[1].ordinal, 3U);
}

TEST(CorrectCuts, JoinedToTheOneBefore) {
  auto recipes = book();
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::joined, 20, "The Oven")).empty());
  ASSERT_EQ(recipes.size(), 2U);
  EXPECT_EQ(recipes[0].text, "Take plums. Stone them well. The Oven Let it be hot. Never open it.");
  EXPECT_EQ(recipes[0].line_end, 22U);
  EXPECT_EQ(line_of_text(recipes[0], static_cast<std::uint32_t>(recipes[0].text.find("Never"))), 22U);
  expect_parts_cover(recipes[0]);
}

TEST(CorrectCuts, ATitle) {
  auto recipes = book();
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::title, 30, "Pears", "Stewed Pears")).empty());
  EXPECT_EQ(recipes[2].title, "Stewed Pears");
  EXPECT_EQ(recipes[2].dish_title, "Stewed Pears");
  EXPECT_EQ(recipes[2].title_printed, "Pears");
}

TEST(CorrectCuts, OneThatBeginsInsideAnother) {
  auto recipes = book();
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::begins, 32, "ANOTHER WAY", "Baked Pears")).empty());
  ASSERT_EQ(recipes.size(), 4U);
  EXPECT_EQ(recipes[2].text, "Take pears.");
  EXPECT_EQ(recipes[3].text, "Bake pears.");
  EXPECT_EQ(recipes[3].title, "Baked Pears");
  EXPECT_EQ(recipes[3].line_start, 32U);
  EXPECT_EQ(recipes[3].page, "99");
  EXPECT_EQ(recipes[3].ordinal, 4U) << "numbered after the last";
  expect_parts_cover(recipes[2]);
  expect_parts_cover(recipes[3]);
}

TEST(CorrectCuts, OneThatWasNotCutAtAll) {
  auto recipes = book();
  Block head, body;
  head.text = "QUINCES.";
  head.lines = {{0, 24}};
  head.line_end = 24;
  body.text = "Pare quinces and bake them.";
  body.lines = {{0, 26}};
  body.line_end = 26;
  body.page = "7";
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::begins, 24, "QUINCES", "Quinces"), {head, body}).empty());
  ASSERT_EQ(recipes.size(), 4U);
  EXPECT_EQ(recipes[2].title, "Quinces");
  EXPECT_EQ(recipes[2].text, "Pare quinces and bake them.");
  EXPECT_EQ(recipes[2].line_end, 26U);
  EXPECT_EQ(recipes[3].title, "Pears");
}

TEST(CorrectCuts, OneThatEndsEarlier) {
  auto recipes = book();
  EXPECT_TRUE(correct(recipes, of_cut(Correction::Kind::ends, 11, "Take plums.")).empty());
  EXPECT_EQ(recipes[0].text, "Take plums.");
  EXPECT_EQ(recipes[0].line_end, 11U);
  EXPECT_EQ(recipes[0].page_end, "1");
  expect_parts_cover(recipes[0]);
}

TEST(CorrectCuts, WhatFindsNoPlaceIsTold) {
  for (const auto& lost :
       {of_cut(Correction::Kind::title, 90, "Pears", "P"), of_cut(Correction::Kind::no_recipe, 20, "The Stove"),
        of_cut(Correction::Kind::joined, 10, "Plums"), of_cut(Correction::Kind::begins, 32, "A THIRD WAY", "x"),
        of_cut(Correction::Kind::ends, 11, "Take pears.")}) {
    auto recipes = book();
    const auto faults = correct(recipes, lost);
    ASSERT_EQ(faults.size(), 1U) << kind_name(lost.kind);
    EXPECT_EQ(faults[0].line, static_cast<long>(lost.line));
    EXPECT_EQ(recipes.size(), 3U);
  }
}

}  // namespace
}  // namespace gallipot
