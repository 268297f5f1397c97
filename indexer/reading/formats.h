// In which format does a book come? Told by the content, and by the name's ending where the content leaves it open.
// Internal to the room.
#pragma once

#include <string>
#include <string_view>

namespace gallipot {

enum class Format : unsigned char { text, html, tei, epub, hocr, alto, notes };

Format format_of(std::string_view bytes, const std::string& name);

/// As ReadBook::format has it.
const char* format_name(Format format);

}  // namespace gallipot
