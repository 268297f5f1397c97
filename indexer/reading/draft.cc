// Takes blocks out of a draft and joins them, keeping marks and seams with their text.
#include "indexer/reading/draft.h"

#include <algorithm>

namespace gallipot {

void drop_blocks(Draft& draft, const std::vector<bool>& gone) {
  std::vector<std::uint32_t> place(draft.blocks.size() + 1);
  std::uint32_t kept = 0;
  for (std::size_t b = 0; b < draft.blocks.size(); ++b) {
    place[b] = kept;
    if (gone[b]) continue;
    if (kept != b) draft.blocks[kept] = std::move(draft.blocks[b]);
    ++kept;
  }
  place[draft.blocks.size()] = kept;
  for (auto& mark : draft.marks) {
    if (mark.block < gone.size() && gone[mark.block]) mark.at = 0;
    mark.block = place[std::min<std::size_t>(mark.block, gone.size())];
  }
  std::erase_if(draft.seams, [&](const Seam& s) { return s.block >= gone.size() || gone[s.block]; });
  for (auto& seam : draft.seams) seam.block = place[seam.block];
  draft.blocks.resize(kept);
}

void append_block(Draft& draft, std::uint32_t to, std::uint32_t from) {
  Block& a = draft.blocks[to];
  Block& b = draft.blocks[from];
  const auto shift = static_cast<std::uint32_t>(a.text.size() + 1);
  const auto moved = [&](Span s) { return Span{s.begin + shift, s.end + shift}; };
  a.text += ' ';
  a.text += b.text;
  for (auto& run : b.runs) a.runs.push_back({moved(run.span), run.style, std::move(run.name)});
  for (const auto cell : b.cells) a.cells.push_back(moved(cell));
  for (const auto& line : b.lines) a.lines.push_back({line.at + shift, line.line});
  for (auto& page : b.pages) a.pages.push_back({page.at + shift, std::move(page.page)});
  for (auto& m : b.mends) a.mends.push_back({moved(m.span), std::move(m.printed), std::move(m.read)});
  a.line_end = b.line_end;
  const auto before = [](const auto& x, std::uint32_t block) { return x.block < block; };
  for (auto m = std::lower_bound(draft.marks.begin(), draft.marks.end(), from, before);
       m != draft.marks.end() && m->block == from; ++m)
    m->block = to, m->at += shift;
  for (auto s = std::lower_bound(draft.seams.begin(), draft.seams.end(), from, before);
       s != draft.seams.end() && s->block == from; ++s)
    s->block = to, s->at += shift;
  b = Block{};
}

void append_draft(Draft& to, Draft from, std::uint32_t lines_before) {
  const auto blocks = static_cast<std::uint32_t>(to.blocks.size());
  for (auto& mark : from.marks) {
    mark.block += blocks;
    mark.line += lines_before;
    to.marks.push_back(std::move(mark));
  }
  for (auto seam : from.seams) to.seams.push_back({seam.block + blocks, seam.at});
  for (auto& block : from.blocks) {
    for (auto& line : block.lines) line.line += lines_before;
    block.line_end += lines_before;
    to.blocks.push_back(std::move(block));
  }
  for (auto& image : from.images) to.images.push_back(std::move(image));
  for (auto& proposal : from.proposals) to.proposals.push_back(std::move(proposal));
}

}  // namespace gallipot
