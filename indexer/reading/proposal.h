// What a book's file says of the book itself, for the shelf list.
#pragma once

#include <string>

namespace gallipot {

/// Something that a file says about the book in it. It is shown to the person whose shelf it is and never believed
/// unasked.
struct Proposal {
  std::string field;  ///< of the shelf list: "title", "creator", "date", "place", "publisher", "language", ...
  std::string value;
  std::string from;  ///< where it stands: "TEI header", "Dublin Core of the EPUB", "title page"
};

}  // namespace gallipot
