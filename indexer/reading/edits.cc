// Applies edits and moves what points into the text.
#include "indexer/reading/edits.h"

#include <algorithm>

namespace gallipot {

EditMap::EditMap(const std::vector<Edit>& edits) : edits_(edits) {
  shifts_.reserve(edits.size() + 1);
  std::int64_t shift = 0;
  for (const Edit& e : edits) {
    shifts_.push_back(shift);
    shift += static_cast<std::int64_t>(e.insert.size()) - e.erase;
  }
  shifts_.push_back(shift);
}

/// `edits` of the edits begin before offset `at`.
std::uint32_t EditMap::moved_past(std::size_t edits, std::uint32_t at) const {
  if (edits > 0) {
    const Edit& last = edits_[edits - 1];
    if (at < last.at + last.erase) return static_cast<std::uint32_t>(last.at + shifts_[edits - 1]);
  }
  return static_cast<std::uint32_t>(at + shifts_[edits]);
}

std::uint32_t EditMap::moved(std::uint32_t at) const {
  const auto behind = std::partition_point(edits_.begin(), edits_.end(),
                                           [&](const Edit& e) { return e.at < at || (e.at == at && e.erase == 0); });
  return moved_past(static_cast<std::size_t>(behind - edits_.begin()), at);
}

std::uint32_t EditMap::moved_end(std::uint32_t at) const {
  const auto behind = std::partition_point(edits_.begin(), edits_.end(), [&](const Edit& e) { return e.at < at; });
  return moved_past(static_cast<std::size_t>(behind - edits_.begin()), at);
}

namespace {

/// Edits that take out white space which other edits left at the ends or doubled.
std::vector<Edit> loose_space(const std::string& text) {
  std::vector<Edit> edits;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] != ' ' && text[i] != '\n') {
      ++i;
      continue;
    }
    std::size_t end = i;
    bool feed = false;
    for (; end < text.size() && (text[end] == ' ' || text[end] == '\n'); ++end) feed = feed || text[end] == '\n';
    const bool edge = i == 0 || end == text.size();
    const auto at = static_cast<std::uint32_t>(i), length = static_cast<std::uint32_t>(end - i);
    if (edge)
      edits.push_back({at, length, ""});
    else if (length > 1)
      edits.push_back({at, length, feed ? "\n" : " "});
    i = end;
  }
  return edits;
}

/// Of lines or pages that begin at one place the last holds; those past the text go.
template <typename Start>
void settle(std::vector<Start>& starts, std::uint32_t size) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    if (starts[i].at >= size) continue;
    if (kept > 0 && starts[kept - 1].at == starts[i].at) --kept;
    if (kept != i) starts[kept] = std::move(starts[i]);
    ++kept;
  }
  starts.resize(kept);
}

void move_all(const std::vector<Edit>& edits, Block& block) {
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
  const auto move_span = [&](Span& s) { s = {map.moved(s.begin), map.moved_end(s.end)}; };
  for (auto& run : block.runs) move_span(run.span);
  for (auto& cell : block.cells) move_span(cell);
  for (auto& mend : block.mends) move_span(mend.span);
  for (auto& line : block.lines) line.at = map.moved(line.at);
  for (auto& page : block.pages) page.at = map.moved(page.at);
  std::erase_if(block.runs, [](const Run& run) { return run.span.empty(); });
}

}  // namespace

std::vector<Edit> apply_edits(const std::vector<Edit>& edits, Block& block) {
  if (edits.empty()) return {};
  move_all(edits, block);
  std::vector<Edit> tidying = loose_space(block.text);
  move_all(tidying, block);
  const auto size = static_cast<std::uint32_t>(block.text.size());
  const std::uint32_t line = block.line_start();
  settle(block.lines, size);
  settle(block.pages, size);
  if (block.lines.empty()) block.lines.push_back({0, line});
  block.lines.front().at = 0;
  return tidying;
}

std::vector<Edit> apply_edits(const std::vector<Edit>& edits, Draft& draft, std::uint32_t index) {
  if (edits.empty()) return {};
  std::vector<Edit> tidying = apply_edits(edits, draft.blocks[index]);
  const EditMap first(edits), second(tidying);
  const auto move_those_of = [&](auto& places) {
    const auto before = [](const auto& place, std::uint32_t block) { return place.block < block; };
    for (auto p = std::lower_bound(places.begin(), places.end(), index, before); p != places.end() && p->block == index;
         ++p)
      p->at = second.moved(first.moved(p->at));
  };
  move_those_of(draft.marks);
  move_those_of(draft.seams);
  return tidying;
}

}  // namespace gallipot
