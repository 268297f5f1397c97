// The tokenizer: one pass over the bytes; ICU is asked only about characters outside ASCII.
#include "indexer/text/words.h"

#include <unicode/uchar.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>

#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

enum class Sort : unsigned char { space, letter, digit, apostrophe, fraction, dash, other };

struct Char {
  Sort sort;
  bool upper;
  std::uint32_t length;
};

Char ascii_char(unsigned char c) {
  if ((c >= 'a' && c <= 'z')) return {Sort::letter, false, 1};
  if (c >= 'A' && c <= 'Z') return {Sort::letter, true, 1};
  if (c >= '0' && c <= '9') return {Sort::digit, false, 1};
  if (c == '\'' || c == '`') return {Sort::apostrophe, false, 1};
  if (c == '-') return {Sort::dash, false, 1};
  if (c <= ' ') return {Sort::space, false, 1};
  return {Sort::other, false, 1};
}

Char char_at(std::string_view text, std::size_t at) {
  const auto c = static_cast<unsigned char>(text[at]);
  if (c < 0x80) return ascii_char(c);
  std::int32_t i = static_cast<std::int32_t>(at);
  UChar32 u;
  U8_NEXT(reinterpret_cast<const std::uint8_t*>(text.data()), i, static_cast<std::int32_t>(text.size()), u);
  const auto length = static_cast<std::uint32_t>(i) - static_cast<std::uint32_t>(at);
  if (u < 0) return {Sort::other, false, length};
  if (u == 0x2019 || u == 0x2018 || u == 0x2BC) return {Sort::apostrophe, false, length};
  if ((u >= 0xBC && u <= 0xBE) || (u >= 0x2150 && u <= 0x215E)) return {Sort::fraction, false, length};
  if (u >= 0x2010 && u <= 0x2015) return {Sort::dash, false, length};
  if (u_isUWhiteSpace(u)) return {Sort::space, false, length};
  if (u_isalpha(u) || u_charType(u) == U_NON_SPACING_MARK) return {Sort::letter, u_isupper(u) != 0, length};
  return {Sort::other, false, length};
}

bool is_lower_ascii(std::string_view s) {
  return std::all_of(s.begin(), s.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '\''; });
}

}  // namespace

Words::Words(std::string_view text) : text_(text) {
  words_.reserve(text.size() / 5 + 4);
  const auto n = static_cast<std::uint32_t>(text.size());
  bool space = true;
  auto keep = [&](Word w) {
    w.glued = !space && !words_.empty();
    space = false;
    const auto printed = w.span.in(text);
    if (w.kind == Word::Kind::word && is_lower_ascii(printed)) {
      w.key = printed;
    } else if (w.kind == Word::Kind::number && static_cast<unsigned char>(printed[0]) < 0x80) {
      w.key = printed;
    } else if (w.kind == Word::Kind::point && printed.size() == 1) {
      w.key = printed;
    } else {
      w.key = keys_.emplace_back(w.kind == Word::Kind::point && w.key.size() ? std::string(w.key) : to_plain(printed));
    }
    words_.push_back(w);
  };
  for (std::uint32_t i = 0; i < n;) {
    const Char c = char_at(text, i);
    if (c.sort == Sort::space) {
      space = true;
      i += c.length;
      continue;
    }
    Word w;
    std::uint32_t j = i + c.length;
    if (c.sort == Sort::letter) {
      w.capital = c.upper;
      std::size_t letters = 1, uppers = c.upper;
      while (j < n) {
        const Char d = char_at(text, j);
        if (d.sort == Sort::letter) {
          ++letters;
          uppers += d.upper;
        } else if (d.sort != Sort::apostrophe || j + d.length >= n ||
                   char_at(text, j + d.length).sort != Sort::letter) {
          break;
        }
        j += d.length;
      }
      w.all_capitals = letters > 1 && uppers == letters;
    } else if (c.sort == Sort::digit) {
      w.kind = Word::Kind::number;
      while (j < n) {
        const Char d = char_at(text, j);
        const bool inner = (text[j] == '.' || text[j] == ',') && j + 1 < n && char_at(text, j + 1).sort == Sort::digit;
        if (d.sort != Sort::digit && !inner) break;
        j += d.length;
      }
    } else if (c.sort == Sort::fraction) {
      w.kind = Word::Kind::number;
    } else {
      w.kind = Word::Kind::point;
      if (c.sort == Sort::dash) {
        while (j < n && char_at(text, j).sort == Sort::dash) j += char_at(text, j).length;
        const bool hyphen = j - i == 1 || text.substr(i, j - i) == "\u2010" || text.substr(i, j - i) == "\u2011";
        w.key = hyphen ? "-" : "--";
      }
    }
    w.span = {i, j};
    keep(w);
    i = j;
  }
}

std::string singular(std::string_view key) {
  static constexpr std::array<std::string_view, 27> stays = {
      "molasses", "asparagus", "couscous", "swiss",  "brussels", "grass",   "watercress", "cress",  "isinglass",
      "citrus",   "hibiscus",  "bass",     "ananas", "lens",     "species", "series",     "always", "gas",
      "this",     "his",       "its",      "thus",   "octopus",  "is",      "was",        "has",    "calves'"};
  if (key.size() < 4 || key.back() != 's' || std::find(stays.begin(), stays.end(), key) != stays.end())
    return std::string(key);
  auto ends = [&](std::string_view e) { return key.size() >= e.size() && key.substr(key.size() - e.size()) == e; };
  auto cut = [&](std::size_t n, std::string_view add) {
    return std::string(key.substr(0, key.size() - n)).append(add);
  };
  if (ends("'s") || ends("ss") || ends("us") || ends("is")) return std::string(key);
  if (ends("leaves") || ends("loaves") || ends("halves") || ends("calves") || ends("shelves") || ends("sheaves") ||
      ends("beeves"))
    return cut(3, "f");
  if (key == "knives" || ends("wives") || key == "lives") return cut(3, "fe");
  if (ends("ies") && key.size() > 4) return key == "pies" || key == "dies" || key == "ties" ? cut(1, "") : cut(3, "y");
  if (ends("oes") && key != "shoes" && key != "sloes" && key != "toes" && key != "roes") return cut(2, "");
  if (ends("shes") || ends("ches") || ends("xes") || ends("sses") || ends("zes")) return cut(2, "");
  return cut(1, "");
}

}  // namespace gallipot
