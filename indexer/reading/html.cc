// Walks the tags of an HTML book with a stack of open elements and sets its text into blocks. No tree is built: the
// stack says all that a block needs to know of where it stands.
#include <algorithm>
#include <array>
#include <unordered_map>

#include "indexer/reading/composer.h"
#include "indexer/reading/html_elements.h"
#include "indexer/reading/html_tokens.h"
#include "indexer/reading/page_marks.h"
#include "indexer/reading/styles.h"

namespace gallipot {
namespace {

constexpr std::size_t kDeepest = 256;
constexpr std::size_t kLongestPageMark = 40;

/// What a class name says about the part that its element plays in the book.
enum Role : std::uint16_t {
  plain = 0,
  page_number = 1,
  maybe_page_number = 2,
  verse = 4,
  footnote = 8,
  caption = 16,
  sidenote = 32,
  own_matter = 64,  ///< the transcriber's notes
  footnote_mark = 128,
};

Role role_of_class(std::string_view written) {
  std::string c;
  for (const char ch : written)
    if (ch != '-' && ch != '_') c += ch >= 'A' && ch <= 'Z' ? static_cast<char>(ch + 32) : ch;
  const auto any = [&](std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), c) != names.end();
  };
  if (is_page_class(written)) return page_number;
  if (any({"page", "pg", "pagina"})) return maybe_page_number;
  if (any({"poem", "poetry", "poetrycontainer", "stanza", "verse", "linegroup", "lg", "verses"})) return verse;
  if (any({"footnote", "footnotes", "fnote", "endnote", "endnotes", "fn", "note1"})) return footnote;
  if (any({"caption", "figcaption", "captionl", "captionr", "capt", "figcenter", "figleft", "figright", "illustration"}))
    return caption;
  if (any({"sidenote", "sidenotes", "marginnote", "sidenotel", "sidenoter", "sn", "margin"})) return sidenote;
  if (any({"tnote", "transnote", "tn", "tnotes", "transnotes", "transcribersnote", "transcribernote", "tnbox",
           "transcriber", "trnote", "tnotesbox"}))
    return own_matter;
  if (any({"fnanchor", "fnref", "noteref", "footnotemark", "fnmark"})) return footnote_mark;
  return plain;
}

/// An element's name, look and part, which depend on its tag name and class only.
struct Sort {
  std::string name;  ///< "p.recipe"
  Look look;
  std::uint16_t roles = 0;
};

struct Open {
  const HtmlElement* element = nullptr;
  std::string tag;
  const Sort* sort = nullptr;
  Look look;
  int run = -1;
  std::uint16_t run_style = 0;
  std::string id;
};

class HtmlReader {
 public:
  HtmlReader(std::string_view html, Draft& draft) : tokens_(html), draft_(draft), composer_(draft) {}

  void read() {
    while (tokens_.next(token_)) {
      if (token_.kind == HtmlToken::Kind::text) text();
      else if (token_.kind == HtmlToken::Kind::start) start();
      else end();
    }
    give_back_page_text();
    composer_.end();
  }

 private:
  // Elements.
  void start();
  void end();
  void empty_element(const HtmlElement& element);
  void push(const HtmlElement& element);
  void pop();
  void close_implied(const HtmlElement& element);
  bool close_back_to(HtmlElement::Flag flag, std::string_view stop);
  const Sort& sort_of(std::string_view classes);
  void start_row_or_cell(const HtmlElement& element);
  void end_cell();
  void block_boundary(const HtmlElement& element);

  // Text.
  void text();
  void set(std::string_view raw, std::uint32_t line);
  void set_pre(std::string_view raw, std::uint32_t line);
  void begin_block();
  void describe(Block& block);
  void open_run(Open& open);
  void break_line();

  // Pages.
  void anchor();
  void end_page_text();
  void give_back_page_text();

  bool hidden() const { return hidden_ > 0; }

  HtmlTokens tokens_;
  HtmlToken token_;
  Draft& draft_;
  Composer composer_;
  References references_;
  StyleSheet sheet_;
  std::unordered_map<std::string, Sort> sorts_;
  std::vector<Open> stack_;
  int hidden_ = 0;            ///< open elements whose content is not print
  int pre_ = 0;
  bool in_row_ = false;       ///< the open block is a table row
  bool row_broken_ = false;   ///< the row held headings or lists: its cells are read as ordinary blocks
  std::uint32_t cell_begin_ = 0;
  std::string anchor_;        ///< id waiting for the next block

  bool page_text_ = false;    ///< inside an element of a page class: its text is kept apart
  std::size_t page_depth_ = 0;
  bool page_sure_ = false;
  std::string page_written_;
  std::string page_id_;
  std::uint32_t page_line_ = 0;
};

const Sort& HtmlReader::sort_of(std::string_view classes) {
  std::string key = token_.name;
  each_class(classes, [&](std::string_view c) { key.append(".").append(c); });
  const auto found = sorts_.find(key);
  if (found != sorts_.end()) return found->second;
  Sort sort;
  sort.look = sheet_.look(token_.name, classes);
  each_class(classes, [&](std::string_view c) {
    sort.roles = static_cast<std::uint16_t>(sort.roles | role_of_class(c));
    sort.look.on = static_cast<std::uint16_t>(sort.look.on | (style_of_class(c) & ~sort.look.off));
  });
  sort.name = key;
  return sorts_.emplace(std::move(key), std::move(sort)).first->second;
}

void HtmlReader::start() {
  const HtmlElement& element = html_element(token_.name);
  close_implied(element);
  if (element.is(HtmlElement::empty)) {
    empty_element(element);
    return;
  }
  if (stack_.size() >= kDeepest) return;
  push(element);
}

void HtmlReader::empty_element(const HtmlElement& element) {
  if (hidden()) return;
  if (token_.name == "br") {
    break_line();
  } else if (element.is(HtmlElement::block)) {  // hr
    if (page_text_) return;
    composer_.end();
    in_row_ = false;
    composer_.begin(Block::Kind::rule).lines.push_back({0, token_.line});
    describe(composer_.current());
    composer_.end();
  } else if (token_.name == "img") {
    // A picture of a decorated initial stands for its letter.
    const auto alt = token_.attribute("alt");
    if (alt.size() == 1 && ((alt[0] >= 'A' && alt[0] <= 'Z') || (alt[0] >= 'a' && alt[0] <= 'z'))) set(alt, token_.line);
  }
}

void HtmlReader::break_line() {
  if (page_text_) {
    page_written_ += ' ';
    return;
  }
  if (!composer_.has_text()) return;
  if (composer_.broken_already() && !in_row_ && composer_.current().kind == Block::Kind::paragraph) {
    composer_.end();  // two breaks part paragraphs
    for (auto& open : stack_) open.run = -1;
  } else {
    composer_.hard_break();
  }
}

void HtmlReader::push(const HtmlElement& element) {
  const auto classes = token_.attribute("class");
  Open open;
  open.element = &element;
  open.tag = token_.name;
  open.sort = &sort_of(classes);
  open.look = open.sort->look;
  if (const auto style = token_.attribute("style"); !style.empty()) open.look.lay_over(look_of(references_.decode_all(style)));
  if (const auto align = token_.attribute("align"); !align.empty() && !element.is(HtmlElement::row)) {
    const std::string_view a = align;
    if (a == "center" || a == "CENTER") open.look.align = Look::Align::centre;
    if (a == "right" || a == "RIGHT") open.look.align = Look::Align::right;
  }
  if (token_.name == "center") open.look.align = Look::Align::centre;
  open.id = token_.attribute("id");
  const auto roles = open.sort->roles;
  const bool page_element = (roles & (page_number | maybe_page_number)) != 0 && !page_text_ && !hidden() &&
                            !element.is(HtmlElement::cell) && !element.is(HtmlElement::row) && element.name != "table";
  const bool hide = (element.is(HtmlElement::hidden) || open.look.hidden || (roles & own_matter) != 0) && !page_element;

  if (element.is(HtmlElement::block) && !page_element) block_boundary(element);
  anchor();
  if (hide) ++hidden_;
  open.look.hidden = hide;
  if (element.is(HtmlElement::pre)) ++pre_;
  if (page_element) {
    page_text_ = true;
    page_depth_ = stack_.size();
    page_sure_ = (roles & page_number) != 0;
    page_written_.clear();
    page_line_ = token_.line;
  }
  if (token_.name == "a") {
    const auto href = token_.attribute("href");
    const bool note = (roles & footnote_mark) != 0 || href.starts_with("#Footnote") || href.starts_with("#footnote") ||
                      href.starts_with("#fn") || href.starts_with("#Fn") || href.starts_with("#FN");
    if (note) open.run_style = Run::note_mark;
    else if (href.starts_with("#")) open.run_style = Run::link;
    bool sure = false;
    if (href.size() > 1 && composer_.open() && !page_label_of_id(href.substr(href[0] == '#' ? 1 : 0), sure).empty())
      composer_.current().contents = true;  // mark_contents confirms it or takes it back
  }
  stack_.push_back(std::move(open));
  if (!element.is(HtmlElement::block) && composer_.open() && !page_text_ && !hidden()) open_run(stack_.back());
}

void HtmlReader::open_run(Open& open) {
  auto style = static_cast<std::uint16_t>((open.element->style & ~open.look.off) | open.look.on | open.run_style);
  if ((open.sort->roles & sidenote) != 0) style |= Run::sidenote;
  const bool named = open.sort->name.size() > open.tag.size();
  if (style == 0 && !named) return;
  open.run = composer_.begin_run(style, open.sort->name);
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
  composer_.end();
  for (auto& open : stack_) open.run = -1;
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

void HtmlReader::pop() {
  Open& open = stack_.back();
  if (open.look.hidden) --hidden_;
  if (open.element->is(HtmlElement::pre)) --pre_;
  if (page_text_ && stack_.size() == page_depth_ + 1) {
    stack_.pop_back();
    end_page_text();
    return;
  }
  if (open.element->is(HtmlElement::block)) {
    if (open.element->is(HtmlElement::cell)) {
      end_cell();
      if (row_broken_) composer_.end();
    } else if (in_row_ && !open.element->is(HtmlElement::row)) {
      if (open.element->name == "table") {
        composer_.end();
        in_row_ = false;
      } else if (composer_.current().text.size() > cell_begin_) {
        composer_.hard_break();
      }
    } else if (!page_text_) {
      composer_.end();
      in_row_ = false;
      for (auto& other : stack_) other.run = -1;
    }
  } else {
    composer_.end_run(open.run);
  }
  stack_.pop_back();
}

/// Pops to the innermost element with `flag`, unless one called `stop` or a barrier stands before it.
bool HtmlReader::close_back_to(HtmlElement::Flag flag, std::string_view stop) {
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const auto& e = *stack_[i].element;
    if (e.is(flag)) {
      while (stack_.size() > i) pop();
      return true;
    }
    if (e.name == stop || (e.is(HtmlElement::list) && flag == HtmlElement::item)) return false;
    if (flag == HtmlElement::item && e.is(HtmlElement::barrier)) return false;
  }
  return false;
}

/// Closes what the standard lets an author leave unclosed before this element (13.1.2.4).
void HtmlReader::close_implied(const HtmlElement& element) {
  if (!element.is(HtmlElement::block)) {
    if (token_.name == "a") {  // links do not nest
      for (std::size_t i = stack_.size(); i-- > 0 && !stack_[i].element->is(HtmlElement::block);)
        if (stack_[i].tag == "a") {
          while (stack_.size() > i) pop();
          break;
        }
    }
    return;
  }
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const auto& e = *stack_[i].element;
    if (e.is(HtmlElement::barrier)) break;
    if (e.name == "p" || (e.heading > 0 && element.heading > 0)) {
      while (stack_.size() > i) pop();
      break;
    }
  }
  if (element.is(HtmlElement::item)) close_back_to(HtmlElement::item, "table");
  if (element.is(HtmlElement::cell)) close_back_to(HtmlElement::cell, "table");
  if (element.is(HtmlElement::row) && close_back_to(HtmlElement::cell, "table")) {
  }
  if (element.is(HtmlElement::row)) close_back_to(HtmlElement::row, "table");
}

void HtmlReader::end() {
  if (token_.name == "br") {
    if (!hidden()) break_line();
    return;
  }
  const HtmlElement& element = html_element(token_.name);
  const bool heading = element.heading > 0;
  bool only_inline = true;
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const auto& e = *stack_[i].element;
    if (stack_[i].tag == token_.name || (heading && e.heading > 0)) {
      if (element.is(HtmlElement::formatting) && only_inline) {
        // "<b><i>one</b>two</i>": the inner element goes on.
        composer_.end_run(stack_[i].run);
        if (i + 1 == stack_.size()) pop();
        else if (!page_text_ && !stack_[i].look.hidden) stack_.erase(stack_.begin() + static_cast<std::ptrdiff_t>(i));
        else while (stack_.size() > i) pop();
      } else {
        while (stack_.size() > i) pop();
      }
      return;
    }
    if (e.is(HtmlElement::block)) only_inline = false;
    const bool table_part = element.is(HtmlElement::row) || element.is(HtmlElement::cell) || element.name == "table" ||
                            element.name == "tbody" || element.name == "thead" || element.name == "tfoot" ||
                            element.name == "body" || element.name == "html";
    if (e.is(HtmlElement::barrier) && !table_part) return;
    if (e.name == "table" && element.name != "body" && element.name != "html") return;
    if (!element.is(HtmlElement::block) && e.is(HtmlElement::block) && element.flags == 0 && element.name.empty() &&
        stack_[i].tag != token_.name && e.heading == 0 && e.name == "body")
      return;
  }
}

void HtmlReader::text() {
  if (token_.raw) {
    if (!stack_.empty() && stack_.back().tag == "style") sheet_.read(token_.text);
    return;
  }
  if (hidden()) return;
  if (page_text_) {
    page_written_ += references_.decode_all(token_.text);
    if (page_written_.size() > kLongestPageMark) give_back_page_text();
    return;
  }
  set(token_.text, token_.line);
}

void HtmlReader::set(std::string_view raw, std::uint32_t line) {
  if (!composer_.open()) {
    const auto first = std::find_if(raw.begin(), raw.end(), [](char c) { return static_cast<unsigned char>(c) > ' '; });
    if (first == raw.end()) return;
    begin_block();
  }
  if (pre_ > 0) {
    set_pre(raw, line);
    return;
  }
  while (!raw.empty()) {
    const std::size_t amp = std::min(raw.find('&'), raw.size());
    composer_.put(raw.substr(0, amp), line);
    raw.remove_prefix(amp);
    if (raw.empty()) break;
    const auto [decoded, length] = references_.decode(raw);
    composer_.put_decoded(decoded, line);
    raw.remove_prefix(length);
  }
}

/// In preformatted text line feeds are breaks, and an empty line ends the block.
void HtmlReader::set_pre(std::string_view raw, std::uint32_t line) {
  while (!raw.empty()) {
    const std::size_t end = std::min(raw.find('\n'), raw.size());
    const std::string decoded = references_.decode_all(raw.substr(0, end));
    const bool blank = std::all_of(decoded.begin(), decoded.end(), [](char c) { return static_cast<unsigned char>(c) <= ' '; });
    if (!blank) {
      if (!composer_.open()) begin_block();
      composer_.put_decoded(decoded, line);
    }
    if (end >= raw.size()) return;
    raw.remove_prefix(end + 1);
    ++line;
    if (blank && !in_row_) {
      composer_.end();
      for (auto& open : stack_) open.run = -1;
    } else {
      composer_.hard_break();
    }
  }
}

void HtmlReader::begin_block() {
  Block& block = composer_.begin(Block::Kind::paragraph);
  in_row_ = false;
  describe(block);
  for (auto& open : stack_)
    if (!open.element->is(HtmlElement::block)) open_run(open);
}

/// Tells a block what the open elements say of it.
void HtmlReader::describe(Block& block) {
  std::uint16_t roles = 0, style = 0, off = 0;
  int lists = 0;
  const HtmlElement* inner = nullptr;
  Look::Align align = Look::Align::inherit;
  std::string_view styled;
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const Open& open = stack_[i];
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
    if (!inner && (e.heading > 0 || e.is(HtmlElement::item) || e.is(HtmlElement::pre) || e.name == "figcaption")) inner = &e;
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

/// Takes a page mark from the id of any element; other ids wait to become the next block's anchor.
void HtmlReader::anchor() {
  for (const auto* attribute : {"id", "name"}) {
    const auto id = token_.attribute(attribute);
    if (id.empty() || (attribute[0] == 'n' && token_.name != "a")) continue;
    bool sure = false;
    std::string label = page_label_of_id(id, sure);
    if (label.empty()) {
      if (token_.name == "a" && !composer_.has_text()) {
        anchor_ = id;
        if (composer_.open() && composer_.current().anchor.empty()) composer_.current().anchor = id;
      }
    } else if (page_text_) {
      page_id_ = label;
      page_sure_ = true;
    } else {
      composer_.page_mark(std::move(label), token_.line, sure);
    }
    return;
  }
}

void HtmlReader::end_page_text() {
  page_text_ = false;
  std::string label = page_label(page_written_);
  const bool bracketed = page_written_.find_first_of("[{") != std::string::npos;
  const bool blank = page_written_.find_first_not_of(" \t\r\n") == std::string::npos;
  if (label.empty()) label = blank || page_sure_ ? page_id_ : "";
  if (!label.empty() && (page_sure_ || bracketed)) {
    composer_.page_mark(std::move(label), page_line_, true);
  } else if (!blank && !page_sure_) {
    set(page_written_, page_line_);
  } else if (!blank && label.empty()) {
    set(page_written_, page_line_);
  }
  page_id_.clear();
  page_written_.clear();
}

/// What looked like a page mark is too long for one: it is text after all.
void HtmlReader::give_back_page_text() {
  if (!page_text_) return;
  page_text_ = false;
  if (!page_id_.empty()) composer_.page_mark(std::exchange(page_id_, {}), page_line_, true);
  set(std::exchange(page_written_, {}), page_line_);
}

}  // namespace

Draft draft_html(std::string_view text) {
  Draft draft;
  HtmlReader(text, draft).read();
  return draft;
}

}  // namespace gallipot
