// Pads, wraps and sets tables.
#include "query/reporting/layout.h"

#include <unicode/uchar.h>
#include <unicode/utf8.h>

#include <algorithm>

namespace gallipot {
namespace {

constexpr std::size_t gutter = 2;  // spaces between columns

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> out;
  for (std::size_t begin = 0;;) {
    const std::size_t end = text.find('\n', begin);
    out.push_back(text.substr(begin, end == std::string_view::npos ? end : end - begin));
    if (end == std::string_view::npos) return out;
    begin = end + 1;
  }
}

std::size_t widest_line(std::string_view text) {
  std::size_t out = 0;
  for (const std::string_view line : lines_of(text)) out = std::max(out, columns_of(line));
  return out;
}

void trim_right(std::string& line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
}

}  // namespace

std::size_t columns_of(std::string_view utf8) {
  std::size_t out = 0;
  const auto size = static_cast<std::int32_t>(utf8.size());
  for (std::int32_t i = 0; i < size;) {
    UChar32 c = 0;
    U8_NEXT(reinterpret_cast<const std::uint8_t*>(utf8.data()), i, size, c);
    const bool combining = c >= 0 && (U_GET_GC_MASK(c) & (U_GC_MN_MASK | U_GC_ME_MASK | U_GC_CF_MASK)) != 0;
    if (!combining) ++out;
  }
  return out;
}

std::string padded(std::string_view text, std::size_t width, bool right) {
  const std::size_t has = columns_of(text);
  const std::string space(width > has ? width - has : 0, ' ');
  return right ? space + std::string(text) : std::string(text) + space;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> out;
  for (const std::string_view line : lines_of(text)) {
    std::string current;
    std::size_t used = 0;
    for (std::size_t begin = 0; begin < line.size();) {
      while (begin < line.size() && line[begin] == ' ') ++begin;
      const std::size_t end = std::min(line.find(' ', begin), line.size());
      const std::string_view word = line.substr(begin, end - begin);
      begin = end;
      if (word.empty()) continue;
      const std::size_t columns = columns_of(word);
      if (used > 0 && used + 1 + columns > width) {
        out.push_back(std::move(current));
        current.clear();
        used = 0;
      }
      if (used > 0) {
        current += ' ';
        ++used;
      }
      current += word;
      used += columns;
    }
    out.push_back(std::move(current));
  }
  return out;
}

std::string paragraph(std::string_view text, std::size_t width, std::string_view first) {
  const std::size_t indent = columns_of(first);
  std::string out;
  bool at_first = true;
  for (const std::string& line : wrapped(text, width > indent + 20 ? width - indent : 20)) {
    out += at_first ? std::string(first) : std::string(indent, ' ');
    out += line;
    out += '\n';
    at_first = false;
  }
  return out;
}

std::string Grid::text(std::size_t width) const {
  if (rows.empty()) return {};
  std::size_t count = 0;
  for (const auto& row : rows) count = std::max(count, row.size());
  std::vector<std::size_t> widths(count, 0);
  for (const auto& row : rows)
    for (std::size_t c = 0; c < row.size(); ++c) widths[c] = std::max(widths[c], widest_line(row[c]));

  const auto set_row = [&](std::string& out, const std::vector<std::string>& row,
                           const std::vector<std::size_t>& shown) {
    std::size_t height = 1;
    for (const std::size_t c : shown)
      if (c < row.size()) height = std::max(height, lines_of(row[c]).size());
    for (std::size_t n = 0; n < height; ++n) {
      std::string line;
      for (const std::size_t c : shown) {
        if (c != shown.front()) line.append(gutter, ' ');
        const auto cell = c < row.size() ? lines_of(row[c]) : std::vector<std::string_view>{};
        line += padded(n < cell.size() ? cell[n] : std::string_view{}, widths[c], c < right.size() && right[c]);
      }
      trim_right(line);
      out += line + '\n';
    }
  };

  std::string out;
  const std::size_t first_free = std::min(kept, count);
  for (std::size_t next = first_free; next < count || next == first_free;) {
    std::vector<std::size_t> shown;
    std::size_t used = 0;
    for (std::size_t c = 0; c < first_free; ++c) {
      shown.push_back(c);
      used += widths[c] + (c > 0 ? gutter : 0);
    }
    const std::size_t begin = next;
    while (next < count && (next == begin || used + gutter + widths[next] <= width)) {
      used += gutter + widths[next];
      shown.push_back(next++);
    }
    if (!out.empty()) out += '\n';
    for (std::size_t r = 0; r < rows.size(); ++r) {
      set_row(out, rows[r], shown);
      if (r > 0) continue;
      for (std::size_t n = 0; n < used; ++n) out += "\xE2\x94\x80";
      out += '\n';
    }
    if (next == begin) break;
  }
  return out;
}

}  // namespace gallipot
