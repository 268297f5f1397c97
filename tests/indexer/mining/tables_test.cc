// Tables of weights and measures, as text and as HTML; all examples are invented.
#include "tests/indexer/mining/said.h"

namespace gallipot {
namespace {

std::string html_table(const std::string& head, const std::vector<std::vector<std::string>>& rows) {
  std::string out = "<html><body><p>Keep the shelves dry.</p><h2>" + head + "</h2>\n<table>\n";
  for (const auto& row : rows) {
    out += "<tr>";
    for (const auto& cell : row) out += "<td>" + cell + "</td>";
    out += "</tr>\n";
  }
  return out + "</table>\n<h2>SOUPS</h2>\n<p>Take a knuckle of veal and boil it.</p></body></html>\n";
}

std::vector<std::string> in_table(const std::string& head, const std::vector<std::vector<std::string>>& rows) {
  return said_in(html_table(head, rows), "invented.htm");
}

using Told = std::vector<std::string>;

TEST(MeasureTable, TwoColumnsUnderAHeadNeedNoVerb) {
  EXPECT_EQ(in_table("TABLE OF WEIGHTS AND MEASURES", {{"4 saltspoonfuls", "1 teaspoonful"},
                                                       {"16 tablespoonfuls", "1 cupful"},
                                                       {"Two cupfuls of granulated sugar", "one pound"},
                                                       {"Butter the size of a walnut", "1 oz."}}),
            (Told{"cup = 16 tablespoon", "cup of sugar = 0.5 pound", "saltspoon = 0.25 teaspoon",
                  "size of a walnut of butter = 1 ounce"}));
}

TEST(MeasureTable, WithoutAHeadTheSameRowsAreAShoppingList) {
  EXPECT_EQ(in_table("SPONGE CAKE", {{"2 cups of sugar", "1 pound of flour"}, {"10 eggs", "1 pound"}}), Told{});
}

TEST(MeasureTable, EqualsSignsChainAndAlternativesShareTheirSubject) {
  EXPECT_EQ(in_table("MEASURES", {{"1 kitchen cupful", "=", "½ pint or 2 gills."},
                                  {"4 gills", "=", "1 pint", "=", "34⅔", "cubic inches"}}),
            (Told{"cup = 0.5 pint", "cup = 2 gill", "pint = 34.67 cubic inch", "pint = 4 gill"}));
}

TEST(MeasureTable, LinesUnderOneBraceAreRowsEach) {
  EXPECT_EQ(in_table("WEIGHTS AND MEASURES", {{"2 cupfuls of sugar<br>4 cupfuls of flour", "=", "1 pound."}}),
            (Told{"cup of flour = 0.25 pound", "cup of sugar = 0.5 pound"}));
}

TEST(MeasureTable, TheStuffMayHeadTheRow) {
  EXPECT_EQ(in_table("MEASURES FOR HOUSEKEEPERS", {{"Wheat flour,", "1 lb.", "is", "1 quart"},
                                                   {"Indian meal,", "1 \"", "2 oz.", "is", "1 \""},
                                                   {"Eggs,", "10", "eggs", "are", "1 lb."},
                                                   {"Flour,", "8", "quarts", "are", "1 peck."}}),
            (Told{"egg = 0.1 pound", "peck of flour = 8 quart", "quart of corn meal = 18 ounce",
                  "quart of flour = 1 pound"}));
}

TEST(MeasureTable, TheFirstRowOrTheHeadGivesTheUnits) {
  const Told expected{"bushel of barley = 48 pound", "bushel of oat = 35 pound", "bushel of wheat = 60 pound"};
  EXPECT_EQ(in_table("WEIGHTS OF GRAIN",
                     {{"Wheat", "60 lbs.", "is 1 bus."}, {"Oats", "35", "\" \""}, {"Barley", "48", "\" \""}}),
            expected);
  EXPECT_EQ(in_table("Weights: the number of pounds to a bushel", {{"Wheat", "60"}, {"Oats", "35"}, {"Barley", "48"}}),
            expected);
}

TEST(MeasureTable, TwoStatementsMayStandInOneRow) {
  EXPECT_EQ(in_table("WEIGHTS", {{"A Firkin of Butter", "56 lb.", "A Barrel of Soap", "256 lb."}}),
            (Told{"barrel of soap = 256 pound", "firkin of butter = 56 pound"}));
}

TEST(MeasureTable, InPlainTextWithSpacesAndLeaders) {
  EXPECT_EQ(said_in("THE BOOK\n\n\nKeep all dry.\n\n\nWEIGHT AND MEASURE\n\n"
                    "Wheat flour           one pound is                    one quart.\n"
                    "Indian meal           one pound, two ounces, is       one quart.\n"
                    "Eggs                  ten eggs are                    one pound.\n\n\n"
                    "LIQUID MEASURE\n\n"
                    "Two pints--one quart.\n"
                    "Four quarts . . . . one gallon.\n\n\nSOUPS\n\nBoil a hen.\n"),
            (Told{"egg = 0.1 pound", "gallon = 4 quart", "quart = 2 pint", "quart of corn meal = 18 ounce",
                  "quart of flour = 1 pound"}));
}

TEST(MeasureTable, LinesEachAParagraph) {
  EXPECT_EQ(said_in("<html><body><h3>Household Measures.</h3>\n<p>Flour. 4 pecks are 1 bushel.</p>\n"
                    "<p>16 large tablespoonfuls are ½ pint.</p>\n<p>One rounded tablespoonful of butter, one ounce.</p>"
                    "\n<p>An ordinary tumblerful equals 1 coffeecupful, or half a pint.</p></body></html>",
                    "invented.htm"),
            (Told{"bushel of flour = 4 peck", "tablespoon = 0.03125 pint", "tablespoon of butter = 1 ounce",
                  "tumbler = 0.5 pint", "tumbler = 1 coffee-cup"}));
}

}  // namespace
}  // namespace gallipot
