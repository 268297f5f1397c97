// Contents lists and indexes, told by their shape.
#include "indexer/reading/contents.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace gallipot {
namespace {

constexpr std::size_t kLongestRow = 160;
constexpr std::size_t kFewestRows = 8;
constexpr std::size_t kMostBetween = 4;  ///< blocks without a page between two rows: section names, letters

struct RowPage {
  bool ends_in_page = false;
  int page = 0;  ///< 0 for "ib." and roman numbers
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Does the line end in a page number, or several, apart from its words?
RowPage row_page(std::string_view line) {
  while (!line.empty() && (line.back() == '.' || line.back() == ' ' || line.back() == ',')) line.remove_suffix(1);
  if (line.empty() || line.size() > kLongestRow) return {};
  if (line.ends_with(" ib") || line.ends_with(" ibid") || line.ends_with(" Ib")) return {true, 0};
  std::size_t i = line.size();
  while (i > 0 && is_digit(line[i - 1])) --i;
  const std::size_t digits = line.size() - i;
  if (digits == 0 || digits > 4 || i < 3) return {};
  const char before = line[i - 1];
  if (before != ' ' && before != ',' && before != '-' && before != '.' && before != '\n') return {};
  // "about 1861", "No. 12": words that a page number does not follow.
  std::string_view words = line.substr(0, i);
  while (!words.empty() && words.back() == ' ') words.remove_suffix(1);
  for (const std::string_view w : {"No.", "no.", "in", "of", "for", "about", "from", "to", "at", "page", "p.", "="})
    if (words.ends_with(w) && (words.size() == w.size() || words[words.size() - w.size() - 1] == ' ')) return {};
  int page = 0;
  for (std::size_t d = i; d < line.size(); ++d) page = page * 10 + (line[d] - '0');
  return {true, page};
}

/// The row ends in a reference to another place of the book.
bool ends_in_link(const Block& block) {
  return block.text.size() <= kLongestRow && std::any_of(block.runs.begin(), block.runs.end(), [&](const Run& run) {
           return (run.style & Run::link) != 0 && run.span.end + 1 >= block.text.size();
         });
}

/// A table of figures, as of prices or weights: two columns of numbers after the words.
bool has_columns_of_figures(const Block& block) {
  const auto n = block.cells.size();
  if (n < 3) return false;
  const auto figures = [&](Span cell) {
    const auto s = cell.in(block.text);
    return !s.empty() &&
           std::all_of(s.begin(), s.end(), [](char c) { return is_digit(c) || c == ' ' || c == ',' || c == '/'; });
  };
  return figures(block.cells[n - 1]) && figures(block.cells[n - 2]);
}

struct Looks {
  enum class As : unsigned char { row, between, prose };
  As as = As::prose;
  bool linked = false;
  int page = 0;
  char first = 0;
  std::size_t rows = 1;
};

Looks looks_of(const Block& block) {
  Looks out;
  out.linked = block.contents || ends_in_link(block);
  const std::string_view text = block.text;
  std::size_t lines = 0, pages = 0;
  for (std::size_t i = 0; i <= text.size();) {
    const auto end = std::min(text.find('\n', i), text.size());
    const RowPage row = row_page(text.substr(i, end - i));
    ++lines;
    pages += row.ends_in_page;
    if (row.page > 0) out.page = row.page;
    i = end + 1;
  }
  out.rows = pages;
  // A row that opens with a dash or a ditto hangs on the word above.
  const bool hangs = text.starts_with("-") || text.starts_with("\xE2\x80") || text.starts_with("\"");
  const auto letter =
      std::find_if(text.begin(), text.end(), [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); });
  if (!hangs && letter != text.end()) out.first = static_cast<char>(*letter | 32);
  if (block.kind == Block::Kind::note || (!out.linked && has_columns_of_figures(block))) return out;
  if (pages * 10 >= lines * 6 && pages > 0 && block.kind != Block::Kind::heading) {
    out.as = Looks::As::row;
  } else if (out.linked && text.size() < kLongestRow) {
    out.as = Looks::As::row;
    out.rows = 1;
  } else if ((text.size() < 60 && !(text.size() > 30 && text.ends_with("."))) ||
             (lines > 2 && text.size() / lines < 60)) {
    out.as = Looks::As::between;
  }
  return out;
}

/// Enough of the rows [begin, end) have links, rising pages, or first letters in the order of the alphabet.
bool is_contents(const std::vector<Looks>& looks, std::size_t begin, std::size_t end) {
  std::size_t rows = 0, blocks = 0, linked = 0, rising = 0, letters = 0, pairs = 0, lettered = 0;
  const Looks* before = nullptr;
  for (std::size_t i = begin, last = 0; i < end; ++i) {
    if (looks[i].as != Looks::As::row) continue;
    ++blocks;
    rows += looks[i].rows;
    linked += looks[i].linked;
    if (before) {
      ++pairs;
      rising += looks[i].page >= before->page || looks[i].page == 0;
    }
    if (looks[i].first != 0) {
      ++lettered;
      letters += static_cast<std::size_t>(static_cast<unsigned char>(looks[i].first)) >= last;
      last = static_cast<std::size_t>(static_cast<unsigned char>(looks[i].first));
    }
    before = &looks[i];
  }
  if (rows < kFewestRows || blocks * 10 < (end - begin) * 5) return false;
  return linked * 2 >= blocks || rising * 10 >= pairs * 8 || (lettered >= kFewestRows && letters * 10 >= lettered * 8);
}

bool says_contents(const Block& block) {
  if (block.text.size() > 40) return false;
  std::string words;
  for (const char c : block.text) {
    if (c >= 'A' && c <= 'Z')
      words += static_cast<char>(c + 32);
    else if ((c >= 'a' && c <= 'z') || (c == ' ' && !words.empty()))
      words += c;
  }
  while (!words.empty() && words.back() == ' ') words.pop_back();
  static constexpr std::array<std::string_view, 9> names = {
      "contents",     "index",     "table of contents",     "general index", "alphabetical index",
      "the contents", "the index", "table of the contents", "a table"};
  return std::find(names.begin(), names.end(), words) != names.end() || words.starts_with("index to ") ||
         words.starts_with("index of ");
}

/// Under a heading that says so a list is contents even without pages: on to the last list-like block before prose.
void mark_under_heading(std::vector<Block>& blocks, std::size_t heading) {
  std::size_t last = heading;
  for (std::size_t i = heading + 1; i < blocks.size(); ++i) {
    const Block& b = blocks[i];
    if (says_contents(b)) break;
    const auto lines = static_cast<std::size_t>(std::count(b.text.begin(), b.text.end(), '\n')) + 1;
    if (lines == 1 && b.text.size() > kLongestRow && b.kind != Block::Kind::list_item &&
        b.kind != Block::Kind::table_row)
      break;
    if (b.kind == Block::Kind::heading && i > last + 12) break;
    if (lines >= 3 || (b.kind == Block::Kind::table_row && i <= last + kMostBetween) || b.contents ||
        (b.kind == Block::Kind::list_item && !b.style.empty() && i <= last + kMostBetween))
      last = i;  // a list item of plain text tells an amount: no row of a list of dishes
  }
  if (last < heading + 2 && std::count(blocks[last].text.begin(), blocks[last].text.end(), '\n') < 3) return;
  for (std::size_t i = heading; i <= last; ++i) blocks[i].contents = true;
}

}  // namespace

void mark_contents(std::vector<Block>& blocks) {
  std::vector<Looks> looks;
  looks.reserve(blocks.size());
  for (auto& block : blocks) {
    looks.push_back(looks_of(block));
    block.contents = false;
  }
  for (std::size_t i = 0; i < blocks.size();) {
    if (looks[i].as != Looks::As::row) {
      ++i;
      continue;
    }
    std::size_t last = i, end = i + 1;
    for (; end < blocks.size() && looks[end].as != Looks::As::prose && end - last <= kMostBetween; ++end)
      if (looks[end].as == Looks::As::row) last = end;
    if (is_contents(looks, i, last + 1))
      for (std::size_t b = i; b <= last; ++b) blocks[b].contents = true;
    i = last + 1;
  }
  for (std::size_t i = 0; i < blocks.size(); ++i)
    if (says_contents(blocks[i])) mark_under_heading(blocks, i);
}

}  // namespace gallipot
