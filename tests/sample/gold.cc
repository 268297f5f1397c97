// Reads the gold: JSON Lines, one row a line.
#include "tests/sample/gold.h"

#include <rapidjson/document.h>

#include <fstream>
#include <stdexcept>

namespace gallipot::sample {
namespace {

using Json = rapidjson::Value;

template <typename Row, typename Read>
std::vector<Row> load(const std::string& file, Read read) {
  const std::string path = std::string(GALLIPOT_SOURCE) + "/tests/sample/gold/" + file;
  std::ifstream in(path);
  std::vector<Row> rows;
  std::string line;
  for (long number = 1; std::getline(in, line); ++number) {
    rapidjson::Document json;
    json.Parse(line.c_str(), line.size());
    if (json.HasParseError() || !json.IsObject())
      throw std::runtime_error(path + ":" + std::to_string(number) + ": not a JSON object");
    rows.push_back(read(json));
  }
  if (rows.empty()) throw std::runtime_error(path + ": no rows");
  return rows;
}

std::string text(const Json& of, const char* field) {
  const auto at = of.FindMember(field);
  return at != of.MemberEnd() && at->value.IsString() ? at->value.GetString() : "";
}

bool truth(const Json& of, const char* field) {
  const auto at = of.FindMember(field);
  return at != of.MemberEnd() && at->value.IsBool() && at->value.GetBool();
}

const Json* object(const Json& of, const char* field) {
  const auto at = of.FindMember(field);
  return at != of.MemberEnd() && at->value.IsObject() ? &at->value : nullptr;
}

std::optional<Range> range(const Json& of, const char* field) {
  const auto at = of.FindMember(field);
  if (at == of.MemberEnd() || !at->value.IsArray() || at->value.Size() != 2) return std::nullopt;
  return Range{at->value[0].GetDouble(), at->value[1].GetDouble()};
}

Place place(const Json& of, const char* line_field = "line") { return {text(of, "book"), of[line_field].GetInt64()}; }

std::vector<GoldHeading> headings(const Json& list, const std::string& book) {
  std::vector<GoldHeading> out;
  for (const Json& row : list.GetArray()) {
    GoldHeading heading;
    heading.place = {book, row["line"].GetInt64()};
    heading.titles = {text(row, "title")};
    heading.doubtful = truth(row, "doubtful");
    heading.page = text(row, "page");
    heading.contributor = text(row, "contributor");
    if (row.HasMember("accept"))
      for (const Json& other : row["accept"].GetArray()) heading.titles.emplace_back(other.GetString());
    out.push_back(std::move(heading));
  }
  return out;
}

GoldIngredient ingredient(const Json& row) {
  GoldIngredient out;
  out.names.push_back(text(row, "name"));
  for (const Json& other : row["accept"].GetArray()) out.names.emplace_back(other.GetString());
  out.raw = text(row, "raw");
  out.quantity = range(row, "quantity");
  out.measure = text(row, "measure");
  if (const Json* relative = object(row, "relative")) out.relative = (*relative)["factor"].GetDouble();
  if (const Json* per = object(row, "per"))
    out.per = PerUnit{(*per)["quantity"].GetDouble(), text(*per, "measure"), text(*per, "of")};
  out.optional = truth(row, "optional");
  out.alternative_of = text(row, "alternative_of");
  return out;
}

}  // namespace

std::vector<GoldWindow> load_windows() {
  return load<GoldWindow>("segments.jsonl", [](const Json& row) {
    GoldWindow out{text(row, "book"), row["window"][0].GetInt64(), row["window"][1].GetInt64(), {}, {}};
    out.recipes = headings(row["recipes"], out.book);
    out.not_recipes = headings(row["not_recipes"], out.book);
    return out;
  });
}

std::vector<GoldRecipe> load_recipes() {
  return load<GoldRecipe>("parsed.jsonl", [](const Json& row) {
    GoldRecipe out;
    out.place = place(row, "line_start");
    out.title = text(row, "title");
    out.page = text(row, "page");
    out.contributor = text(row, "contributor");
    out.household = !text(row, "kind").empty();
    for (const Json& one : row["ingredients"].GetArray()) out.ingredients.push_back(ingredient(one));
    for (const Json& one : row["steps"].GetArray()) out.steps.push_back({text(one, "op"), range(one, "minutes"), {}});
    return out;
  });
}

std::vector<GoldTopic> load_topics() {
  return load<GoldTopic>("topics.jsonl", [](const Json& row) {
    GoldTopic out{text(row, "topic"), text(row, "query"), place(row["seed"]), {}};
    for (const Json& one : row["relevant"].GetArray()) out.relevant.push_back({place(one), one["grade"].GetInt()});
    return out;
  });
}

std::vector<GoldCaution> load_cautions() {
  return load<GoldCaution>("cautions.jsonl", [](const Json& row) {
    GoldCaution out{place(row), text(row, "title"), {}};
    for (const Json& one : row["says"].GetArray()) out.says.emplace_back(one.GetString());
    return out;
  });
}

std::vector<GoldPair> load_pairs() {
  return load<GoldPair>("lineage.jsonl", [](const Json& row) {
    const std::string relation = text(row, "relation");
    return GoldPair{place(row["earlier"]), place(row["later"]), relation == "copy", relation == "independent"};
  });
}

std::vector<GoldEntry> load_printed_index() {
  return load<GoldEntry>("printed-index.jsonl", [](const Json& row) {
    return GoldEntry{place(row), place(row, "heading"), std::to_string(row["pages"][0].GetInt()),
                     truth(row, "confirmed")};
  });
}

std::vector<GoldTrueWord> load_true_words() {
  return load<GoldTrueWord>("true-words.jsonl", [](const Json& row) {
    return GoldTrueWord{place(row), text(row, "printed"), text(row, "true")};
  });
}

}  // namespace gallipot::sample
