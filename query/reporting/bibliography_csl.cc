// CSL-JSON.
#include "query/reporting/bibliography.h"
#include "query/reporting/json.h"

namespace gallipot {
namespace {

void write_names(JsonWriter& json, const char* name, const std::string& creators) {
  const auto names = parted_names(creators);
  if (names.empty()) return;
  json.Key(name);
  json.StartArray();
  for (const PartedName& one : names) {
    json.StartObject();
    if (!one.literal.empty()) {
      write_field(json, "literal", one.literal);
    } else {
      write_field(json, "family", one.family);
      write_field(json, "given", one.given);
    }
    json.EndObject();
  }
  json.EndArray();
}

void write_date(JsonWriter& json, const char* name, const std::string& edtf) {
  if (edtf.empty()) return;
  json.Key(name);
  json.StartObject();
  if (const auto year = plain_year(edtf)) {
    json.Key("date-parts");
    json.StartArray();
    for (const int one : {year->first, year->last}) {
      json.StartArray();
      json.Int(one);
      json.EndArray();
      if (year->first == year->last) break;
    }
    json.EndArray();
    if (year->about) {
      json.Key("circa");
      json.Bool(true);
    }
  } else {
    write_field(json, "literal", edtf);
  }
  json.EndObject();
}

void write_known(JsonWriter& json, const char* name, const std::string& value) {
  if (!value.empty()) write_field(json, name, value);
}

}  // namespace

std::string bibliography_as_csl(const std::vector<Citation>& citations) {
  return json_answer([&](JsonWriter& json) {
    json.StartArray();
    for (const Citation& one : citations) {
      json.StartObject();
      write_field(json, "id", one.id);
      write_field(json, "type", "chapter");
      write_field(json, "title", one.title.empty() ? one.id : one.title);
      write_field(json, "container-title", one.book.title);
      // Who gave the recipe wrote it; who made the book made the whole.
      write_names(json, "author", one.contributor.empty() ? one.book.creator : one.contributor);
      if (!one.contributor.empty()) write_names(json, "container-author", one.book.creator);
      write_date(json, "issued", one.book.date);
      if (one.book.first_published != one.book.date) write_date(json, "original-date", one.book.first_published);
      write_known(json, "publisher", one.book.publisher);
      write_known(json, "publisher-place", one.book.place);
      write_known(json, "edition", one.book.edition);
      write_known(json, "language", one.book.language);
      if (!one.page.empty())
        write_field(json, "page",
                    one.page_end.empty() || one.page_end == one.page ? one.page : one.page + "-" + one.page_end);
      write_field(json, "note", one.id);
      json.EndObject();
    }
    json.EndArray();
  });
}

}  // namespace gallipot
