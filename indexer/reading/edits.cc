// Applies edits and moves what points into the text.
#include "indexer/reading/edits.h"

#include <algorithm>

namespace gallipot {

std::uint32_t EditMap::moved(std::uint32_t at) const {
  std::int64_t shift = 0;
  for (const Edit& e : edits_) {
    if (e.at >= at) break;
    if (at < e.at + e.erase) return static_cast<std::uint32_t>(e.at + shift);
    shift += static_cast<std::int64_t>(e.insert.size()) - e.erase;
  }
  return static_cast<std::uint32_t>(at + shift);
}

void apply_edits(const std::vector<Edit>& edits, Block& block) {
  if (edits.empty()) return;
  const EditMap map(edits);
  std::string text;
  text.reserve(block.text.size());
  std::size_t from = 0;
  for (const Edit& e : edits) {
    text.append(block.text, from, e.at - from);
    text += e.insert;
    from = e.at + e.erase;
  }
  text.append(block.text, from);
  block.text = std::move(text);
  const auto move_span = [&](Span& s) { s = {map.moved(s.begin), map.moved(s.end)}; };
  for (auto& run : block.runs) move_span(run.span);
  for (auto& cell : block.cells) move_span(cell);
  for (auto& line : block.lines) line.at = map.moved(line.at);
  for (auto& page : block.pages) page.at = map.moved(page.at);
  std::erase_if(block.runs, [](const Run& run) { return run.span.empty(); });
}

void apply_edits(const std::vector<Edit>& edits, Draft& draft, std::uint32_t index) {
  if (edits.empty()) return;
  const EditMap map(edits);
  apply_edits(edits, draft.blocks[index]);
  const auto by_block = [](const auto& a, std::uint32_t b) { return a.block < b; };
  for (auto m = std::lower_bound(draft.marks.begin(), draft.marks.end(), index, by_block);
       m != draft.marks.end() && m->block == index; ++m)
    m->at = map.moved(m->at);
  for (auto s = std::lower_bound(draft.seams.begin(), draft.seams.end(), index, by_block);
       s != draft.seams.end() && s->block == index; ++s)
    s->at = map.moved(s->at);
}

}  // namespace gallipot
