// hOCR is HTML whose class and title attributes tell what engines saw.
#include <charconv>
#include <utility>

#include "indexer/reading/html_tree.h"
#include "indexer/reading/scan.h"

namespace gallipot {
namespace {

bool has_class(std::string_view classes, std::string_view wanted) {
  for (std::size_t at = classes.find(wanted); at != std::string_view::npos; at = classes.find(wanted, at + 1)) {
    const bool begins = at == 0 || classes[at - 1] == ' ';
    const std::size_t end = at + wanted.size();
    if (begins && (end == classes.size() || classes[end] == ' ')) return true;
  }
  return false;
}

/// What stands after a property's name in a title attribute: "bbox 10 20 30 40; x_wconf 93".
std::string_view property(std::string_view title, std::string_view name) {
  while (!title.empty()) {
    const auto end = std::min(title.find(';'), title.size());
    auto one = title.substr(0, end);
    title.remove_prefix(std::min(end + 1, title.size()));
    while (!one.empty() && one.front() == ' ') one.remove_prefix(1);
    if (one.starts_with(name) && one.size() > name.size() && one[name.size()] == ' ')
      return one.substr(name.size() + 1);
  }
  return {};
}

double number(std::string_view& text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc()) return 0;
  text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
  return value > 1e7 || value < -1e7 ? 0 : value;
}

Box box_of(std::string_view title) {
  auto text = property(title, "bbox");
  Box box;
  for (double* side : {&box.left, &box.top, &box.right, &box.bottom}) *side = number(text);
  return box;
}

/// The name inside quotation marks.
std::string unquoted(std::string_view text) {
  if (text.size() > 1 && (text.front() == '"' || text.front() == '\'') &&
      text.find(text.front(), 1) != std::string::npos)
    return std::string(text.substr(1, text.find(text.front(), 1) - 1));
  return std::string(text);
}

bool is_line(std::string_view classes) {
  for (const std::string_view name :
       {"ocr_line", "ocr_header", "ocr_footer", "ocr_textfloat", "ocr_caption", "ocrx_line"})
    if (has_class(classes, name)) return true;
  return false;
}

class HocrReader {
 public:
  std::vector<ScanPage> read(const HtmlTree& tree) {
    for (const HtmlStep& step : tree.walk()) {
      if (step.kind == HtmlStep::Kind::open)
        open(step);
      else if (step.kind == HtmlStep::Kind::text)
        text(step);
      else if (step.node == word_)
        word_ = nullptr;
    }
    for (ScanPage& page : pages_)
      for (ScanLine& line : page.lines) settle(line);
    for (ScanPage& page : pages_) std::erase_if(page.lines, [](const ScanLine& l) { return l.words.empty(); });
    return std::move(pages_);
  }

 private:
  void open(const HtmlStep& step) {
    const auto classes = html_attribute(*step.node, "class");
    const auto title = html_attribute(*step.node, "title");
    const std::string name = html_name(*step.node);
    if (has_class(classes, "ocr_page")) {
      ScanPage& page = pages_.emplace_back();
      page.box = box_of(title);
      page.image = unquoted(property(title, "image"));
      page.line = step.line;
      area_ = 0;
    } else if (pages_.empty()) {
      return;
    } else if (has_class(classes, "ocr_carea") || has_class(classes, "ocr_par")) {
      ++area_;
    } else if (is_line(classes)) {
      ScanLine& line = pages_.back().lines.emplace_back();
      line.box = box_of(title);
      auto size = property(title, "x_size");
      line.size = number(size);
      line.area = area_;
    } else if (has_class(classes, "ocrx_word")) {
      if (pages_.back().lines.empty()) pages_.back().lines.emplace_back().area = area_;
      ScanWord& word = pages_.back().lines.back().words.emplace_back();
      word.box = box_of(title);
      word.line = step.line;
      if (auto sure = property(title, "x_wconf"); !sure.empty()) word.sure = number(sure) / 100;
      word_ = step.node;
    } else if (word_ && (name == "strong" || name == "b")) {
      pages_.back().lines.back().bold = true;
    } else if (word_ && (name == "em" || name == "i")) {
      pages_.back().lines.back().italic = true;
    }
  }

  void text(const HtmlStep& step) {
    if (pages_.empty() || pages_.back().lines.empty()) return;
    ScanLine& line = pages_.back().lines.back();
    const std::string_view words = step.node->v.text.text;
    if (word_) {
      for (const char c : words)
        if (static_cast<unsigned char>(c) > ' ') line.words.back().text += c;
    } else if (words.find_first_not_of(" \t\r\n") != std::string_view::npos) {
      // Lines whose words have no boxes of their own.
      ScanWord& word = line.words.emplace_back();
      word.box = line.box;
      word.line = step.line;
      word.text = words;
    }
  }

  static void settle(ScanLine& line) {
    std::erase_if(line.words, [](const ScanWord& w) { return w.text.empty(); });
    if (!line.box.empty() || line.words.empty()) return;
    line.box = line.words.front().box;
    for (const ScanWord& word : line.words) line.box.take_in(word.box);
  }

  std::vector<ScanPage> pages_;
  const GumboNode* word_ = nullptr;
  int area_ = 0;
};

}  // namespace

Outcome<std::vector<ScanPage>> pages_of_hocr(std::string_view text) {
  const auto tree = HtmlTree::parse(text);
  if (!tree) return tl::unexpected(tree.error());
  return HocrReader().read(*tree);
}

Outcome<Draft> draft_hocr(std::string_view text) {
  std::string mended(text);
  for (std::size_t i = 0; i < mended.size(); ++i)
    if (mended[i] == '\r' && (i + 1 == mended.size() || mended[i + 1] != '\n')) mended[i] = ' ';
  auto pages = pages_of_hocr(mended);
  if (!pages) return tl::unexpected(pages.error());
  return draft_scan(std::move(*pages));
}

}  // namespace gallipot
