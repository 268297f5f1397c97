// Lays the runs of a block and its words in capitals over its first bytes.
#include "indexer/segmenting/marking.h"

#include <algorithm>

namespace gallipot {
namespace {

enum : std::uint8_t {
  in_italic = 1,
  in_bold = 2,
  in_small = 4,
  in_under = 8,
  in_margin = 16,
  in_caps = 32,
  letter = 64
};

std::uint8_t packed(std::uint16_t style) {
  std::uint8_t bits = 0;
  if (style & Run::italic) bits |= in_italic;
  if (style & Run::bold) bits |= in_bold;
  if (style & Run::small_caps) bits |= in_small;
  if (style & Run::underline) bits |= in_under;
  if (style & Run::sidenote) bits |= in_margin;
  return bits;
}

bool upper(char c) { return c >= 'A' && c <= 'Z'; }
bool lower(char c) { return c >= 'a' && c <= 'z'; }
bool beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

}  // namespace

Marking::Marking(const Block& block) {
  const std::string_view text = block.text;
  text_ = text;
  size_ = static_cast<std::uint32_t>(std::min<std::size_t>(text.size(), reach));
  for (std::uint32_t i = 0; i < size_; ++i)
    if (upper(text[i]) || lower(text[i])) bits_[i] = letter;
  for (const auto& run : block.runs) {
    if (run.span.begin >= size_) break;
    const auto bits = packed(run.style);
    for (std::uint32_t i = run.span.begin; bits && i < std::min(run.span.end, size_); ++i) bits_[i] |= bits;
  }
  mark_capitals(text);
}

void Marking::mark_capitals(std::string_view text) {
  for (std::uint32_t i = 0; i < size_;) {
    std::uint32_t end = i, big = 0, small = 0;
    for (; end < size_ && (upper(text[end]) || lower(text[end]) || beyond_ascii(text[end]) || text[end] == '\'');
         ++end) {
      big += upper(text[end]);
      small += lower(text[end]);
    }
    // A genitive's "s" is often set small: "CALF's".
    const bool capitals = big >= 2 && (small == 0 || (small == 1 && big >= 3));
    const bool lone = big == 1 && small == 0;  // "A" tells nothing: it leans on its neighbours
    for (std::uint32_t k = i; k < end; ++k) {
      if (capitals) bits_[k] |= in_caps;
      if (lone) bits_[k] &= static_cast<std::uint8_t>(~letter);
    }
    i = std::max(end, i + 1);
  }
}

Setting Marking::setting(Span span) const {
  std::array<std::uint32_t, 6> count{};
  std::uint32_t letters = 0, marked = 0;
  int depth = 0;  // what stands in brackets is often set otherwise: it is asked only where all is in brackets
  const bool all_bracketed = span.begin < size_ && (text_[span.begin] == '(' || text_[span.begin] == '[');
  for (std::uint32_t i = span.begin; i < std::min(span.end, size_); ++i) {
    if (text_[i] == '(' || text_[i] == '[') ++depth;
    if (text_[i] == ')' || text_[i] == ']') --depth;
    if (!(bits_[i] & letter) || (depth > 0 && !all_bracketed)) continue;
    ++letters;
    marked += (bits_[i] & 63) != 0;
    for (std::uint32_t k = 0; k < 6; ++k) count[k] += (bits_[i] >> k) & 1;
  }
  if (letters == 0) return Setting::plain;
  const auto most = [&](std::uint32_t n) { return n * 10 >= letters * 7; };
  if (most(count[4])) return Setting::margin;
  if (most(count[1])) return most(count[5]) ? Setting::bold_caps : Setting::bold;
  if (most(count[5])) return Setting::caps;
  if (most(count[2])) return Setting::small_caps;
  if (most(count[0])) return Setting::italic;
  if (most(count[3])) return Setting::underline;
  return most(marked) ? Setting::mixed : Setting::plain;
}

std::uint32_t Marking::marked_until(std::uint32_t from) const {
  std::uint32_t i = from, last = from;
  for (; i < size_; ++i) {
    if ((bits_[i] & letter) && !(bits_[i] & 63)) break;
    if (bits_[i] & 63) last = i + 1;
  }
  return last;
}

}  // namespace gallipot
