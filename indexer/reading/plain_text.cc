// Plain text: blank lines part blocks, broken lines are lists.
#include "indexer/reading/composer.h"

namespace gallipot {

Draft draft_text(std::string_view text) {
  Draft draft;
  Composer composer(draft);
  std::uint32_t line = 1;
  std::uint16_t blank = 0;
  for (std::size_t i = 0; i < text.size();) {
    const auto end = std::min(text.find('\n', i), text.size());
    const auto row = text.substr(i, end - i);
    const auto first = row.find_first_not_of(" \t\r\f");
    if (first == std::string_view::npos) {
      composer.end();
      if (blank < UINT16_MAX) ++blank;
    } else {
      if (!composer.open()) {
        Block& block = composer.begin(Block::Kind::paragraph);
        block.blank_before = blank;
        block.indent = static_cast<std::uint16_t>(std::min<std::size_t>(first, UINT16_MAX));
      }
      blank = 0;
      std::uint32_t here = line;
      composer.put(row, here);
      composer.put("\n", here);
    }
    ++line;
    i = end + 1;
  }
  composer.end();
  return draft;
}

}  // namespace gallipot
