// One model, several renderings: each function turns an answer into text for a terminal, CSV (RFC 4180) or JSON.
#pragma once

#include <string>
#include <vector>

#include "indexer/storing/build.h"
#include "query/citing/cite.h"
#include "query/comparing/compare.h"
#include "query/finding/find.h"
#include "query/grouping/variants.h"

namespace gallipot {

struct TextStyle {
  unsigned width = 100;  ///< columns of the terminal
  bool printed = false;  ///< show the printed words under each amount
  bool full = false;     ///< show every witness's column, however many there are
};

std::string found_as_text(const Found& found, const Shelf& shelf, const TextStyle& style);
std::string found_as_json(const Found& found, const Shelf& shelf);
std::string variants_as_text(const VariantSet& set, const Shelf& shelf, const TextStyle& style);
std::string variants_as_json(const VariantSet& set, const Shelf& shelf);
std::string comparison_as_text(const Comparison& comparison, const TextStyle& style);
std::string comparison_as_csv(const Comparison& comparison);
std::string comparison_as_json(const Comparison& comparison);
/// One page that stands alone: findings, plots (SVG, each with a text of its own), tables, witnesses.
std::string comparison_as_html(const Comparison& comparison);
std::string citation_as_text(const Citation& citation);
/// A JSON object: id, title, chapter, book, creator, edition, place, publisher, year, first_published, contributor,
/// page, page_end, file, lines [first, last], note. What is not known is null.
std::string citation_as_json(const Citation& citation);
/// {"results":[citation...]}
std::string citations_as_json(const std::vector<Citation>& citations);

/// What an indexing did: totals, then a line a book, then what was refused and what looked doubtful.
std::string build_as_text(const BuildReport& report, const TextStyle& style);
std::string build_as_json(const BuildReport& report);
/// One line for a terminal while indexing: books, recipes, rate, time left.
std::string progress_line(const Progress& progress, std::size_t width);

}  // namespace gallipot
