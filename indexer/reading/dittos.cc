// Dittos in table rows and in lists.
#include "indexer/reading/dittos.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

bool is_ditto(std::string_view word) {
  static constexpr std::array<std::string_view, 14> marks = {
      "\"", "''", ",,", "do.", "do", "ditto", "Do.", "Ditto", "ditto.", "\u201D", "\u201C", "\u201E", "\u3003", "do.,"};
  return std::find(marks.begin(), marks.end(), word) != marks.end();
}

struct Place {
  Span span;
};

std::vector<Place> words_of(std::string_view text) {
  std::vector<Place> words;
  for (std::size_t i = 0; i < text.size();) {
    while (i < text.size() && static_cast<unsigned char>(text[i]) <= ' ') ++i;
    std::size_t j = i;
    while (j < text.size() && static_cast<unsigned char>(text[j]) > ' ') ++j;
    if (j > i) words.push_back({{static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(j)}});
    i = j;
  }
  return words;
}

bool opens_with_amount(std::string_view text) {
  if (text.empty()) return false;
  static constexpr std::array<std::string_view, 16> numbers = {"one",    "two",   "three", "four", "five", "six",
                                                               "seven",  "eight", "nine",  "ten",  "half", "a",
                                                               "twelve", "an",    "\"",    "1"};
  if ((text[0] >= '0' && text[0] <= '9') || text.starts_with("\xC2\xBC") || text.starts_with("\xC2\xBD") ||
      text.starts_with("\xC2\xBE") || text.starts_with("\xE2\x85"))
    return true;
  std::string word(text.substr(0, std::min(text.find(' '), text.size())));
  if (word[0] >= 'A' && word[0] <= 'Z') word[0] = static_cast<char>(word[0] + 32);
  return std::find(numbers.begin(), numbers.end(), word) != numbers.end();
}

void resolve_cells(Block& block, const Block& above) {
  if (block.cells.size() != above.cells.size()) return;
  std::vector<Edit> edits;
  for (std::size_t c = 0; c < block.cells.size(); ++c)
    if (is_ditto(block.cells[c].in(block.text)) && !above.cells[c].empty())
      edits.push_back({block.cells[c].begin, block.cells[c].size(), std::string(above.cells[c].in(above.text))});
  apply_edits(edits, block);
}

void resolve_words(Block& block, const Block& above) {
  if (!opens_with_amount(block.text) || !opens_with_amount(above.text)) return;
  const auto words = words_of(block.text);
  const auto model = words_of(above.text);
  std::vector<Edit> edits;
  for (std::size_t w = 1; w + 1 < words.size() && w < model.size(); ++w)
    if (is_ditto(words[w].span.in(block.text)))
      edits.push_back({words[w].span.begin, words[w].span.size(), std::string(model[w].span.in(above.text))});
  apply_edits(edits, block);
}

bool may_hold_ditto(std::string_view text) {
  return text.find('"') != text.npos || text.find("do") != text.npos || text.find("Do") != text.npos ||
         text.find(",,") != text.npos || text.find("''") != text.npos || text.find("itto") != text.npos ||
         text.find("\xE2\x80") != text.npos || text.find("\u3003") != text.npos;
}

}  // namespace

void resolve_dittos(std::vector<Block>& blocks) {
  for (std::size_t b = 1; b < blocks.size(); ++b) {
    Block& block = blocks[b];
    const Block& above = blocks[b - 1];
    if (block.contents || block.kind != above.kind || block.style != above.style || !may_hold_ditto(block.text))
      continue;
    if (block.kind == Block::Kind::table_row) resolve_cells(block, above);
    if (block.kind == Block::Kind::list_item || (block.kind == Block::Kind::table_row && block.cells.size() < 2) ||
        (block.kind == Block::Kind::paragraph && block.text.size() < 80))
      resolve_words(block, above);
  }
}

}  // namespace gallipot
