// Copies pieces of blocks into a receipt.
#include "indexer/segmenting/assemble.h"

#include <algorithm>

namespace gallipot {
namespace {

bool space(char c) { return c == ' ' || c == '\n'; }

void add_line(Recipe& recipe, const Block& block, std::uint32_t from, std::uint32_t to, Part::Kind kind) {
  while (from < to && space(block.text[from])) ++from;
  while (to > from && space(block.text[to - 1])) --to;
  if (from >= to) return;
  if (!recipe.text.empty()) recipe.text += ' ';
  const auto at = static_cast<std::uint32_t>(recipe.text.size());
  recipe.text.append(block.text, from, to - from);
  std::replace(recipe.text.begin() + at, recipe.text.end(), '\n', ' ');
  recipe.parts.push_back({kind, {at, static_cast<std::uint32_t>(recipe.text.size())}});

  recipe.lines.push_back({at, block.line_at(from)});
  for (const auto& l : block.lines)
    if (l.at > from && l.at < to) recipe.lines.push_back({at + l.at - from, l.line});
  const auto& page = block.page_at(from);
  if (page != recipe.page_end && !page.empty()) {
    recipe.pages.push_back({at, page});
    recipe.page_end = page;
  }
  for (const auto& p : block.pages) {
    if (p.at <= from || p.at >= to || p.page == recipe.page_end) continue;
    recipe.pages.push_back({at + p.at - from, p.page});
    recipe.page_end = p.page;
  }
  for (const auto& m : block.mends)
    if (m.span.begin >= from && m.span.end <= to)
      recipe.mends.push_back({{at + m.span.begin - from, at + m.span.end - from}, m.printed, m.read});
  recipe.line_end = std::max(recipe.line_end, to >= block.text.size() ? block.line_end : block.line_at(to - 1));
}

/// Printed lines that are a list: most of them short.
bool is_list(std::string_view t) {
  std::size_t lines = 1, at = 0;
  while ((at = t.find('\n', at)) != std::string_view::npos) ++lines, ++at;
  return lines > 1 && t.size() / lines <= 60;
}

}  // namespace

Part::Kind part_kind(const Block& block) {
  switch (block.kind) {
    case Block::Kind::list_item:
      return Part::Kind::list_item;
    case Block::Kind::table_row:
      return Part::Kind::table_row;
    case Block::Kind::verse:
      return Part::Kind::verse;
    case Block::Kind::note:
      return Part::Kind::note;
    default:
      return Part::Kind::paragraph;
  }
}

void add_piece(Recipe& recipe, const Block& block, std::uint32_t from, std::uint32_t to, Part::Kind kind) {
  const auto piece = std::string_view(block.text).substr(from, to - from);
  // Signatures come a line for the name, a line for the place.
  const bool lines =
      kind == Part::Kind::signature || (kind != Part::Kind::verse && kind != Part::Kind::note && is_list(piece));
  if (!lines) {
    add_line(recipe, block, from, to, kind);
    return;
  }
  while (from < to) {
    auto end = static_cast<std::uint32_t>(std::min<std::size_t>(block.text.find('\n', from), to));
    add_line(recipe, block, from, end,
             kind == Part::Kind::paragraph || kind == Part::Kind::table_row ? Part::Kind::list_item : kind);
    from = end + 1;
  }
}

}  // namespace gallipot
