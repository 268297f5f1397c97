// Opens and closes the elements of an HTML book.
#include <algorithm>

#include "indexer/reading/html_reader.h"

namespace gallipot {

void HtmlReader::read() {
  for (const HtmlStep& step : tree_.walk()) {
    if (step.kind == HtmlStep::Kind::text)
      text(step);
    else if (step.kind == HtmlStep::Kind::open)
      open(step);
    else
      close(step);
  }
  give_back_page_text();
  composer_.end();
}

const HtmlSort& HtmlReader::sort_of(std::string_view classes) {
  std::string key = tag_.name;
  each_class(classes, [&](std::string_view c) { key.append(".").append(c); });
  const auto found = sorts_.find(key);
  if (found != sorts_.end()) return found->second;
  HtmlSort sort;
  sort.look = sheet_.look(tag_.name, classes);
  each_class(classes, [&](std::string_view c) {
    sort.roles = static_cast<std::uint16_t>(sort.roles | role_of_class(c));
    sort.look.on = static_cast<std::uint16_t>(sort.look.on | (style_of_class(c) & ~sort.look.off));
  });
  sort.name = key;
  return sorts_.emplace(std::move(key), std::move(sort)).first->second;
}

void HtmlReader::open(const HtmlStep& step) {
  tag_.node = step.node;
  tag_.name = html_name(*step.node);
  tag_.line = step.line;
  const HtmlElement& element = html_element(tag_.name);
  if (element.is(HtmlElement::empty))
    empty_element(element);
  else
    push(element);
}

void HtmlReader::close(const HtmlStep& step) {
  if (!stack_.empty() && stack_.back().node == step.node) pop();
}

void HtmlReader::empty_element(const HtmlElement& element) {
  if (hidden()) return;
  if (tag_.name == "br") {
    break_line();
  } else if (element.is(HtmlElement::block)) {  // hr
    if (page_text_) return;
    composer_.end();
    in_row_ = false;
    composer_.begin(Block::Kind::rule).lines.push_back({0, tag_.line});
    describe(composer_.current());
    composer_.end();
  } else if (tag_.name == "img") {
    // A picture of a decorated initial stands for its letter.
    const auto alt = tag_.attribute("alt");
    if (alt.size() == 1 && ((alt[0] >= 'A' && alt[0] <= 'Z') || (alt[0] >= 'a' && alt[0] <= 'z')))
      set(alt, tag_.line, tag_.line);
  }
}

void HtmlReader::push(const HtmlElement& element) {
  const auto classes = tag_.attribute("class");
  HtmlOpen open;
  open.node = tag_.node;
  open.apart = page_text_;
  open.element = &element;
  open.tag = tag_.name;
  open.sort = &sort_of(classes);
  open.look = open.sort->look;
  if (const auto style = tag_.attribute("style"); !style.empty()) open.look.lay_over(look_of(style));
  if (const auto align = tag_.attribute("align"); !align.empty() && !element.is(HtmlElement::row)) {
    const std::string_view a = align;
    if (a == "center" || a == "CENTER") open.look.align = Look::Align::centre;
    if (a == "right" || a == "RIGHT") open.look.align = Look::Align::right;
  }
  if (tag_.name == "center") open.look.align = Look::Align::centre;
  const bool repeated = html_repeated(*tag_.node);
  if (!repeated) open.id = tag_.attribute("id");
  const auto roles = open.sort->roles;
  const bool page_element = (roles & (page_number | maybe_page_number)) != 0 && !repeated && !page_text_ && !hidden() &&
                            !element.is(HtmlElement::cell) && !element.is(HtmlElement::row) && element.name != "table";
  const bool hide = (element.is(HtmlElement::hidden) || open.look.hidden || (roles & own_matter) != 0) && !page_element;

  if (element.is(HtmlElement::block) && !page_element) block_boundary(element);
  if (!repeated) anchor();
  if (hide) ++hidden_;
  open.look.hidden = hide;
  if (element.is(HtmlElement::pre)) ++pre_;
  if (page_element) begin_page_text((roles & page_number) != 0);
  if (tag_.name == "a") open.run_style = link_style(roles);
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
  if (page_text_) {
    composer_.end_run(open.run);
  } else if (open.element->is(HtmlElement::block)) {
    if (open.element->is(HtmlElement::cell)) {
      if (!open.apart) end_cell();
      if (row_broken_) composer_.end();
    } else if (in_row_ && !open.element->is(HtmlElement::row)) {
      if (open.element->name == "table") {
        composer_.end();
        in_row_ = false;
      } else if (composer_.current().text.size() > cell_begin_) {
        composer_.hard_break();
      }
    } else {
      end_block();
      in_row_ = false;
    }
  } else {
    composer_.end_run(open.run);
  }
  stack_.pop_back();
}

Outcome<Draft> draft_html(std::string_view text) {
  std::string mended;
  for (std::size_t cr = text.find('\r'); cr != std::string_view::npos; cr = text.find('\r', cr + 1)) {
    if (text.substr(cr + 1, 1) == "\n") continue;
    // The standard takes a carriage return alone for a line's end; here lines are counted by their feeds.
    if (mended.empty()) mended = text;
    mended[cr] = ' ';
  }
  const auto tree = HtmlTree::parse(mended.empty() ? text : mended);
  if (!tree) return tl::unexpected<Fault>(tree.error());
  Draft draft;
  HtmlReader(*tree, draft).read();
  return draft;
}

}  // namespace gallipot
