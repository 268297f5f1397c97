// Sets the text of an HTML book into blocks and tells each what the open elements say of it.
#include <algorithm>
#include <cstring>

#include "indexer/reading/html_reader.h"
#include "indexer/text/unicode.h"

namespace gallipot {

void HtmlReader::text(const HtmlStep& step) {
  const GumboText& node = step.node->v.text;
  std::string_view text = node.text;
  if (!stack_.empty() && stack_.back().tag == "style") sheet_.read(text);
  if (hidden()) return;
  std::string composed;
  if (std::memchr(node.original_text.data, '&', node.original_text.length)) {
    composed = to_nfc(text);  // "a&#769;" is a letter with its accent only now
    text = composed;
  }
  if (page_text_) {
    page_written_ += text;
    page_last_line_ = step.last_line;
    if (page_written_.size() > kLongestPageMark) give_back_page_text();
    return;
  }
  set(text, step.line, step.last_line);
}

void HtmlReader::set(std::string_view text, std::uint32_t line, std::uint32_t last_line) {
  if (!composer_.open()) {
    const auto first =
        std::find_if(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) > ' '; });
    if (first == text.end()) return;
    begin_block();
  }
  if (pre_ > 0) {
    set_pre(text, line, last_line);
    return;
  }
  if (static_cast<std::uint64_t>(line) + static_cast<std::uint64_t>(std::count(text.begin(), text.end(), '\n')) <=
      last_line) {
    composer_.put(text, line);
    return;
  }
  // Moved out of a table, or with line feeds that are references: its lines are not lines of the file here.
  std::string spaced(text);
  std::replace(spaced.begin(), spaced.end(), '\n', ' ');
  composer_.put(spaced, line);
}

/// In preformatted text line feeds are breaks, and an empty line ends the block.
void HtmlReader::set_pre(std::string_view text, std::uint32_t line, std::uint32_t last_line) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view row = text.substr(0, end);
    const bool blank = std::all_of(row.begin(), row.end(), [](char c) { return static_cast<unsigned char>(c) <= ' '; });
    if (!blank) {
      if (!composer_.open()) begin_block();
      composer_.put(row, line);
    }
    if (end >= text.size()) return;
    text.remove_prefix(end + 1);
    line = std::min(line + 1, last_line);
    if (blank && !in_row_) {
      end_block();
    } else {
      composer_.hard_break();
    }
  }
}

void HtmlReader::break_line() {
  if (page_text_) {
    page_written_ += ' ';
    return;
  }
  if (!composer_.has_text()) return;
  if (composer_.broken_already() && !in_row_ && composer_.current().kind == Block::Kind::paragraph) {
    end_block();  // two breaks part paragraphs
  } else {
    composer_.hard_break();
  }
}

/// Ends the open block; the open elements begin anew with the next.
void HtmlReader::end_block() {
  composer_.end();
  for (auto& open : stack_) open.run = -1;
}

void HtmlReader::begin_block() {
  Block& block = composer_.begin(Block::Kind::paragraph);
  in_row_ = false;
  describe(block);
  for (auto& open : stack_)
    if (!open.element->is(HtmlElement::block)) open_run(open);
}

void HtmlReader::open_run(HtmlOpen& open) {
  auto style = static_cast<std::uint16_t>((open.element->style & ~open.look.off) | open.look.on | open.run_style);
  if ((open.sort->roles & sidenote) != 0) style |= Run::sidenote;
  const bool named = open.sort->name.size() > open.tag.size();
  if (style == 0 && !named) return;
  open.run = composer_.begin_run(style, open.sort->name);
}

/// Tells a block what the open elements say of it.
void HtmlReader::describe(Block& block) {
  std::uint16_t roles = 0, style = 0, off = 0;
  int lists = 0;
  const HtmlElement* inner = nullptr;
  Look::Align align = Look::Align::inherit;
  std::string_view styled;
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const HtmlOpen& open = stack_[i];
    const auto& e = *open.element;
    if (!e.is(HtmlElement::block) || e.name == "html") continue;
    roles = static_cast<std::uint16_t>(roles | open.sort->roles);
    if (align == Look::Align::inherit) align = open.look.align;
    const auto on = static_cast<std::uint16_t>((open.look.on | (e.is(HtmlElement::cell) ? 0 : e.style)) & ~off);
    if (on != 0 && styled.empty()) styled = open.sort->name;
    style = static_cast<std::uint16_t>(style | on);
    off = static_cast<std::uint16_t>(off | open.look.off);
    if (block.anchor.empty()) block.anchor = open.id;
    if (e.name == "body") continue;
    if (!inner && (e.heading > 0 || e.is(HtmlElement::item) || e.is(HtmlElement::pre) || e.name == "figcaption"))
      inner = &e;
    if (e.is(HtmlElement::list) || e.name == "blockquote") ++lists;
    if (!block.style.empty()) block.style += ' ';
    block.style += open.sort->name;
  }
  block.centred = align == Look::Align::centre;
  block.right_aligned = align == Look::Align::right;
  block.level = lists;
  if (!anchor_.empty() && block.anchor.empty()) block.anchor = anchor_;
  anchor_.clear();
  if ((roles & sidenote) != 0) style |= Run::sidenote;
  if (style != 0 && block.kind != Block::Kind::rule) composer_.begin_run(style, std::string(styled));
  if (block.kind != Block::Kind::paragraph) return;
  if (inner && inner->heading > 0) {
    block.kind = Block::Kind::heading;
    block.level = inner->heading;
  } else if ((roles & caption) != 0 || (inner && inner->name == "figcaption")) {
    block.kind = Block::Kind::caption;
  } else if ((roles & footnote) != 0) {
    block.kind = Block::Kind::note;
  } else if (inner && inner->is(HtmlElement::item)) {
    block.kind = Block::Kind::list_item;
  } else if ((roles & verse) != 0 || inner) {
    block.kind = Block::Kind::verse;
  }
}

/// Blocks end where an element that is a block begins or ends; inside a table row it is the row's cells that part it.
void HtmlReader::block_boundary(const HtmlElement& element) {
  if (page_text_) return;
  if (element.is(HtmlElement::row) || element.is(HtmlElement::cell)) {
    start_row_or_cell(element);
    return;
  }
  if (in_row_) {
    const bool breaks = element.heading > 0 || element.is(HtmlElement::list) || element.name == "table" ||
                        element.is(HtmlElement::item);
    if (!breaks) {
      if (composer_.current().text.size() > cell_begin_) composer_.hard_break();
      return;
    }
    row_broken_ = true;
    in_row_ = false;
  }
  end_block();
}

void HtmlReader::start_row_or_cell(const HtmlElement& element) {
  if (element.is(HtmlElement::row)) {
    composer_.end();
    in_row_ = false;
    row_broken_ = false;
  } else if (row_broken_) {
    composer_.end();
  } else {
    if (!in_row_) {
      composer_.begin(Block::Kind::table_row);
      in_row_ = true;
      Block& block = composer_.current();
      describe(block);
    }
    composer_.cell_break();
    cell_begin_ = static_cast<std::uint32_t>(composer_.current().text.size());
  }
  for (auto& open : stack_) open.run = -1;
}

void HtmlReader::end_cell() {
  if (!in_row_ || !composer_.open()) return;
  Block& block = composer_.current();
  const auto size = static_cast<std::uint32_t>(block.text.size());
  std::uint32_t begin = cell_begin_;
  if (begin > 0 && size > begin) begin += 3;
  block.cells.push_back({begin, size});
}

}  // namespace gallipot
