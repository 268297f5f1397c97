// HTML as the tree of the WHATWG HTML standard (13.2.6), walked in order. gumbo builds the tree: it supplies the end
// tags that authors leave out and mends what is nested wrongly. Internal to the room.
#pragma once

#include <gumbo.h>

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// One step of the walk through the tree.
struct HtmlStep {
  enum class Kind : unsigned char { open, close, text };
  const GumboNode* node = nullptr;
  std::uint32_t line = 0;       ///< raw line where the node begins
  std::uint32_t last_line = 0;  ///< of a text: the raw line that it cannot run past
  Kind kind = Kind::open;
};

class HtmlTree {
 public:
  /// `html` is UTF-8 whose every carriage return stands before a line feed. Faults: elements nested so deep, or
  /// left open so often, that a tree would grow past all use (html_excess).
  static Outcome<HtmlTree> parse(std::string_view html);

  /// The walk, without comments and without the elements that only the standard put there (body, tbody). Lines of
  /// texts never run back: a text that the standard moves out of a table takes the line of the place it is moved to.
  std::vector<HtmlStep> walk() const;

 private:
  struct Destroy {
    void operator()(GumboOutput* output) const { gumbo_destroy_output(&kGumboDefaultOptions, output); }
  };
  std::unique_ptr<GumboOutput, Destroy> output_;
};

/// Lower-case name of an element.
std::string html_name(const GumboNode& node);

/// Value of an element's attribute by lower-case name; empty where it is absent. Holds as long as the tree does.
std::string_view html_attribute(const GumboNode& node, const char* name);

/// True for a formatting element that the standard opens once more (13.2.4.3, 13.2.6.4.7): its id was met before.
bool html_repeated(const GumboNode& node);

/// Bounds of what a tree is built for. Books nest under 30 deep, with half a dozen attributes.
constexpr std::size_t kDeepestHtml = 400;
constexpr std::size_t kMostHtmlAttributes = 500;
constexpr std::size_t kMostHtmlClones = 200'000;  ///< formatting elements that the standard would open anew

/// What in an HTML text passes a bound first, told from its tags alone before any tree is built.
struct HtmlExcess {
  std::string what;        ///< as a fault says it; empty where the text is within all bounds
  std::uint32_t line = 0;  ///< raw line of the tag that passed the bound
};

HtmlExcess html_excess(std::string_view html);

}  // namespace gallipot
