// Statements on measures as JSON.
#include "query/reporting/evidence.h"
#include "query/reporting/json.h"

namespace gallipot {

std::string evidence_as_json(const std::vector<Statement>& statements) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("statements");
    json.StartArray();
    for (const Statement& s : statements) {
      json.StartObject();
      write_field(json, "book", s.book);
      write_field_or_null(json, "page", s.page);
      json.Key("line");
      json.Uint(s.line);
      write_field(json, "measure", s.measure);
      write_field_or_null(json, "of", s.of);
      json.Key("equals");
      write_range(json, s.unit.empty() ? std::nullopt : std::optional<Range>(s.equals));
      write_field_or_null(json, "unit", s.unit);
      write_field(json, "quote", s.quote);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  });
}

}  // namespace gallipot
