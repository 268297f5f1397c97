// Which words of the print does a line rest on? Spans made readable, with the page on which they stand.
#pragma once

#include <string_view>

#include "indexer/normalizing/comparable.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// The words under a span of the recipe's text.
Printed printed_at(const ComparableRecipe& recipe, Span span);

/// The sentence (to the next full stop, or semicolon where it is long) round a span.
Span sentence_round(std::string_view text, Span span);

/// The clause round a span: sentence_round, cut at semicolons and colons.
Span clause_round(std::string_view text, Span span);

}  // namespace gallipot
