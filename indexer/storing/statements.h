// What books say of their own measures, as it lies in an index: one document a book.
#pragma once

#include <xapian.h>

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/measures/statement.h"

namespace gallipot {

/// Compact bytes of one book's statements; the book itself is not among them.
std::string encode(const std::vector<Statement>& statements);

/// Faults: bytes cut short or out of range ("the index is damaged").
Outcome<std::vector<Statement>> decode_statements(std::string_view bytes, const std::string& book);

/// The Xapian document of a book's statements as schema.h lays it down.
Xapian::Document statements_document(const std::string& book, const std::vector<Statement>& statements);

/// The statements of a book in a database, in order of line; none where the book makes none. Throws Xapian::Error.
Outcome<std::vector<Statement>> statements_of(const Xapian::Database& database, const std::string& book);

}  // namespace gallipot
