// Library records and page images. The records are invented; their fields are those of MARC 21 and Dublin Core.
#include "indexer/catalogue/records.h"

#include <gtest/gtest.h>

#include "indexer/catalogue/page_images.h"
#include "indexer/catalogue/shelf_list.h"

namespace gallipot {
namespace {

const std::string marc =
    "<collection xmlns=\"http://www.loc.gov/MARC21/slim\"><record><leader>00000nam</leader>"
    "<controlfield tag=\"008\">850101s1744    enk           000 0 eng d</controlfield>"
    "<datafield tag=\"100\"><subfield code=\"a\">Hartley, Ann.</subfield></datafield>"
    "<datafield tag=\"245\"><subfield code=\"a\">The larder book :</subfield><subfield code=\"b\">or, the country "
    "housewife /</subfield><subfield code=\"c\">by a lady.</subfield></datafield>"
    "<datafield tag=\"250\"><subfield code=\"a\">2nd ed.</subfield></datafield>"
    "<datafield tag=\"260\"><subfield code=\"a\">York :</subfield><subfield code=\"b\">T. Dobson,</subfield><subfield "
    "code=\"c\">1744.</subfield></datafield></record></collection>";

TEST(Records, ReadsMarcxml) {
  const auto books = parse_records(marc, "records.xml");
  ASSERT_TRUE(books.has_value()) << books.error().sentence();
  ASSERT_EQ(books->size(), 1u);
  const Book& book = books->front();
  EXPECT_EQ(book.id, "hartley-1744");
  EXPECT_EQ(book.title, "The larder book : or, the country housewife");
  EXPECT_EQ(book.creator, "Ann Hartley");
  EXPECT_EQ(book.place, "York");
  EXPECT_EQ(book.publisher, "T. Dobson");
  EXPECT_EQ(book.date, "1744");
  EXPECT_EQ(book.language, "en");
}

TEST(Records, ReadsDublinCore) {
  const auto books = parse_records(
      "<oai_dc:dc xmlns:oai_dc=\"http://www.openarchives.org/OAI/2.0/oai_dc/\" "
      "xmlns:dc=\"http://purl.org/dc/elements/1.1/\"><dc:title>Fare</dc:title><dc:creator>Pell, Augusta</dc:creator>"
      "<dc:date>[1884?]</dc:date><dc:identifier>x-1</dc:identifier></oai_dc:dc>",
      "dc.xml");
  ASSERT_TRUE(books.has_value()) << books.error().sentence();
  EXPECT_EQ(books->front().creator, "Augusta Pell");
  EXPECT_EQ(books->front().date, "1884?");
  EXPECT_EQ(books->front().id, "pell-1884");
}

TEST(Records, BecomeAShelfListThatCanBeRead) {
  const auto books = parse_records(marc, "records.xml");
  ASSERT_TRUE(books.has_value());
  const auto list = parse_shelf_list(shelf_list_text(*books), "books.json");
  ASSERT_TRUE(list.has_value()) << list.error().sentence();
  EXPECT_EQ(list->front().creator, "Ann Hartley");
}

TEST(Records, AddOnlyWhatTheShelfHasNot) {
  const auto books = parse_records(marc, "records.xml");
  ASSERT_TRUE(books.has_value());
  EXPECT_EQ(with_records(*books, *books).size(), 1u);
  Book other = books->front();
  other.title = "Another";
  const auto both = with_records(*books, {other});
  ASSERT_EQ(both.size(), 2u);
  EXPECT_EQ(both[1].id, "hartley-1744b");
}

TEST(Records, RefusesWhatHoldsNone) {
  EXPECT_FALSE(parse_records("<a><b/></a>", "x.xml").has_value());
  EXPECT_FALSE(parse_records("no XML", "x.xml").has_value());
}

TEST(PageImages, FillAPattern) {
  Book book;
  book.file = "a.txt";
  book.path = "shelf/a.txt";
  book.images = "scans/leaf-{page:4}.png";
  const auto images = PageImages::of(book);
  ASSERT_TRUE(images.has_value());
  EXPECT_EQ(images->of_page("12"), "shelf/scans/leaf-0012.png");
  EXPECT_EQ(images->of_page("xiv"), "shelf/scans/leaf-xiv.png");
  EXPECT_EQ(images->of_page(""), "");
  book.images = "scans/leaf.png";
  EXPECT_FALSE(PageImages::of(book).has_value());
}

TEST(PageImages, ReadManifestsOfPresentation3And2) {
  const auto three = PageImages::of_manifest(
      R"({"type":"Manifest","items":[{"type":"Canvas","label":{"none":["p. 12"]},"items":[{"items":[{"body":{"id":
      "https://example.org/12.jpg","type":"Image"}}]}]}]})",
      "m.json");
  ASSERT_TRUE(three.has_value()) << three.error().sentence();
  EXPECT_EQ(three->of_page("12"), "https://example.org/12.jpg");
  EXPECT_EQ(three->of_page("13"), "");
  const auto two = PageImages::of_manifest(
      R"({"sequences":[{"canvases":[{"label":"[xiv]","images":[{"resource":{"@id":"x.jpg"}}]}]}]})", "m.json");
  ASSERT_TRUE(two.has_value());
  EXPECT_EQ(two->of_page("xiv"), "x.jpg");
  EXPECT_FALSE(PageImages::of_manifest("[]", "m.json").has_value());
  EXPECT_FALSE(PageImages::of_manifest("{", "m.json").has_value());
}

}  // namespace
}  // namespace gallipot
