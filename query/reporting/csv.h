// Comma-separated values as RFC 4180 lays them down: CRLF line ends, quotes where a field needs them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gallipot {

/// A field: in quotes where it holds a comma, a quote or a line end, inner quotes doubled (RFC 4180, section 2, 5 to
/// 7).
std::string csv_field(std::string_view value);

/// A record with its CRLF.
std::string csv_record(const std::vector<std::string>& fields);

}  // namespace gallipot
