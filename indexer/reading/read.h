// How does a book become blocks? One reader a format; this chooses among them.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/reading/block.h"
#include "indexer/reading/proposal.h"

namespace gallipot {

/// A book as read, with what was doubtful in the reading.
struct ReadBook {
  std::vector<Block> blocks;  ///< in order of the file, without the transcription's own front and end matter
  std::string format;         ///< "text" | "html" | "TEI" | "EPUB" | "hOCR" | "ALTO" | "notes"
  std::string charset;        ///< IANA name
  std::vector<Fault> doubts;  ///< what looked wrong but did not stop the reading (bytes replaced, pages that run back)
  std::size_t bytes = 0;      ///< of the file
  std::vector<std::pair<std::string, std::string>> images;  ///< printed page -> its image, as the file itself names it
  std::vector<Proposal> proposals;  ///< what the file says of the book: for the shelf list, never believed unasked
  std::size_t page_marks = 0;
  std::string page_before;  ///< not used by callers: the page before the first block, if a mark stood there
};

/// Reads the bytes of a book; the format is told by the content (and by `name`'s ending where the content leaves it
/// open). `name` is for faults. Faults: not a text, empty, nothing left once the transcription's own matter is cut.
Outcome<ReadBook> read_book(std::string_view bytes, const std::string& name);

/// The same from a file on disk. Faults: no such file, not readable.
Outcome<ReadBook> read_book_file(const std::string& path);

}  // namespace gallipot
