// Builds the tree with gumbo and lays its walk out flat, so that nothing here recurses.
#include "indexer/reading/html_tree.h"

#include <algorithm>

namespace gallipot {
namespace {

bool is_element(const GumboNode& node) { return node.type == GUMBO_NODE_ELEMENT || node.type == GUMBO_NODE_TEMPLATE; }

bool is_text(const GumboNode& node) {
  return node.type == GUMBO_NODE_TEXT || node.type == GUMBO_NODE_WHITESPACE || node.type == GUMBO_NODE_CDATA;
}

/// Elements nobody wrote, which would only stand in the way of what was written.
bool only_implied(const GumboNode& node) {
  if ((node.parse_flags & GUMBO_INSERTION_IMPLIED) == 0) return false;
  const auto tag = node.v.element.tag;
  return tag == GUMBO_TAG_HTML || tag == GUMBO_TAG_HEAD || tag == GUMBO_TAG_BODY || tag == GUMBO_TAG_TBODY ||
         tag == GUMBO_TAG_COLGROUP;
}

std::uint32_t feeds(const GumboStringPiece& s) {
  return static_cast<std::uint32_t>(std::count(s.data, s.data + s.length, '\n'));
}

/// Lets nothing stand on a later line than what follows it.
void settle_lines(std::vector<HtmlStep>& steps) {
  std::uint32_t next = UINT32_MAX;
  for (std::size_t i = steps.size(); i-- > 0;) {
    HtmlStep& step = steps[i];
    if (step.kind == HtmlStep::Kind::close) continue;
    const bool text = step.kind == HtmlStep::Kind::text;
    step.line = std::min(step.line, next);
    if (text) step.last_line = std::min(step.line + feeds(step.node->v.text.original_text), next);
    // Only print holds back what stands before it: an element opened anew has the line of its first opening.
    const bool print = text ? step.node->type != GUMBO_NODE_WHITESPACE : step.node->v.element.tag == GUMBO_TAG_HR;
    if (print) next = step.line;
  }
}

}  // namespace

Outcome<HtmlTree> HtmlTree::parse(std::string_view html) {
  const HtmlExcess excess = html_excess(html);
  if (!excess.what.empty())
    return fault(excess.what + "; this is not a book as transcriptions come",
                 "see whether the end tags are missing, or give the book as plain text", {}, excess.line);
  GumboOptions options = kGumboDefaultOptions;
  options.max_errors = 0;
  HtmlTree tree;
  tree.output_.reset(gumbo_parse_with_options(&options, html.data(), html.size()));
  return tree;
}

std::vector<HtmlStep> HtmlTree::walk() const {
  struct Level {
    const GumboNode* node;
    unsigned next;
  };
  std::vector<HtmlStep> steps;
  std::vector<Level> levels{{output_->root, 0}};
  const auto enter = [&](const GumboNode& node) {
    if (!only_implied(node)) steps.push_back({&node, node.v.element.start_pos.line, 0, HtmlStep::Kind::open});
  };
  enter(*output_->root);
  while (!levels.empty()) {
    Level& level = levels.back();
    const GumboNode& parent = *level.node;
    const GumboVector& children = parent.v.element.children;
    if (level.next == children.length) {
      if (!only_implied(parent)) steps.push_back({&parent, 0, 0, HtmlStep::Kind::close});
      levels.pop_back();
      continue;
    }
    const auto& child = *static_cast<const GumboNode*>(children.data[level.next++]);
    if (is_element(child)) {
      enter(child);
      levels.push_back({&child, 0});
    } else if (is_text(child)) {
      steps.push_back({&child, child.v.text.start_pos.line, 0, HtmlStep::Kind::text});
    }
  }
  settle_lines(steps);
  return steps;
}

std::string html_name(const GumboNode& node) {
  const GumboElement& element = node.v.element;
  if (element.tag != GUMBO_TAG_UNKNOWN) return gumbo_normalized_tagname(element.tag);
  GumboStringPiece written = element.original_tag;
  if (written.data) gumbo_tag_from_original_text(&written);
  std::string name(written.data ? written.data : "", written.length);
  for (char& c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
  return name;
}

std::string_view html_attribute(const GumboNode& node, const char* name) {
  const GumboAttribute* found = gumbo_get_attribute(&node.v.element.attributes, name);
  return found ? std::string_view(found->value) : std::string_view();
}

bool html_repeated(const GumboNode& node) {
  return (node.parse_flags &
          (GUMBO_INSERTION_RECONSTRUCTED_FORMATTING_ELEMENT | GUMBO_INSERTION_ADOPTION_AGENCY_CLONED)) != 0;
}

}  // namespace gallipot
