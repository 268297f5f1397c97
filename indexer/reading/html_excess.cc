// A look at the tags before the tree: gumbo's time and stack grow with nesting, which only a hostile or broken file has
// much of. Tags are cut as the standard's tokenization does (13.2.5); which element ends which is not asked, so the
// count is an upper bound.
#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>

#include "indexer/reading/html_elements.h"
#include "indexer/reading/html_tree.h"

namespace gallipot {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_space(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

template <std::size_t N>
bool among(const std::array<std::string_view, N>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// Elements whose start tag ends the one before: left open in honest books (13.1.2.4), or never nested (13.2.6.4.7).
bool ends_its_like(std::string_view name) {
  static constexpr std::array<std::string_view, 16> names = {"p",    "li",    "dd",    "dt",    "td",      "th",
                                                             "tr",   "tbody", "thead", "tfoot", "caption", "a",
                                                             "nobr", "html",  "head",  "body"};
  return among(names, name);
}

/// Elements that are opened anew in the next block while they are left open (13.2.4.3); of <a> only one is.
bool formats(std::string_view name) {
  static constexpr std::array<std::string_view, 12> names = {"b", "big",   "code",   "em",     "font", "i",
                                                             "s", "small", "strike", "strong", "tt",   "u"};
  return among(names, name);
}

bool holds_raw_text(std::string_view name) {
  static constexpr std::array<std::string_view, 8> names = {"script", "style",    "title",   "textarea",
                                                            "iframe", "noframes", "noembed", "xmp"};
  return among(names, name);
}

/// The byte after the '>' of a tag whose name ends at `at`; a '>' in a quoted value ends nothing.
/// `attributes` is how many it has.
std::size_t tag_end(std::string_view html, std::size_t at, std::size_t& attributes) {
  const std::size_t n = html.size();
  attributes = 0;
  while (at < n && html[at] != '>') {
    if (is_space(html[at]) || html[at] == '/') {
      ++at;
      continue;
    }
    ++attributes;
    ++at;  // a name may begin with '='
    while (at < n && !is_space(html[at]) && html[at] != '=' && html[at] != '>' && html[at] != '/') ++at;
    while (at < n && is_space(html[at])) ++at;
    if (at >= n || html[at] != '=') continue;
    ++at;
    while (at < n && is_space(html[at])) ++at;
    if (at < n && (html[at] == '"' || html[at] == '\'')) {
      at = html.find(html[at], at + 1);
      if (at == std::string_view::npos) return n;
      ++at;
    } else {
      while (at < n && !is_space(html[at]) && html[at] != '>') ++at;
    }
  }
  return std::min(at + 1, n);
}

/// The byte after a comment or declaration that begins at `at` with "<!" or "<?" or "</" and no letter.
std::size_t declaration_end(std::string_view html, std::size_t at) {
  const bool comment = html.substr(at, 4) == "<!--";
  if (comment) {
    if (html.substr(at + 4, 1) == ">") return at + 5;
    if (html.substr(at + 4, 2) == "->") return at + 6;
  }
  if (!comment) {
    const std::size_t end = html.find('>', at + 2);
    return end == std::string_view::npos ? html.size() : end + 1;
  }
  for (std::size_t i = at + 4; (i = html.find("--", i)) != std::string_view::npos; ++i) {
    if (html.substr(i + 2, 1) == ">") return i + 3;
    if (html.substr(i + 2, 2) == "!>") return i + 4;
  }
  return html.size();
}

/// Where the end tag of the raw text element `name` stands, from `at` on.
std::size_t raw_text_end(std::string_view html, std::size_t at, std::string_view name) {
  while ((at = html.find("</", at)) != std::string_view::npos) {
    const auto written = html.substr(at + 2, name.size());
    if (std::equal(written.begin(), written.end(), name.begin(), name.end(),
                   [](char a, char b) { return lower(a) == b; }))
      return at;
    at += 2;
  }
  return html.size();
}

class Nesting {
 public:
  void start(const std::string& name) {
    const HtmlElement& element = html_element(name);
    if (element.is(HtmlElement::empty)) return;
    foreign_ = foreign_ || name == "svg" || name == "math";
    around(name, element);
    if (name == "p") {
      close_spans();
      in_paragraph_ = !foreign_;
    }
    if (element.is(HtmlElement::item)) {
      // Items of two kinds of list do not end each other; without a list between them they nest.
      const char kind = name == "li" ? 'l' : 'd';
      if (last_item_ != 0 && last_item_ != kind) ++deepest_;
      last_item_ = kind;
    }
    if (!foreign_ && ends_its_like(name)) return;
    ++open_[name];
    ++deepest_;
    if (in_paragraph_ && name == "span") ++spans_;
    if (formats(name)) ++formatting_;
  }

  void end(const std::string& name) {
    around(name, html_element(name));
    if (name == "p") {
      close_spans();
      in_paragraph_ = false;
    }
    const auto found = open_.find(name);
    if (found == open_.end() || found->second == 0) return;
    --found->second;
    --deepest_;
    if (name == "span" && spans_ > 0) --spans_;
    if (formats(name)) --formatting_;
  }

  /// The bound that is passed, as a fault says it; empty while none is.
  std::string excess() const {
    if (deepest_ > kDeepestHtml) return "elements are nested more than " + std::to_string(kDeepestHtml) + " deep";
    if (clones_ > kMostHtmlClones) return "too many formatting elements (<b>, <i>, <font>) are left open";
    return {};
  }
  bool foreign() const { return foreign_; }

 private:
  /// What any tag of that name does to what is open, before it opens or closes its own element.
  void around(const std::string& name, const HtmlElement& element) {
    // Around a block all open formatting elements are opened anew; a few are no matter.
    if (element.is(HtmlElement::block) && formatting_ > 6) clones_ += formatting_;
    if (element.is(HtmlElement::list) || name == "table") last_item_ = 0;
    if (name != "p" && name != "span" && name != "a" && name != "sup" && name != "sub" && !formats(name)) {
      in_paragraph_ = false;
      spans_ = 0;
    }
  }

  /// A paragraph's end ends the spans in it: "<span id='Page_3'/>" is a start tag in HTML.
  void close_spans() {
    open_["span"] -= spans_;
    deepest_ -= spans_;
    spans_ = 0;
  }

  std::unordered_map<std::string, std::size_t> open_;
  std::size_t deepest_ = 0;  ///< elements open, at most
  std::size_t clones_ = 0;
  std::size_t formatting_ = 0;
  std::size_t spans_ = 0;      ///< opened in the open paragraph and not closed
  bool in_paragraph_ = false;  ///< a paragraph is open that has had no blocks in it
  char last_item_ = 0;         ///< 'l' after <li>, 'd' after <dt> or <dd>
  bool foreign_ = false;       ///< SVG or MathML was met, in which everything nests
};

}  // namespace

HtmlExcess html_excess(std::string_view html) {
  Nesting nesting;
  std::string name;
  std::size_t at = 0;
  while ((at = html.find('<', at)) != std::string_view::npos && at + 1 < html.size()) {
    const bool end = html[at + 1] == '/';
    std::size_t i = at + (end ? 2 : 1);
    if (i >= html.size()) break;
    if (!is_letter(html[i])) {
      at = end || html[i] == '!' || html[i] == '?' ? declaration_end(html, at) : at + 1;
      continue;
    }
    for (name.clear(); i < html.size() && !is_space(html[i]) && html[i] != '>' && html[i] != '/'; ++i)
      name += lower(html[i]);
    if (html_element(name).heading > 0) name = "h1";  // the end tag of any heading closes any heading
    end ? nesting.end(name) : nesting.start(name);
    std::size_t attributes = 0;
    const std::size_t after = tag_end(html, i, attributes);
    std::string excess = attributes > kMostHtmlAttributes
                             ? "a tag has more than " + std::to_string(kMostHtmlAttributes) + " attributes"
                             : nesting.excess();
    if (!excess.empty()) {
      const auto tag = html.begin() + static_cast<std::ptrdiff_t>(at);
      return {std::move(excess), 1 + static_cast<std::uint32_t>(std::count(html.begin(), tag, '\n'))};
    }
    at = after;
    if (!end && !nesting.foreign() && holds_raw_text(name)) at = raw_text_end(html, at, name);
  }
  return {};
}

}  // namespace gallipot
