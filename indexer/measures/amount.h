// An amount is an interval with a likely value, in one unit, and the reason for it.
#pragma once

#include <string>

namespace gallipot {

struct Amount {
  enum class Unit : unsigned char { gram, millilitre, count };
  Unit unit = Unit::gram;
  double low = 0;
  double likely = 0;
  double high = 0;
  std::string why;  ///< which rule and evidence: "avoirdupois ounce", "wineglass, US 1870-1900, 9 witnesses"
};

/// "g", "ml" or "count", as the export schema and UCUM spell them.
const char* unit_name(Amount::Unit unit);

}  // namespace gallipot
