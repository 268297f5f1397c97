// A recipe as cut from its book: its own words, and where they stand in print and on disk.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/reading/block.h"
#include "indexer/text/span.h"

namespace gallipot {

/// A piece of a recipe's text that the printer set as one: a paragraph, a line of an ingredient list, a note.
struct Part {
  enum class Kind : unsigned char { paragraph, list_item, table_row, verse, note, remark, signature, subtitle };
  Kind kind = Kind::paragraph;
  Span span;  ///< in Recipe::text
};

struct Recipe {
  std::uint32_t ordinal = 0;  ///< 1-based, within its book
  std::string title;          ///< as printed, NFC, one line, number and run-in point taken off
  std::string title_printed;  ///< with number and points, as printed
  std::string dish_title;  ///< the title that names the dish: that of the recipe before for "Another way", else `title`
  std::string chapter;     ///< the chapter head above it; sections joined with " / "; empty where there is none
  std::string number;      ///< the printed receipt number; empty where there is none
  std::string text;        ///< the recipe's words without its title: parts joined by one space, white space folded, NFC
  std::vector<Part> parts;       ///< cover `text`, ordered, parted by the one space
  std::string contributor;       ///< as printed ("Mrs. M. P."); empty where there is none
  std::string page;              ///< printed page of the title's first letter; empty where the book has no page marks
  std::string page_end;          ///< printed page of the last letter
  std::uint32_t line_start = 0;  ///< 1-based raw line of the title's first letter
  std::uint32_t line_end = 0;
  std::vector<LineStart> lines;  ///< source lines of `text`
  std::vector<PageStart> pages;  ///< page starts inside `text`
  std::vector<Mend> mends;       ///< words of `text` read otherwise than they stand in the copy, ordered. Cut, parsed
                                 ///< and normalized a recipe's text holds the readings; stored, what stands in the copy
  std::string title_stands;      ///< `title` letter for letter as it stands in the copy; empty where that is the same
  std::string image;             ///< of the page on which the title stands: a file's path or an address; may be empty
  double confidence = 1.0;       ///< 0..1: how sure the cut and the reading of its words are
  std::string doubt;             ///< why it is not sure, as a clause; empty when confidence is high
};

/// What a book's segmentation found out about the book, for the summary and for people who look at the cutting.
struct SegmentedBook {
  std::vector<Recipe> recipes;
  std::string habit;  ///< one sentence: how this book marks its recipes ("h4 in capitals; untitled ways run in")
};

}  // namespace gallipot
