// TEI P5 against the element definitions of its Guidelines: each test is named after the element. Invented receipts.
#include <gtest/gtest.h>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

ReadBook read_tei(const std::string& body, const std::string& header = "") {
  auto book = read_book("<?xml version=\"1.0\"?>\n<TEI xmlns=\"http://www.tei-c.org/ns/1.0\"><teiHeader>" + header +
                            "</teiHeader>\n<text><body>" + body + "</body></text></TEI>",
                        "book.xml");
  if (!book) throw std::runtime_error(book.error().sentence());
  EXPECT_EQ(book->format, "TEI");
  return std::move(*book);
}

Block only(const std::string& body) {
  ReadBook book = read_tei(body);
  EXPECT_EQ(book.blocks.size(), 1u);
  return book.blocks.at(0);
}

TEST(Tei, Pb) {
  const ReadBook book = read_tei("<pb n=\"12\" facs=\"leaf-12.png\"/><p>Take figs and <pb n=\"13\"/>stew them.</p>");
  ASSERT_EQ(book.blocks.size(), 1u);
  EXPECT_EQ(book.blocks[0].text, "Take figs and stew them.");
  EXPECT_EQ(book.blocks[0].page, "12");
  ASSERT_EQ(book.blocks[0].pages.size(), 1u);
  EXPECT_EQ(book.blocks[0].page_at(16), "13");
  ASSERT_EQ(book.images.size(), 1u);
  EXPECT_EQ(book.images[0], (std::pair<std::string, std::string>("12", "leaf-12.png")));
}

TEST(Tei, Fw) {
  const ReadBook book =
      read_tei("<pb/><fw type=\"header\">The Larder</fw><fw type=\"pageNum\">44</fw><p>Stew figs.</p>");
  ASSERT_EQ(book.blocks.size(), 1u);
  EXPECT_EQ(book.blocks[0].text, "Stew figs.");
  EXPECT_EQ(book.blocks[0].page, "44");
}

TEST(Tei, HeadAndDiv) {
  const ReadBook book =
      read_tei("<div><head>Of Pickles</head><div><head>Walnuts</head><p>Pickle them.</p></div></div>");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::heading);
  EXPECT_LT(book.blocks[0].level, book.blocks[1].level);
  EXPECT_EQ(book.blocks[1].text, "Walnuts");
}

TEST(Tei, ListAndItem) {
  const ReadBook book = read_tei("<list><item>two eggs</item><item><p>a pint of milk</p></item></list>");
  ASSERT_EQ(book.blocks.size(), 2u);
  for (const Block& b : book.blocks) EXPECT_EQ(b.kind, Block::Kind::list_item);
  EXPECT_EQ(book.blocks[1].text, "a pint of milk");
}

TEST(Tei, Measure) {
  const Block b = only("<p>Take <measure quantity=\"2\" unit=\"lb\">two pounds</measure> of figs.</p>");
  EXPECT_EQ(b.text, "Take two pounds of figs.");
  ASSERT_EQ(b.runs.size(), 1u);
  EXPECT_EQ(b.runs[0].name, "measure");
  EXPECT_EQ(b.runs[0].span.in(b.text), "two pounds");
}

TEST(Tei, Note) {
  const ReadBook book =
      read_tei("<p>Add mace<note place=\"bottom\" n=\"a\">Or <hi rend=\"italic\">cloves</hi>.</note> and boil.</p>");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].text, "Add mace[a] and boil.");
  EXPECT_EQ(book.blocks[1].kind, Block::Kind::note);
  EXPECT_EQ(book.blocks[1].text, "[a] Or cloves.");
  const Block margin = only("<p>Add <note place=\"margin\">N.B.</note> mace.</p>");
  ASSERT_EQ(margin.runs.size(), 1u);
  EXPECT_EQ(margin.runs[0].style & Run::sidenote, Run::sidenote);
}

void expect_reading(const std::string& inside, const std::string& text, const std::string& printed,
                    const std::string& read) {
  const Block b = only("<p>Take " + inside + " now.</p>");
  EXPECT_EQ(b.text, "Take " + text + " now.");
  ASSERT_EQ(b.mends.size(), 1u) << inside;
  EXPECT_EQ(b.mends[0].printed, printed);
  EXPECT_EQ(b.mends[0].read, read);
  EXPECT_EQ(b.mends[0].span.in(b.text), read);
}

TEST(Tei, ChoiceSicCorr) {
  expect_reading("<choice><sic>sugger</sic><corr>sugar</corr></choice>", "sugar", "sugger", "sugar");
}
TEST(Tei, ChoiceOrigReg) {
  expect_reading("<choice><reg>cucumber</reg><orig>cowcumber</orig></choice>", "cucumber", "cowcumber", "cucumber");
}
TEST(Tei, ChoiceAbbrExpan) {
  expect_reading("<choice><abbr>yt</abbr><expan>that</expan></choice>", "that", "yt", "that");
}
TEST(Tei, SicAlone) { EXPECT_EQ(only("<p>the <sic>sugger</sic></p>").text, "the sugger"); }
TEST(Tei, Supplied) { expect_reading("<supplied>salt</supplied>", "salt", "[salt]", "salt"); }
TEST(Tei, Unclear) { expect_reading("<unclear>mace</unclear>", "mace", "mace", "mace"); }
TEST(Tei, Gap) { expect_reading("<gap reason=\"illegible\"/>", "[...]", "[...]", "[...]"); }

TEST(Tei, LbAndBreak) {
  EXPECT_EQ(only("<p>boil the<lb/>figs in wa<lb break=\"no\"/>ter</p>").text, "boil the figs in water");
}

TEST(Tei, HiEmphForeign) {
  const Block b = only("<p>a <hi rend=\"bold\">rich</hi> <emph>thick</emph> <foreign>coulis</foreign></p>");
  ASSERT_EQ(b.runs.size(), 3u);
  EXPECT_EQ(b.runs[0].style, Run::bold);
  EXPECT_EQ(b.runs[1].style, Run::italic);
  EXPECT_EQ(b.runs[2].span.in(b.text), "coulis");
}

TEST(Tei, TableRowCell) {
  const ReadBook book = read_tei("<table><row><cell>sugar</cell><cell>1 lb.</cell></row></table>");
  ASSERT_EQ(book.blocks.size(), 1u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::table_row);
  ASSERT_EQ(book.blocks[0].cells.size(), 2u);
  EXPECT_EQ(book.blocks[0].cells[1].in(book.blocks[0].text), "1 lb.");
}

TEST(Tei, LgAndL) {
  const ReadBook book = read_tei("<lg><l>Of eggs take three</l><l>and beat them free</l></lg>");
  ASSERT_EQ(book.blocks.size(), 1u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::verse);
  EXPECT_EQ(book.blocks[0].text, "Of eggs take three\nand beat them free");
}

TEST(Tei, DelSurplusAreNotRead) {
  EXPECT_EQ(only("<p>two <del>three</del> eggs <surplus>eggs</surplus></p>").text, "two eggs");
}

TEST(Tei, HeaderProposesTheSourceBeforeTheElectronicText) {
  const ReadBook book = read_tei(
      "<p>Stew figs.</p>",
      "<fileDesc><titleStmt><title>An electronic text</title></titleStmt><sourceDesc><bibl><title>The Larder</title>"
      "<author>Ann Hartley</author><pubPlace>York</pubPlace><date when=\"1744\">MDCCXLIV</date></bibl></sourceDesc>"
      "</fileDesc>");
  const auto said = [&](std::string_view field) {
    for (const Proposal& p : book.proposals)
      if (p.field == field) return p.value;
    return std::string();
  };
  EXPECT_EQ(said("title"), "The Larder");
  EXPECT_EQ(said("creator"), "Ann Hartley");
  EXPECT_EQ(said("place"), "York");
  EXPECT_EQ(said("date"), "1744");
}

TEST(Tei, LinesAreThoseOfTheFile) {
  const ReadBook book = read_tei("\n<p>One\ntwo</p>\n<p>three</p>");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].line_start(), 4u);
  EXPECT_EQ(book.blocks[0].line_end, 5u);
  EXPECT_EQ(book.blocks[1].line_start(), 6u);
}

TEST(Tei, RefusesWhatIsNotWellFormedWithItsLine) {
  const auto book = read_book("<TEI>\n<text>\n<p>open\n</text></TEI>", "bad.xml");
  ASSERT_FALSE(book.has_value());
  EXPECT_EQ(book.error().file, "bad.xml");
  EXPECT_GE(book.error().line, 3);
}

TEST(Tei, IsBoundedOnDeepNestingAndEntities) {
  std::string deep = "<TEI><text>";
  for (int i = 0; i < 100'000; ++i) deep += "<div>";
  EXPECT_FALSE(read_book(deep, "deep.xml").has_value());
  for (int i = 0; i < 100'000; ++i) deep += "</div>";
  EXPECT_FALSE(read_book(deep + "</text></TEI>", "deep.xml").has_value());
  std::string bomb = "<?xml version=\"1.0\"?><!DOCTYPE TEI [<!ENTITY a0 \"figs\">";
  for (int i = 1; i < 30; ++i) {
    const std::string before = "&a" + std::to_string(i - 1) + ";";
    bomb += "<!ENTITY a" + std::to_string(i) + " \"" + before + before + before + before + "\">";
  }
  const auto book = read_book(bomb + "]><TEI><text><p>Stew &a29; well &amp; long.</p></text></TEI>", "bomb.xml");
  ASSERT_TRUE(book.has_value()) << book.error().sentence();
  EXPECT_LT(book->blocks.at(0).text.size(), 100u);
}

}  // namespace
}  // namespace gallipot
