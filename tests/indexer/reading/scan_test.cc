// Pages of scans: columns, heads, folios, hyphens, doubtful words. The pages are made here, word by word, with the
// boxes that an engine would give. Invented receipts.
#include "indexer/reading/scan.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

/// A line of words set from `left`, a letter being ten units wide.
ScanLine line(const std::string& text, double left, double top, double height = 20) {
  ScanLine out;
  double x = left;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find(' ', at), text.size());
    const double width = 10.0 * static_cast<double>(end - at);
    out.words.push_back({text.substr(at, end - at), {x, top, x + width, top + height}, 0.95, 1});
    x += width + 8;
    at = end + 1;
  }
  out.box = out.words.front().box;
  for (const auto& w : out.words) out.box.take_in(w.box);
  return out;
}

ScanPage page_of(std::initializer_list<ScanLine> lines) {
  ScanPage page;
  page.box = {0, 0, 1000, 1400};
  page.lines = lines;
  return page;
}

std::string hocr_line(const std::string& text, double left, double top, int sure = 95) {
  const ScanLine set = line(text, left, top);
  std::string out = fmt::format("<span class='ocr_line' title='bbox {:.0f} {:.0f} {:.0f} {:.0f}; x_size 20'>",
                                set.box.left, set.box.top, set.box.right, set.box.bottom);
  for (const auto& w : set.words)
    out += fmt::format("<span class='ocrx_word' title='bbox {:.0f} {:.0f} {:.0f} {:.0f}; x_wconf {}'>{}</span> ",
                       w.box.left, w.box.top, w.box.right, w.box.bottom, sure, w.text);
  return out + "</span>\n";
}

TEST(Hocr, WordsBoxesConfidencesAndImage) {
  const std::string text =
      "<!DOCTYPE html><html><body><div class='ocr_page' title='image \"leaf 7.png\"; bbox 0 0 1000 1400; ppageno 0'>" +
      hocr_line("Stew the figs", 100, 100, 31) + "</div></body></html>";
  const auto pages = pages_of_hocr(text);
  ASSERT_TRUE(pages.has_value());
  ASSERT_EQ(pages->size(), 1u);
  EXPECT_EQ(pages->front().image, "leaf 7.png");
  ASSERT_EQ(pages->front().lines.size(), 1u);
  EXPECT_EQ(pages->front().lines[0].size, 20);
  ASSERT_EQ(pages->front().lines[0].words.size(), 3u);
  EXPECT_EQ(pages->front().lines[0].words[2].text, "figs");
  EXPECT_NEAR(pages->front().lines[0].words[2].sure, 0.31, 1e-9);
  const auto book = read_book(text, "leaf.hocr");
  ASSERT_TRUE(book.has_value()) << book.error().sentence();
  EXPECT_EQ(book->format, "hOCR");
  ASSERT_EQ(book->blocks.size(), 1u);
  EXPECT_EQ(book->blocks[0].text, "Stew the figs");
  EXPECT_EQ(book->blocks[0].mends.size(), 3u) << "words under one half are not read for sure";
}

TEST(Alto, WordsBoxesConfidencesAndHyphens) {
  const std::string text =
      "<?xml version=\"1.0\"?><alto xmlns=\"http://www.loc.gov/standards/alto/ns-v4#\"><Layout><Page WIDTH=\"1000\" "
      "HEIGHT=\"1400\"><PrintSpace><TextBlock><TextLine HPOS=\"100\" VPOS=\"100\" WIDTH=\"300\" HEIGHT=\"20\"><String "
      "CONTENT=\"Boil\" HPOS=\"100\" VPOS=\"100\" WIDTH=\"40\" HEIGHT=\"20\" WC=\"0.4\"/><SP/><String CONTENT=\"wal\" "
      "HPOS=\"150\" VPOS=\"100\" WIDTH=\"40\" HEIGHT=\"20\" WC=\"0.9\"/><HYP CONTENT=\"-\"/></TextLine><TextLine "
      "HPOS=\"100\" VPOS=\"125\" WIDTH=\"300\" HEIGHT=\"20\"><String CONTENT=\"nuts\" HPOS=\"100\" VPOS=\"125\" "
      "WIDTH=\"40\" HEIGHT=\"20\"/><String CONTENT=\"and walnuts\" HPOS=\"150\" VPOS=\"125\" WIDTH=\"110\" "
      "HEIGHT=\"20\"/></TextLine></TextBlock></PrintSpace></Page></Layout></alto>";
  const auto book = read_book(text, "leaf.xml");
  ASSERT_TRUE(book.has_value()) << book.error().sentence();
  EXPECT_EQ(book->format, "ALTO");
  ASSERT_EQ(book->blocks.size(), 1u);
  EXPECT_EQ(book->blocks[0].text, "Boil walnuts and walnuts");
  ASSERT_EQ(book->blocks[0].mends.size(), 1u);
  EXPECT_EQ(book->blocks[0].mends[0].printed, "Boil");
}

TEST(ScanOrder, ReadsColumnsOneAfterTheOther) {
  ScanPage page = page_of({line("OF PICKLES IN GENERAL AND WALNUTS IN PARTICULAR", 150, 50)});
  for (int i = 0; i < 8; ++i) {
    page.lines.push_back(line(fmt::format("left words of line {}", i), 100, 100 + 30 * i));
    page.lines.push_back(line(fmt::format("right words of line {}", i), 560, 100 + 30 * i));
  }
  order_lines(page);
  ASSERT_EQ(page.lines.size(), 17u);
  EXPECT_EQ(page.lines[0].column, 0);
  EXPECT_EQ(page.lines[8].text(), "left words of line 7");
  EXPECT_EQ(page.lines[9].text(), "right words of line 0");
}

TEST(ScanOrder, PartsLinesReadAcrossTheGutter) {
  ScanPage page = page_of({});
  for (int i = 0; i < 10; ++i) {
    ScanLine left = line("left words of it", 100, 100 + 30 * i);
    const ScanLine right = line("right words of it", 560, 100 + 30 * i);
    left.words.insert(left.words.end(), right.words.begin(), right.words.end());
    left.box.take_in(right.box);
    page.lines.push_back(left);
  }
  order_lines(page);
  ASSERT_EQ(page.lines.size(), 20u);
  EXPECT_EQ(page.lines[9].text(), "left words of it");
  EXPECT_EQ(page.lines[10].text(), "right words of it");
}

TEST(ScanOrder, LeavesOneColumnAlone) {
  ScanPage page = page_of({});
  for (int i = 0; i < 10; ++i)
    page.lines.push_back(line("words that run over the whole width of this page", 100, 100 + 30 * i));
  order_lines(page);
  EXPECT_EQ(page.lines.size(), 10u);
  EXPECT_EQ(page.lines[3].column, 0);
}

std::vector<ScanPage> numbered(const std::vector<std::string>& heads) {
  std::vector<ScanPage> pages;
  for (const auto& head : heads) {
    ScanPage page = page_of({line("Stew the figs in water until they are soft", 100, 100),
                             line("and serve them cold with cream and sugar", 100, 130)});
    if (!head.empty()) page.lines.insert(page.lines.begin(), line(head, 300, 40));
    pages.push_back(page);
  }
  return pages;
}

std::vector<std::string> folios(std::vector<ScanPage> pages) {
  take_folios(pages);
  std::vector<std::string> out;
  for (const ScanPage& page : pages) out.push_back(page.folio);
  return out;
}

TEST(ScanFolios, ReadsThemFromRunningHeadsAndTakesTheseOut) {
  auto pages = numbered({"12 THE ART OF PICKLING", "OF PICKLES 13", "14 THE ART OF PICKLING", "OF PICKLES 15"});
  take_folios(pages);
  EXPECT_EQ(pages[0].folio, "12");
  EXPECT_EQ(pages[3].folio, "15");
  for (const ScanPage& page : pages) EXPECT_EQ(page.lines.size(), 2u);
}

TEST(ScanFolios, MendsMisreadOnesByTheirNeighbours) {
  EXPECT_EQ(folios(numbered({"9", "lO", "11", "72", "13", "", "15"})),
            (std::vector<std::string>{"9", "10", "11", "12", "13", "14", "15"}));
}

TEST(ScanFolios, KeepsRomanOnesOfTheFrontMatter) {
  EXPECT_EQ(folios(numbered({"iv", "v", "vi", "1", "2", "3", "4"})),
            (std::vector<std::string>{"iv", "v", "vi", "1", "2", "3", "4"}));
}

TEST(ScanFolios, InventsNoneWhereNoneIsPrinted) {
  EXPECT_EQ(folios(numbered({"", "", "", ""})), (std::vector<std::string>(4)));
}

TEST(ScanFolios, TakesSignaturesAndCatchwordsOut) {
  auto pages = numbered({"12 THE ART OF PICKLING", "13 THE ART OF PICKLING"});
  pages[0].lines.push_back(line("B 2", 480, 160));
  pages[1].lines.push_back(line("Stew", 700, 160));
  pages.push_back(numbered({"14 THE ART OF PICKLING"})[0]);
  take_folios(pages);
  EXPECT_EQ(pages[0].lines.size(), 2u);
  EXPECT_EQ(pages[1].lines.size(), 2u);
}

TEST(ScanBlocks, PartsHeadsFromParagraphsAndJoinsPages) {
  std::vector<ScanPage> pages = {page_of({line("12", 500, 20), line("STEWED FIGS", 400, 60, 32),
                                          line("Stew the figs in a quart of water until", 120, 130),
                                          line("they are soft and take them off the fire", 100, 160),
                                          line("and keep the syrup in a covered stone jar", 100, 190)}),
                                 page_of({line("13", 500, 20), line("until it is wanted for the next day", 100, 60),
                                          line("when you may warm it up and serve it so", 100, 90)})};
  const Draft draft = draft_scan(pages);
  ASSERT_EQ(draft.blocks.size(), 2u);
  EXPECT_EQ(draft.blocks[0].kind, Block::Kind::heading);
  EXPECT_EQ(draft.blocks[0].text, "STEWED FIGS");
  EXPECT_NE(draft.blocks[1].text.find("stone jar until it is"), std::string::npos);
  ASSERT_EQ(draft.marks.size(), 2u);
  EXPECT_EQ(draft.marks[1].label, "13");
  EXPECT_EQ(draft.blocks[1].text.substr(draft.marks[1].at, 9), " until it");
}

TEST(Scans, AnEmptyFolderIsAFaultWithItsMend) {
  const auto book = read_book_file(GALLIPOT_SOURCE "/tests/indexer");
  ASSERT_FALSE(book.has_value());
  EXPECT_NE(book.error().what.find("no page images"), std::string::npos) << book.error().what;
}

}  // namespace
}  // namespace gallipot
