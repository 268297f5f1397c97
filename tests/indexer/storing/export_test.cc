// The export schema, field by field.
#include "indexer/storing/export.h"

#include <gtest/gtest.h>
#include <rapidjson/document.h>

#include "tests/indexer/storing/examples.h"

namespace gallipot {
namespace {

rapidjson::Document read(const std::string& line) {
  rapidjson::Document json;
  json.Parse<rapidjson::kParseValidateEncodingFlag>(line.c_str(), line.size());
  EXPECT_FALSE(json.HasParseError()) << line;
  return json;
}

TEST(Export, IsTheSchemaToTheLetter) {
  auto recipe = examples::medlar_cheese();
  recipe.recipe.text = "Two pounds of medlars; boil half an hour.";
  recipe.ingredients.resize(1);
  auto& medlars = recipe.ingredients[0];
  medlars.printed.span = {0, 21};
  medlars.printed.quantity = Range{2, 2};
  medlars.printed.measure = "pound";
  medlars.metric = Amount{Amount::Unit::gram, 900, 907.18474, 910, "avoirdupois pound"};
  recipe.steps = {{"boil", Range{30, 30}, {23, 40}}};
  EXPECT_EQ(export_line(recipe),
            R"({"id":"hollin-1812/0007","book":"hollin-1812","title":"Médlar Cheese","page":"41","page_end":"42",)"
            R"("chapter":"OF PRESERVES / Cheeses","contributor":"Mrs. Pell",)"
            R"("source":{"file":"hollin-1812.txt","line_start":810,"line_end":813},)"
            R"("text":"Two pounds of medlars; boil half an hour.","dish":{"base":"medlar","kind":"cheese"},)"
            R"("ingredients":[{"raw":"Two pounds of medlars","span":[0,21],"name":"medlar","quantity":[2,2],)"
            R"("measure":"pound","relative":null,"per":null,"optional":false,"alternative_of":null,)"
            R"("metric":{"unit":"g","low":900,"likely":907.1847,"high":910,"why":"avoirdupois pound"}}],)"
            R"("steps":[{"op":"boil","minutes":[30,30],"raw":"boil half an hour"}],"cautions":["seal it while hot"]})");
}

TEST(Export, CountsSpansInCodePoints) {
  const auto recipe = examples::medlar_cheese();
  const auto json = read(export_line(recipe));
  const auto& sugar = json["ingredients"][1];
  EXPECT_STREQ(sugar["raw"].GetString(), "half its weight in sugar");
  // Two typographic quotation marks before it take three bytes each.
  EXPECT_EQ(sugar["span"][0].GetUint(), recipe.ingredients[1].printed.span.begin - 4);
  EXPECT_STREQ(json["steps"][0]["raw"].GetString(), "Boil ½ an hour.");
}

TEST(Export, TellsRelativeAndPerAndPlainNumbers) {
  const auto line = export_line(examples::medlar_cheese());
  EXPECT_NE(line.find(R"("quantity":[0.3333333,0.5])"), std::string::npos) << line;
  EXPECT_NE(line.find(R"("relative":{"factor":0.5,"to":"medlar","by":"weight"})"), std::string::npos);
  EXPECT_NE(line.find(R"("per":{"quantity":1,"measure":"pint","of":"pulp"})"), std::string::npos);
  EXPECT_NE(line.find(R"("optional":true,"alternative_of":"honey")"), std::string::npos);
}

TEST(Export, SaysNullWhereNothingIsKnown) {
  ComparableRecipe bare;
  bare.id = "hollin-1812/0001";
  bare.recipe.text = "Take salt.";
  bare.ingredients.resize(1);
  bare.ingredients[0].printed.span = {5, 9};
  bare.steps = {{"season", std::nullopt, {0, 10}}};
  const auto json = read(export_line(bare));
  for (const char* field : {"page", "page_end", "contributor"}) EXPECT_TRUE(json[field].IsNull()) << field;
  for (const char* field : {"quantity", "measure", "relative", "per", "alternative_of", "metric"})
    EXPECT_TRUE(json["ingredients"][0][field].IsNull()) << field;
  EXPECT_TRUE(json["steps"][0]["minutes"].IsNull());
  EXPECT_EQ(json["cautions"].Size(), 0u);
}

TEST(Export, IsWellFormedWhateverTheSpans) {
  examples::RandomRecipes random(1700);
  for (int i = 0; i < 300; ++i) {
    auto recipe = examples::medlar_cheese();
    const auto wild = [&] { return Span{random.below(120), random.below(120)}; };
    for (auto& item : recipe.ingredients) item.printed.span = wild();
    for (auto& item : recipe.steps) item.span = wild();
    read(export_line(recipe));
    ASSERT_FALSE(HasFailure());
  }
}

}  // namespace
}  // namespace gallipot
