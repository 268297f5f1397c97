// The sheet as a schema.org Recipe.
#include <fmt/format.h>

#include <cmath>

#include "query/reporting/json.h"
#include "query/reporting/kitchen.h"
#include "query/reporting/kitchen_words.h"
#include "query/reporting/units.h"

namespace gallipot {
namespace {

/// "P1DT2H30M" (ISO 8601).
std::string iso_duration(double minutes) {
  const auto all = std::llround(minutes);
  const auto days = all / 1440, hours = all / 60 % 24, rest = all % 60;
  std::string out = "P";
  if (days > 0) out += fmt::format("{}D", days);
  if (hours > 0 || rest > 0 || days == 0) out += 'T';
  if (hours > 0) out += fmt::format("{}H", hours);
  if (rest > 0 || (days == 0 && hours == 0)) out += fmt::format("{}M", rest);
  return out;
}

std::string ingredient_words(const SheetLine& line) {
  std::string out = measured_words(line);
  if (!out.empty()) out += ' ';
  out += line.name;
  if (line.amount)
    if (const std::string range = range_words(*line.amount); !range.empty()) out += " (" + range + ")";
  if (!line.alternative_of.empty()) out += ", instead of " + line.alternative_of;
  if (line.optional && line.alternative_of.empty()) out += ", if liked";
  return out;
}

class Linked {
 public:
  Linked(JsonWriter& json, const Sheet& sheet) : json_(json), sheet_(sheet) {}

  void write() {
    json_.StartObject();
    write_field(json_, "@context", "https://schema.org");
    write_field(json_, "@type", "Recipe");
    write_field(json_, "identifier", sheet_.citation.id);
    write_field(json_, "name", sheet_.title);
    if (!sheet_.citation.book.language.empty()) write_field(json_, "inLanguage", sheet_.citation.book.language);
    if (!sheet_.dish.empty()) write_field(json_, "keywords", sheet_.dish);
    if (const std::string makes = made_words(sheet_.made); !makes.empty()) write_field(json_, "recipeYield", makes);
    times();
    ingredients();
    instructions();
    tools();
    source();
    json_.EndObject();
  }

 private:
  void times() {
    if (sheet_.plan.tasks.empty()) return;
    write_field(json_, "prepTime", iso_duration(sheet_.plan.hands));
    write_field(json_, "cookTime", iso_duration(sheet_.plan.watch));
    write_field(json_, "totalTime", iso_duration(sheet_.plan.likely));
  }

  void ingredients() {
    json_.Key("recipeIngredient");
    json_.StartArray();
    for (const SheetLine& line : sheet_.lines) json_.String(ingredient_words(line));
    json_.EndArray();
    json_.Key("supply");
    json_.StartArray();
    for (const SheetLine& line : sheet_.lines) {
      json_.StartObject();
      write_field(json_, "@type", "HowToSupply");
      write_field(json_, "name", line.name);
      if (line.amount) quantity(line);
      json_.EndObject();
    }
    json_.EndArray();
  }

  void quantity(const SheetLine& line) {
    json_.Key("requiredQuantity");
    json_.StartObject();
    write_field(json_, "@type", "QuantitativeValue");
    json_.Key("value");
    json_.Double(line.measure.value_or(line.amount->likely));
    json_.Key("minValue");
    json_.Double(line.amount->low);
    json_.Key("maxValue");
    json_.Double(line.amount->high);
    write_field(json_, "unitCode", std::string("ucum:") + ucum_code(line.amount->unit));
    json_.EndObject();
  }

  void instructions() {
    json_.Key("recipeInstructions");
    json_.StartArray();
    std::string before;
    for (const Task& task : sheet_.plan.tasks) {
      if (task.print.words == before) continue;  // an operation and the wait after it rest on the same words
      before = task.print.words;
      json_.StartObject();
      write_field(json_, "@type", "HowToStep");
      write_field(json_, "name", task.op);
      write_field(json_, "text", task.print.words);
      json_.EndObject();
    }
    json_.EndArray();
  }

  void tools() {
    if (sheet_.vessels.empty()) return;
    json_.Key("tool");
    json_.StartArray();
    for (const Vessel& vessel : sheet_.vessels) {
      json_.StartObject();
      write_field(json_, "@type", "HowToTool");
      write_field(json_, "name", vessel.size.empty() ? vessel.what : vessel.what + ", " + vessel.size);
      json_.EndObject();
    }
    json_.EndArray();
  }

  void person(const char* name, const std::string& who) {
    if (who.empty()) return;
    json_.Key(name);
    json_.StartObject();
    write_field(json_, "@type", "Person");
    write_field(json_, "name", who);
    json_.EndObject();
  }

  /// The printed receipt as a part of its book, with the citation in words.
  void source() {
    const Citation& cited = sheet_.citation;
    json_.Key("isBasedOn");
    json_.StartObject();
    write_field(json_, "@type", "Chapter");
    write_field(json_, "name", cited.title);
    person("author", cited.contributor);
    if (!cited.page.empty()) write_field(json_, "pageStart", cited.page);
    if (!cited.page_end.empty()) write_field(json_, "pageEnd", cited.page_end);
    write_field(json_, "citation", cited.note());
    json_.Key("isPartOf");
    json_.StartObject();
    write_field(json_, "@type", "Book");
    write_field(json_, "name", cited.book.title);
    person("author", cited.book.creator);
    if (!cited.book.date.empty()) write_field(json_, "datePublished", cited.book.date);
    if (!cited.book.edition.empty()) write_field(json_, "bookEdition", cited.book.edition);
    if (!cited.book.publisher.empty()) {
      json_.Key("publisher");
      json_.StartObject();
      write_field(json_, "@type", "Organization");
      write_field(json_, "name", cited.book.publisher);
      json_.EndObject();
    }
    json_.EndObject();
    json_.EndObject();
  }

  JsonWriter& json_;
  const Sheet& sheet_;
};

}  // namespace

std::string sheet_as_linked_data(const Sheet& sheet) {
  return json_answer([&](JsonWriter& json) { Linked(json, sheet).write(); });
}

}  // namespace gallipot
