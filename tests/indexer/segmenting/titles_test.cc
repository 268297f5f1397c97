// Printed titles taken apart.
#include "indexer/segmenting/titles.h"

#include <algorithm>

#include "indexer/lexicon/tables.h"
#include "sample_book.h"

namespace gallipot {
namespace {

struct Case {
  std::string printed, title, number;
};

TEST(Titles, NumberAndPointsComeOff) {
  const std::vector<Case> cases = {{"12. Barley Cream.", "Barley Cream", "12"},
                                   {"No. 7. Stewed Medlars", "Stewed Medlars", "No. 7"},
                                   {"(41.) Turnip Broth.", "Turnip Broth", "41"},
                                   {"XIV. Apricot Tart.--", "Apricot Tart", "XIV"},
                                   {"123.--LEMON BISCUITS.", "LEMON BISCUITS", "123"},
                                   {"*Pease Pottage.—", "Pease Pottage", ""},
                                   {"Bacon.—(No. 13.)", "Bacon", "No. 13."},
                                   {"Onion Gravy, No. 2.", "Onion Gravy, No. 2", ""},
                                   {"Baked Haddock. (A plain way.)", "Baked Haddock. (A plain way.)", ""}};
  for (const auto& c : cases) {
    auto number = leading_number(c.printed, 0);
    auto span = number.number;
    const auto title = trim_title(c.printed, {number.end, static_cast<std::uint32_t>(c.printed.size())}, span);
    EXPECT_EQ(title.in(c.printed), c.title) << c.printed;
    EXPECT_EQ(span.in(c.printed), c.number) << c.printed;
  }
}

TEST(Titles, AmountsAreNoNumbers) {
  for (const std::string s : {"2 pounds of flour", "2.5 ounces", "1/2 cup of milk", "12 eggs"})
    EXPECT_TRUE(leading_number(s, 0).number.empty()) << s;
}

TEST(Titles, AbbreviationsAndBracketsDoNotEndAPiece) {
  const std::string s = "Mrs. Hobday's Cake, No. 2 (for tea. Good)--Take";
  EXPECT_EQ(s.substr(0, piece_end(s, 0, static_cast<std::uint32_t>(s.size()))),
            "Mrs. Hobday's Cake, No. 2 (for tea. Good)");
}

TEST(Titles, DishesLookLikeTitlesAndDirectionsDoNot) {
  Vocabulary vocabulary(lexicon());
  std::uint32_t words = 0;
  bool name = false;
  const auto look = [&](const std::string& s) { return title_look(s, vocabulary, words, name); };
  EXPECT_GT(look("Apple Pudding"), 0.5);
  EXPECT_GT(look("To pickle Onions"), 0.5);
  EXPECT_LT(look("Take two pounds of flour"), 0.4);
  EXPECT_LT(look("To each pound of fruit"), 0.4);
  EXPECT_LT(look("It is proper for a side dish"), 0.3);
  look("Mrs. Clara Hobday");
  EXPECT_TRUE(name);
  look("Mrs. Hobday's Cake");
  EXPECT_FALSE(name);
  look("Lady Cake");
  EXPECT_FALSE(name);
}

TEST(Titles, NamesAreFoundInTitles) {
  Vocabulary vocabulary(lexicon());
  for (const std::string s : {"ORANGE CAKE.--MRS. T. HOBDAY", "Orange Cake (Miss T. Hobday)"}) {
    Span name;
    const auto end = name_in_title(s, {0, static_cast<std::uint32_t>(s.size())}, vocabulary, name);
    EXPECT_LT(end, s.size());
    EXPECT_NE(std::string(name.in(s)).find("T. H"), std::string::npos) << s;
  }
  Span name;
  const std::string own = "Cake (Mrs. Hobday's recipe)";
  EXPECT_EQ(name_in_title(own, {0, static_cast<std::uint32_t>(own.size())}, vocabulary, name), own.size());
}

TEST(Cues, EveryRowHasAWordACueAndASource) {
  const auto table = parse_table(built_in_table("cutting_cues"), "cutting_cues", "cutting_cues.tsv");
  ASSERT_TRUE(table.has_value()) << table.error().sentence();
  EXPECT_GT(table->rows.size(), 300U);
  const std::vector<std::string_view> known = {
      "talk",    "direct", "begin", "number",   "time",      "part", "component", "way",     "chapter", "division",
      "remarks", "front",  "menu",  "calendar", "honorific", "rank", "given",     "closing", "source"};
  for (const auto& row : table->rows) {
    EXPECT_FALSE(row.cells[0].empty()) << row.line;
    EXPECT_NE(std::find(known.begin(), known.end(), row.cells[1]), known.end()) << row.line << ": " << row.cells[1];
    EXPECT_FALSE(row.cells[2].empty()) << row.line;
  }
}

}  // namespace
}  // namespace gallipot
