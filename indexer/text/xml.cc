// Walks without recursion, so that no depth of nesting can exhaust the stack before it is measured.
#include "indexer/text/xml.h"

#include <fmt/format.h>

#include <algorithm>

namespace gallipot {
namespace {

/// The node after `node` in order of the text, inside `within`; `depth` follows.
pugi::xml_node after(pugi::xml_node node, pugi::xml_node within, int& depth) {
  if (node.first_child()) {
    ++depth;
    return node.first_child();
  }
  while (node && node != within) {
    if (node.next_sibling()) return node.next_sibling();
    node = node.parent();
    --depth;
  }
  return {};
}

}  // namespace

Outcome<XmlTree> XmlTree::parse(std::string_view text) {
  if (text.size() > largest_xml)
    return fault(fmt::format("the XML is larger than {} MB", largest_xml >> 20), "split it into its books");
  XmlTree tree;
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1))
    tree.feeds_.push_back(static_cast<std::uint32_t>(at));
  tree.document_ = std::make_unique<pugi::xml_document>();
  const auto parsed = tree.document_->load_buffer(text.data(), text.size(), pugi::parse_default | pugi::parse_ws_pcdata,
                                                  pugi::encoding_utf8);
  const auto line_at = [&](std::ptrdiff_t offset) {
    return static_cast<long>(std::lower_bound(tree.feeds_.begin(), tree.feeds_.end(),
                                              static_cast<std::uint32_t>(std::max<std::ptrdiff_t>(0, offset))) -
                             tree.feeds_.begin()) +
           1;
  };
  if (!parsed || !tree.root())
    return fault(fmt::format("this is not well-formed XML ({})", parsed ? "no element" : parsed.description()),
                 "mend the file there, or ask for it again where it came from", {}, line_at(parsed.offset));
  int depth = 1;
  for (pugi::xml_node node = tree.root(); node; node = after(node, tree.root(), depth))
    if (depth > deepest_xml)
      return fault(fmt::format("elements are nested more than {} deep", deepest_xml),
                   "see whether the file is what it should be", {}, static_cast<long>(tree.line_of(node)));
  return tree;
}

std::uint32_t XmlTree::line_of(pugi::xml_node node) const {
  const auto offset = node.offset_debug();
  if (offset < 0) return 1;
  return static_cast<std::uint32_t>(std::lower_bound(feeds_.begin(), feeds_.end(), static_cast<std::uint32_t>(offset)) -
                                    feeds_.begin()) +
         1;
}

std::string_view xml_name(pugi::xml_node node) {
  const std::string_view name = node.name();
  const auto colon = name.rfind(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

std::string_view xml_attribute(pugi::xml_node node, std::string_view name) {
  for (const auto attribute : node.attributes()) {
    std::string_view its = attribute.name();
    if (const auto colon = its.rfind(':'); colon != std::string_view::npos) its.remove_prefix(colon + 1);
    if (its == name) return attribute.value();
  }
  return {};
}

std::string xml_text(pugi::xml_node node) {
  std::string out;
  bool space = false;
  int depth = 0;
  for (pugi::xml_node at = node; at; at = after(at, node, depth)) {
    if (at.type() == pugi::node_element) {
      const auto name = xml_name(at);
      space = space || name == "lb" || name == "p" || name == "titlePart" || name == "br";
    }
    if (at.type() != pugi::node_pcdata && at.type() != pugi::node_cdata) continue;
    for (const char c : std::string_view(at.value())) {
      if (static_cast<unsigned char>(c) <= ' ') {
        space = true;
        continue;
      }
      if (space && !out.empty()) out += ' ';
      space = false;
      out += c;
    }
  }
  return out;
}

pugi::xml_node xml_first(pugi::xml_node from, std::string_view name) {
  int depth = 0;
  for (pugi::xml_node at = from; at; at = after(at, from, depth))
    if (at.type() == pugi::node_element && xml_name(at) == name) return at;
  return {};
}

}  // namespace gallipot
