// What a reader makes of a book: a stream of blocks. A block is what a compositor set as one piece: a heading, a
// paragraph, a list item, a table row.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/text/span.h"

namespace gallipot {

/// A stretch of a block's text set in another way than the rest. Runs may nest; they are ordered by begin.
struct Run {
  enum Style : std::uint16_t {
    italic = 1,
    bold = 2,
    small_caps = 4,
    superscript = 8,
    sidenote = 16,   ///< printed in the margin
    note_mark = 32,  ///< the mark of a footnote, kept in the text as printed
    link = 64,       ///< a reference to another place of the book
    underline = 128,
    large = 256,
  };
  Span span;                ///< in Block::text
  std::uint16_t style = 0;  ///< Style bits
  std::string name;         ///< element and class as transcribed ("span.smcap"); empty in plain text
};

/// Where a printed page begins inside a block's text.
struct PageStart {
  std::uint32_t at = 0;  ///< byte offset in Block::text of the first character on the page
  std::string page;      ///< as printed: "298", "xiv"
};

/// Where a line of the file begins inside a block's text.
struct LineStart {
  std::uint32_t at = 0;    ///< byte offset in Block::text
  std::uint32_t line = 0;  ///< 1-based raw line of the file
};

/// A word that is read otherwise than it stands in the copy, or could not be read for sure (then both are the same).
struct Mend {
  Span span;            ///< in the text that holds the one or the other
  std::string printed;  ///< what stands in the copy
  std::string read;     ///< what it is read as; the same as `printed` where it could not be read for sure
};

struct Block {
  enum class Kind : unsigned char {
    heading,  ///< h1..h6; in plain text only what a reader knows to be one (it mostly knows none)
    paragraph,
    list_item,
    table_row,  ///< cells parted by " | "; the cells' spans are in `cells`
    verse,
    note,     ///< a footnote; stands where it is printed, `anchor` names its mark
    caption,  ///< of a picture
    rule,     ///< a line across the page, stars; text empty
  };

  Kind kind = Kind::paragraph;
  int level = 0;      ///< heading level 1..6; list or quotation depth otherwise
  std::string text;   ///< UTF-8, NFC, white space folded to single spaces, no page marks, broken words joined;
                      ///< a printed line break that carries meaning (br, verse) is '\n'
  std::string style;  ///< element and class as transcribed, innermost block first: "p.recipe", "p.center div.sig"
  std::vector<Run> runs;
  std::vector<Span> cells;       ///< of a table row
  std::vector<PageStart> pages;  ///< page starts inside this block, ordered
  std::vector<LineStart> lines;  ///< at least one; ordered; the first has at == 0
  std::vector<Mend> mends;       ///< ordered; none as a reader gives the block, see indexer/mending
  std::string page;              ///< the printed page on which the block's first letter or digit stands; empty if none
  std::uint32_t line_end = 0;    ///< 1-based raw line on which the block ends
  std::string anchor;            ///< id of the element, for notes and cross references
  std::uint16_t indent = 0;      ///< leading spaces of the first line in plain text
  std::uint16_t blank_before = 0;  ///< blank lines before it in plain text
  bool centred = false;
  bool right_aligned = false;  ///< set at the right (signatures)
  bool contents = false;       ///< the reader knows it to be part of a contents list or index (rows that end in pages)

  std::uint32_t line_start() const { return lines.empty() ? 0 : lines.front().line; }
  /// The raw line on which byte `at` of the text stands.
  std::uint32_t line_at(std::uint32_t at) const;
  /// The printed page on which byte `at` of the text stands; empty where no page mark has been met.
  const std::string& page_at(std::uint32_t at) const;
};

}  // namespace gallipot
