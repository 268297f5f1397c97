// The kitchen sheet and the shopping list, rendered: text for a terminal, JSON, a page that prints on one sheet of A4
// or Letter, and schema.org linked data.
#pragma once

#include <string>

#include "query/cooking/sheet.h"
#include "query/cooking/shopping.h"
#include "query/reporting/report.h"

namespace gallipot {

std::string sheet_as_text(const Sheet& sheet, const TextStyle& style);

/// The whole model. Amounts are {"unit","low","likely","high","why"}; beside "unit", which is the export schema's,
/// "ucum" is the code of the Unified Code for Units of Measure (g, mL, 1). Times in minutes.
std::string sheet_as_json(const Sheet& sheet);

/// A page of its own, with the recipe as JSON-LD in its head.
std::string sheet_as_html(const Sheet& sheet);

/// The body of that page, for a page that frames it itself.
std::string sheet_as_html_body(const Sheet& sheet);

/// A schema.org Recipe as JSON-LD (https://schema.org/Recipe), the printed source in `isBasedOn`.
std::string sheet_as_linked_data(const Sheet& sheet);

std::string shopping_as_text(const ShoppingList& list, const TextStyle& style);
std::string shopping_as_json(const ShoppingList& list);
std::string shopping_as_html(const ShoppingList& list);

}  // namespace gallipot
