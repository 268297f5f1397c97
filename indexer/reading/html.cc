// Opens and closes the elements of an HTML book.
#include <algorithm>

#include "indexer/reading/html_reader.h"

namespace gallipot {
namespace {

constexpr std::size_t kDeepest = 256;

}  // namespace

void HtmlReader::read() {
  while (tokens_.next(token_)) {
    if (token_.kind == HtmlToken::Kind::text)
      text();
    else if (token_.kind == HtmlToken::Kind::start)
      start();
    else
      end();
  }
  give_back_page_text();
  composer_.end();
}

const HtmlSort& HtmlReader::sort_of(std::string_view classes) {
  std::string key = token_.name;
  each_class(classes, [&](std::string_view c) { key.append(".").append(c); });
  const auto found = sorts_.find(key);
  if (found != sorts_.end()) return found->second;
  HtmlSort sort;
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
    if (alt.size() == 1 && ((alt[0] >= 'A' && alt[0] <= 'Z') || (alt[0] >= 'a' && alt[0] <= 'z')))
      set(alt, token_.line);
  }
}

void HtmlReader::push(const HtmlElement& element) {
  const auto classes = token_.attribute("class");
  HtmlOpen open;
  open.element = &element;
  open.tag = token_.name;
  open.sort = &sort_of(classes);
  open.look = open.sort->look;
  if (const auto style = token_.attribute("style"); !style.empty())
    open.look.lay_over(look_of(references_.decode_all(style)));
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
  if (page_element) begin_page_text((roles & page_number) != 0);
  if (token_.name == "a") open.run_style = link_style(roles);
  stack_.push_back(std::move(open));
  if (!element.is(HtmlElement::block) && composer_.open() && !page_text_ && !hidden()) open_run(stack_.back());
}

void HtmlReader::pop() {
  HtmlOpen& open = stack_.back();
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
      end_block();
      in_row_ = false;
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
      close_down_to(i);
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
          close_down_to(i);
          break;
        }
    }
    return;
  }
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const auto& e = *stack_[i].element;
    if (e.is(HtmlElement::barrier)) break;
    if (e.name == "p" || (e.heading > 0 && element.heading > 0)) {
      close_down_to(i);
      break;
    }
  }
  if (element.is(HtmlElement::item)) close_back_to(HtmlElement::item, "table");
  if (element.is(HtmlElement::cell)) close_back_to(HtmlElement::cell, "table");
  if (element.is(HtmlElement::row)) {
    close_back_to(HtmlElement::cell, "table");
    close_back_to(HtmlElement::row, "table");
  }
}

/// An end tag closes the innermost open element of its name (any heading closes any heading), with what is open in it;
/// but nothing inside a cell or table closes what is outside, except the table's own parts.
void HtmlReader::end() {
  if (token_.name == "br") {
    if (!hidden()) break_line();
    return;
  }
  const HtmlElement& element = html_element(token_.name);
  const bool whole_page = token_.name == "body" || token_.name == "html";
  const bool table_part = element.is(HtmlElement::row) || element.is(HtmlElement::cell) || token_.name == "table" ||
                          token_.name == "tbody" || token_.name == "thead" || token_.name == "tfoot";
  bool only_inline = true;
  for (std::size_t i = stack_.size(); i-- > 0;) {
    const auto& e = *stack_[i].element;
    if (stack_[i].tag == token_.name || (element.heading > 0 && e.heading > 0)) {
      const bool innermost = i + 1 == stack_.size();
      if (!innermost && only_inline && element.is(HtmlElement::formatting) && !page_text_ && !stack_[i].look.hidden) {
        // "<b><i>one</b>two</i>": the inner element goes on.
        composer_.end_run(stack_[i].run);
        stack_.erase(stack_.begin() + static_cast<std::ptrdiff_t>(i));
      } else {
        close_down_to(i);
      }
      return;
    }
    if (e.is(HtmlElement::block)) only_inline = false;
    if (e.is(HtmlElement::barrier) && !table_part && !whole_page) return;
    if (e.name == "table" && !whole_page) return;
  }
}

Draft draft_html(std::string_view text) {
  Draft draft;
  HtmlReader(text, draft).read();
  return draft;
}

}  // namespace gallipot
