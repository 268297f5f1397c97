// BibTeX.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/bibliography.h"

namespace gallipot {
namespace {

/// TeX's own signs escaped.
std::string for_tex(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
      case '%':
      case '$':
      case '#':
      case '_':
        out += '\\';
        out += c;
        break;
      case '{':
      case '}':
        out += c == '{' ? '(' : ')';  // a brace in a title would unbalance the entry for many readers
        break;
      case '~':
        out += "\\textasciitilde{}";
        break;
      case '^':
        out += "\\textasciicircum{}";
        break;
      case '\\':
        out += "\\textbackslash{}";
        break;
      case '\n':
      case '\r':
        out += ' ';
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string names_for_tex(const std::string& creators) {
  std::string out;
  for (const PartedName& one : parted_names(creators)) {
    if (!out.empty()) out += " and ";
    out += one.literal.empty() ? for_tex(one.family) + ", " + for_tex(one.given) : "{" + for_tex(one.literal) + "}";
  }
  return out;
}

void add(std::string& out, const char* name, const std::string& tex) {
  if (!tex.empty()) out += fmt::format("  {} = {{{}}},\n", name, tex);
}

}  // namespace

std::string bibliography_as_bibtex(const std::vector<Citation>& citations) {
  std::string out;
  for (const Citation& one : citations) {
    std::string key = one.id;
    std::replace(key.begin(), key.end(), '/', ':');
    out += fmt::format("@incollection{{{},\n", key);
    add(out, "title", for_tex(one.title.empty() ? one.id : one.title));
    add(out, "author", names_for_tex(one.contributor.empty() ? one.book.creator : one.contributor));
    add(out, "booktitle", for_tex(one.book.title));
    if (!one.contributor.empty()) add(out, "editor", names_for_tex(one.book.creator));
    add(out, "publisher", for_tex(one.book.publisher));
    add(out, "address", for_tex(one.book.place));
    const auto year = plain_year(one.book.date);
    add(out, "year", year && year->first == year->last ? std::to_string(year->first) : for_tex(one.book.date));
    add(out, "edition", for_tex(one.book.edition));
    if (!one.page.empty())
      add(out, "pages",
          for_tex(one.page_end.empty() || one.page_end == one.page ? one.page : one.page + "--" + one.page_end));
    add(out, "note", for_tex(one.id));
    out += "}\n\n";
  }
  return out;
}

}  // namespace gallipot
