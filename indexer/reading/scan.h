// Pages of a scan as an engine or a library has read them: words with their boxes. hocr.cc and alto.cc read the two
// open formats, scan_order.cc and scan_folios.cc find columns, running heads and folios, scan_blocks.cc sets the
// blocks. Internal to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/reading/draft.h"

namespace gallipot {

/// A rectangle on the page; the unit is the format's own (mostly the scan's pixels), y runs down.
struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
  double width() const { return right - left; }
  double height() const { return bottom - top; }
  double middle() const { return (left + right) / 2; }
  bool empty() const { return right <= left || bottom <= top; }
  void take_in(const Box& other);
};

struct ScanWord {
  std::string text;
  Box box;
  double sure = 1;         ///< 0..1, the engine's own; 1 where it says nothing
  std::uint32_t line = 0;  ///< raw line of the file
};

/// A printed line, or the part of it that stands in one column.
struct ScanLine {
  std::vector<ScanWord> words;
  Box box;
  double size = 0;  ///< height of the type by the engine's account; 0 where it says nothing
  int area = 0;     ///< lines of one block, by the engine's account, share it
  int column = 0;   ///< 0 where the page has one column or the line runs across; 1 left, 2 right
  bool bold = false, italic = false;

  std::string text() const;  ///< words parted by spaces
};

struct ScanPage {
  std::string image;  ///< of the page, as the file names it; may be empty
  Box box;
  std::vector<ScanLine> lines;
  std::string folio;       ///< the printed page number, once found
  std::uint32_t line = 0;  ///< raw line of the file
};

/// Reads hOCR 1.2: ocr_page, ocr_line (and its kinds), ocrx_word, with bbox, image, x_size and x_wconf.
/// Source: hOCR, OCR Workflow and Output embedded in HTML, version 1.2.
Outcome<std::vector<ScanPage>> pages_of_hocr(std::string_view text);

/// Reads ALTO 2 to 4: Page, TextBlock, TextLine, String, HYP, with HPOS, VPOS, WIDTH, HEIGHT, WC, SUBS_CONTENT.
/// Source: ALTO, Technical Metadata for Layout and Text Objects, Library of Congress, schema 4.
Outcome<std::vector<ScanPage>> pages_of_alto(std::string_view text);

/// Puts the lines of a page in the order of reading: columns one after the other, between lines that run across them.
/// A line that an engine read across two columns is parted.
void order_lines(ScanPage& page);

/// Takes running heads and folios out of the pages and sets every page's folio: as read, or by its neighbours where it
/// was misread or is not printed.
void take_folios(std::vector<ScanPage>& pages);

/// The blocks of a scan.
Draft draft_scan(std::vector<ScanPage> pages);

}  // namespace gallipot
