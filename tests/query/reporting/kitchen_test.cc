// The sheet's renderings: text, JSON, the page, linked data.
#include "query/reporting/kitchen.h"

#include <gtest/gtest.h>
#include <rapidjson/document.h>

#include <functional>
#include <set>

#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

Sheet sheet(const std::string& start = "2027-03-06T09:00") {
  Wanted wanted;
  wanted.start = start;
  return cooked(receipt("Damson Relish & </script> Sauce",
                        "Take four pounds of damsons, two pounds of loaf sugar, a pint of vinegar, two teaspoonfuls of "
                        "ginger, "
                        "and salt to your taste. Boil the damsons half an hour, rub them through a hair sieve, and let "
                        "it stand three days, stirring it every day. Bottle it, and cork it close."),
                wanted)
      .value();
}

rapidjson::Document parsed(const std::string& text) {
  rapidjson::Document out;
  out.Parse(text.c_str());
  EXPECT_FALSE(out.HasParseError()) << text.substr(0, 200);
  return out;
}

TEST(KitchenText, TellsEveryPart) {
  const std::string text = sheet_as_text(sheet(), {100, false});
  for (const char* part : {"WHAT GOES IN", "PLAN", "GET READY", "MAKES", "WORDS OF THE TIME", "KEEPING", "as printed",
                           "every day, 3 times", "no verdict", "Saturday 6 March 2027"})
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = text.find('\n', at);
    std::size_t columns = 0;
    for (std::size_t i = at; i < end; ++i) columns += (static_cast<unsigned char>(text[i]) & 0xC0) != 0x80 ? 1 : 0;
    EXPECT_LE(columns, 100U) << text.substr(at, end - at);
    at = end + 1;
  }
}

TEST(KitchenJson, HoldsTheModelWithUcumCodes) {
  const auto json = parsed(sheet_as_json(sheet()));
  ASSERT_TRUE(json.IsObject());
  std::set<std::string> codes;
  for (const auto& line : json["ingredients"].GetArray()) {
    ASSERT_GE(line["print"].Size(), 1U);
    const auto& span = line["print"][0]["span"];
    EXPECT_LT(span[0].GetUint64(), span[1].GetUint64());
    if (line["amount"].IsNull()) continue;
    const auto& amount = line["amount"];
    codes.insert(amount["ucum"].GetString());
    EXPECT_LE(amount["low"].GetDouble(), line["measure_out"].GetDouble());
    EXPECT_GE(amount["high"].GetDouble(), line["measure_out"].GetDouble());
  }
  for (const std::string& code : codes) EXPECT_TRUE(code == "g" || code == "mL" || code == "1") << code;
  EXPECT_TRUE(json["plan"]["dated"].GetBool());
  EXPECT_TRUE(json["keeping"]["meant_to_keep"].GetBool());
  EXPECT_EQ(std::string(json["plan"]["start"].GetString()), "2027-03-06T09:00");
}

TEST(KitchenPage, StandsAloneAndLetsNoWordOfThePrintBecomeMarkup) {
  const std::string page = sheet_as_html(sheet());
  EXPECT_NE(page.find("Damson Relish &amp; &lt;/script&gt; Sauce"), std::string::npos);
  EXPECT_EQ(page.find("Relish & </script>"), std::string::npos);
  // one script element, the linked data, which nothing in it ends early
  const auto script = page.find("<script type=\"application/ld+json\">");
  ASSERT_NE(script, std::string::npos);
  const auto end = page.find("</script>", script);
  const auto json = parsed(page.substr(page.find('{', script), end - page.find('{', script)));
  EXPECT_TRUE(json.IsObject());
  EXPECT_EQ(page.find("<script", end), std::string::npos);
  EXPECT_EQ(page.find("src="), std::string::npos) << "nothing is fetched";
  EXPECT_NE(page.find("<svg class=\"amount spread\""), std::string::npos);
  EXPECT_NE(page.find("@page"), std::string::npos);
}

/// Types and properties of schema.org that we use: a type's own, those of its parents among them.
const std::set<std::string>& properties_of(const std::string& type) {
  static const std::set<std::string> recipe = {"@context",   "@type",       "identifier",       "name",
                                               "inLanguage", "keywords",    "prepTime",         "cookTime",
                                               "totalTime",  "recipeYield", "recipeIngredient", "recipeInstructions",
                                               "supply",     "tool",        "isBasedOn"};
  static const std::set<std::string> chapter = {"@type",   "name",     "author",  "pageStart",
                                                "pageEnd", "citation", "isPartOf"};
  static const std::set<std::string> book_of = {"@type", "name", "author", "datePublished", "bookEdition", "publisher"};
  static const std::set<std::string> named = {"@type", "name"};
  static const std::set<std::string> supply = {"@type", "name", "requiredQuantity"};
  static const std::set<std::string> quantity = {"@type", "value", "minValue", "maxValue", "unitCode"};
  static const std::set<std::string> step = {"@type", "name", "text"};
  static const std::set<std::string> none;
  if (type == "Recipe") return recipe;
  if (type == "Chapter") return chapter;
  if (type == "Book") return book_of;
  if (type == "Person" || type == "Organization" || type == "HowToTool") return named;
  if (type == "HowToSupply") return supply;
  if (type == "QuantitativeValue") return quantity;
  if (type == "HowToStep") return step;
  return none;
}

void check_node(const rapidjson::Value& node) {
  ASSERT_TRUE(node.HasMember("@type"));
  const std::string type = node["@type"].GetString();
  const auto& known = properties_of(type);
  ASSERT_FALSE(known.empty()) << type;
  for (const auto& member : node.GetObject()) {
    EXPECT_TRUE(known.contains(member.name.GetString())) << type << "." << member.name.GetString();
    EXPECT_FALSE(member.value.IsNull()) << type << "." << member.name.GetString();
    if (member.value.IsObject()) check_node(member.value);
    if (member.value.IsArray())
      for (const auto& one : member.value.GetArray())
        if (one.IsObject()) check_node(one);
  }
}

TEST(KitchenLinkedData, IsARecipeOfSchemaOrgBasedOnTheCitation) {
  const Sheet made = sheet();
  const auto json = parsed(sheet_as_linked_data(made));
  EXPECT_EQ(std::string(json["@context"].GetString()), "https://schema.org");
  EXPECT_EQ(std::string(json["@type"].GetString()), "Recipe");
  check_node(json);
  EXPECT_EQ(json["recipeIngredient"].Size(), made.lines.size());
  const auto& based = json["isBasedOn"];
  EXPECT_EQ(std::string(based["citation"].GetString()), made.citation.note());
  EXPECT_EQ(std::string(based["pageStart"].GetString()), "7");
  EXPECT_EQ(std::string(based["isPartOf"]["name"].GetString()), made.citation.book.title);
  for (const char* time : {"prepTime", "cookTime", "totalTime"}) {
    const std::string value = json[time].GetString();
    EXPECT_EQ(value.front(), 'P') << value;
    EXPECT_EQ(value.find_first_not_of("PTDHM0123456789"), std::string::npos) << value;
  }
  for (const auto& supply : json["supply"].GetArray())
    if (supply.HasMember("requiredQuantity")) {
      EXPECT_EQ(std::string(supply["requiredQuantity"]["unitCode"].GetString()).find("ucum:"), 0U);
    }
}

TEST(KitchenShopping, IsToldInEveryForm) {
  const ShoppingList list = shopping_for({sheet()}, kitchen(), yardstick());
  EXPECT_NE(shopping_as_text(list, {80, false}).find("1 bag of 1 kg"), std::string::npos)
      << shopping_as_text(list, {80, false});
  const auto json = parsed(shopping_as_json(list));
  EXPECT_EQ(json["lines"].Size(), list.lines.size());
  const std::string page = shopping_as_html(list);
  EXPECT_NE(page.find("Shopping list"), std::string::npos);
  EXPECT_EQ(page.find("& </script>"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
