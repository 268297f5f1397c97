// A run of raised figures before a slash, or a run that is a whole fraction, gets a space before it after a digit.
#include "indexer/reading/fractions.h"

#include <algorithm>
#include <string_view>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t slash_at(std::string_view text, std::size_t at) {
  if (at < text.size() && text[at] == '/') return 1;
  return text.substr(std::min(at, text.size())).starts_with("\xE2\x81\x84") ? 3 : 0;
}

/// Figures at `at` up to a slash with a figure or a further mark behind it.
bool fraction_at(std::string_view text, std::size_t at) {
  std::size_t i = at;
  while (i < text.size() && is_digit(text[i])) ++i;
  const std::size_t slash = slash_at(text, i);
  return i > at && i <= at + 2 && slash > 0 && i + slash < text.size() && is_digit(text[i + slash]);
}

}  // namespace

void part_fractions(Draft& draft) {
  for (std::uint32_t b = 0; b < draft.blocks.size(); ++b) {
    Block& block = draft.blocks[b];
    std::vector<Edit> edits;
    for (const Run& run : block.runs) {
      const std::uint32_t at = run.span.begin;
      if (at == 0 || !is_digit(block.text[at - 1]) || !fraction_at(block.text, at)) continue;
      if (edits.empty() || edits.back().at < at) edits.push_back({at, 0, " "});
    }
    apply_edits(edits, draft, b);
  }
}

}  // namespace gallipot
