// Shows what the parser makes of recipes: JSON Lines in ({"book","title","text","parts","line_start",...}), export-like
// JSON Lines out. With --repeat it parses the lot so many times and tells the speed.
#include <rapidjson/document.h>
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <CLI/CLI.hpp>
#include <cstdio>
#include <ctime>
#include <iostream>

#include "indexer/parsing/parse.h"

namespace {

using namespace gallipot;
using Writer = rapidjson::Writer<rapidjson::StringBuffer>;

void write(Writer& w, const Ingredient& i, const std::string& text) {
  w.StartObject();
  w.Key("raw"), w.String(std::string(i.span.in(text)));
  w.Key("name"), w.String(i.name);
  w.Key("quantity");
  if (i.quantity) {
    w.StartArray(), w.Double(i.quantity->low), w.Double(i.quantity->high), w.EndArray();
  } else {
    w.Null();
  }
  w.Key("measure");
  if (i.measure.empty()) w.Null();
  else w.String(i.measure);
  w.Key("relative");
  if (i.relative) {
    w.StartObject(), w.Key("factor"), w.Double(i.relative->factor), w.Key("to"), w.String(i.relative->to), w.Key("by"),
        w.String(i.relative->by == Relative::By::weight ? "weight" : "measure"), w.EndObject();
  } else {
    w.Null();
  }
  w.Key("per");
  if (i.per) {
    w.StartObject(), w.Key("quantity"), w.Double(i.per->quantity), w.Key("measure");
    if (i.per->measure.empty()) w.Null();
    else w.String(i.per->measure);
    w.Key("of"), w.String(i.per->of), w.EndObject();
  } else {
    w.Null();
  }
  w.Key("optional"), w.Bool(i.optional);
  w.Key("alternative_of");
  if (i.alternative_of.empty()) w.Null();
  else w.String(i.alternative_of);
  w.Key("confidence"), w.Double(i.confidence);
  w.EndObject();
}

Recipe recipe_of(const rapidjson::Value& d) {
  Recipe r;
  r.title = d["title"].GetString();
  r.text = d["text"].GetString();
  if (d.HasMember("parts"))
    for (const auto& p : d["parts"].GetArray()) {
      const std::string kind = p[0].GetString();
      r.parts.push_back({kind == "list_item" ? Part::Kind::list_item : Part::Kind::paragraph, {p[1].GetUint(), p[2].GetUint()}});
    }
  return r;
}

void print(const rapidjson::Value& d, const Recipe& r, const std::vector<Ingredient>& found) {
  rapidjson::StringBuffer buffer;
  Writer w(buffer);
  w.StartObject();
  w.Key("id"), w.String(std::string(d["book"].GetString()) + "/" + std::to_string(d["line_start"].GetInt()));
  w.Key("book"), w.String(d["book"].GetString());
  w.Key("title"), w.String(r.title);
  w.Key("source"), w.StartObject(), w.Key("line_start"), w.Int(d["line_start"].GetInt()), w.EndObject();
  w.Key("text"), w.String(r.text);
  w.Key("ingredients"), w.StartArray();
  for (const auto& i : found) write(w, i, r.text);
  w.EndArray(), w.EndObject();
  std::puts(buffer.GetString());
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Shows what the parser makes of recipes told as JSON Lines on the standard input.");
  int repeat = 0;
  app.add_option("--repeat", repeat, "parse the lot so many times and tell the speed instead");
  CLI11_PARSE(app, argc, argv);
  const auto lexicon = Lexicon::load();
  if (!lexicon) {
    std::cerr << lexicon.error().sentence() << '\n';
    return 2;
  }
  std::vector<rapidjson::Document> lines;
  std::vector<Recipe> recipes;
  for (std::string line; std::getline(std::cin, line);) {
    rapidjson::Document d;
    d.Parse(line.c_str());
    if (d.HasParseError() || !d.IsObject()) continue;
    recipes.push_back(recipe_of(d));
    lines.push_back(std::move(d));
  }
  if (repeat == 0) {
    for (std::size_t k = 0; k < recipes.size(); ++k)
      print(lines[k], recipes[k], parse_ingredients(recipes[k], Words(recipes[k].text), **lexicon));
    return 0;
  }
  std::vector<Words> words;
  std::size_t bytes = 0, found = 0;
  for (const auto& r : recipes) words.emplace_back(r.text), bytes += r.text.size();
  const auto start = std::clock();  // processor time: other programs may run beside
  for (int n = 0; n < repeat; ++n)
    for (std::size_t k = 0; k < recipes.size(); ++k) found += parse_ingredients(recipes[k], words[k], **lexicon).size();
  const double took = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::printf("%.1f MB/s, %zu ingredients\n", static_cast<double>(bytes) * repeat / 1e6 / took, found / static_cast<std::size_t>(repeat));
  return 0;
}
