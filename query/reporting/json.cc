// Writes the shared parts of JSON answers.
#include "query/reporting/json.h"

namespace gallipot {

void write_field(JsonWriter& json, const char* name, const std::string& value) {
  json.Key(name);
  json.String(value);
}

void write_field_or_null(JsonWriter& json, const char* name, const std::string& value) {
  json.Key(name);
  if (value.empty())
    json.Null();
  else
    json.String(value);
}

void write_amount(JsonWriter& json, const std::optional<Amount>& amount) {
  if (!amount) {
    json.Null();
    return;
  }
  json.StartObject();
  write_field(json, "unit", unit_name(amount->unit));
  json.Key("low");
  json.Double(amount->low);
  json.Key("likely");
  json.Double(amount->likely);
  json.Key("high");
  json.Double(amount->high);
  write_field(json, "why", amount->why);
  json.EndObject();
}

void write_range(JsonWriter& json, const std::optional<Range>& range) {
  if (!range) {
    json.Null();
    return;
  }
  json.StartArray();
  json.Double(range->low);
  json.Double(range->high);
  json.EndArray();
}

void write_citation(JsonWriter& json, const Citation& citation) {
  json.StartObject();
  write_field(json, "id", citation.id);
  write_field(json, "title", citation.title);
  write_field_or_null(json, "chapter", citation.chapter);
  write_field(json, "book", citation.book.title);
  write_field_or_null(json, "creator", citation.book.creator);
  write_field_or_null(json, "edition", citation.book.edition);
  write_field_or_null(json, "place", citation.book.place);
  write_field_or_null(json, "publisher", citation.book.publisher);
  write_field_or_null(json, "year", citation.book.date);
  write_field_or_null(json, "first_published", citation.book.first_published);
  write_field_or_null(json, "contributor", citation.contributor);
  write_field_or_null(json, "page", citation.page);
  write_field_or_null(json, "page_end", citation.page_end);
  write_field_or_null(json, "image", citation.image);
  write_field(json, "file", citation.file);
  json.Key("lines");
  json.StartArray();
  json.Uint(citation.line_start);
  json.Uint(citation.line_end);
  json.EndArray();
  write_field(json, "note", citation.note());
  json.EndObject();
}

}  // namespace gallipot
