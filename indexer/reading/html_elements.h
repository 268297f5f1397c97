// What the elements of HTML mean to a reader of books. Internal to the room.
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot {

struct HtmlElement {
  enum Flag : std::uint16_t {
    block = 1,   ///< begins and ends a block of text
    empty = 2,   ///< has no content and no end tag
    hidden = 4,  ///< its content is not print
    list = 8,
    item = 16,
    row = 32,
    cell = 64,
    pre = 128,
  };
  std::string_view name;
  std::uint16_t flags = 0;
  std::uint16_t style = 0;  ///< Run::Style bits that the element has by itself
  std::uint8_t heading = 0;

  bool is(Flag flag) const { return (flags & flag) != 0; }
};

/// The element of that lower-case name; an unknown one is inline and plain.
const HtmlElement& html_element(std::string_view name);

}  // namespace gallipot
