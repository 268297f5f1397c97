// Plain-text books. The little pages are invented.
#include <gtest/gtest.h>

#include <string>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

const std::string kProse =
    "Take the quinces when they are of a good yellow, rub the down from them\n"
    "with a coarse cloth, and lay them in a stone jar with a cover that shuts\n"
    "close; then set the jar in a kettle of water over a slow fire, and keep\n"
    "the water boiling round it until they are tender.\n";

ReadBook read(const std::string& text) {
  auto book = read_book(text, "t.txt");
  EXPECT_TRUE(book.has_value()) << (book ? "" : book.error().sentence());
  return book ? *book : ReadBook{};
}

TEST(PlainText, WrappedProseIsOneParagraphWithItsLines) {
  const auto book = read("QUINCE JAR.\n\n" + kProse + "\n\n\nANOTHER.\n");
  ASSERT_EQ(book.blocks.size(), 3u);
  const Block& block = book.blocks[1];
  EXPECT_EQ(block.kind, Block::Kind::paragraph);
  EXPECT_EQ(block.text.find('\n'), std::string::npos);
  EXPECT_EQ(block.line_start(), 3u);
  EXPECT_EQ(block.line_end, 6u);
  EXPECT_EQ(block.line_at(static_cast<std::uint32_t>(block.text.find("close; then"))), 5u);
  EXPECT_EQ(block.blank_before, 1);
  EXPECT_EQ(book.blocks[2].blank_before, 3);
}

TEST(PlainText, CrlfChangesNothing) {
  std::string crlf;
  for (const char c : kProse) crlf += c == '\n' ? "\r\n" : std::string(1, c);
  EXPECT_EQ(read(crlf).blocks[0].text, read(kProse).blocks[0].text);
  EXPECT_EQ(read(crlf).blocks[0].line_end, 4u);
}

TEST(PlainText, IngredientLinesAreItemsAndHangingLinesGoOn) {
  const auto book = read(kProse +
                         "\n  One pound of quinces, pared and cored, and cut\n     into quarters.\n  Two lemons.\n"
                         "  Half a pint of water.\n\n" +
                         kProse);
  ASSERT_EQ(book.blocks.size(), 5u);
  EXPECT_EQ(book.blocks[1].kind, Block::Kind::list_item);
  EXPECT_EQ(book.blocks[1].text, "One pound of quinces, pared and cored, and cut into quarters.");
  EXPECT_EQ(book.blocks[1].indent, 2);
  EXPECT_EQ(book.blocks[3].text, "Half a pint of water.");
}

TEST(PlainText, ShortUnindentedAmountsAreItemsToo) {
  const auto book = read(kProse + "\n2 cups flour\n1 cup suet\n3 eggs\n\n" + kProse);
  ASSERT_EQ(book.blocks.size(), 5u);
  EXPECT_EQ(book.blocks[2].text, "1 cup suet");
}

TEST(PlainText, ColumnsAreRowsWithCells) {
  const auto book = read(kProse + "\n  1 cup sugar        2 eggs\n  1 cup butter       nutmeg\n\n" + kProse);
  ASSERT_EQ(book.blocks.size(), 4u);
  EXPECT_EQ(book.blocks[1].kind, Block::Kind::table_row);
  EXPECT_EQ(book.blocks[1].text, "1 cup sugar | 2 eggs");
  ASSERT_EQ(book.blocks[2].cells.size(), 2u);
  EXPECT_EQ(book.blocks[2].cells[1].in(book.blocks[2].text), "nutmeg");
}

TEST(PlainText, AHeadingOnTopOfItsTextIsParted) {
  const auto book = read("QUINCE JAR.\n" + kProse);
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].text, "QUINCE JAR.");
}

TEST(PlainText, VerseKeepsItsLines) {
  const auto book = read(kProse +
                         "\n    Roses in the garden grow,\n    Quinces on the tree,\n    Plums are in the orchard "
                         "row,\n    None of them for me.\n\n" +
                         kProse);
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(std::count(book.blocks[1].text.begin(), book.blocks[1].text.end(), '\n'), 3);
}

TEST(PlainText, TranscribersMarksBecomeRuns) {
  const auto book =
      read("12. _To make a_ QUINCE _Pie_. Take =two= pounds, *three* eggs, y^e best; 2 * 3 = 6, snake_\n");
  const Block& b = book.blocks[0];
  EXPECT_EQ(b.text, "12. To make a QUINCE Pie. Take two pounds, three eggs, ye best; 2 * 3 = 6, snake");
  ASSERT_EQ(b.runs.size(), 5u);
  EXPECT_EQ(b.runs[0].span.in(b.text), "To make a");
  EXPECT_EQ(b.runs[0].style, Run::italic);
  EXPECT_EQ(b.runs[2].span.in(b.text), "two");
  EXPECT_EQ(b.runs[2].style, Run::bold);
  EXPECT_EQ(b.runs[4].style, Run::superscript);
}

TEST(PlainText, RaisedFractionsStandApartFromTheirNumber) {
  EXPECT_EQ(read("Take 2^{1}/_{2} pounds and 3^{rd} of it.\n").blocks[0].text, "Take 2 1/2 pounds and 3rd of it.");
}

TEST(PlainText, BracketedMatter) {
  const auto book = read(
      "[Illustration: A QUINCE]\n\n[Illustration]\n\nA paragraph.[1]\n\n[Footnote 1: Of the year's growth.]\n\n"
      "[Sidenote: When to pick.]\n\n[Transcriber's note: kept.]\n\n       *       *       *\n");
  const auto& b = book.blocks;
  ASSERT_EQ(b.size(), 5u);
  EXPECT_EQ(b[0].kind, Block::Kind::caption);
  EXPECT_EQ(b[0].text, "A QUINCE");
  EXPECT_EQ(b[2].kind, Block::Kind::note);
  EXPECT_EQ(b[2].text, "1: Of the year's growth.");
  EXPECT_EQ(b[2].anchor, "Footnote_1");
  EXPECT_EQ(b[3].runs[0].style, Run::sidenote);
  EXPECT_EQ(b[4].kind, Block::Kind::rule);
}

class PrintedMark : public testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(PrintedMark, RunningInOrderIsAPage) {
  const auto [before, after] = GetParam();
  std::string text;
  for (int page = 31; page < 41; ++page) text += before + std::to_string(page) + after + kProse + "\n" + kProse + "\n";
  const auto book = read(text);
  EXPECT_EQ(book.page_marks, 10u);
  ASSERT_EQ(book.blocks.size(), 20u);
  EXPECT_EQ(book.blocks[0].page, "31");
  EXPECT_EQ(book.blocks[19].page, "40");
  EXPECT_EQ(book.blocks[0].text.substr(0, 4), "Take");
}

INSTANTIATE_TEST_SUITE_P(Forms, PrintedMark,
                         testing::Values(std::pair("[", "]\n\n"), std::pair("[Pg ", "] "), std::pair("{", "} "),
                                         std::pair("-", "-\n\n"), std::pair("[Page ", "]\n\n"),
                                         std::pair("Page ", "\n\n")));

TEST(PrintedMarks, FootnoteMarksAreNoPages) {
  std::string text;
  for (int n = 1; n < 11; ++n)
    text += "[" + std::to_string(n) + "] " + kProse + "\n[" + std::to_string(n) + "] A note.\n\n";
  const auto book = read(text);
  EXPECT_EQ(book.page_marks, 0u);
  EXPECT_EQ(book.blocks[0].text.substr(0, 3), "[1]");
}

TEST(PrintedMarks, ReceiptNumbersAloneOnALineAreNoPages) {
  std::string text;
  for (int n = 1; n < 11; ++n)
    text += "          " + std::to_string(n) + "\n\n" + kProse + "\n" + kProse + "\n" + kProse + "\n";
  EXPECT_EQ(read(text).page_marks, 0u);
}

TEST(PrintedMarks, ASentenceCutByAPageIsJoined) {
  std::string text;
  for (int page = 31; page < 41; ++page)
    text += kProse + "\nPour on the syrup of the\n\n                 " + std::to_string(page) +
            "\n\nquinces while hot.\n\n" + kProse + "\n" + kProse + "\n";
  const auto book = read(text);
  EXPECT_EQ(book.page_marks, 10u);
  EXPECT_EQ(book.blocks[1].text, "Pour on the syrup of the quinces while hot.");
  ASSERT_EQ(book.blocks[1].pages.size(), 1u);
  EXPECT_EQ(book.blocks[1].pages[0].at, book.blocks[1].text.find("quinces"));
  EXPECT_EQ(book.blocks[2].page, "31");
}

TEST(PlainText, ContentsWithoutPagesUnderTheirHeading) {
  const auto book =
      read("CONTENTS.\n\nSoups.\n\n  Pea soup\n  Leek soup\n  Hare soup\n  Eel soup\n\nA BOOK\n\n" + kProse);
  EXPECT_TRUE(book.blocks[0].contents);
  EXPECT_TRUE(book.blocks[2].contents);
  EXPECT_FALSE(book.blocks.back().contents);
  const auto receipt = read(
      "CONTENTS.\n\n  Pea soup\n  Leek soup\n  Hare soup\n  Eel soup\n\nPEA SOUP.\n\n  Two pints of peas.\n  One "
      "leek.\n"
      "  Three onions.\n\n" +
      kProse);
  EXPECT_TRUE(receipt.blocks[1].contents);
  EXPECT_FALSE(receipt.blocks[2].contents);
  EXPECT_FALSE(receipt.blocks[3].contents);
}

TEST(PlainText, TranscribersMatterIsCutOff) {
  const auto book =
      read("This file may be copied.\n\n***START OF THE EBOOK QUINCES***\n\n\nE-text prepared by A. B.\n\n\n" + kProse +
           "\n\n***END OF THE EBOOK QUINCES***\n\nLicence.\n");
  ASSERT_EQ(book.blocks.size(), 1u);
  EXPECT_EQ(book.blocks[0].line_start(), 9u);
}

TEST(PlainText, OnlyCarriageReturnsAreLineEndsToo) {
  const auto book = read("ONE.\r\rTwo.\r");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[1].line_start(), 3u);
}

TEST(Faults, AreSentences) {
  EXPECT_EQ(read_book("", "t.txt").error().sentence(), "t.txt: the book is empty; give a file with text in it.");
  EXPECT_EQ(read_book(std::string_view("PK\0\1", 4), "t.txt").error().sentence(),
            "t.txt: this is not a text: it holds NUL bytes; give the book as plain text or HTML.");
  EXPECT_EQ(read_book(" \n \n", "t.txt").error().sentence(),
            "t.txt: nothing is left of the book without the transcription's own front and end matter; see whether the "
            "file holds the book's text.");
  EXPECT_EQ(read_book_file("no/such.txt").error().sentence(),
            "no/such.txt: the book cannot be opened (No such file or directory); see whether the shelf list names it "
            "rightly.");
  EXPECT_EQ(read_book_file("/").error().sentence(),
            "/: there are no page images here; put the scans (png, jpg, tif) into this folder.");
}

TEST(Reading, TheEndingDecidesOnlyWhereTheContentIsOpen) {
  EXPECT_EQ(read("a <b plain> text\n").format, "text");
  EXPECT_EQ(read_book("<p>one</p>", "x.txt")->format, "html");
  EXPECT_EQ(read_book("<html><p>one", "x")->format, "html");
}

}  // namespace
}  // namespace gallipot
