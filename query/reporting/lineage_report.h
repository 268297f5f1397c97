// Lineage and families rendered: text for a terminal, JSON, CSV of what the copyist changed.
#pragma once

#include <string>

#include "query/grouping/borrowings.h"
#include "query/grouping/lineage.h"
#include "query/reporting/report.h"

namespace gallipot {

std::string lineage_as_text(const Lineage& lineage, const Shelf& shelf, const TextStyle& style);
/// {"of", "first", "first_why", "note", "results": [the earlier witnesses, likeliest source first, each with "id",
/// "verbatim", "order": "earlier" | "undecided", "changes"...], "later": [...], "same_book": [...], "stemma": [...]}
std::string lineage_as_json(const Lineage& lineage, const Shelf& shelf);
/// One record a change: earlier, later, kind (amount, words, moved), stuff, was, is.
std::string lineage_as_csv(const Lineage& lineage);

/// `examples`: so many recipes are named for each book.
std::string borrowings_as_text(const Borrowings& borrowings, const Shelf& shelf, const TextStyle& style,
                               std::size_t examples = 3);
/// {"of", "recipes", "kin", "note", "results": [books drawn on, each with "book", "recipes", "copies", "best",
/// "same_author", "order", "pairs": [...]], "undecided": [...], "later": [...]}
std::string borrowings_as_json(const Borrowings& borrowings, const Shelf& shelf);

}  // namespace gallipot
