// What a format's reader hands on before pages are set, broken words joined and the transcription's own matter cut:
// blocks, and the places in them that later passes decide about. Internal to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/reading/block.h"
#include "indexer/reading/proposal.h"

namespace gallipot {

/// A page mark met while reading. `block` may be one past the last block (a mark after all text).
struct PageMark {
  std::uint32_t block = 0;
  std::uint32_t at = 0;    ///< byte offset in that block's text
  std::uint32_t line = 0;  ///< raw line of the mark
  std::string label;       ///< as printed: "298", "xiv"
  bool sure = true;        ///< false for a form that is a page mark only if the book's others run in order ("p12")
};

/// A place where the text breaks after a hyphen at a line's end; `at` is the first byte after the hyphen.
struct Seam {
  std::uint32_t block = 0;
  std::uint32_t at = 0;
};

struct Draft {
  std::vector<Block> blocks;
  std::vector<PageMark> marks;
  std::vector<Seam> seams;
  std::vector<std::pair<std::string, std::string>> images;  ///< printed page -> its image
  std::vector<Proposal> proposals;
};

/// Takes blocks out. What pointed into one that goes points to the front of the next that stays; its seams go.
void drop_blocks(Draft& draft, const std::vector<bool>& gone);

/// Appends block `from` to block `to` after one space, with all that points into it; `from` is left empty.
void append_block(Draft& draft, std::uint32_t to, std::uint32_t from);

/// Reads HTML that is UTF-8 in NFC. Needs no well-formed input. Faults: elements nested past all use (html_tree.h).
Outcome<Draft> draft_html(std::string_view text);

/// Reads plain text that is UTF-8 in NFC.
Draft draft_text(std::string_view text);

/// Reads a cook's own notes (notes_text.h).
Draft draft_notes(std::string_view text);

/// Reads TEI P5 (tei.h). Faults: not well-formed XML (line), nested past all use, no text in it.
Outcome<Draft> draft_tei(std::string_view text);

/// Reads the bytes of an EPUB: its XHTML documents in the order of its spine. Lines count on from one document to the
/// next. Faults: no zip archive, no package document, more or larger entries than any book has (epub.cc).
/// `text` is set to all documents end to end, in which those lines count.
Outcome<Draft> draft_epub(std::string_view bytes, std::string& text);

/// Reads what OCR engines and libraries write of scanned pages (scan.h). Faults as draft_html and draft_tei; no page.
Outcome<Draft> draft_hocr(std::string_view text);
Outcome<Draft> draft_alto(std::string_view text);

/// Appends a draft to another, with the lines of the first going before.
void append_draft(Draft& to, Draft from, std::uint32_t lines_before);

}  // namespace gallipot
