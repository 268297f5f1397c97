// The class names in use for the parts of a book.
#include "indexer/reading/html_roles.h"

#include <algorithm>
#include <initializer_list>
#include <string>

#include "indexer/reading/page_marks.h"

namespace gallipot {

HtmlRole role_of_class(std::string_view written) {
  std::string c;
  for (const char ch : written)
    if (ch != '-' && ch != '_') c += ch >= 'A' && ch <= 'Z' ? static_cast<char>(ch + 32) : ch;
  const auto any = [&](std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), c) != names.end();
  };
  if (is_page_class(written)) return page_number;
  if (any({"page", "pg", "pagina"})) return maybe_page_number;
  if (any({"poem", "poetry", "poetrycontainer", "stanza", "verse", "linegroup", "lg", "verses"})) return verse;
  if (any({"footnote", "footnotes", "fnote", "endnote", "endnotes", "fn", "note1"})) return footnote;
  if (any({"caption", "figcaption", "captionl", "captionr", "capt", "figcenter", "figleft", "figright",
           "illustration"}))
    return caption;
  if (any({"sidenote", "sidenotes", "marginnote", "sidenotel", "sidenoter", "sn", "margin"})) return sidenote;
  if (any({"tnote", "transnote", "tn", "tnotes", "transnotes", "transcribersnote", "transcribernote", "tnbox",
           "transcriber", "trnote", "tnotesbox"}))
    return own_matter;
  if (any({"fnanchor", "fnref", "noteref", "footnotemark", "fnmark"})) return footnote_mark;
  return plain;
}

}  // namespace gallipot
