// HTML as a row of tags and texts. Follows the tokenization of the WHATWG HTML standard (section 13.2.5) as far as
// published text needs it, over the bytes in place: nothing is copied, and the raw line of each token is known.
// Internal to the room.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gallipot {

struct HtmlToken {
  enum class Kind : unsigned char { text, start, end };
  Kind kind = Kind::text;
  std::uint32_t line = 0;  ///< raw line of the first byte
  std::string_view text;   ///< of a text: the bytes, references not yet decoded
  bool raw = false;        ///< text of script or style: references mean nothing
  std::string name;        ///< of a tag, lower case
  std::vector<std::pair<std::string_view, std::string_view>> attributes;  ///< names as written, values undecoded

  /// Value of an attribute by lower-case name; empty where it is absent.
  std::string_view attribute(std::string_view wanted) const;
};

class HtmlTokens {
 public:
  explicit HtmlTokens(std::string_view html) : html_(html) {}
  /// The next token; false at the end. The token's views hold as long as the html does.
  bool next(HtmlToken& token);

 private:
  bool read_tag(HtmlToken& token);
  void read_attributes(HtmlToken& token);
  void skip_declaration();
  bool read_raw_text(HtmlToken& token);
  void move_to(std::size_t at);

  std::string_view html_;
  std::size_t at_ = 0;
  std::uint32_t line_ = 1;
  std::string raw_until_;  ///< name of the element whose raw text comes next
};

/// Decodes character references ("&eacute;", "&#233;", "&#xE9;"), those without semicolon as the standard allows.
/// Named ones are looked up by gumbo once and remembered.
class References {
 public:
  /// The reference at the front of `s` (which begins with '&'): what it stands for, and its length in `s`.
  /// Where it is none, the ampersand itself.
  std::pair<std::string_view, std::size_t> decode(std::string_view s);
  /// A whole text with its references decoded.
  std::string decode_all(std::string_view s);

 private:
  std::map<std::string, std::string, std::less<>> known_;
};

}  // namespace gallipot
