// Characters: what ICU does for us, behind five functions. All text inside the program is UTF-8 in NFC.
#pragma once

#include <string>
#include <string_view>

#include "indexer/fault/fault.h"

namespace gallipot {

/// NFC form of a UTF-8 text. Quick when it is NFC already. Ill-formed sequences become U+FFFD.
std::string to_nfc(std::string_view utf8);

/// Full case folding of a UTF-8 text (for comparing, not for showing), diacritics kept.
std::string fold_case(std::string_view utf8);

/// Case-folded, diacritics and ligatures taken apart and reduced to ASCII letters where they have one ("Béchamel" ->
/// "bechamel", "œ" -> "oe", typographic apostrophe -> "'"). Other characters are kept as they are.
std::string to_plain(std::string_view utf8);

/// What a file's bytes decode to, and how that was decided.
struct Decoded {
  std::string text;          ///< UTF-8; not yet normalized; line ends as they were
  std::string charset;       ///< IANA name of the encoding used
  std::string why;           ///< "byte order mark" | "declared" | "valid UTF-8" | "detected"
  std::size_t replaced = 0;  ///< bytes that could not be decoded and became U+FFFD
};

/// Decodes a file's bytes: a byte order mark rules, then `declared` (an IANA name, may be empty) where the bytes agree
/// with it, then UTF-8 where the bytes are valid UTF-8, then ICU's detector limited to the Latin encodings in which
/// such transcriptions come (ISO-8859-1 is read as Windows-1252, as HTML5 lays down). Faults: more than one byte in a
/// hundred undecodable, or NUL bytes (not a text file).
Outcome<Decoded> decode(std::string_view bytes, std::string_view declared = {});

/// Number of Unicode scalar values before byte offset `byte` of a well-formed UTF-8 text.
std::size_t code_points_before(std::string_view utf8, std::size_t byte);

}  // namespace gallipot
