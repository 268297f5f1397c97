// What does the shape of plain text's rows say: prose, list, verse or table? Internal to the room.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

namespace gallipot {

struct PrintedRow {
  std::string_view text;     ///< without white space at either end
  std::uint32_t indent = 0;  ///< columns before it; a tab counts as eight
  std::uint32_t width = 0;   ///< characters of `text`
  std::uint32_t line = 0;    ///< raw line

  std::uint32_t end() const { return indent + width; }
};

/// How a group of rows between blank lines is set. Entry i of `breaks` and `meant` is about the end of row i.
struct Shape {
  std::vector<bool> breaks;  ///< the row ends although the next word would have fitted
  std::vector<bool> meant;   ///< in prose: a break that carries meaning all the same
  bool list = false;         ///< most rows are broken on purpose
  bool items = false;        ///< ... and tell amounts, or hang: each is an item
  bool verse = false;        ///< ... and are indented lines without amounts
  bool table = false;        ///< rows are parted in columns
};

std::vector<PrintedRow> rows_of(std::string_view text);

/// The width to which the book's prose is wrapped: the column that nineteen long rows in twenty do not pass.
std::uint32_t measure_of(const std::vector<PrintedRow>& rows);

/// The shape of rows [begin, end).
Shape shape_of(const std::vector<PrintedRow>& rows, std::size_t begin, std::size_t end, std::uint32_t measure);

/// A row of stars, dashes or the like.
bool is_rule(const PrintedRow& row);

/// Two capitals or more and no small letter.
bool all_capitals(const PrintedRow& row);

/// The columns of a row: parted by three spaces, a tab, or dot leaders.
std::vector<std::string_view> cells_of(std::string_view text);

}  // namespace gallipot
