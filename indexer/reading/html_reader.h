// The walk through the tree of an HTML book: a stack of open elements, and what it says of the text that comes.
// Internal to the room. html.cc opens and closes elements, html_blocks.cc sets their text into blocks, html_pages.cc
// takes page marks out of it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/reading/composer.h"
#include "indexer/reading/html_elements.h"
#include "indexer/reading/html_roles.h"
#include "indexer/reading/html_tree.h"
#include "indexer/reading/styles.h"

namespace gallipot {

/// An element's name, look and part, which depend on its tag name and class only.
struct HtmlSort {
  std::string name;  ///< "p.recipe"
  Look look;
  std::uint16_t roles = 0;
};

/// The element that is being opened.
struct HtmlTag {
  const GumboNode* node = nullptr;
  std::string name;
  std::uint32_t line = 0;

  std::string_view attribute(const char* wanted) const { return html_attribute(*node, wanted); }
};

/// An open element.
struct HtmlOpen {
  const GumboNode* node = nullptr;
  const HtmlElement* element = nullptr;
  std::string tag;
  const HtmlSort* sort = nullptr;
  Look look;
  int run = -1;  ///< its run in the open block; -1 where it has none
  std::uint16_t run_style = 0;
  std::string id;
  bool apart = false;  ///< opened inside a page number's text: it began no block, row or cell
};

/// Longer text in an element of a page class is no page number.
constexpr std::size_t kLongestPageMark = 40;

class HtmlReader {
 public:
  HtmlReader(const HtmlTree& tree, Draft& draft) : tree_(tree), composer_(draft) {}

  void read();

 private:
  // Elements.
  void open(const HtmlStep& step);
  void close(const HtmlStep& step);
  void empty_element(const HtmlElement& element);
  void push(const HtmlElement& element);
  void pop();
  const HtmlSort& sort_of(std::string_view classes);
  void start_row_or_cell(const HtmlElement& element);
  void end_cell();
  void block_boundary(const HtmlElement& element);

  // Text.
  void text(const HtmlStep& step);
  /// Sets text that begins on `line` and does not run past `last_line`.
  void set(std::string_view text, std::uint32_t line, std::uint32_t last_line);
  void set_pre(std::string_view text, std::uint32_t line, std::uint32_t last_line);
  void begin_block();
  void describe(Block& block);
  void open_run(HtmlOpen& open);
  void break_line();
  void end_block();

  // Pages.
  void anchor();
  std::uint16_t link_style(std::uint16_t roles);
  void begin_page_text(bool sure);
  void end_page_text();
  void give_back_page_text();

  bool hidden() const { return hidden_ > 0; }

  const HtmlTree& tree_;
  HtmlTag tag_;
  Composer composer_;
  StyleSheet sheet_;
  std::unordered_map<std::string, HtmlSort> sorts_;
  std::vector<HtmlOpen> stack_;
  int hidden_ = 0;  ///< open elements whose content is not print
  int pre_ = 0;
  bool in_row_ = false;      ///< the open block is a table row
  bool row_broken_ = false;  ///< the row held headings or lists: its cells are read as ordinary blocks
  std::uint32_t cell_begin_ = 0;
  std::string anchor_;  ///< id waiting for the next block

  bool page_text_ = false;  ///< inside an element of a page class: its text is kept apart
  std::size_t page_depth_ = 0;
  bool page_sure_ = false;
  std::string page_written_;
  std::string page_id_;
  std::uint32_t page_line_ = 0;
  std::uint32_t page_last_line_ = 0;
};

}  // namespace gallipot
