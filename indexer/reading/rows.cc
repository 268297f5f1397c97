// Rows and the shapes of their groups.
#include "indexer/reading/rows.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <string>

namespace gallipot {
namespace {

bool is_blank(char c) { return static_cast<unsigned char>(c) <= ' '; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_lower(char c) { return c >= 'a' && c <= 'z'; }

std::uint32_t characters(std::string_view s) {
  std::uint32_t n = 0;
  for (const char c : s) n += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  return n;
}

std::string_view first_word(std::string_view s) { return s.substr(0, std::min(s.find(' '), s.size())); }

/// An amount opens the row ("2 cups", "Half a pound") or a figure stands in it ("Flour, 1 lb.").
bool tells_amount(std::string_view row) {
  static constexpr std::array<std::string_view, 22> words = {
      "a",   "an",     "one",  "two", "three",   "four",  "five",  "six",  "seven", "eight",  "nine",
      "ten", "twelve", "half", "the", "quarter", "juice", "pinch", "salt", "yolks", "whites", "some"};
  if (std::any_of(row.begin(), row.end(), is_digit)) return true;
  if (row.find("\xC2\xBC") != row.npos || row.find("\xC2\xBD") != row.npos || row.find("\xC2\xBE") != row.npos)
    return true;
  std::string word;
  for (const char c : first_word(row))
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'))
      word += static_cast<char>(c | 32);
    else
      break;
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool ends_sentence(std::string_view row) { return !row.empty() && std::strchr(".:;!?-,]", row.back()) != nullptr; }

void find_breaks(const std::vector<PrintedRow>& rows, std::size_t begin, std::size_t end, std::uint32_t measure,
                 Shape& shape) {
  std::uint32_t widest = 0, least_indent = UINT32_MAX;
  for (std::size_t i = begin; i < end; ++i) {
    widest = std::max(widest, rows[i].end());
    least_indent = std::min(least_indent, rows[i].indent);
  }
  const bool narrow = widest - std::min(least_indent, widest) < measure * 13 / 20;
  for (std::size_t i = begin; i + 1 < end; ++i) {
    const PrintedRow& row = rows[i];
    const PrintedRow& next = rows[i + 1];
    const std::uint32_t wanted = row.end() + 1 + characters(first_word(next.text)) + widest / 9;
    const bool fits = narrow || wanted <= widest;
    const bool small = is_lower(next.text[0]);
    const bool hangs = next.indent >= least_indent + 2 && row.indent < next.indent;
    const bool goes_on = (hangs && (small || row.end() > widest * 3 / 5)) || (small && !narrow && !fits) ||
                         (row.indent >= least_indent + 2 && next.indent == row.indent && small);
    shape.breaks.push_back((fits || hangs || next.indent < row.indent) && !goes_on);
    shape.meant.push_back(fits && row.end() < widest * 7 / 10 && !small &&
                          (all_capitals(row) || ends_sentence(row.text)));
  }
}

}  // namespace

std::vector<PrintedRow> rows_of(std::string_view text) {
  std::vector<PrintedRow> rows;
  rows.reserve(text.size() / 48 + 1);
  std::uint32_t line = 0;
  for (std::size_t i = 0; i < text.size();) {
    const void* found = std::memchr(text.data() + i, '\n', text.size() - i);
    const std::size_t end =
        found ? static_cast<std::size_t>(static_cast<const char*>(found) - text.data()) : text.size();
    PrintedRow row;
    row.line = ++line;
    std::size_t a = i, b = end;
    for (; a < b && is_blank(text[a]); ++a) row.indent += text[a] == '\t' ? 8u : text[a] == ' ' ? 1u : 0u;
    while (b > a && is_blank(text[b - 1])) --b;
    row.text = text.substr(a, b - a);
    row.width = characters(row.text);
    rows.push_back(row);
    i = end + 1;
  }
  return rows;
}

std::uint32_t measure_of(const std::vector<PrintedRow>& rows) {
  std::array<std::uint32_t, 256> seen{};
  std::uint32_t all = 0;
  for (const PrintedRow& row : rows)
    if (row.width > 30) {
      ++seen[std::min<std::size_t>(row.end(), seen.size() - 1)];
      ++all;
    }
  std::uint32_t below = 0;
  for (std::uint32_t column = 0; column < seen.size(); ++column) {
    below += seen[column];
    if (all > 0 && below * 20ull >= all * 19ull) return column;
  }
  return 72;
}

Shape shape_of(const std::vector<PrintedRow>& rows, std::size_t begin, std::size_t end, std::uint32_t measure) {
  Shape shape;
  if (end - begin < 2) return shape;
  find_breaks(rows, begin, end, measure, shape);
  const std::size_t count = end - begin;
  std::size_t breaks = 0, amounts = 0, columns = 0, capitals = 0, indented = 0;
  for (const bool b : shape.breaks) breaks += b;
  for (std::size_t i = begin; i < end; ++i) {
    amounts += tells_amount(rows[i].text);
    capitals += all_capitals(rows[i]);
    indented += rows[i].indent >= 2;
    columns += cells_of(rows[i].text).size() > 1;
  }
  const std::size_t ends = count - 1;
  shape.table = columns * 2 >= count && columns >= 2 && (breaks * 2 >= ends || columns >= 4);
  const bool hangs = indented == count && breaks * 3 >= ends && amounts * 2 >= count;
  shape.list = breaks * 2 >= ends || hangs;
  if (shape.list)  // in a list only a small letter goes on with the row above
    for (std::size_t i = begin; i + 1 < end; ++i)
      if (!is_lower(rows[i + 1].text[0]) && rows[i + 1].indent <= rows[i].indent) shape.breaks[i - begin] = true;
  shape.items = shape.list && capitals * 2 < count && (amounts * 2 >= breaks + 1 && (count > 2 || amounts == count));
  shape.verse = shape.list && !shape.items && indented == count && capitals * 2 < count;
  return shape;
}

bool is_rule(const PrintedRow& row) {
  constexpr std::string_view set = "*-_=~.+#o ";
  std::size_t marks = 0;
  for (const char c : row.text) {
    if (set.find(c) == set.npos) return false;
    if (c == 'o' && row.text.find_first_of("*-_=~+#") == row.text.npos) return false;
    marks += c != ' ';
  }
  return marks >= 3;
}

bool all_capitals(const PrintedRow& row) {
  std::size_t capitals = 0;
  for (const char c : row.text) {
    if (is_lower(c)) return false;
    capitals += c >= 'A' && c <= 'Z';
  }
  return capitals >= 2;
}

std::vector<std::string_view> cells_of(std::string_view text) {
  std::vector<std::string_view> cells;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (c != ' ' && c != '\t' && c != '.') {
      ++i;
      continue;
    }
    std::size_t j = i, dots = 0, spaces = 0, tabs = 0;
    for (; j < text.size() && (text[j] == ' ' || text[j] == '\t' || text[j] == '.'); ++j) {
      dots += text[j] == '.';
      spaces += text[j] == ' ';
      tabs += text[j] == '\t';
    }
    const bool parts = dots >= 3 ? j < text.size() : spaces >= 3 || tabs > 0;
    if (parts && i > begin) {
      // The one point after a word belongs to the word.
      cells.push_back(text.substr(begin, i - begin + (dots > 0 && dots < 3 && c == '.' ? 1 : 0)));
      begin = j;
    }
    i = j;
  }
  if (begin < text.size()) cells.push_back(text.substr(begin));
  return cells;
}

}  // namespace gallipot
