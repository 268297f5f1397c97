// Looks for the words that only one format has near its beginning.
#include "indexer/reading/formats.h"

#include <cctype>

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

/// An element of that name, with whatever prefix, in the first kilobytes.
bool has_element(std::string_view head, std::string_view name) {
  for (std::size_t at = head.find(name); at != std::string_view::npos; at = head.find(name, at + 1)) {
    const char after = at + name.size() < head.size() ? head[at + name.size()] : '>';
    if (at == 0 || !(after == '>' || after == ' ' || after == '\n' || after == '\r' || after == '\t')) continue;
    if (head[at - 1] == '<') return true;
    const auto open = head.rfind('<', at);
    if (head[at - 1] == ':' && open != std::string_view::npos && at - open < 16) return true;
  }
  return false;
}

bool is_notes(std::string_view name) {
  return ends_with_folded(name, ".md") || ends_with_folded(name, ".markdown") || ends_with_folded(name, ".notes");
}

}  // namespace

Format format_of(std::string_view bytes, const std::string& name) {
  if (bytes.starts_with("PK\3\4")) return Format::epub;
  const auto head = bytes.substr(0, 16384);
  if (has_element(head, "TEI") || has_element(head, "TEI.2") || has_element(head, "teiCorpus")) return Format::tei;
  if (has_element(head, "alto")) return Format::alto;
  if (is_notes(name)) return Format::notes;
  if (!is_html(bytes, name)) return Format::text;
  return head.find("ocr_page") != std::string_view::npos ? Format::hocr : Format::html;
}

const char* format_name(Format format) {
  switch (format) {
    case Format::html:
      return "html";
    case Format::tei:
      return "TEI";
    case Format::epub:
      return "EPUB";
    case Format::hocr:
      return "hOCR";
    case Format::alto:
      return "ALTO";
    case Format::notes:
      return "notes";
    default:
      return "text";
  }
}

}  // namespace gallipot
