// Families: a line of figures each, then the names that the books use and what differs most.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/families_report.h"
#include "query/reporting/json.h"
#include "query/reporting/layout.h"

namespace gallipot {
namespace {

constexpr std::size_t most_names = 8;

std::string years_of(const Family& family) {
  if (!family.first) return "no date";
  return *family.first == *family.last ? std::to_string(*family.first)
                                       : fmt::format("{}-{}", *family.first, *family.last);
}

std::string number(std::size_t n, const char* one, const char* many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

/// Two significant digits of a share of the batch.
std::string percent(double share) {
  const double p = 100 * share;
  if (p < 0.01) return "less than 0.01%";
  return fmt::format("{:.{}f}%", p, p < 0.1 ? 2 : p < 10 ? 1 : 0);
}

std::string variation(const MostVariable& most, std::size_t recipes) {
  if (most.by_amount)
    return fmt::format("Differs most in {}: half of the recipes that tell have {} to {} of the batch.", most.stuff,
                       percent(most.lower), percent(most.upper));
  return fmt::format("Differs most in {}: {} of {} have it.", most.stuff, most.have, recipes);
}

std::string names_line(const Family& family) {
  std::string out;
  std::size_t shown = 0;
  for (const NameUsed& used : family.names) {
    if (used.name == family.name) continue;
    if (shown++ == most_names) break;
    out += (out.empty() ? "" : "; ") + used.name;
    if (used.recipes > 1) out += fmt::format(" ({})", used.recipes);
  }
  if (family.names.size() > most_names + 1) out += fmt::format("; and {} more", family.names.size() - 1 - most_names);
  return out;
}

void write_names(JsonWriter& json, const Family& family) {
  json.Key("names");
  json.StartArray();
  for (const NameUsed& used : family.names) {
    json.StartObject();
    write_field(json, "name", used.name);
    json.Key("recipes");
    json.Uint64(used.recipes);
    json.EndObject();
  }
  json.EndArray();
}

void write_year(JsonWriter& json, const char* name, const std::optional<int>& year) {
  json.Key(name);
  year ? json.Int(*year) : json.Null();
}

void write_variation(JsonWriter& json, const std::optional<MostVariable>& most) {
  json.Key("most_variable");
  if (!most) {
    json.Null();
    return;
  }
  json.StartObject();
  write_field(json, "ingredient", most->stuff);
  json.Key("have");
  json.Uint64(most->have);
  json.Key("share");
  write_range(json, most->by_amount ? std::optional<Range>(Range{most->lower, most->upper}) : std::nullopt);
  json.EndObject();
}

void write_family(JsonWriter& json, const Family& family) {
  json.StartObject();
  write_field(json, "name", family.name);
  write_names(json, family);
  json.Key("books");
  json.Uint64(family.books);
  write_year(json, "first", family.first);
  write_year(json, "last", family.last);
  write_variation(json, family.most_variable);
  json.Key("recipes");
  json.StartArray();
  for (const std::string& id : family.recipes) json.String(id);
  json.EndArray();
  json.EndObject();
}

}  // namespace

std::string families_as_text(const Families& families, const Shelf& shelf, const TextStyle& style, std::size_t limit) {
  const std::size_t shown = std::min(limit, families.families.size());
  std::string out = paragraph(
      fmt::format("{} in {} of {} make {}; {} of which no other names the dish.",
                  number(families.recipes, "recipe", "recipes"), number(shelf.books().size(), "book", "books"),
                  shelf.folder(), number(families.families.size(), "family", "families"),
                  number(families.alone, "recipe stands alone", "recipes stand alone")),
      style.width);
  for (std::size_t i = 0; i < shown; ++i) {
    const Family& family = families.families[i];
    out += paragraph(fmt::format("{}   {}, {}, {}", family.name, number(family.recipes.size(), "recipe", "recipes"),
                                 number(family.books, "book", "books"), years_of(family)),
                     style.width, fmt::format("{:>4}  ", i + 1));
    if (const std::string names = names_line(family); !names.empty())
      out += paragraph("also " + names, style.width, "        ");
    if (family.most_variable)
      out += paragraph(variation(*family.most_variable, family.recipes.size()), style.width, "        ");
  }
  if (shown < families.families.size())
    out += fmt::format("... and {} more; --limit shows them.\n", families.families.size() - shown);
  return out;
}

std::string families_as_json(const Families& families, const Shelf& shelf, std::size_t limit) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("books");
    json.Uint64(shelf.books().size());
    json.Key("recipes");
    json.Uint64(families.recipes);
    json.Key("alone");
    json.Uint64(families.alone);
    json.Key("families");
    json.Uint64(families.families.size());
    json.Key("results");
    json.StartArray();
    for (std::size_t i = 0; i < std::min(limit, families.families.size()); ++i)
      write_family(json, families.families[i]);
    json.EndArray();
    json.EndObject();
  });
}

}  // namespace gallipot
