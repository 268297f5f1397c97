// One reader fed with whatever the fuzzer makes up. GALLIPOT_READER names which; every target is this file.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "indexer/catalogue/page_images.h"
#include "indexer/catalogue/records.h"
#include "indexer/catalogue/shelf_list.h"
#include "indexer/reading/read.h"

namespace gallipot {
namespace {

/// What every reader promises: spans inside their texts, lines in order.
void hold(const Outcome<ReadBook>& book) {
  if (!book) return;
  for (const Block& block : book->blocks) {
    const auto size = block.text.size();
    if (block.lines.empty() || block.lines.front().at != 0) std::abort();
    for (const Run& run : block.runs)
      if (run.span.begin > run.span.end || run.span.end > size) std::abort();
    for (const Mend& mend : block.mends)
      if (mend.span.begin > mend.span.end || mend.span.end > size) std::abort();
    for (const Span& cell : block.cells)
      if (cell.begin > cell.end || cell.end > size) std::abort();
    for (const PageStart& page : block.pages)
      if (page.at > size) std::abort();
  }
}

[[maybe_unused]] void as_text(std::string_view bytes) { hold(read_book(bytes, "book.txt")); }
[[maybe_unused]] void as_html(std::string_view bytes) {
  hold(read_book("<html><body>" + std::string(bytes), "book.htm"));
}
[[maybe_unused]] void as_tei(std::string_view bytes) {
  hold(read_book("<TEI><text><p>" + std::string(bytes) + "</p></text></TEI>", "book.xml"));
}
[[maybe_unused]] void as_epub(std::string_view bytes) { hold(read_book("PK\3\4" + std::string(bytes), "book.epub")); }
[[maybe_unused]] void as_notes(std::string_view bytes) { hold(read_book(bytes, "book.md")); }
[[maybe_unused]] void as_hocr(std::string_view bytes) {
  hold(read_book("<html><body><div class='ocr_page'>" + std::string(bytes), "book.hocr"));
}
[[maybe_unused]] void as_alto(std::string_view bytes) {
  hold(read_book("<alto><Page>" + std::string(bytes) + "</Page></alto>", "book.xml"));
}
[[maybe_unused]] void as_records(std::string_view bytes) {
  if (const auto books = parse_records("<c><record>" + std::string(bytes) + "</record></c>", "records.xml"))
    if (!parse_shelf_list(shelf_list_text(*books), "books.json")) std::abort();
}
[[maybe_unused]] void as_manifest(std::string_view bytes) {
  if (const auto images = PageImages::of_manifest(bytes, "manifest.json")) (void)images->of_page("12");
}

}  // namespace
}  // namespace gallipot

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  gallipot::GALLIPOT_READER(std::string_view(reinterpret_cast<const char*>(bytes), size));
  return 0;
}
