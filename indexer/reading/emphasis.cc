// A mark opens before a word and closes after one; a mark without its fellow is left as it is printed, but for a lone
// underscore, which no printer set.
#include "indexer/reading/emphasis.h"

#include <algorithm>
#include <string_view>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

constexpr std::string_view kMarks = "_=*+~";
constexpr std::size_t kLongest = 400;          ///< bytes between the marks of bold and its like
constexpr std::size_t kLongestItalics = 4000;  ///< italics may run over a whole paragraph

std::uint16_t style_of(char mark) {
  switch (mark) {
    case '_':
      return Run::italic;
    case '=':
    case '*':
      return Run::bold;
    case '+':
      return Run::small_caps;
    default:
      return Run::large;
  }
}

bool is_wordy(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         static_cast<unsigned char>(c) >= 0x80;
}

bool is_space(char c) { return c == ' ' || c == '\n'; }

bool opens(std::string_view text, std::size_t at) {
  const char after = at + 1 < text.size() ? text[at + 1] : ' ';
  if (is_space(after) || after == text[at]) return false;
  return at == 0 || !is_wordy(text[at - 1]) || text[at] == '_';
}

/// Where the mark that opened at `from` closes; npos where it does not.
std::size_t closing(std::string_view text, std::size_t from) {
  const char mark = text[from];
  const std::size_t limit = std::min(text.size(), from + (mark == '_' ? kLongestItalics : kLongest));
  bool letters = false;
  for (std::size_t i = from + 1; i < limit; ++i) {
    letters = letters || is_wordy(text[i]);
    if (text[i] != mark) continue;
    const bool inside_word = i + 1 < text.size() && is_wordy(text[i + 1]) && mark != '_';
    if (letters && !is_space(text[i - 1]) && !inside_word) return i;
    if (mark != '_') return std::string_view::npos;
  }
  return std::string_view::npos;
}

/// "^{st}" and "_{2}": raised and lowered letters.
void read_superscript(std::string_view text, std::size_t at, std::vector<Edit>& edits, std::vector<Run>& runs) {
  const auto place = static_cast<std::uint32_t>(at);
  if (at + 1 >= text.size()) return;
  if (text[at + 1] == '{') {
    const auto close = text.find('}', at);
    if (close == std::string_view::npos || close > at + 24) return;
    const auto end = static_cast<std::uint32_t>(close);
    if (text[at] == '^') runs.push_back({{place + 2, end}, Run::superscript, ""});
    edits.push_back({place, 2, ""});
    edits.push_back({end, 1, ""});
  } else if (is_wordy(text[at + 1]) && at > 0 && is_wordy(text[at - 1])) {
    runs.push_back({{place + 1, place + 2}, Run::superscript, ""});
    edits.push_back({place, 1, ""});
  }
}

}  // namespace

void read_emphasis(Draft& draft) {
  for (std::uint32_t b = 0; b < draft.blocks.size(); ++b) {
    Block& block = draft.blocks[b];
    const std::string_view text = block.text;
    if (text.find_first_of("_=*+~^") == std::string_view::npos) continue;
    std::vector<Edit> edits;
    std::vector<Run> runs;
    std::size_t italics_close = std::string_view::npos;
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (i == italics_close) continue;
      const bool lowered = text[i] == '_' && i + 1 < text.size() && text[i + 1] == '{' && i > 0;
      if (text[i] == '^' || lowered) read_superscript(text, i, edits, runs);
      if (lowered) continue;
      if (kMarks.find(text[i]) == std::string_view::npos) continue;
      const std::size_t close = opens(text, i) ? closing(text, i) : std::string_view::npos;
      const auto at = static_cast<std::uint32_t>(i);
      if (close == std::string_view::npos) {
        if (text[i] == '_') edits.push_back({at, 1, ""});
        continue;
      }
      const auto end = static_cast<std::uint32_t>(close);
      runs.push_back({{at + 1, end}, style_of(text[i]), ""});
      edits.push_back({at, 1, ""});
      edits.push_back({end, 1, ""});
      if (text[i] != '_') continue;
      // Inside italics only the other marks can stand.
      std::size_t inner = i + 1;
      while (inner < close && kMarks.find(text[inner]) == std::string_view::npos) ++inner;
      if (inner >= close)
        i = close;
      else
        italics_close = close;
    }
    std::sort(edits.begin(), edits.end(), [](const Edit& x, const Edit& y) { return x.at < y.at; });
    edits.erase(std::unique(edits.begin(), edits.end(), [](const Edit& x, const Edit& y) { return x.at == y.at; }),
                edits.end());
    block.runs.insert(block.runs.end(), runs.begin(), runs.end());
    std::stable_sort(block.runs.begin(), block.runs.end(),
                     [](const Run& x, const Run& y) { return x.span.begin < y.span.begin; });
    apply_edits(edits, draft, b);
  }
}

}  // namespace gallipot
