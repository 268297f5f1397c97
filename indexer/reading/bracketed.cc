// Bracketed matter that fills a block, or several up to the closing bracket.
#include "indexer/reading/bracketed.h"

#include <algorithm>
#include <string_view>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

constexpr std::size_t kMostBlocks = 40;  ///< a bracket left open is not followed further

bool starts_folded(std::string_view s, std::string_view wanted) {
  return s.size() >= wanted.size() && std::equal(wanted.begin(), wanted.end(), s.begin(), [](char w, char c) {
           return w == (c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c);
         });
}

/// The last block of the matter that opens in block `b`: the one in which the brackets close.
std::size_t closing_block(const std::vector<Block>& blocks, std::size_t b) {
  int depth = 0;
  for (std::size_t i = b; i < std::min(blocks.size(), b + kMostBlocks); ++i) {
    for (const char c : blocks[i].text) depth += c == '[' ? 1 : c == ']' ? -1 : 0;
    if (depth <= 0) return i;
  }
  return b;
}

void cut(Draft& draft, std::size_t b, std::size_t from, std::size_t length) {
  apply_edits({{static_cast<std::uint32_t>(from), static_cast<std::uint32_t>(length), ""}}, draft,
              static_cast<std::uint32_t>(b));
}

void strip_close(Draft& draft, std::size_t b) {
  const auto& text = draft.blocks[b].text;
  if (text.ends_with("]")) cut(draft, b, text.size() - 1, 1);
}

/// "[Footnote 3: Text]" -> "3: Text"
void become_note(Draft& draft, std::size_t b, std::size_t last) {
  Block& block = draft.blocks[b];
  constexpr std::size_t opening = std::string_view("[Footnote ").size();
  const auto colon = std::max(opening, std::min(block.text.find(':'), block.text.size()));
  std::string mark = block.text.substr(opening, colon - opening);
  if (mark.size() < 12) block.anchor = "Footnote_" + mark;
  cut(draft, b, 0, opening);
  for (std::size_t i = b; i <= last; ++i) draft.blocks[i].kind = Block::Kind::note;
  strip_close(draft, last);
}

void become_caption(Draft& draft, std::size_t b, std::size_t last) {
  const auto& text = draft.blocks[b].text;
  std::size_t length = std::string_view("[Illustration").size();
  while (length < text.size() && (text[length] == ':' || text[length] == ' ')) ++length;
  cut(draft, b, 0, length);
  for (std::size_t i = b; i <= last; ++i) draft.blocks[i].kind = Block::Kind::caption;
  strip_close(draft, last);
}

void become_sidenote(Draft& draft, std::size_t b) {
  cut(draft, b, 0, std::string_view("[Sidenote:").size());
  strip_close(draft, b);
  Block& block = draft.blocks[b];
  block.runs.insert(block.runs.begin(), {{0, static_cast<std::uint32_t>(block.text.size())}, Run::sidenote, ""});
}

}  // namespace

void read_bracketed(Draft& draft) {
  auto& blocks = draft.blocks;
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    const std::string_view text = blocks[b].text;
    if (!text.starts_with("[")) continue;
    const bool illustration = starts_folded(text, "[illustration");
    const bool footnote = starts_folded(text, "[footnote ");
    const bool sidenote = starts_folded(text, "[sidenote:");
    const bool own = starts_folded(text, "[transcriber");
    if (!illustration && !footnote && !sidenote && !own) continue;
    const std::size_t last = closing_block(blocks, b);
    if (!blocks[last].text.ends_with("]") && !footnote) continue;  // words follow the bracket: a part of a sentence
    if (illustration) become_caption(draft, b, last);
    if (footnote) become_note(draft, b, last);
    if (sidenote && last == b) become_sidenote(draft, b);
    if (own)
      for (std::size_t i = b; i <= last; ++i) cut(draft, i, 0, blocks[i].text.size());
    b = last;
  }
}

}  // namespace gallipot
