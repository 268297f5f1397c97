// Plain text: blank lines part groups of rows; the shape of a group tells prose, which is wrapped, from lists and
// verse, whose rows end where the printer meant them to.
#include <algorithm>
#include <array>
#include <cctype>

#include "indexer/reading/bracketed.h"
#include "indexer/reading/composer.h"
#include "indexer/reading/emphasis.h"
#include "indexer/reading/rows.h"

namespace gallipot {
namespace {

class TextReader {
 public:
  TextReader(std::string_view text, Draft& draft) : rows_(rows_of(text)), composer_(draft) {
    measure_ = measure_of(rows_);
  }

  void read() {
    std::size_t blank = 0;
    for (std::size_t i = 0; i < rows_.size();) {
      if (rows_[i].text.empty()) {
        ++blank;
        ++i;
        continue;
      }
      std::size_t end = i;
      while (end < rows_.size() && !rows_[end].text.empty()) ++end;
      blank_ = static_cast<std::uint16_t>(std::min<std::size_t>(blank, UINT16_MAX));
      group(i, end);
      blank = 0;
      i = end;
    }
    composer_.end();
  }

 private:
  void group(std::size_t begin, std::size_t end);
  void prose(const Shape& shape, std::size_t begin, std::size_t end);
  void list(const Shape& shape, std::size_t begin, std::size_t end);
  void table(std::size_t begin, std::size_t end);
  void rule(const PrintedRow& row);
  void open(Block::Kind kind, const PrintedRow& row);
  void put(const PrintedRow& row);

  std::vector<PrintedRow> rows_;
  Composer composer_;
  std::uint32_t measure_ = 0;
  std::uint16_t blank_ = 0;
};

void TextReader::open(Block::Kind kind, const PrintedRow& row) {
  Block& block = composer_.begin(kind);
  block.indent = static_cast<std::uint16_t>(std::min<std::uint32_t>(row.indent, UINT16_MAX));
  block.blank_before = blank_;
  blank_ = 0;
  const std::uint32_t right = row.end() < measure_ ? measure_ - row.end() : 0;
  const std::uint32_t uneven = row.indent > right ? row.indent - right : right - row.indent;
  block.centred = row.indent >= 5 && uneven <= 5;
  block.right_aligned = !block.centred && row.indent >= measure_ * 2 / 5 && right <= 8;
}

void TextReader::put(const PrintedRow& row) {
  std::uint32_t line = row.line;
  composer_.put(row.text, line);
}

void TextReader::rule(const PrintedRow& row) {
  open(Block::Kind::rule, row);
  composer_.current().lines.push_back({0, row.line});
  composer_.end();
}

void TextReader::group(std::size_t begin, std::size_t end) {
  while (begin < end && is_rule(rows_[begin])) rule(rows_[begin++]);
  std::size_t stop = begin;
  while (stop < end && !is_rule(rows_[stop])) ++stop;
  if (begin < stop) {
    // A heading set directly above its text is a block of its own.
    const Shape whole = shape_of(rows_, begin, stop, measure_);
    if (stop - begin > 1 && whole.breaks[0] && all_capitals(rows_[begin]) && !all_capitals(rows_[begin + 1])) {
      open(Block::Kind::paragraph, rows_[begin]);
      put(rows_[begin]);
      group(begin + 1, stop);
    } else if (whole.table) {
      table(begin, stop);
    } else if (whole.list) {
      list(whole, begin, stop);
    } else {
      prose(whole, begin, stop);
    }
  }
  if (stop < end) group(stop, end);
}

void TextReader::prose(const Shape& shape, std::size_t begin, std::size_t end) {
  open(Block::Kind::paragraph, rows_[begin]);
  for (std::size_t i = begin; i < end; ++i) {
    put(rows_[i]);
    if (i + 1 == end) break;
    std::uint32_t line = rows_[i].line;
    if (shape.meant[i - begin])
      composer_.hard_break();
    else
      composer_.put("\n", line);
  }
  composer_.end();
}

void TextReader::list(const Shape& shape, std::size_t begin, std::size_t end) {
  const bool items = shape.items;
  open(items ? Block::Kind::list_item : shape.verse ? Block::Kind::verse : Block::Kind::paragraph, rows_[begin]);
  for (std::size_t i = begin; i < end; ++i) {
    put(rows_[i]);
    if (i + 1 == end) break;
    std::uint32_t line = rows_[i].line;
    if (!shape.breaks[i - begin])
      composer_.put("\n", line);
    else if (items)
      open(Block::Kind::list_item, rows_[i + 1]);
    else
      composer_.hard_break();
  }
  composer_.end();
}

void TextReader::table(std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < end; ++i) {
    open(Block::Kind::table_row, rows_[i]);
    for (const auto cell : cells_of(rows_[i].text)) {
      const auto before = static_cast<std::uint32_t>(composer_.current().text.size());
      composer_.cell_break();
      std::uint32_t line = rows_[i].line;
      composer_.put(cell, line);
      const auto after = static_cast<std::uint32_t>(composer_.current().text.size());
      composer_.current().cells.push_back({before == 0 || after == before ? before : before + 3, after});
    }
    composer_.current().centred = composer_.current().right_aligned = false;
    composer_.end();
  }
}

}  // namespace

Draft draft_text(std::string_view text) {
  Draft draft;
  TextReader(text, draft).read();
  read_bracketed(draft);
  read_emphasis(draft);
  return draft;
}

}  // namespace gallipot
