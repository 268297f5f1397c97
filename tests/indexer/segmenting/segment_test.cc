// What a cut receipt holds: its lines, pages, parts, ways, chapter, number and giver.
#include "indexer/segmenting/segment.h"

#include "sample_book.h"

namespace gallipot {
namespace {

/// A book of the sample dishes under h3, with `more` put after the fifth.
std::string book_with(const std::string& more) {
  std::string out = "<html><body>\n<h2>PASTRY.</h2>\n";
  int n = 0;
  for (const auto& d : dishes()) {
    out += "<h3>" + d.title + ".</h3>\n<p>" + d.body + "</p>\n";
    if (++n == 5) out += more;
  }
  return out + "</body></html>\n";
}

const Recipe* find(const SegmentedBook& book, const std::string& title) {
  for (const auto& r : book.recipes)
    if (r.title == title) return &r;
  return nullptr;
}

TEST(Segment, NoBlocksNoRecipes) { EXPECT_TRUE(segment({}, lexicon()).recipes.empty()); }

TEST(Segment, ABookThatOnlyTalksHasNoRecipes) {
  std::string book = "<html><body><h2>ON TEMPER.</h2>\n";
  for (int i = 0; i < 12; ++i) book += "<h3>Of the Duties of Mistresses</h3>\n<p>" + essay() + "</p>\n";
  EXPECT_TRUE(cut(book + "</body></html>", "talk.htm").recipes.empty());
}

TEST(Segment, PartsCoverTheTextInOrder) {
  const auto book =
      cut(book_with("<ul><li>Two eggs.</li><li>A pound of flour.</li></ul>\n<p>Mix them and bake for an hour.</p>\n"),
          "book.htm");
  const auto* r = find(book, "Pickled Samphire");
  ASSERT_TRUE(r);
  ASSERT_EQ(r->parts.size(), 4U);
  EXPECT_EQ(r->parts[1].kind, Part::Kind::list_item);
  EXPECT_EQ(r->parts[1].span.in(r->text), "Two eggs.");
  std::uint32_t at = 0;
  for (const auto& p : r->parts) {
    EXPECT_EQ(p.span.begin, at);
    at = p.span.end + 1;
  }
  EXPECT_EQ(at, r->text.size() + 1);
}

TEST(Segment, LinesArePrintedLines) {
  const auto book = cut(book_with(""), "book.htm");
  ASSERT_EQ(book.recipes.size(), dishes().size());
  for (std::size_t i = 0; i < book.recipes.size(); ++i) {
    const auto& r = book.recipes[i];
    EXPECT_EQ(r.line_start, 3 + 2 * i);
    EXPECT_EQ(r.line_end, 4 + 2 * i);
    ASSERT_FALSE(r.lines.empty());
    EXPECT_EQ(r.lines.front().at, 0U);
    EXPECT_EQ(r.lines.front().line, 4 + 2 * i);
    EXPECT_EQ(r.ordinal, i + 1);
    EXPECT_EQ(r.chapter, "PASTRY");
  }
}

TEST(Segment, PagesFollowTheirMarks) {
  const std::string mark7 = "<p><span class=\"pagenum\"><a id=\"Page_7\">[7]</a></span></p>\n";
  const auto book =
      cut("<html><body><p><span class=\"pagenum\"><a id=\"Page_6\">[6]</a></span></p>\n" + book_with(mark7).substr(12),
          "book.htm");
  ASSERT_EQ(book.recipes.size(), dishes().size());
  EXPECT_EQ(book.recipes[4].page, "6");
  EXPECT_EQ(book.recipes[5].page, "7");
  EXPECT_EQ(book.recipes[5].page_end, "7");
}

TEST(Segment, AnotherWayIsARecipeOfTheDishAbove) {
  const auto book = cut(book_with("<h3>Another Way.</h3>\n<p>Put them into a jar with an ounce of salt and a pint of "
                                  "vinegar; tie it down and bake it.</p>\n"),
                        "book.htm");
  ASSERT_EQ(book.recipes.size(), dishes().size() + 1);
  EXPECT_EQ(book.recipes[5].title, "Another Way");
  EXPECT_EQ(book.recipes[5].dish_title, "Pickled Samphire");
  EXPECT_EQ(book.recipes[6].dish_title, book.recipes[6].title);
}

TEST(Segment, LabelsWithinAReceiptDoNotCutIt) {
  const auto book =
      cut(book_with("<p><i>Obs.</i>&mdash;Take care that the vinegar boils before you pour it on.</p>\n"
                    "<p><i>For the Sauce.</i>&mdash;Melt two ounces of butter and stir in a spoonful of flour.</p>\n"),
          "book.htm");
  EXPECT_EQ(book.recipes.size(), dishes().size());
}

TEST(Segment, BillsOfFareAreNoRecipes) {
  const auto book = cut(
      book_with(
          "<h3>JANUARY</h3>\n<ul><li>Roast Turkey</li><li>Cranberry Sauce</li><li>Mashed Potatoes</li><li>Celery</li>"
          "<li>Mince Pie</li><li>Coffee</li></ul>\n"),
      "book.htm");
  EXPECT_EQ(book.recipes.size(), dishes().size());
}

TEST(Segment, AFootnoteGoesToTheReceiptThatBearsItsMark) {
  auto text = book_with("");
  const auto mark = text.find("serve it hot in a deep dish");
  text.insert(mark, "<a id=\"fa1\" href=\"#f1\" class=\"fnanchor\">[1]</a> ");
  const auto end = text.find("</body>");
  text.insert(end,
              "<div class=\"footnote\"><p><a href=\"#fa1\" id=\"f1\"><span class=\"label\">[1]</span></a> A china dish "
              "does best.</p></div>\n");
  const auto book = cut(text, "book.htm");
  ASSERT_EQ(book.recipes.size(), dishes().size());
  EXPECT_NE(book.recipes.front().text.find("china dish"), std::string::npos);
  EXPECT_EQ(book.recipes.back().text.find("china dish"), std::string::npos);
  EXPECT_EQ(book.recipes.front().line_end, 4U);
}

struct Signing {
  std::string name, before, after;  // printed around the directions
};

TEST(Contributor, IsFoundWhereverTheBookPrintsIt) {
  const std::vector<Signing> ways = {{"Mrs. T. Hobday", "<p class=\"center\">Mrs. T. Hobday.</p>\n<p>", "</p>\n"},
                                     {"MISS HOBDAY", "<p>From MISS HOBDAY, of Kent, Secretary.</p>\n<p>", "</p>\n"},
                                     {"Mrs. T. Hobday", "<p>", "&mdash;<i>Mrs. T. Hobday.</i></p>\n"},
                                     {"Mrs. T. Hobday", "<p>", " [Mrs. T. Hobday.]</p>\n"},
                                     {"Clara Hobday", "<p>", "</p>\n<p class=\"right\">Clara Hobday.</p>\n"},
                                     {"Mrs. T. Hobday", "<p>", "</p>\n<p>Mrs. T. Hobday.</p>\n"}};
  for (const auto& way : ways) {
    std::string text = "<html><body>\n";
    for (const auto& d : dishes()) text += "<h3>" + d.title + "</h3>\n" + way.before + d.body + way.after;
    const auto book = cut(text + "</body></html>\n", "book.htm");
    ASSERT_EQ(book.recipes.size(), dishes().size()) << way.before << way.after;
    for (const auto& r : book.recipes) EXPECT_EQ(r.contributor, way.name) << way.before << way.after;
  }
}

TEST(Contributor, AuthoritiesInProseAndSayingsAreNone) {
  const auto book =
      cut(book_with(
              "<p>Dr. Hobday says that vinegar should never be boiled in copper, and so thinks Mrs. Clark.</p>\n"
              "<div class=\"center\">We may live without books, but where is he that would live without dining?</div>\n"
              "<p class=\"right\">Clara Hobday.</p>\n"),
          "book.htm");
  for (const auto& r : book.recipes) EXPECT_EQ(r.contributor, "") << r.title;
}

}  // namespace
}  // namespace gallipot
