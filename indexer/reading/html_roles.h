// What part of a book does an element's class name say it is? Internal to the room.
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot {

/// What a class name says about the part that its element plays in the book.
enum HtmlRole : std::uint16_t {
  plain = 0,
  page_number = 1,
  maybe_page_number = 2,
  verse = 4,
  footnote = 8,
  caption = 16,
  sidenote = 32,
  own_matter = 64,  ///< the transcriber's notes
  footnote_mark = 128,
};

/// The part that one class name speaks for, among the names under which transcriptions mark it.
HtmlRole role_of_class(std::string_view name);

}  // namespace gallipot
