// An XML text as a tree, with the raw line of every node. pugixml parses it: no entity but XML's own five and character
// references is ever expanded, and nothing outside the text is read.
#pragma once

#include <cstdint>
#include <memory>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// Bounds of what a tree is walked for. Books nest under 30 deep.
inline constexpr int deepest_xml = 300;
inline constexpr std::size_t largest_xml = 256u << 20;  ///< bytes

class XmlTree {
 public:
  /// Faults: not well-formed (with the line), nested deeper or larger than the bounds.
  static Outcome<XmlTree> parse(std::string_view text);

  pugi::xml_node root() const { return document_->document_element(); }
  /// 1-based raw line on which a node begins.
  std::uint32_t line_of(pugi::xml_node node) const;

 private:
  std::unique_ptr<pugi::xml_document> document_;
  std::vector<std::uint32_t> feeds_;  ///< offsets of line feeds
};

/// A name without its namespace prefix: "tei:div" -> "div".
std::string_view xml_name(pugi::xml_node node);

/// The value of an attribute by its name without prefix; empty where it is absent.
std::string_view xml_attribute(pugi::xml_node node, std::string_view name);

/// All text inside a node, white space folded; elements that end a line or block part words.
std::string xml_text(pugi::xml_node node);

/// The first element of that name at or beneath `from`, in order of the text; empty where there is none.
pugi::xml_node xml_first(pugi::xml_node from, std::string_view name);

}  // namespace gallipot
