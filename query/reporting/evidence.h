// What the books of a shelf say of their own measures, for reading and as JSON.
#pragma once

#include <string>
#include <vector>

#include "indexer/measures/statement.h"
#include "indexer/storing/shelf.h"
#include "query/reporting/report.h"

namespace gallipot {

/// A list by measure, each statement with book, page and words; where several books tell a measure in the same unit,
/// how far they agree.
std::string evidence_as_text(const std::vector<Statement>& statements, const Shelf& shelf, const TextStyle& style);

/// {"statements":[{"book","page","line","measure","of","equals":[low,high],"unit","quote"}]}, in the order given. Page,
/// stuff, figure and unit are null where there are none.
std::string evidence_as_json(const std::vector<Statement>& statements);

}  // namespace gallipot
