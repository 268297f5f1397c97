// Widths in characters, wrapped words, tables parted where they are too wide.
#include "query/reporting/layout.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

TEST(Layout, WidthIsOfCharactersNotBytesAndCombiningMarksTakeNone) {
  EXPECT_EQ(columns_of("caf\xC3\xA9"), 4U);
  EXPECT_EQ(columns_of("cafe\xCC\x81"), 4U);
  EXPECT_EQ(columns_of("11\xE2\x80\x93"
                       "14"),
            5U);
  EXPECT_EQ(padded("\xC3\xA9", 3), "\xC3\xA9  ");
  EXPECT_EQ(padded("7", 3, true), "  7");
}

TEST(Layout, WordsAreBrokenBetweenAndLongOnesStandAlone) {
  EXPECT_EQ(wrapped("to be boiled an hour", 9), (std::vector<std::string>{"to be", "boiled an", "hour"}));
  EXPECT_EQ(wrapped("a superlongword b", 5), (std::vector<std::string>{"a", "superlongword", "b"}));
  EXPECT_EQ(wrapped("", 5), (std::vector<std::string>{""}));
  EXPECT_EQ(paragraph("one two", 30, "A  "), "A  one two\n");
}

TEST(Layout, AWideTableIsPartedAndKeepsItsFirstColumn) {
  Grid grid;
  grid.rows = {{"", "A 1800", "B 1810", "C 1820"}, {"salt", "1 g", "2 g", "3 g"}};
  const std::string text = grid.text(22);
  EXPECT_NE(text.find("      A 1800  B 1810\n"), std::string::npos) << text;
  EXPECT_NE(text.find("salt  1 g     2 g\n"), std::string::npos) << text;
  EXPECT_NE(text.find("salt  3 g\n"), std::string::npos) << text;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = text.find('\n', begin);
    EXPECT_LE(columns_of(text.substr(begin, end - begin)), 22U);
    begin = end + 1;
  }
}

TEST(Layout, AColumnWiderThanTheTerminalIsStillShown) {
  Grid grid;
  grid.rows = {{"", "heading"}, {"a", "a cell that does not fit"}};
  EXPECT_NE(grid.text(10).find("a cell that does not fit"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
