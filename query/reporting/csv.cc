// Quotes fields and joins records.
#include "query/reporting/csv.h"

namespace gallipot {

std::string csv_field(std::string_view value) {
  if (value.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(value);
  std::string out = "\"";
  for (const char c : value) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string csv_record(const std::vector<std::string>& fields) {
  std::string out;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (i > 0) out += ',';
    out += csv_field(fields[i]);
  }
  return out + "\r\n";
}

}  // namespace gallipot
