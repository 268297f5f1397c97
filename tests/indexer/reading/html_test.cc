// HTML books: structure, style, pages, lines. The little pages are invented.
#include <gtest/gtest.h>

#include <string>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

ReadBook read(const std::string& body, const std::string& head = "") {
  auto book =
      read_book("<!DOCTYPE html>\n<html><head>" + head + "</head><body>\n" + body + "\n</body></html>", "t.htm");
  EXPECT_TRUE(book.has_value()) << (book ? "" : book.error().sentence());
  return book ? *book : ReadBook{};
}

std::uint16_t style_of(const Block& block, std::string_view words) {
  std::uint16_t style = 0;
  const auto at = block.text.find(words);
  if (at == std::string::npos) return 0;
  for (const Run& run : block.runs)
    if (run.span.begin <= at && run.span.end >= at + words.size()) style |= run.style;
  return style;
}

TEST(Html, HeadingsParagraphsItemsAndTheirStylePath) {
  const auto book = read(
      "<h3 class='dish'>Quince Snow</h3>\n<div class='sig'><p class='small'>Mrs. Q.</p></div>\n"
      "<ul class='ings'><li>1 quince.<li>2 eggs.</ul>");
  ASSERT_EQ(book.blocks.size(), 4u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::heading);
  EXPECT_EQ(book.blocks[0].level, 3);
  EXPECT_EQ(book.blocks[0].style, "h3.dish");
  EXPECT_EQ(book.blocks[1].style, "p.small div.sig");
  EXPECT_EQ(book.blocks[2].kind, Block::Kind::list_item);
  EXPECT_EQ(book.blocks[3].text, "2 eggs.");
  EXPECT_EQ(book.blocks[3].style, "li ul.ings");
}

// One test body for every form of page mark.
class HtmlPageMark : public testing::TestWithParam<const char*> {};

TEST_P(HtmlPageMark, IsKeptAsThePageOfWhatFollowsAndLeavesNoTrace) {
  const std::string mark = GetParam();
  const auto book = read("<p>Stir the wea" + mark + "sel broth.</p>\n<p>Serve.</p>\n" + mark + "\n<h4>Next</h4>");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.blocks[0].text, "Stir the weasel broth.");
  EXPECT_EQ(book.blocks[0].page, "");
  ASSERT_EQ(book.blocks[0].pages.size(), 1u);
  EXPECT_EQ(book.blocks[0].pages[0].at, 12u);
  EXPECT_EQ(book.blocks[0].page_at(14), book.blocks[1].page);
  EXPECT_EQ(book.blocks[2].page, mark.find("xii") != std::string::npos ? "xii" : "12");
}

INSTANTIATE_TEST_SUITE_P(
    Forms, HtmlPageMark,
    testing::Values("<span class=\"pagenum\"><a name=\"Page_12\" id=\"Page_12\">[12]</a></span>",
                    "<span class='pagenum'><a name='Page_12' id='Page_12'>12</a></span>",
                    "<span class='pagenum'>[Pg\r\n12]</span><a name=\r\n'Page_12' id=\"Page_12\"></a>",
                    "<span class=\"pagenum\"><a name=\"page12\"\r\nid=\"page12\"></a>{12}</span>",
                    "<span class='pagenum'><a id='Page_xii'>[Page xii]</a><br /></span>", "<a id='Page_12'></a>",
                    "<span id='pg_12'></span>", "<a name='page012'></a>", "<span class='page-number'>- 12 -</span>",
                    "<span class='pageno' id='XII'>xii</span>", "<span class='page' id='p12'>[12]</span>", "[Pg 12]",
                    "<span class='pb' id='Page_12'/></span>"));

TEST(Html, ReferencesToPagesAreNoMarks) {
  const auto book = read(
      "<p>See <a href='#Page_40'>page 40</a>.</p><p class='titlepage'>Z</p><p class='page'>A longer text than any "
      "number of a page could be.</p>");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.page_marks, 0u);
  EXPECT_EQ(style_of(book.blocks[0], "page 40"), Run::link);
  EXPECT_EQ(book.blocks[2].text.substr(0, 8), "A longer");
}

TEST(Html, AMarkAtAParagraphsEndBelongsToTheNextBlock) {
  const auto book = read("<p>Boil it.<span class='pagenum'><a id='Page_7'>[7]</a></span></p><h3>Mush</h3>");
  EXPECT_EQ(book.blocks[0].page, "");
  EXPECT_TRUE(book.blocks[0].pages.empty());
  EXPECT_EQ(book.blocks[1].page, "7");
}

TEST(Html, TheMarkBeforeTheFirstLetterCountsEvenInsideTheHeading) {
  const auto book = read("<h3>\xE2\x80\x9C<a id='Page_9'></a>Sops\xE2\x80\x9D</h3>");
  EXPECT_EQ(book.blocks[0].page, "9");
}

TEST(Html, PagesThatRunBackwardsAreKeptAndDoubted) {
  const auto book = read("<a id='Page_20'></a><p>One.</p><a id='Page_19'></a><p>Two.</p>");
  EXPECT_EQ(book.blocks[1].page, "19");
  ASSERT_EQ(book.doubts.size(), 1u);
  EXPECT_EQ(book.doubts[0].sentence(),
            "t.htm:3: page 19 is marked after page 20; see whether the transcription numbers its pages so.");
}

TEST(Html, LinesAreTheRawLinesOfTheFile) {
  const auto book = read(
      "<p>First &eacute; line\r\nsecond <i>line\r\nthird</i>\r\n<!-- a\r\nb --> "
      "fifth</p>\r\n\r\n<p\r\nclass='x'>Ninth</p>");
  const Block& block = book.blocks[0];
  EXPECT_EQ(block.text, "First é line second line third fifth");
  EXPECT_EQ(block.line_start(), 3u);
  EXPECT_EQ(block.line_at(static_cast<std::uint32_t>(block.text.find("second"))), 4u);
  EXPECT_EQ(block.line_at(static_cast<std::uint32_t>(block.text.find("third"))), 5u);
  EXPECT_EQ(block.line_at(static_cast<std::uint32_t>(block.text.find("fifth"))), 7u);
  EXPECT_EQ(block.line_end, 7u);
  EXPECT_EQ(book.blocks[1].line_start(), 10u);
}

TEST(Html, StyleComesFromTagsClassesTheSheetAndInlineStyle) {
  const auto book = read(
      "<p class='dish'>Whole</p><p>a <span class='smcap'>Cap</span> <b>bold</b> <span class='fancy'>slant</span> "
      "<span style='font-variant: small-caps'>inline</span> <em class='up'>upright</em></p>"
      "<p class='r'>right</p><center>mid</center><p style=\"text-align:center\">c</p>",
      "<style>/* x */ p.dish, .other { font-weight: bold; text-align: center }\n.fancy {font-style:italic}\n"
      "@media print { .dish { display: none } }\n.r { text-align: right } .up { font-style: normal }</style>");
  const auto& b = book.blocks;
  ASSERT_EQ(b.size(), 5u);
  EXPECT_EQ(style_of(b[0], "Whole"), Run::bold);
  EXPECT_TRUE(b[0].centred);
  EXPECT_EQ(style_of(b[1], "Cap"), Run::small_caps);
  EXPECT_EQ(style_of(b[1], "bold"), Run::bold);
  EXPECT_EQ(style_of(b[1], "slant"), Run::italic);
  EXPECT_EQ(style_of(b[1], "inline"), Run::small_caps);
  EXPECT_EQ(style_of(b[1], "upright"), 0);
  EXPECT_TRUE(b[2].right_aligned);
  EXPECT_TRUE(b[3].centred);
  EXPECT_TRUE(b[4].centred);
}

TEST(Html, BreaksCarryMeaningAndTwoPartParagraphs) {
  const auto book = read("<p>Salt<br />Suet<br>\n<br/>Then boil.</p><h2>Soups<br>and Broths</h2>");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.blocks[0].text, "Salt\nSuet");
  EXPECT_EQ(book.blocks[1].text, "Then boil.");
  EXPECT_EQ(book.blocks[2].text, "Soups\nand Broths");
}

TEST(Html, TableRowsKeepTheirCells) {
  const auto book = read("<table><tr><td>2 cups flour<br/>1 egg<td>salt</tr><tr><td></td><td>suet</td></tr></table>");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].text, "2 cups flour\n1 egg | salt");
  ASSERT_EQ(book.blocks[0].cells.size(), 2u);
  EXPECT_EQ(book.blocks[0].cells[1].in(book.blocks[0].text), "salt");
  ASSERT_EQ(book.blocks[1].cells.size(), 2u);
  EXPECT_TRUE(book.blocks[1].cells[0].empty());
  EXPECT_EQ(book.blocks[1].cells[1].in(book.blocks[1].text), "suet");
}

TEST(Html, AReceiptInsideATableCellIsReadAsBlocks) {
  const auto book = read(
      "<table><tr><td><h3>Toasted Rusk</h3><p>Toast it.</p><ul><li>1 rusk</li></ul></td></tr></table><p>After</p>");
  ASSERT_EQ(book.blocks.size(), 4u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::heading);
  EXPECT_EQ(book.blocks[1].text, "Toast it.");
  EXPECT_EQ(book.blocks[2].kind, Block::Kind::list_item);
}

TEST(Html, NotesSidenotesCaptionsAndVerse) {
  const auto book = read(
      "<p>Lard<a href='#Footnote_1' class='fnanchor'>[1]</a> it.<span class='sidenote'>How long.</span></p>"
      "<div class='footnote'><p><a id='Footnote_1'></a>[1] With bacon.</p></div>"
      "<div class='figcenter'><img src='x.png' alt='A PAN' /><p class='caption'>A stewpan.</p></div>"
      "<div class='poem'>Roses<br/>Violets</div><hr />");
  const auto& b = book.blocks;
  ASSERT_EQ(b.size(), 5u);
  EXPECT_EQ(style_of(b[0], "[1]"), Run::note_mark);
  EXPECT_EQ(style_of(b[0], "How long."), Run::sidenote);
  EXPECT_EQ(b[1].kind, Block::Kind::note);
  EXPECT_EQ(b[1].anchor, "Footnote_1");
  EXPECT_EQ(b[2].kind, Block::Kind::caption);
  EXPECT_EQ(b[2].text, "A stewpan.");
  EXPECT_EQ(b[3].kind, Block::Kind::verse);
  EXPECT_EQ(b[4].kind, Block::Kind::rule);
}

TEST(Html, HiddenMatterAndPicturesAreNotPrint) {
  const auto book = read(
      "<p>Seen <span style='display:none'>never</span><script>if (a<b) x()</script> here.</p>"
      "<p><img alt='T'/>HE quail.</p>",
      "<title>Not the text</title>");
  EXPECT_EQ(book.blocks[0].text, "Seen here.");
  EXPECT_EQ(book.blocks[1].text, "THE quail.");
}

// WHATWG HTML, 13.2.5.72 ff. (character references) and the table of 13.2.5.80.
TEST(Html, CharacterReferencesAsTheStandardHasThem) {
  const auto book = read(
      "<p>&frac12; &eacute;clair &#233; &#xE9; &#146; AT&amp;T &ampx &notanything; &CounterClockwiseContourIntegral; "
      "a&#769; &nbsp;&mdash;</p>");
  EXPECT_EQ(book.blocks[0].text, "½ éclair é é ’ AT&T &x ¬anything; ∳ á —");
}

// WHATWG Encoding, 4.2: the label "iso-8859-1" means windows-1252.
TEST(Html, Latin1IsReadAsWindows1252) {
  const auto book =
      read("<p>Caf\xE9 \x93hot\x94</p>", "<meta http-equiv='Content-Type' content='text/html; charset=ISO-8859-1'>");
  EXPECT_EQ(book.charset, "windows-1252");
  EXPECT_EQ(book.blocks[0].text, "Café “hot”");
}

TEST(Html, RaisedFractionsStandApartFromTheirNumber) {
  const auto book = read(
      "<p>26<sup>1</sup>&frasl;<sub>2</sub> and 4<sup>3</sup>/4 and 7<span class='frac'>1/2</span> lb.<sup>9</sup> of "
      "<i>1/2</i> 16<sup>2</sup></p>");
  EXPECT_EQ(book.blocks[0].text, "26 1⁄2 and 4 3/4 and 7 1/2 lb.9 of 1/2 162");
}

TEST(Html, BrokenWordsAreJoinedAsTheBookSpellsThem) {
  const auto book = read(
      "<p>A saucepan. Take a sauce-\npan, rose-\nwater, two-\nor three quinces, an over-<span class='pagenum' "
      "id='Page_3'>[3]</span>night\nstand, overnight.</p>");
  EXPECT_EQ(book.blocks[0].text,
            "A saucepan. Take a saucepan, rose-water, two- or three quinces, an overnight stand, overnight.");
}

TEST(Html, ContentsAreMarkedByRowsThatEndInPages) {
  std::string rows, index;
  for (int i = 1; i < 12; ++i) {
    rows += "<tr><td>Dish " + std::string(1, static_cast<char>('a' + i)) + "</td><td>" + std::to_string(i * 3) +
            "</td></tr>\n";
    index += "<li>Soup, <a href='#Page_" + std::to_string(99 - i) + "'>" + std::to_string(99 - i) + "</a></li>";
  }
  const auto book =
      read("<table>" + rows + "</table><p>Take a pound of good flour and wash it.</p><ul>" + index + "</ul>");
  EXPECT_TRUE(book.blocks[0].contents);
  EXPECT_FALSE(book.blocks[11].contents);
  EXPECT_TRUE(book.blocks.back().contents);
}

TEST(Html, DittosTakeTheRowAbove) {
  const auto book = read(
      "<table><tr><td>Sugar</td><td>1 lb.</td></tr><tr><td>do.</td><td>2 lb.</td></tr></table>"
      "<ul><li>1 cup milk</li><li>2 \" cream</li></ul>");
  EXPECT_EQ(book.blocks[1].text, "Sugar | 2 lb.");
  EXPECT_EQ(book.blocks[1].cells[1].in(book.blocks[1].text), "2 lb.");
  EXPECT_EQ(book.blocks[3].text, "2 cup cream");
}

TEST(Html, TranscribersMatterIsCutOff) {
  const auto book = read(
      "<pre>\nLicence of the files.\n\n*** START OF THIS EBOOK X ***\n\nProduced by A and B\n\n</pre>\n"
      "<div class='tnote'>Spelling kept.</div><h1>Pies</h1><p>Bake.</p>\n<pre>\n*** END OF THIS EBOOK X ***\nMore "
      "licence\n</pre>");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].text, "Pies");
}

TEST(Html, BrokenMarkupLosesNoText) {
  const auto book =
      read("<p>one <b>two <i>three</b> four</i> <td>five</p></div></table> a < b <p>six<p>seven <a name='q>eight");
  std::string all;
  for (const auto& block : book.blocks) all += block.text + " ";
  for (const char* word : {"one", "two", "three", "four", "five", "a < b", "six", "seven"})
    EXPECT_NE(all.find(word), std::string::npos) << word << " in " << all;
}

std::string all_text(const ReadBook& book) {
  std::string all;
  for (const auto& block : book.blocks) all += "(" + block.text + ")";
  return all;
}

// WHATWG HTML, 13.1.2.4 (optional tags) and 13.2.6.3 (closing elements that have implied end tags).
TEST(HtmlTree, EndTagsThatMayBeLeftOutAreSupplied) {
  EXPECT_EQ(all_text(read("<p>Skim it.<p>Strain it.<ul><li>1 quince<li>2 eggs</ul><dl><dt>Mush<dd>Of meal.</dl>")),
            "(Skim it.)(Strain it.)(1 quince)(2 eggs)(Mush)(Of meal.)");
  EXPECT_EQ(all_text(read("<table><tr><td>suet<td>1 lb.<tr><td>figs<td>2 lb.</table>")),
            "(suet | 1 lb.)(figs | 2 lb.)");
}

// 13.2.6.4.7, the adoption agency algorithm: "<b>1<i>2</b>3</i>" is bold 1 and 2, italic 2 and 3.
TEST(HtmlTree, MisnestedFormattingIsTakenApart) {
  const auto book = read("<p>Beat <b>whites <i>and</b> yolks</i> well.</p>");
  const Block& b = book.blocks[0];
  EXPECT_EQ(b.text, "Beat whites and yolks well.");
  EXPECT_EQ(style_of(b, "whites"), Run::bold);
  EXPECT_EQ(style_of(b, "and"), Run::bold | Run::italic);
  EXPECT_EQ(style_of(b, "yolks"), Run::italic);
  EXPECT_EQ(style_of(b, "well"), 0);
}

// 13.2.4.3, reconstructing the active formatting elements; what is opened anew brings no anchor and no page again.
TEST(HtmlTree, FormattingLeftOpenGoesOnButItsAnchorDoesNot) {
  const auto book = read("<p>Boil <a name='Page_8'><b>it.</p><p>Serve.</p></b></a><p>Eat.</p>");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.page_marks, 1u);
  EXPECT_EQ(style_of(book.blocks[1], "Serve"), Run::bold);
  EXPECT_EQ(style_of(book.blocks[2], "Eat"), 0);
  const auto anchored = read("<a name='mush'><p>Mush</p><p>Boil it.</p></a>");
  EXPECT_EQ(anchored.blocks[0].anchor, "mush");
  EXPECT_EQ(anchored.blocks[1].anchor, "");
}

// 13.2.6.1, foster parenting: text loose in a table stands before it; lines still never run back.
TEST(HtmlTree, TextLooseInATableStandsBeforeIt) {
  const auto book =
      read("<p>Weights.</p>\n<table>\n<tr><td>suet</td></tr>\nLoose\nwords.<tr><td>figs</td></tr></table>");
  EXPECT_EQ(all_text(book), "(Weights.)(Loose words.)(suet)(figs)");
  EXPECT_EQ(book.blocks[1].line_start(), 5u);
  EXPECT_EQ(book.blocks[2].line_start(), 5u);
  EXPECT_EQ(book.blocks[3].line_start(), 7u);
}

// 13.2.6.4.7: an end tag without its element is passed over, but "</p>" makes an empty paragraph and "</br>" a break.
TEST(HtmlTree, StrayEndTagsCloseNothing) {
  EXPECT_EQ(all_text(read("<div>Pare</span></b></td></table></li> the figs</div>")), "(Pare the figs)");
  EXPECT_EQ(all_text(read("<table><tr><td>suet</div></p></body> chopped</td><td>1 lb.</td></table>")),
            "(suet\nchopped | 1 lb.)");
  EXPECT_EQ(all_text(read("<div>Pare</p>Core</br>Stew</div>")), "(Pare)(Core\nStew)");
}

TEST(Html, ATableInAPageMarkIsNoPartOfTheRowItStandsIn) {
  const auto book = read(
      "<table><tr><td>suet<span class='pagenum'><table><tr><td>[4]</td></tr></table></span></td><td>1 lb.</td></tr>"
      "</table>");
  ASSERT_EQ(all_text(book), "(suet | 1 lb.)");
  ASSERT_EQ(book.blocks[0].cells.size(), 2u);
  EXPECT_EQ(book.blocks[0].cells[1].in(book.blocks[0].text), "1 lb.");
  EXPECT_EQ(book.page_marks, 1u);
}

// 13.2.3.5 takes a carriage return for a line's end; the lines that a book cites are those that line feeds end.
TEST(HtmlTree, CarriageReturnsDoNotShiftTheLines) {
  const auto mixed = read_book("<html><body>\r\n<p>One\r two\r\nthree</p>\n<p>four</p>", "t.htm");
  EXPECT_EQ(mixed->blocks[0].text, "One two three");
  EXPECT_EQ(mixed->blocks[1].line_start(), 4u);
  const auto alone = read_book("<html><body>\r<p>One</p>\r\r<p>two</p>", "t.htm");
  EXPECT_EQ(alone->blocks[1].line_start(), 4u);
}

TEST(HtmlTree, LineFeedsWrittenAsReferencesAreNoLines) {
  const auto book = read("<p>a&#10;b&#10;c</p>");
  EXPECT_EQ(book.blocks[0].text, "a b c");
  EXPECT_EQ(book.blocks[0].line_end, 3u);
}

TEST(HtmlTree, NestingPastAllUseIsRefusedWithTheLine) {
  std::string open = "<html><body>\n";
  for (int i = 0; i < 200000; ++i) open += "<div>\n";
  const auto book = read_book(open + "deep", "t.htm");
  ASSERT_FALSE(book.has_value());
  EXPECT_EQ(book.error().sentence(),
            "t.htm:402: elements are nested more than 400 deep; this is not a book as transcriptions come; see whether "
            "the end tags are missing, or give the book as plain text.");
}

// What hides a tag from the count would let the tree grow: comments, quoted values and raw text hold no tags.
TEST(HtmlTree, NestingIsCountedAsTheTokenizerSeesIt) {
  for (const char* piece :
       {"<div><!--</div>-->", "<div title='</div>'>", "<div title=\"</div>\">", "<div a=b'>",
        "<div><style></div></style>", "<div><?</div>", "<!-- --!><div>", "<div></ </div>", "<li><dd>", "<svg><a>"}) {
    std::string html = "<html><body>x";
    for (int i = 0; i < 1000; ++i) html += piece;
    EXPECT_FALSE(read_book(html, "t.htm").has_value()) << piece;
  }
}

// A font left open is opened anew in each block: with hundreds of them the tree would be as many times the book.
TEST(HtmlTree, FormattingOpenedAnewPastAllUseIsRefused) {
  std::string html = "<html><body>";
  for (int i = 0; i < 390; ++i) html += "<font size='" + std::to_string(i) + "'>";
  for (int i = 0; i < 20000; ++i) html += "<p>x";
  ASSERT_FALSE(read_book(html, "t.htm").has_value());
}

TEST(HtmlTree, ATagOfThousandsOfAttributesIsRefused) {
  std::string html = "<html><body>\n<p";
  for (int i = 0; i < 60000; ++i) html += " a" + std::to_string(i) + "=1";
  const auto book = read_book(html + ">x", "t.htm");
  ASSERT_FALSE(book.has_value());
  EXPECT_EQ(book.error().what.substr(0, 36), "a tag has more than 500 attributes; ");
  EXPECT_EQ(book.error().line, 2);
}

TEST(HtmlTree, WhatHonestBooksLeaveOpenIsNotCounted) {
  for (const char* piece : {"<p>Boil <span id='x'/>it.</p>\n", "<p>Boil it. <span/>", "<li>figs", "<tr><td>figs",
                            "<dt>Figs<dd>of Turkey", "<a name='x'>figs", "<p>x<br><hr>", "<div><b>x</b></div>"}) {
    std::string html = "<html><body><font><font>";
    for (int i = 0; i < 20000; ++i) html += piece;
    EXPECT_TRUE(read_book(html, "t.htm").has_value()) << piece;
  }
}

}  // namespace
}  // namespace gallipot
