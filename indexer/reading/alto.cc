// ALTO: pages, blocks, lines and strings as elements with their places as attributes.
#include <charconv>

#include "indexer/reading/scan.h"
#include "indexer/text/xml.h"

namespace gallipot {
namespace {

double number(pugi::xml_node node, const char* name) {
  const auto text = xml_attribute(node, name);
  double value = 0;
  if (std::from_chars(text.data(), text.data() + text.size(), value).ec != std::errc()) return 0;
  return value > 1e7 || value < -1e7 ? 0 : value;
}

Box box_of(pugi::xml_node node) {
  const double left = number(node, "HPOS"), top = number(node, "VPOS");
  return {left, top, left + number(node, "WIDTH"), top + number(node, "HEIGHT")};
}

class AltoReader {
 public:
  explicit AltoReader(const XmlTree& tree) : tree_(tree) {}

  std::vector<ScanPage> read() {
    image_ = xml_text(xml_first(tree_.root(), "fileName"));
    walk(tree_.root());
    for (ScanPage& page : pages_) std::erase_if(page.lines, [](const ScanLine& l) { return l.words.empty(); });
    return std::move(pages_);
  }

 private:
  void walk(pugi::xml_node node) {  // no deeper than deepest_xml
    for (const pugi::xml_node child : node.children()) {
      const auto name = xml_name(child);
      if (name == "Page") {
        ScanPage& page = pages_.emplace_back();
        page.box = {0, 0, number(child, "WIDTH"), number(child, "HEIGHT")};
        page.folio = xml_attribute(child, "PRINTED_IMG_NR");
        page.image = image_;
        page.line = tree_.line_of(child);
      } else if (pages_.empty()) {
        walk(child);
        continue;
      } else if (name == "TextBlock") {
        ++area_;
      } else if (name == "TextLine") {
        line(child);
        continue;
      } else if (name == "Illustration" || name == "GraphicalElement") {
        continue;
      }
      walk(child);
    }
  }

  void line(pugi::xml_node node) {
    ScanLine& out = pages_.back().lines.emplace_back();
    out.box = box_of(node);
    out.area = area_;
    for (const pugi::xml_node child : node.children()) {
      const auto name = xml_name(child);
      if (name == "HYP") {
        if (!out.words.empty() && !out.words.back().text.ends_with('-')) out.words.back().text += '-';
      } else if (name == "String") {
        ScanWord& word = out.words.emplace_back();
        word.text = xml_attribute(child, "CONTENT");
        word.box = box_of(child);
        word.line = tree_.line_of(child);
        if (!xml_attribute(child, "WC").empty()) word.sure = number(child, "WC");
        const auto style = xml_attribute(child, "STYLE");
        out.bold = out.bold || style.find("bold") != std::string_view::npos;
        out.italic = out.italic || style.find("italics") != std::string_view::npos;
        if (word.text.empty()) out.words.pop_back();
      }
    }
    if (!out.box.empty() || out.words.empty()) return;
    out.box = out.words.front().box;
    for (const ScanWord& word : out.words) out.box.take_in(word.box);
  }

  const XmlTree& tree_;
  std::vector<ScanPage> pages_;
  std::string image_;
  int area_ = 0;
};

}  // namespace

Outcome<std::vector<ScanPage>> pages_of_alto(std::string_view text) {
  const auto tree = XmlTree::parse(text);
  if (!tree) return tl::unexpected(tree.error());
  return AltoReader(*tree).read();
}

Outcome<Draft> draft_alto(std::string_view text) {
  auto pages = pages_of_alto(text);
  if (!pages) return tl::unexpected(pages.error());
  return draft_scan(std::move(*pages));
}

}  // namespace gallipot
