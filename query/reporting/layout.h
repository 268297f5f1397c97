// How does text stand on a terminal? Widths told in characters, words wrapped, columns that line up, wide tables
// parted.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gallipot {

/// Columns that a UTF-8 text takes on a terminal: its characters without combining marks.
std::size_t columns_of(std::string_view utf8);

/// `text` followed (or, for `right`, led) by spaces up to `width` columns; longer text is left as it is.
std::string padded(std::string_view text, std::size_t width, bool right = false);

/// The lines of `text` broken between words at `width` columns; a '\n' in it breaks too. A word that is too long stands
/// on a line of its own.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// `text` wrapped, the first line led by `first`, the others by as many spaces.
std::string paragraph(std::string_view text, std::size_t width, std::string_view first = {});

/// A table whose cells may hold several lines ('\n'). The first row is the heading.
struct Grid {
  std::vector<std::vector<std::string>> rows;
  std::size_t kept = 1;     ///< so many first columns are repeated in each part of a table that is too wide
  std::vector<bool> right;  ///< columns set to the right; may be shorter than the row

  /// The table in `width` columns: as many columns side by side as fit, the rest in further parts below.
  std::string text(std::size_t width) const;
};

}  // namespace gallipot
