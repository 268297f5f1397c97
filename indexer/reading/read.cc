// Chooses the reader for a book's format and runs the passes that are the same for all formats.
#include "indexer/reading/read.h"

#include <cctype>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include "indexer/reading/boilerplate.h"
#include "indexer/reading/contents.h"
#include "indexer/reading/dittos.h"
#include "indexer/reading/draft.h"
#include "indexer/reading/engine.h"
#include "indexer/reading/formats.h"
#include "indexer/reading/fractions.h"
#include "indexer/reading/joins.h"
#include "indexer/reading/page_marks.h"
#include "indexer/reading/title_page.h"
#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

/// The encoding that an HTML file or its XML declaration names within the first kilobytes; empty where none.
/// Source: WHATWG HTML, "prescan a byte stream to determine its encoding" (13.2.3.2), in the forms in use.
std::string declared_charset(std::string_view bytes) {
  std::string head;
  for (const char c : bytes.substr(0, 4096)) head += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const std::string_view key : {"charset", "encoding"}) {
    for (std::size_t at = head.find(key); at != std::string::npos; at = head.find(key, at + 1)) {
      std::size_t i = head.find_first_not_of(" \t\r\n", at + key.size());
      if (i == std::string::npos || head[i] != '=') continue;
      i = head.find_first_not_of(" \t\r\n\"'", i + 1);
      if (i == std::string::npos) continue;
      const auto end = head.find_first_of(" \t\r\n\"'>;/?", i);
      if (end != std::string::npos && end > i) return head.substr(i, end - i);
    }
  }
  return {};
}

/// Lines are counted by line feeds; a file that has only carriage returns gets line feeds in their place.
void one_kind_of_line_end(std::string& text) {
  if (text.find('\n') != std::string::npos) return;
  for (char& c : text)
    if (c == '\r') c = '\n';
}

tl::unexpected<Fault> in_file(Fault f, const std::string& name) {
  f.file = name;
  return tl::unexpected<Fault>(std::move(f));
}

Outcome<Draft> draft_of(Format format, std::string_view text) {
  switch (format) {
    case Format::html:
      return draft_html(text);
    case Format::tei:
      return draft_tei(text);
    case Format::hocr:
      return draft_hocr(text);
    case Format::alto:
      return draft_alto(text);
    case Format::notes:
      return draft_notes(text);
    default:
      return draft_text(text);
  }
}

/// The passes that are the same for all formats. `text` is the file's, for the transcription's markers in it.
Outcome<ReadBook> finish(ReadBook book, Draft draft, std::string_view text, const std::string& name) {
  cut_boilerplate(draft, own_text(text));
  if (draft.blocks.empty())
    return fault("nothing is left of the book without the transcription's own front and end matter",
                 "see whether the file holds the book's text", name);
  part_fractions(draft);
  find_printed_marks(draft);
  book.page_marks = set_pages(draft, name, book.doubts);
  join_broken_words(draft);
  mark_contents(draft.blocks);
  resolve_dittos(draft.blocks);
  book.blocks = std::move(draft.blocks);
  book.images = std::move(draft.images);
  book.proposals = std::move(draft.proposals);
  propose_from_title_page(book.blocks, book.proposals);
  return book;
}

Outcome<ReadBook> read_packed(std::string_view bytes, const std::string& name) {
  ReadBook book;
  book.bytes = bytes.size();
  book.format = format_name(Format::epub);
  book.charset = "UTF-8";
  std::string text;
  auto draft = draft_epub(bytes, text);
  if (!draft) return in_file(draft.error(), name);
  return finish(std::move(book), std::move(*draft), text, name);
}

}  // namespace

Outcome<ReadBook> read_book(std::string_view bytes, const std::string& name) {
  if (bytes.empty()) return fault("the book is empty", "give a file with text in it", name);
  const Format format = format_of(bytes, name);
  if (format == Format::epub) return read_packed(bytes, name);
  ReadBook book;
  book.bytes = bytes.size();
  book.format = format_name(format);
  const bool declares = format != Format::text && format != Format::notes;
  auto decoded = decode(bytes, declares ? declared_charset(bytes) : std::string());
  if (!decoded) return in_file(decoded.error(), name);
  book.charset = decoded->charset;
  if (decoded->replaced > 0)
    book.doubts.push_back({std::to_string(decoded->replaced) + " bytes could not be decoded as " + decoded->charset,
                           name, 0, "save the file as UTF-8 or declare its encoding"});
  one_kind_of_line_end(decoded->text);
  const std::string text = to_nfc(decoded->text);
  auto draft = draft_of(format, text);
  if (!draft) return in_file(draft.error(), name);
  return finish(std::move(book), std::move(*draft), text, name);
}

Outcome<ReadBook> read_scans(const std::string& path) {
  auto pages = pages_of_scans(path);
  if (!pages) return tl::unexpected(pages.error());
  ReadBook book;
  book.format = format_name(Format::hocr);
  book.charset = "UTF-8";
  for (const ScanPage& page : *pages)
    for (const ScanLine& line : page.lines) book.bytes += line.text().size() + 1;
  return finish(std::move(book), draft_scan(std::move(*pages)), {}, path);
}

Outcome<ReadBook> read_book_file(const std::string& path) {
  std::error_code error;
  if (std::filesystem::is_directory(path, error)) return read_scans(path);
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), std::fclose);
  if (!file)
    return fault(std::string("the book cannot be opened (") + std::strerror(errno) + ")",
                 "see whether the shelf list names it rightly", path);
  std::string bytes;
  std::string chunk(1 << 18, '\0');
  std::size_t got = 0;
  while ((got = std::fread(chunk.data(), 1, chunk.size(), file.get())) > 0) bytes.append(chunk, 0, got);
  if (std::ferror(file.get()))
    return fault("the book cannot be read to its end", "see whether the disk is sound", path);
  if (bytes.starts_with("%PDF")) return read_scans(path);
  return read_book(bytes, path);
}

}  // namespace gallipot
