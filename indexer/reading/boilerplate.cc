// Cuts a transcription's own front and end matter off.
#include "indexer/reading/boilerplate.h"

#include <algorithm>
#include <cstring>
#include <string>

namespace gallipot {
namespace {

constexpr std::size_t kFront = 12;  ///< blocks in front among which credits and notes may stand

std::string folded(std::string_view s) {
  std::string out;
  for (const char c : s) {
    if (c >= 'A' && c <= 'Z')
      out += static_cast<char>(c + 32);
    else if (static_cast<unsigned char>(c) <= ' ')
      out += out.empty() || out.back() == ' ' ? "" : " ";
    else
      out += c;
  }
  return out;
}

bool has(std::string_view s, std::string_view part) { return s.find(part) != std::string_view::npos; }

bool starts_a_text(std::string_view line) {
  return has(line, "start of th") || has(line, "start of proj") || has(line, "*start");
}

bool ends_a_text(std::string_view line) { return has(line, "end of th") || has(line, "end of proj"); }

bool is_credit(std::string_view text) {
  const std::string t = folded(text.substr(0, 200));
  static constexpr const char* openings[] = {"produced by ",
                                             "e-text prepared by",
                                             "etext prepared by",
                                             "this ebook was produced",
                                             "this etext was produced",
                                             "transcribed by ",
                                             "transcribed from ",
                                             "[transcriber",
                                             "transcriber's note",
                                             "transcriber\u2019s note",
                                             "transcribers' note",
                                             "transcribers\u2019 note",
                                             "prepared by ",
                                             "ebook produced by",
                                             "proofread"};
  return std::any_of(std::begin(openings), std::end(openings), [&](const char* o) { return t.starts_with(o); });
}

bool is_notes_heading(std::string_view text) {
  if (text.size() > 60) return false;
  const std::string t = folded(text);
  return t.starts_with("transcriber") && has(t, "note");
}

/// The paragraphs under a transcriber's heading in front: those set alike, up to the next heading or rule.
void drop_notes_after(const std::vector<Block>& blocks, std::size_t heading, std::vector<bool>& gone) {
  for (std::size_t b = heading + 1; b < std::min(blocks.size(), heading + kFront); ++b) {
    const bool alike = blocks[b].style == blocks[heading + 1].style && blocks[b].kind == blocks[heading + 1].kind;
    if (!alike || blocks[b].kind == Block::Kind::heading || blocks[b].kind == Block::Kind::rule) return;
    if (blocks[b].centred || blocks[b].blank_before > 2) return;
    gone[b] = true;
  }
}

}  // namespace

OwnText own_text(std::string_view text) {
  OwnText own;
  std::uint32_t line_number = 0;
  for (std::size_t i = 0; i < text.size();) {
    const void* found = std::memchr(text.data() + i, '\n', text.size() - i);
    const std::size_t end =
        found ? static_cast<std::size_t>(static_cast<const char*>(found) - text.data()) : text.size();
    ++line_number;
    const auto line = text.substr(i, end - i);
    i = end + 1;
    const auto stars = line.find("***");
    if (stars == std::string_view::npos || stars > 40) continue;
    const std::string f = folded(line.substr(stars, 300));
    if (starts_a_text(f.substr(0, 40)) && !has(f, "license") && !has(f, "small print") && own.first == 0) {
      own.first = line_number;
    } else if (ends_a_text(f.substr(0, 40)) && own.last == 0 && line_number > own.first) {
      own.last = line_number;
    }
  }
  return own;
}

void cut_boilerplate(Draft& draft, OwnText own) {
  auto& blocks = draft.blocks;
  std::vector<bool> gone(blocks.size());
  for (std::size_t b = 0; b < blocks.size(); ++b)
    gone[b] = (own.first > 0 && blocks[b].line_start() <= own.first) ||
              (own.last > 0 && blocks[b].line_start() >= own.last) ||
              (blocks[b].text.empty() && blocks[b].kind != Block::Kind::rule);
  std::size_t seen = 0;
  for (std::size_t b = 0; b < blocks.size() && seen < kFront; ++b) {
    if (gone[b]) continue;
    ++seen;
    if (is_credit(blocks[b].text)) gone[b] = true;
    if (is_notes_heading(blocks[b].text)) drop_notes_after(blocks, b, gone);
  }
  const std::size_t tail = blocks.size() - blocks.size() / 10;
  for (std::size_t b = tail; b < blocks.size(); ++b)
    if (!gone[b] && is_notes_heading(blocks[b].text)) {
      std::fill(gone.begin() + static_cast<std::ptrdiff_t>(b), gone.end(), true);
      break;
    }
  drop_blocks(draft, gone);
}

}  // namespace gallipot
