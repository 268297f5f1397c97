// The page of a comparison: whole, without script, every plot with a text of its own, nothing unescaped.
#include <gtest/gtest.h>

#include <cmath>
#include <regex>
#include <set>

#include "query/reporting/plots.h"
#include "query/reporting/report.h"
#include "query/reporting/svg.h"
#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::Receipt;

/// `count` invented recipes, one with markup in its title and its words, one wild in its ginger.
Comparison sample(int count) {
  std::vector<ComparableRecipe> recipes;
  for (int i = 0; i < count; ++i) {
    Receipt receipt("book/0" + std::to_string(100 + i), 1750 + 7 * i, {"apple", "chutney"});
    receipt.has("four pounds of apples", "apple", 4, "pound")
        .has("ginger", "ginger", i == 2 ? 30 : 1 + 0.05 * i, "ounce", "spice")
        .has("a blade of <b>mace</b> & \"more\"", "mace", 0, {}, "spice")
        .does("chop")
        .does("boil", 30 + i)
        .does("pot");
    if (i % 2 == 0) receipt.has("brown sugar", "brown sugar", 1, "pound", "sweet");
    ComparableRecipe recipe = receipt.recipe();
    recipe.recipe.title = i % 3 == 0 ? "To make <i>Apple</i> CHUTNEY" : "Apple Chutnee";
    recipes.push_back(std::move(recipe));
  }
  auto made = compare(recipes, bench::books_of(recipes), bench::yardstick());
  EXPECT_TRUE(made);
  made->chosen = {"Chosen: all of them."};
  return *made;
}

std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t out = 0;
  for (auto at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1)) ++out;
  return out;
}

TEST(ComparisonPage, StandsAlone) {
  const std::string page = comparison_as_html(sample(9));
  EXPECT_EQ(page.rfind("<!DOCTYPE html>", 0), 0U);
  EXPECT_EQ(page.find("<script"), std::string::npos);
  EXPECT_EQ(page.find("src="), std::string::npos);
  EXPECT_EQ(page.find("href=\"http"), std::string::npos);
  EXPECT_EQ(page.find("@import"), std::string::npos);
  EXPECT_NE(page.find("Chosen: all of them."), std::string::npos);
  EXPECT_EQ(page.find("{{"), std::string::npos);
}

TEST(ComparisonPage, FourPlotsEachWithTitleAndDescription) {
  const std::string page = comparison_as_html(sample(9));
  EXPECT_EQ(count_of(page, "class=\"plot\""), 4U);
  for (const char* id : {"timeline", "proportions", "matrix", "methods"}) {
    const std::string name(id);
    EXPECT_NE(page.find("aria-labelledby=\"" + name + "-title " + name + "-desc\""), std::string::npos) << name;
    EXPECT_NE(page.find("<title id=\"" + name + "-title\">"), std::string::npos) << name;
    EXPECT_NE(page.find("<desc id=\"" + name + "-desc\">"), std::string::npos) << name;
  }
}

TEST(ComparisonPage, NothingFromABookIsMarkup) {
  const std::string page = comparison_as_html(sample(9));
  EXPECT_EQ(page.find("<b>mace"), std::string::npos);
  EXPECT_EQ(page.find("<i>Apple"), std::string::npos);
  EXPECT_NE(page.find("&lt;b&gt;mace&lt;/b&gt; &amp; &quot;more&quot;"), std::string::npos);
}

TEST(ComparisonPage, EveryTagThatOpensCloses) {
  const std::string page = comparison_as_html(sample(30));
  std::vector<std::string> open;
  static const std::regex tag("<(/?)([a-zA-Z0-9]+)([^<>]*?)(/?)>");
  static const std::set<std::string> empty{"meta", "br", "DOCTYPE"};
  for (std::sregex_iterator at(page.begin(), page.end(), tag), end; at != end; ++at) {
    const std::string name = (*at)[2];
    if (empty.contains(name) || (*at)[4] == "/") continue;
    if ((*at)[1] == "/") {
      ASSERT_FALSE(open.empty()) << name;
      ASSERT_EQ(open.back(), name) << page.substr(static_cast<std::size_t>(std::max<long>(0, at->position() - 80)),
                                                  120);
      open.pop_back();
    } else {
      open.push_back(name);
    }
  }
  EXPECT_TRUE(open.empty());
}

TEST(ComparisonPage, NoCellIsEmpty) {
  const std::string page = comparison_as_html(sample(9));
  EXPECT_EQ(page.find("<td></td>"), std::string::npos);
  EXPECT_EQ(page.find("<td class=\"figure\"></td>"), std::string::npos);
  EXPECT_NE(page.find("as printed"), std::string::npos);
}

TEST(ComparisonPage, OneRecipeOrNoneOfAnythingStillMakesAPage) {
  const std::string one = comparison_as_html(sample(1));
  EXPECT_NE(one.find("</html>"), std::string::npos);
  std::vector<ComparableRecipe> bare{Receipt("a/0001", 0, {"", ""}).recipe()};
  const auto made = compare(bare, bench::books_of(bare), bench::yardstick());
  ASSERT_TRUE(made);
  const std::string page = comparison_as_html(*made);
  EXPECT_EQ(count_of(page, "class=\"plot\""), 0U);
  EXPECT_NE(page.find("</html>"), std::string::npos);
}

TEST(Plots, WhatIsOutOfLineIsNamed) {
  const std::string plot = strip_plot(sample(9));
  EXPECT_EQ(count_of(plot, "class=\"odd-word tiny\""), 1U);
  EXPECT_NE(plot.find(">C 2"), std::string::npos) << plot;  // some twenty times the median
}

TEST(Plots, NamesAreThoseOfThePrintWithoutTheirFrame) {
  const auto names = names_used(sample(4));
  ASSERT_EQ(names.size(), 2U);
  EXPECT_EQ(names[1].name, "apple chutnee");
  EXPECT_EQ(names[1].witnesses, (Places{1, 2}));
}

TEST(Plots, ALogarithmicScaleHasItsEndsAndItsMiddle) {
  const LogScale x(1, 100, 0, 200);
  EXPECT_NEAR(x(1), 0, 1e-9);
  EXPECT_NEAR(x(10), 100, 1e-9);
  EXPECT_NEAR(x(100), 200, 1e-9);
  EXPECT_NEAR(x(1e6), 200, 1e-9);
  std::vector<double> ticks;
  x.ticks([&](double value) { ticks.push_back(value); });
  EXPECT_EQ(ticks, (std::vector<double>{1, 2, 5, 10, 20, 50, 100}));
}

}  // namespace
}  // namespace gallipot
