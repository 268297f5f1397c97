// White space is set only when a character follows it, so that blocks, runs and cells never end in a space.
#include "indexer/reading/composer.h"

#include <algorithm>
#include <utility>

#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

bool is_letter_byte(char c) {
  const auto u = static_cast<unsigned char>(c);
  return (u >= 'a' && u <= 'z') || (u >= 'A' && u <= 'Z') || u >= 0x80;
}

/// Length of the white space or invisible character at `at` of a byte outside ASCII; 0 where it is none.
struct Blank {
  std::size_t length = 0;
  bool visible = false;  ///< a space, not a soft hyphen or a zero-width character
};

Blank blank_at(std::string_view s, std::size_t at) {
  const auto byte = [&](std::size_t i) { return at + i < s.size() ? static_cast<unsigned char>(s[at + i]) : 0u; };
  if (byte(0) == 0xC2) {
    if (byte(1) == 0xA0) return {2, true};
    if (byte(1) == 0xAD) return {2, false};
  } else if (byte(0) == 0xE2 && byte(1) == 0x80) {
    if (byte(2) >= 0x80 && byte(2) <= 0x8A) return {3, true};
    if (byte(2) == 0xAF || byte(2) == 0xA8 || byte(2) == 0xA9) return {3, true};
    if (byte(2) >= 0x8B && byte(2) <= 0x8F) return {3, false};
  } else if (byte(0) == 0xE3 && byte(1) == 0x80 && byte(2) == 0x80) {
    return {3, true};
  } else if (byte(0) == 0xEF && byte(1) == 0xBB && byte(2) == 0xBF) {
    return {3, false};
  }
  return {};
}

bool combining(std::string_view word) {
  const auto a = static_cast<unsigned char>(word[0]);
  return word.size() > 1 && (a == 0xCC || (a == 0xCD && static_cast<unsigned char>(word[1]) < 0xB0));
}

}  // namespace

Block& Composer::begin(Block::Kind kind) {
  end();
  block_ = Block{};
  block_.kind = kind;
  open_ = true;
  return block_;
}

void Composer::end() {
  if (!open_) return;
  open_ = space_ = fold_ = hard_ = cell_ = false;
  if (block_.text.empty() && block_.kind != Block::Kind::rule) return;
  const auto size = static_cast<std::uint32_t>(block_.text.size());
  for (auto& run : block_.runs) {
    if (run.span.end == UINT32_MAX) run.span.end = size;
    while (run.span.begin < run.span.end && static_cast<unsigned char>(block_.text[run.span.begin]) <= ' ')
      ++run.span.begin;
  }
  std::erase_if(block_.runs, [](const Run& run) { return run.span.empty(); });
  std::erase_if(block_.mends, [&](const Mend& mend) { return mend.span.empty() || mend.span.end > size; });
  block_.line_end = std::max(last_line_, block_.line_start());
  draft_.blocks.push_back(std::move(block_));
}

/// A page mark was noted where the next character will stand.
bool Composer::marked_here() const {
  return !draft_.marks.empty() && draft_.marks.back().block == draft_.blocks.size() &&
         draft_.marks.back().at == block_.text.size();
}

void Composer::note_seam() {
  draft_.seams.push_back(
      {static_cast<std::uint32_t>(draft_.blocks.size()), static_cast<std::uint32_t>(block_.text.size())});
}

void Composer::set_word(std::string_view word, std::uint32_t line) {
  auto& text = block_.text;
  if (!text.empty()) {
    if (cell_) {
      text += " | ";
    } else if (hard_) {
      text += '\n';
    } else if (space_) {
      const bool hyphen = fold_ && text.size() > 1 && text.back() == '-' && is_letter_byte(text[text.size() - 2]) &&
                          ((word[0] >= 'a' && word[0] <= 'z') || static_cast<unsigned char>(word[0]) >= 0xC3);
      if (hyphen) {
        note_seam();
      } else {
        text += ' ';
      }
    } else if (text.back() == '-' && marked_here()) {
      note_seam();  // "over-[page mark]head"
    } else if (combining(word)) {
      std::size_t last = text.size() - 1;
      while (last > 0 && (static_cast<unsigned char>(text[last]) & 0xC0) == 0x80) --last;
      const std::string composed = to_nfc(text.substr(last).append(word));
      text.resize(last);
      text += composed;
      return;
    }
  }
  space_ = fold_ = hard_ = cell_ = false;
  if (block_.lines.empty() || block_.lines.back().line != line)
    block_.lines.push_back({static_cast<std::uint32_t>(text.size()), line});
  last_line_ = line;
  text += word;
}

void Composer::put(std::string_view s, std::uint32_t& line) {
  std::size_t i = 0;
  while (i < s.size()) {
    const auto c = static_cast<unsigned char>(s[i]);
    if (c <= ' ') {
      space_ = true;
      if (c == '\n') {
        fold_ = true;
        ++line;
      }
      ++i;
      continue;
    }
    std::size_t j = i;
    Blank blank;
    while (j < s.size()) {
      const auto d = static_cast<unsigned char>(s[j]);
      if (d <= ' ') break;
      if (d >= 0xC2 && (blank = blank_at(s, j)).length > 0) break;
      ++j;
    }
    if (j > i) set_word(s.substr(i, j - i), line);
    space_ = space_ || (blank.length > 0 && blank.visible);
    i = j + blank.length;
  }
}

int Composer::begin_mend(std::string printed) {
  if (!open_) return -1;
  block_.mends.push_back({{static_cast<std::uint32_t>(block_.text.size()), UINT32_MAX}, std::move(printed), {}});
  return static_cast<int>(block_.mends.size()) - 1;
}

void Composer::end_mend(int mend, bool unsure) {
  if (!open_ || mend < 0 || static_cast<std::size_t>(mend) >= block_.mends.size()) return;
  Mend& m = block_.mends[static_cast<std::size_t>(mend)];
  m.span.end = static_cast<std::uint32_t>(block_.text.size());
  while (m.span.begin < m.span.end && static_cast<unsigned char>(block_.text[m.span.begin]) <= ' ') ++m.span.begin;
  m.read = std::string(m.span.in(block_.text));
  if (unsure) m.printed = m.read;
}

int Composer::begin_run(std::uint16_t style, std::string name) {
  block_.runs.push_back({{static_cast<std::uint32_t>(block_.text.size()), UINT32_MAX}, style, std::move(name)});
  return static_cast<int>(block_.runs.size()) - 1;
}

void Composer::end_run(int run) {
  if (open_ && run >= 0 && static_cast<std::size_t>(run) < block_.runs.size())
    block_.runs[static_cast<std::size_t>(run)].span.end = static_cast<std::uint32_t>(block_.text.size());
}

void Composer::page_mark(std::string label, std::uint32_t line, bool sure) {
  const auto at = open_ ? static_cast<std::uint32_t>(block_.text.size()) : 0;
  draft_.marks.push_back({static_cast<std::uint32_t>(draft_.blocks.size()), at, line, std::move(label), sure});
}

}  // namespace gallipot
