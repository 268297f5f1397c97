// Takes page marks out of an HTML book: ids of elements, and the text of elements whose class says page number.
#include <algorithm>
#include <array>
#include <utility>

#include "indexer/reading/html_reader.h"
#include "indexer/reading/page_marks.h"

namespace gallipot {

/// Takes a page mark from the id of any element; other ids wait to become the next block's anchor.
void HtmlReader::anchor() {
  for (const auto* attribute : {"id", "name"}) {
    const auto id = tag_.attribute(attribute);
    if (id.empty() || (attribute[0] == 'n' && tag_.name != "a")) continue;
    bool sure = false;
    std::string label = page_label_of_id(id, sure);
    if (label.empty()) {
      if (tag_.name == "a" && !composer_.has_text()) {
        anchor_ = id;
        if (composer_.open() && composer_.current().anchor.empty()) composer_.current().anchor = id;
      }
    } else if (page_text_) {
      page_id_ = label;
      page_sure_ = true;
    } else {
      composer_.page_mark(std::move(label), tag_.line, sure);
    }
    return;
  }
}

/// The text of the element being opened is kept apart: it names a page.
void HtmlReader::begin_page_text(bool sure) {
  page_text_ = true;
  page_depth_ = stack_.size();
  page_sure_ = sure;
  page_written_.clear();
  page_line_ = page_last_line_ = tag_.line;
}

/// What a link is: a footnote's mark, or a reference to another place. One to a page makes its block look like
/// contents.
std::uint16_t HtmlReader::link_style(std::uint16_t roles) {
  const auto href = tag_.attribute("href");
  bool sure = false;
  if (href.size() > 1 && composer_.open() && !page_label_of_id(href.substr(href[0] == '#' ? 1 : 0), sure).empty())
    composer_.current().contents = true;  // mark_contents confirms it or takes it back
  static constexpr std::array<std::string_view, 5> notes = {"#Footnote", "#footnote", "#fn", "#Fn", "#FN"};
  const bool note = std::any_of(notes.begin(), notes.end(), [&](std::string_view n) { return href.starts_with(n); });
  if (note || (roles & footnote_mark) != 0) return Run::note_mark;
  return href.starts_with("#") ? Run::link : 0;
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
    set(page_written_, page_line_, page_last_line_);
  } else if (!blank && label.empty()) {
    set(page_written_, page_line_, page_last_line_);
  }
  page_id_.clear();
  page_written_.clear();
}

/// What looked like a page mark is too long for one: it is text after all.
void HtmlReader::give_back_page_text() {
  if (!page_text_) return;
  page_text_ = false;
  if (!page_id_.empty()) composer_.page_mark(std::exchange(page_id_, {}), page_line_, true);
  set(std::exchange(page_written_, {}), page_line_, page_last_line_);
}

}  // namespace gallipot
