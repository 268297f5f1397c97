// EPUB: made here with the same library that opens it. Invented receipts.
#include <gtest/gtest.h>
#include <zip.h>

#include <utility>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

using Entries = std::vector<std::pair<std::string, std::string>>;

std::string zipped(const Entries& entries) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(nullptr, 0, 0, &error);
  zip_t* archive = zip_open_from_source(source, ZIP_TRUNCATE, &error);
  zip_source_keep(source);
  for (const auto& [name, bytes] : entries)
    zip_file_add(archive, name.c_str(), zip_source_buffer(archive, bytes.data(), bytes.size(), 0), ZIP_FL_ENC_UTF_8);
  zip_close(archive);
  zip_stat_t stat;
  zip_source_stat(source, &stat);
  zip_source_open(source);
  std::string out(stat.size, '\0');
  zip_source_read(source, out.data(), out.size());
  zip_source_close(source);
  zip_source_free(source);
  return out;
}

const std::string container =
    "<container xmlns=\"urn:oasis:names:tc:opendocument:xmlns:container\"><rootfiles>"
    "<rootfile full-path=\"OPS/book.opf\" media-type=\"application/oebps-package+xml\"/></rootfiles></container>";
const std::string package =
    "<package xmlns=\"http://www.idpf.org/2007/opf\"><metadata xmlns:dc=\"http://purl.org/dc/elements/1.1/\">"
    "<dc:title>The Larder</dc:title><dc:creator>Ann Hartley</dc:creator><dc:date>1744</dc:date></metadata>"
    "<manifest><item id=\"b\" href=\"two%20.xhtml\" media-type=\"application/xhtml+xml\"/>"
    "<item id=\"a\" href=\"one.xhtml\" media-type=\"application/xhtml+xml\"/>"
    "<item id=\"c\" href=\"cover.png\" media-type=\"image/png\"/></manifest>"
    "<spine><itemref idref=\"a\"/><itemref idref=\"b\"/><itemref idref=\"c\"/></spine></package>";

std::string page(const std::string& body) {
  return "<html xmlns=\"http://www.w3.org/1999/xhtml\"><body>\n" + body + "\n</body></html>\n";
}

Entries book_entries() {
  return {{"mimetype", "application/epub+zip"},
          {"META-INF/container.xml", container},
          {"OPS/book.opf", package},
          {"OPS/one.xhtml", page("<h2>Walnuts</h2><p>Pickle them.</p>")},
          {"OPS/two .xhtml", page("<h2>Figs</h2><p>Stew them.</p>")}};
}

TEST(Epub, ReadsTheSpineInItsOrder) {
  const auto book = read_book(zipped(book_entries()), "larder.epub");
  ASSERT_TRUE(book.has_value()) << book.error().sentence();
  EXPECT_EQ(book->format, "EPUB");
  ASSERT_EQ(book->blocks.size(), 4u);
  EXPECT_EQ(book->blocks[0].text, "Walnuts");
  EXPECT_EQ(book->blocks[2].text, "Figs");
  EXPECT_LT(book->blocks[1].line_end, book->blocks[2].line_start());
}

TEST(Epub, ProposesItsDublinCore) {
  const auto book = read_book(zipped(book_entries()), "larder.epub");
  ASSERT_TRUE(book.has_value());
  ASSERT_GE(book->proposals.size(), 3u);
  EXPECT_EQ(book->proposals[1].field, "creator");
  EXPECT_EQ(book->proposals[1].value, "Ann Hartley");
}

TEST(Epub, RefusesWhatIsNoArchiveOrHasNoBook) {
  EXPECT_FALSE(read_book("PK\3\4 and then nothing of the kind", "bad.epub").has_value());
  EXPECT_FALSE(read_book(zipped({{"mimetype", "application/epub+zip"}}), "bare.epub").has_value());
  auto entries = book_entries();
  entries.pop_back();
  EXPECT_FALSE(read_book(zipped(entries), "missing.epub").has_value());
}

TEST(Epub, RefusesAnArchiveThatUnpacksPastAllUse) {
  auto entries = book_entries();
  entries[3].second = page(std::string(40u << 20, ' '));
  const std::string bomb = zipped(entries);
  EXPECT_LT(bomb.size(), 1u << 20);
  const auto book = read_book(bomb, "bomb.epub");
  ASSERT_FALSE(book.has_value());
  EXPECT_NE(book.error().what.find("unpacks to more"), std::string::npos) << book.error().what;
}

}  // namespace
}  // namespace gallipot
