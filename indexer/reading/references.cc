// Character references. The numbers 0x80..0x9F mean Windows-1252 (WHATWG HTML, 13.2.5.80); the two thousand names are
// gumbo's, asked once for each name that a book uses.
#include <gumbo.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <cstdint>

#include "indexer/reading/html_tokens.h"

namespace gallipot {
namespace {

constexpr std::array<char32_t, 32> kWindows1252 = {0x20AC, 0x81,   0x201A, 0x192,  0x201E, 0x2026, 0x2020, 0x2021,
                                                   0x2C6,  0x2030, 0x160,  0x2039, 0x152,  0x8D,   0x17D,  0x8F,
                                                   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                   0x2DC,  0x2122, 0x161,  0x203A, 0x153,  0x9D,   0x17E,  0x178};

bool is_alnum(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

int digit_value(char c, std::uint32_t base) {
  if (c >= '0' && c <= '9') return c - '0';
  if (base == 16 && c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (base == 16 && c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::string encode(std::uint32_t number) {
  if (number >= 0x80 && number <= 0x9F) number = kWindows1252[number - 0x80];
  if (number == 0 || number > 0x10FFFF || (number >= 0xD800 && number <= 0xDFFF)) number = 0xFFFD;
  std::array<std::uint8_t, 4> bytes{};
  std::int32_t length = 0;
  U8_APPEND_UNSAFE(bytes.data(), length, static_cast<UChar32>(number));
  return {reinterpret_cast<const char*>(bytes.data()), static_cast<std::size_t>(length)};
}

/// The length of a numeric reference at the front of `s`, and its number; length 0 where there is none.
std::pair<std::uint32_t, std::size_t> number_at(std::string_view s) {
  const bool hex = s.size() > 2 && (s[2] == 'x' || s[2] == 'X');
  const std::uint32_t base = hex ? 16 : 10;
  std::size_t i = hex ? 3 : 2;
  const std::size_t first = i;
  std::uint32_t number = 0;
  for (int d; i < s.size() && (d = digit_value(s[i], base)) >= 0; ++i)
    number = std::min<std::uint32_t>(number * base + static_cast<std::uint32_t>(d), 0x110000);
  if (i == first) return {0, 0};
  return {number, i < s.size() && s[i] == ';' ? i + 1 : i};
}

std::string text_of(const GumboNode* node) {
  while (node && node->type == GUMBO_NODE_ELEMENT) {
    const auto& children = node->v.element.children;
    node = children.length ? static_cast<const GumboNode*>(children.data[children.length - 1]) : nullptr;
  }
  return node && node->type == GUMBO_NODE_TEXT ? node->v.text.text : "";
}

std::string ask_gumbo(std::string_view reference) {
  const std::string page = "<!DOCTYPE html><body>" + std::string(reference);
  GumboOutput* parsed = gumbo_parse_with_options(&kGumboDefaultOptions, page.data(), page.size());
  std::string text = text_of(parsed->root);
  gumbo_destroy_output(&kGumboDefaultOptions, parsed);
  return text;
}

}  // namespace

std::pair<std::string_view, std::size_t> References::decode(std::string_view s) {
  static constexpr std::size_t kLongestName = 33;  // "CounterClockwiseContourIntegral;" and the ampersand
  std::size_t length = 1;
  const bool number = s.size() > 1 && s[1] == '#';
  if (number) {
    length = number_at(s).second;
  } else {
    while (length < std::min(s.size(), kLongestName) && is_alnum(s[length])) ++length;
    if (length > 1 && length < s.size() && s[length] == ';') ++length;
  }
  if (length <= 1) return {s.substr(0, 1), 1};
  const auto written = s.substr(0, length);
  auto found = known_.find(written);
  if (found == known_.end()) {
    if (known_.size() > 4096) known_.clear();  // a hostile file; a book uses a few dozen
    found = known_.emplace(std::string(written), number ? encode(number_at(s).first) : ask_gumbo(written)).first;
  }
  return {found->second, length};
}

std::string References::decode_all(std::string_view s) {
  std::string out;
  while (!s.empty()) {
    const std::size_t amp = std::min(s.find('&'), s.size());
    out += s.substr(0, amp);
    s.remove_prefix(amp);
    if (s.empty()) break;
    const auto [text, length] = decode(s);
    out += text;
    s.remove_prefix(length);
  }
  return out;
}

}  // namespace gallipot
