// On which line of a JSON file does a thing stand? What RapidJSON does not keep, so that a fault can name the line.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace gallipot {

/// The 1-based line of a byte of the text.
long line_of(std::string_view text, std::size_t offset);

/// The line on which each entry of the list `name` begins, a member of the outermost object. The text must be
/// well-formed JSON; empty where it has no such list.
std::vector<long> entry_lines(std::string_view json, std::string_view name);

}  // namespace gallipot
