// Statements as bytes and as a document.
#include "indexer/storing/statements.h"

#include "indexer/storing/bytes.h"
#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

/// Lists the fields once, for writing and for reading.
template <typename A>
void fields(A& a, bytes::Of<A, Statement>& s, std::uint32_t& line) {
  a(s.page);
  a.near(s.line, line);
  a(s.measure);
  a(s.of);
  a(s.equals.low);
  a(s.equals.high);
  a(s.unit);
  a(s.quote);
}

}  // namespace

std::string encode(const std::vector<Statement>& statements) {
  bytes::Writer writer;
  std::uint32_t line = 0;
  writer.list(statements, [&](const Statement& s) { fields(writer, s, line); });
  return std::move(writer.bytes);
}

Outcome<std::vector<Statement>> decode_statements(std::string_view bytes, const std::string& book) {
  bytes::Reader reader(bytes);
  std::vector<Statement> statements;
  std::uint32_t line = 0;
  reader.list(statements, [&](Statement& s) { fields(reader, s, line); });
  if (reader.broken() || !reader.at_end())
    return fault("the index is damaged: what the book \"" + book + "\" says of its measures is garbled",
                 "index the books again");
  for (auto& s : statements) s.book = book;
  return statements;
}

Xapian::Document statements_document(const std::string& book, const std::vector<Statement>& statements) {
  Xapian::Document document;
  document.add_boolean_term(schema::term(schema::statements, book));
  document.set_data(encode(statements));
  return document;
}

Outcome<std::vector<Statement>> statements_of(const Xapian::Database& database, const std::string& book) {
  const std::string term = schema::term(schema::statements, book);
  const auto at = database.postlist_begin(term);
  if (at == database.postlist_end(term)) return std::vector<Statement>{};
  return decode_statements(database.get_document(*at).get_data(), book);
}

}  // namespace gallipot
