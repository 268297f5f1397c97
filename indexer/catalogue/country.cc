// Asks ICU's table of territories.
#include "indexer/catalogue/country.h"

#include <unicode/region.h>

#include <cctype>

namespace gallipot {

Outcome<std::string> country_named(std::string_view letters) {
  std::string code(letters);
  for (char& c : code) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  UErrorCode status = U_ZERO_ERROR;
  const icu::Region* region =
      code.size() == 2 ? icu::Region::getInstance(code.c_str(), status) : nullptr;  // owned by ICU
  if (region != nullptr && U_SUCCESS(status) && region->getType() == URGN_TERRITORY) {
    const std::string own = region->getRegionCode();
    if (own == code) return code;
    return fault("\"" + std::string(letters) + "\" is no country's two letters", "perhaps " + own + " is meant");
  }
  return fault("\"" + std::string(letters) + "\" is no country's two letters",
               "write GB for Great Britain, US for the United States, as ISO 3166 does");
}

}  // namespace gallipot
