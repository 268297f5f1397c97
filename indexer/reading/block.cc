// Looks up lines and pages inside a block.
#include "indexer/reading/block.h"

#include <algorithm>

namespace gallipot {

std::uint32_t Block::line_at(std::uint32_t at) const {
  const auto after =
      std::upper_bound(lines.begin(), lines.end(), at, [](std::uint32_t a, const LineStart& l) { return a < l.at; });
  return after == lines.begin() ? line_start() : std::prev(after)->line;
}

const std::string& Block::page_at(std::uint32_t at) const {
  const auto after =
      std::upper_bound(pages.begin(), pages.end(), at, [](std::uint32_t a, const PageStart& p) { return a < p.at; });
  return after == pages.begin() ? page : std::prev(after)->page;
}

}  // namespace gallipot
