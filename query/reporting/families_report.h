// The dishes of the shelf, to read and as JSON.
#pragma once

#include <string>

#include "query/grouping/families.h"
#include "query/reporting/report.h"

namespace gallipot {

/// The first `limit` families: name, books, recipes, years, other names, most variable ingredient.
std::string families_as_text(const Families& families, const Shelf& shelf, const TextStyle& style, std::size_t limit);
/// {"recipes", "alone", "families": how many there are, "results": [{"name", "names": [{"name", "recipes"}], "books",
/// "first", "last", "most_variable": {"ingredient", "have", "share": [lower, upper] | null} | null, "recipes": [ids]}]}
std::string families_as_json(const Families& families, const Shelf& shelf, std::size_t limit);

}  // namespace gallipot
