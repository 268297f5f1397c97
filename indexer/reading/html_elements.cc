// The table of elements, after the WHATWG HTML standard's rendering section (15.3), sorted by name.
#include "indexer/reading/html_elements.h"

#include <algorithm>
#include <array>

#include "indexer/reading/block.h"

namespace gallipot {
namespace {

using E = HtmlElement;

constexpr std::array<HtmlElement, 82> kElements = {{
    {"address", E::block, 0, 0},
    {"applet", E::hidden, 0, 0},
    {"area", E::empty, 0, 0},
    {"article", E::block, 0, 0},
    {"aside", E::block, 0, 0},
    {"b", 0, Run::bold, 0},
    {"base", E::empty, 0, 0},
    {"big", 0, Run::large, 0},
    {"blockquote", E::block, 0, 0},
    {"body", E::block, 0, 0},
    {"br", E::empty, 0, 0},
    {"caption", E::block, 0, 0},
    {"center", E::block, 0, 0},
    {"cite", 0, Run::italic, 0},
    {"col", E::empty, 0, 0},
    {"colgroup", E::block, 0, 0},
    {"dd", E::block | E::item, 0, 0},
    {"details", E::block, 0, 0},
    {"dfn", 0, Run::italic, 0},
    {"dir", E::block | E::list, 0, 0},
    {"div", E::block, 0, 0},
    {"dl", E::block | E::list, 0, 0},
    {"dt", E::block | E::item, 0, 0},
    {"em", 0, Run::italic, 0},
    {"embed", E::empty, 0, 0},
    {"fieldset", E::block, 0, 0},
    {"figcaption", E::block, 0, 0},
    {"figure", E::block, 0, 0},
    {"footer", E::block, 0, 0},
    {"form", E::block, 0, 0},
    {"frame", E::empty, 0, 0},
    {"frameset", E::block, 0, 0},
    {"h1", E::block, 0, 1},
    {"h2", E::block, 0, 2},
    {"h3", E::block, 0, 3},
    {"h4", E::block, 0, 4},
    {"h5", E::block, 0, 5},
    {"h6", E::block, 0, 6},
    {"head", E::block, 0, 0},
    {"header", E::block, 0, 0},
    {"hr", E::block | E::empty, 0, 0},
    {"html", E::block, 0, 0},
    {"i", 0, Run::italic, 0},
    {"iframe", E::hidden, 0, 0},
    {"img", E::empty, 0, 0},
    {"input", E::empty, 0, 0},
    {"li", E::block | E::item, 0, 0},
    {"link", E::empty, 0, 0},
    {"main", E::block, 0, 0},
    {"math", E::hidden, 0, 0},
    {"menu", E::block | E::list, 0, 0},
    {"meta", E::empty, 0, 0},
    {"nav", E::block, 0, 0},
    {"noembed", E::hidden, 0, 0},
    {"noframes", E::hidden, 0, 0},
    {"ol", E::block | E::list, 0, 0},
    {"p", E::block, 0, 0},
    {"param", E::empty, 0, 0},
    {"pre", E::block | E::pre, 0, 0},
    {"script", E::hidden, 0, 0},
    {"section", E::block, 0, 0},
    {"select", E::hidden, 0, 0},
    {"source", E::empty, 0, 0},
    {"strong", 0, Run::bold, 0},
    {"style", E::hidden, 0, 0},
    {"summary", E::block, 0, 0},
    {"sup", 0, Run::superscript, 0},
    {"svg", E::hidden, 0, 0},
    {"table", E::block, 0, 0},
    {"tbody", E::block, 0, 0},
    {"td", E::block | E::cell, 0, 0},
    {"template", E::hidden, 0, 0},
    {"textarea", E::hidden, 0, 0},
    {"tfoot", E::block, 0, 0},
    {"th", E::block | E::cell, Run::bold, 0},
    {"thead", E::block, 0, 0},
    {"title", E::hidden, 0, 0},
    {"tr", E::block | E::row, 0, 0},
    {"track", E::empty, 0, 0},
    {"u", 0, Run::underline, 0},
    {"ul", E::block | E::list, 0, 0},
    {"wbr", E::empty, 0, 0},
}};
static_assert(std::is_sorted(kElements.begin(), kElements.end(),
                             [](const HtmlElement& a, const HtmlElement& b) { return a.name < b.name; }));

constexpr HtmlElement kUnknown{};

}  // namespace

const HtmlElement& html_element(std::string_view name) {
  const auto* found = std::lower_bound(kElements.begin(), kElements.end(), name,
                                       [](const HtmlElement& e, std::string_view n) { return e.name < n; });
  return found != kElements.end() && found->name == name ? *found : kUnknown;
}

}  // namespace gallipot
