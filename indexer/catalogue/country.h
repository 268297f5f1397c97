// Which letters are a country?
#pragma once

#include <string>
#include <string_view>

#include "indexer/fault/fault.h"

namespace gallipot {

/// The country in capitals as ISO 3166-1 alpha-2 writes it ("gb" -> "GB"). Faults: two letters that are no country's,
/// with the country's own where it has another habit ("UK" -> GB). Source: the territories that ICU knows (CLDR).
Outcome<std::string> country_named(std::string_view letters);

}  // namespace gallipot
