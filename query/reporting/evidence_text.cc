// Statements on measures as a list for a terminal.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "query/reporting/evidence.h"
#include "query/reporting/layout.h"

namespace gallipot {
namespace {

using Some = std::vector<const Statement*>;

std::string figure(double value) { return fmt::format("{:.4g}", value); }

std::string figure(const Range& range) {
  return range.low == range.high ? figure(range.low) : figure(range.low) + " to " + figure(range.high);
}

std::string where(const Statement& s, const Shelf& shelf) {
  const Book* book = shelf.book(s.book);
  const std::string year = book && !book->date.empty() ? ", " + book->date : "";
  const std::string page = s.page.empty() ? fmt::format("line {}", s.line) : "p. " + s.page;
  return fmt::format("{}{}, {}", s.book, year, page);
}

/// "3 books agree: half a gill", "2 books, 1 to 2 ounce"; empty where only one book tells it.
std::string agreement(const Some& same) {
  std::set<std::string_view> books;
  double low = same.front()->equals.low, high = same.front()->equals.high;
  for (const Statement* s : same) {
    books.insert(s->book);
    low = std::min(low, s->equals.low);
    high = std::max(high, s->equals.high);
  }
  if (books.size() < 2) return {};
  if (high <= low * 1.03) return fmt::format("    {} books agree on {}.\n", books.size(), figure(low));
  return fmt::format("    {} books, from {} to {}: the highest is {:.1f} times the lowest.\n", books.size(),
                     figure(low), figure(high), high / low);
}

std::string lines_of(const Some& same, const Shelf& shelf, unsigned width) {
  std::string out;
  for (const Statement* s : same) {
    const std::string told = s->unit.empty() ? "no figure" : figure(s->equals) + " " + s->unit;
    out += paragraph(fmt::format("{} ({}): \"{}\"", told, where(*s, shelf), s->quote), width, "    ");
  }
  return out;
}

}  // namespace

std::string evidence_as_text(const std::vector<Statement>& statements, const Shelf& shelf, const TextStyle& style) {
  if (statements.empty()) return "The books of this index say nothing of their own measures.\n";
  std::map<std::string, std::map<std::pair<std::string, std::string>, Some>> by_measure;
  std::set<std::string_view> books;
  for (const Statement& s : statements) {
    by_measure[s.measure][{s.of, s.unit}].push_back(&s);
    books.insert(s.book);
  }
  std::string out = fmt::format("{} statements on {} measures in {} book{}.\n", statements.size(), by_measure.size(),
                                books.size(), books.size() == 1 ? "" : "s");
  for (const auto& [measure, groups] : by_measure) {
    out += "\n" + measure + "\n";
    for (const auto& [key, same] : groups) {
      const auto& [of, unit] = key;
      const std::string head = (of.empty() ? std::string("of anything") : "of " + of) +
                               (unit.empty() ? ", without a figure" : ", in " + unit);
      out += "  " + head + "\n" + lines_of(same, shelf, style.width) + (unit.empty() ? "" : agreement(same));
    }
  }
  return out;
}

}  // namespace gallipot
