// Chooses the reader for a book's format and runs the passes that are the same for all formats.
#include "indexer/reading/read.h"

#include <cctype>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include "indexer/reading/boilerplate.h"
#include "indexer/reading/contents.h"
#include "indexer/reading/dittos.h"
#include "indexer/reading/draft.h"
#include "indexer/reading/fractions.h"
#include "indexer/reading/joins.h"
#include "indexer/reading/page_marks.h"
#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

bool contains_folded(std::string_view text, std::string_view wanted) {
  for (std::size_t i = 0; i + wanted.size() <= text.size(); ++i) {
    std::size_t j = 0;
    while (j < wanted.size() && std::tolower(static_cast<unsigned char>(text[i + j])) == wanted[j]) ++j;
    if (j == wanted.size()) return true;
  }
  return false;
}

bool ends_with_folded(std::string_view name, std::string_view ending) {
  return name.size() >= ending.size() && contains_folded(name.substr(name.size() - ending.size()), ending);
}

/// The content tells; the file's name decides where the content could be either.
bool is_html(std::string_view bytes, const std::string& name) {
  const auto head = bytes.substr(0, 2048);
  if (contains_folded(head, "<!doctype html") || contains_folded(head, "<html") || contains_folded(head, "<body"))
    return true;
  const bool named =
      ends_with_folded(name, ".htm") || ends_with_folded(name, ".html") || ends_with_folded(name, ".xhtml");
  const auto wide = bytes.substr(0, 65536);
  const bool tagged = contains_folded(wide, "<p>") || contains_folded(wide, "<p ") || contains_folded(wide, "<div") ||
                      contains_folded(wide, "<h1") || contains_folded(wide, "<h2") || contains_folded(wide, "<h3");
  return tagged && (named || contains_folded(wide, "</"));
}

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

}  // namespace

Outcome<ReadBook> read_book(std::string_view bytes, const std::string& name) {
  ReadBook book;
  book.bytes = bytes.size();
  if (bytes.empty()) return fault("the book is empty", "give a file with text in it", name);
  const bool html = is_html(bytes, name);
  auto decoded = decode(bytes, html ? declared_charset(bytes) : std::string());
  if (!decoded) {
    Fault f = decoded.error();
    f.file = name;
    return tl::unexpected<Fault>(std::move(f));
  }
  book.format = html ? "html" : "text";
  book.charset = decoded->charset;
  if (decoded->replaced > 0)
    book.doubts.push_back({std::to_string(decoded->replaced) + " bytes could not be decoded as " + decoded->charset,
                           name, 0, "save the file as UTF-8 or declare its encoding"});
  one_kind_of_line_end(decoded->text);
  const std::string text = to_nfc(decoded->text);
  auto drafted = html ? draft_html(text) : Outcome<Draft>(draft_text(text));
  if (!drafted) {
    Fault f = drafted.error();
    f.file = name;
    return tl::unexpected<Fault>(std::move(f));
  }
  Draft draft = std::move(*drafted);
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
  return book;
}

Outcome<ReadBook> read_book_file(const std::string& path) {
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
  return read_book(bytes, path);
}

}  // namespace gallipot
