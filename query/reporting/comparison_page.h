// A comparison as the body of a page, for whoever frames it.
#pragma once

#include <functional>
#include <string>

#include "query/comparing/compare.h"

namespace gallipot {

/// `address_of` gives the address of a recipe's own page; where it is empty the page links to itself only.
std::string comparison_body(const Comparison& comparison,
                            const std::function<std::string(const std::string&)>& address_of);

}  // namespace gallipot
