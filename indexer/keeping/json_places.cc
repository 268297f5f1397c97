// One walk over well-formed JSON; strings are passed over whole, so that brackets in them do not mislead.
#include "indexer/keeping/json_places.h"

#include <algorithm>

namespace gallipot {
namespace {

/// From the opening quotation mark to after the closing one.
std::size_t past_string(std::string_view json, std::size_t at) {
  for (++at; at < json.size() && json[at] != '"'; ++at)
    if (json[at] == '\\') ++at;
  return std::min(at + 1, json.size());
}

bool is_space(char c) { return c == ' ' || c == '\n' || c == '\t' || c == '\r'; }

}  // namespace

long line_of(std::string_view text, std::size_t offset) {
  const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(offset, text.size()));
  return 1 + static_cast<long>(std::count(text.begin(), end, '\n'));
}

std::vector<long> entry_lines(std::string_view json, std::string_view name) {
  std::vector<long> out;
  int depth = 0;
  bool inside = false, awaited = false;  // in the list; an entry may begin here
  for (std::size_t at = 0; at < json.size();) {
    const char c = json[at];
    if (inside && depth == 2 && awaited && c != ']' && !is_space(c)) {
      out.push_back(line_of(json, at));
      awaited = false;
    }
    if (c == '"') {
      const std::size_t end = past_string(json, at);
      if (depth == 1) {
        const auto colon = json.find_first_not_of(" \t\r\n", end);
        if (colon != std::string_view::npos && json[colon] == ':') {
          const auto value = json.find_first_not_of(" \t\r\n", colon + 1);
          inside = json.substr(at + 1, end - at - 2) == name && value != std::string_view::npos && json[value] == '[';
        }
      }
      at = end;
      continue;
    }
    if (c == '{' || c == '[') {
      ++depth;
      if (inside && depth == 2) awaited = true;
    }
    if (c == '}' || c == ']') --depth;
    if (c == ',' && depth == 2) awaited = true;
    ++at;
  }
  return out;
}

}  // namespace gallipot
