// RIS.
#include "query/reporting/bibliography.h"

namespace gallipot {
namespace {

void add(std::string& out, const char* tag, const std::string& value) {
  if (value.empty()) return;
  out += std::string(tag) + "  - ";
  for (const char c : value) out += c == '\n' || c == '\r' ? ' ' : c;
  out += "\r\n";
}

void add_names(std::string& out, const char* tag, const std::string& creators) {
  for (const PartedName& one : parted_names(creators))
    add(out, tag, one.literal.empty() ? one.family + ", " + one.given : one.literal);
}

}  // namespace

std::string bibliography_as_ris(const std::vector<Citation>& citations) {
  std::string out;
  for (const Citation& one : citations) {
    out += "TY  - CHAP\r\n";
    add(out, "ID", one.id);
    add(out, "TI", one.title.empty() ? one.id : one.title);
    add_names(out, "AU", one.contributor.empty() ? one.book.creator : one.contributor);
    add(out, "T2", one.book.title);
    if (!one.contributor.empty()) add_names(out, "A2", one.book.creator);
    const auto year = plain_year(one.book.date);
    if (year) add(out, "PY", std::to_string(year->first));
    add(out, "DA", year ? std::string() : one.book.date);
    add(out, "PB", one.book.publisher);
    add(out, "CY", one.book.place);
    add(out, "ET", one.book.edition);
    add(out, "LA", one.book.language);
    add(out, "SP", one.page);
    if (one.page_end != one.page) add(out, "EP", one.page_end);
    out += "ER  - \r\n\r\n";
  }
  return out;
}

}  // namespace gallipot
