// Units by their codes in the Unified Code for Units of Measure (UCUM).
#pragma once

#include <optional>

#include "query/reporting/json.h"

namespace gallipot {

/// "g", "mL"; "1" for a count. Source: UCUM, version 2.1, case sensitive codes.
const char* ucum_code(Amount::Unit unit);

/// {"unit","ucum","low","likely","high","why"} or null.
void write_amount_with_code(JsonWriter& json, const std::optional<Amount>& amount);

}  // namespace gallipot
