// What was found, as lines to read and as JSON: each hit with its title, book, year and page, so that it can be cited.
#include <fmt/format.h>

#include "query/reporting/json.h"
#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

/// "The Virginia Housewife, 1860, p. 134".
std::string where(const Citation& citation) {
  std::string out = citation.book.title;
  if (!citation.book.date.empty()) out += ", " + citation.book.date;
  return out + ", " + citation.place_in_book();
}

std::string joined(const std::vector<std::string>& parts, const char* by) {
  std::string out;
  for (const std::string& part : parts) {
    if (!out.empty()) out += by;
    out += part;
  }
  return out;
}

/// One hit: its title, its id, where it stands, why.
std::string entry(std::size_t rank, double score, const std::string& id, const Shelf& shelf, const std::string& why,
                  const TextStyle& style) {
  const std::string first = fmt::format("{:>3}  {:.2f}  ", rank, score);
  const std::string indent(columns_of(first), ' ');
  const auto citation = cite(shelf, id);
  std::string out;
  if (citation) {
    out += paragraph(citation->title + "   " + id, style.width, first);
    out += paragraph(where(*citation), style.width, indent);
  } else {
    out += paragraph(id, style.width, first);
  }
  if (!why.empty()) out += paragraph(why, style.width, indent);
  return out;
}

/// The fields of a hit that are the same for find and variants.
void write_hit(JsonWriter& json, const Shelf& shelf, const std::string& id, double score) {
  write_field(json, "id", id);
  json.Key("score");
  json.Double(score);
  const auto citation = cite(shelf, id);
  if (!citation) return;
  write_field(json, "title", citation->title);
  write_field(json, "book", citation->book.id);
  write_field_or_null(json, "year", citation->book.date);
  write_field_or_null(json, "page", citation->page);
}

void write_list(JsonWriter& json, const char* name, const std::vector<std::string>& values) {
  json.Key(name);
  json.StartArray();
  for (const std::string& value : values) json.String(value);
  json.EndArray();
}

}  // namespace

std::string found_as_text(const Found& found, const Shelf& shelf, const TextStyle& style) {
  std::string out;
  std::size_t rank = 0;
  for (const Hit& hit : found.hits) out += entry(++rank, hit.score, hit.id, shelf, joined(hit.why, "; "), style);
  if (!found.suggestion.empty()) out += fmt::format("Did you mean \"{}\"?\n", found.suggestion);
  return out;
}

std::string found_as_json(const Found& found, const Shelf& shelf) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("results");
    json.StartArray();
    for (const Hit& hit : found.hits) {
      json.StartObject();
      write_hit(json, shelf, hit.id, hit.score);
      write_list(json, "why", hit.why);
      json.EndObject();
    }
    json.EndArray();
    if (!found.suggestion.empty()) write_field(json, "suggestion", found.suggestion);
    json.EndObject();
  });
}

std::string variants_as_text(const VariantSet& set, const Shelf& shelf, const TextStyle& style) {
  std::string out;
  if (!set.of.empty()) {
    if (const auto citation = cite(shelf, set.of))
      out += paragraph(fmt::format("Variants of {} ({}), {}", citation->title, set.of, where(*citation)), style.width) +
             "\n";
  }
  std::size_t rank = 0;
  for (const Variant& variant : set.variants)
    out += entry(++rank, variant.score, variant.id, shelf, variant.reason, style);
  return out;
}

std::string variants_as_json(const VariantSet& set, const Shelf& shelf) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    if (!set.of.empty()) write_field(json, "of", set.of);
    json.Key("results");
    json.StartArray();
    for (const Variant& variant : set.variants) {
      json.StartObject();
      write_hit(json, shelf, variant.id, variant.score);
      json.Key("name");
      json.Double(variant.name);
      json.Key("stuff");
      json.Double(variant.stuff);
      json.Key("method");
      json.Double(variant.method);
      write_list(json, "shared", variant.shared);
      write_list(json, "lacks", variant.lacks);
      write_list(json, "adds", variant.adds);
      write_field(json, "reason", variant.reason);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  });
}

}  // namespace gallipot
