// One model, several renderings: each function turns an answer into text for a terminal, CSV (RFC 4180) or JSON.
#pragma once

#include <string>
#include <vector>

#include "query/citing/cite.h"
#include "query/comparing/compare.h"
#include "query/finding/find.h"
#include "query/grouping/variants.h"

namespace gallipot {

struct TextStyle {
  unsigned width = 100;  ///< columns of the terminal
  bool printed = false;  ///< show the printed words under each amount
};

std::string found_as_text(const Found& found, const Shelf& shelf, const TextStyle& style);
std::string found_as_json(const Found& found, const Shelf& shelf);
std::string variants_as_text(const VariantSet& set, const Shelf& shelf, const TextStyle& style);
std::string variants_as_json(const VariantSet& set, const Shelf& shelf);
std::string comparison_as_text(const Comparison& comparison, const TextStyle& style);
std::string comparison_as_csv(const Comparison& comparison);
std::string comparison_as_json(const Comparison& comparison);
std::string citation_as_text(const Citation& citation);
std::string citation_as_json(const Citation& citation);

}  // namespace gallipot
