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

void strip_close(Block& block) {
  if (block.text.ends_with("]")) apply_edits({{static_cast<std::uint32_t>(block.text.size()) - 1, 1, ""}}, block);
}

void become_note(std::vector<Block>& blocks, std::size_t b, std::size_t last) {
  Block& block = blocks[b];
  const auto colon = std::min(block.text.find(':'), block.text.size());
  std::string mark = block.text.substr(std::min<std::size_t>(10, colon), colon - std::min<std::size_t>(10, colon));
  while (!mark.empty() && mark.front() == ' ') mark.erase(0, 1);
  block.anchor = "Footnote_" + mark;
  // "[Footnote 3: Text" -> "3: Text"
  apply_edits({{0, static_cast<std::uint32_t>(std::min(block.text.find(mark), colon)), ""}}, block);
  for (std::size_t i = b; i <= last; ++i) blocks[i].kind = Block::Kind::note;
  strip_close(blocks[last]);
}

void become_caption(std::vector<Block>& blocks, std::size_t b, std::size_t last) {
  std::size_t cut = std::string_view("[Illustration").size();
  while (cut < blocks[b].text.size() && (blocks[b].text[cut] == ':' || blocks[b].text[cut] == ' ')) ++cut;
  apply_edits({{0, static_cast<std::uint32_t>(cut), ""}}, blocks[b]);
  for (std::size_t i = b; i <= last; ++i) blocks[i].kind = Block::Kind::caption;
  strip_close(blocks[last]);
}

void become_sidenote(Block& block) {
  std::size_t cut = std::string_view("[Sidenote:").size();
  while (cut < block.text.size() && block.text[cut] == ' ') ++cut;
  apply_edits({{0, static_cast<std::uint32_t>(std::min(cut, block.text.size())), ""}}, block);
  strip_close(block);
  block.runs.push_back({{0, static_cast<std::uint32_t>(block.text.size())}, Run::sidenote, ""});
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
    if (illustration) become_caption(blocks, b, last);
    if (footnote) become_note(blocks, b, last);
    if (sidenote && last == b) become_sidenote(blocks[b]);
    if (own)
      for (std::size_t i = b; i <= last; ++i) {
        blocks[i].text.clear();
        blocks[i].runs.clear();
        blocks[i].cells.clear();
      }
    b = last;
  }
}

}  // namespace gallipot
