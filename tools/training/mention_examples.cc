// Reads annotations and finds their recipes in the books.
#include "tools/training/mention_examples.h"

#include <rapidjson/document.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iostream>

#include "indexer/reading/read.h"
#include "indexer/segmenting/segment.h"
#include "indexer/text/unicode.h"

namespace gallipot::mention_training {

std::string name_key(const std::string& name) {
  const std::string plain = to_plain(name);
  const Words words(plain);
  std::vector<std::string> keys;
  for (const auto& w : words.all())
    if (w.kind != Word::Kind::point && w.key != "of" && w.key != "the" && w.key != "a" && w.key != "fresh")
      keys.push_back(singular(w.key));
  std::sort(keys.begin(), keys.end());
  std::string out;
  for (const auto& k : keys) out += k + " ";
  return out;
}

namespace {

std::string text_of(const rapidjson::Value& v, const char* field) {
  const auto it = v.FindMember(field);
  return it != v.MemberEnd() && it->value.IsString() ? it->value.GetString() : "";
}

Wanted wanted_of(const rapidjson::Value& v) {
  Wanted w;
  w.names.insert(name_key(text_of(v, "name")));
  if (v.HasMember("accept") && v["accept"].IsArray())
    for (const auto& a : v["accept"].GetArray()) w.names.insert(name_key(a.GetString()));
  w.raw = text_of(v, "raw");
  w.measure = text_of(v, "measure");
  if (v.HasMember("quantity") && v["quantity"].IsArray())
    w.quantity = Range{v["quantity"][0].GetDouble(), v["quantity"][1].GetDouble()};
  return w;
}

/// Marks which mentions the annotation means: the same name, best where its printed words stand, else the first free.
void align(Example& e) {
  const auto& mentions = e.read.mentions;
  e.truth.assign(mentions.size(), 0);
  std::map<std::string, std::size_t> searched;
  for (const auto& w : e.wanted) {
    std::vector<std::size_t> named;
    for (std::size_t j = 0; j < mentions.size(); ++j)
      if (!e.truth[j] && w.names.count(name_key(mentions[j].text))) named.push_back(j);
    if (named.empty()) continue;
    std::size_t best = named.front();
    int best_fit = -1;
    for (const auto j : named) {
      const auto span = e.read.row.span(mentions[j].name);
      int fit = mentions[j].quantity == w.quantity && w.quantity ? 3 : 0;
      for (auto at = e.recipe.text.find(w.raw); !w.raw.empty() && at != std::string::npos;
           at = e.recipe.text.find(w.raw, at + 1))
        if (span.begin < at + w.raw.size() && at < span.end) fit = std::max(fit, fit + 2);
      if (fit > best_fit) best = j, best_fit = fit;
    }
    e.truth[best] = 1;
  }
}

}  // namespace

const std::vector<Recipe>& Shelf::recipes(const std::string& id) {
  const auto [place, fresh] = cut_.try_emplace(id);
  if (!fresh) return place->second;
  for (const auto& book : books_) {
    if (book.id != id) continue;
    if (const auto read = read_book_file(book.path))
      place->second = segment(read->blocks, lexicon_).recipes;
    else
      std::cerr << read.error().sentence() << '\n';
  }
  return place->second;
}

std::vector<std::unique_ptr<Example>> load(const std::vector<std::string>& files, Shelf& shelf,
                                           const Lexicon& lexicon) {
  std::vector<std::unique_ptr<Example>> out;
  std::size_t lost = 0;
  for (const auto& file : files) {
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
      rapidjson::Document d;
      d.Parse(line.c_str());
      if (d.HasParseError() || !d.IsObject() || !d.HasMember("ingredients") || !d.HasMember("line_start")) continue;
      if (const auto kind = text_of(d, "kind"); kind == "household" || kind == "medical") continue;
      auto e = std::make_unique<Example>();
      e->book = text_of(d, "book");
      const auto* recipe = shelf.at(e->book, d["line_start"].GetUint());
      if (!recipe) {
        ++lost;
        continue;
      }
      e->recipe = *recipe;
      for (const auto& i : d["ingredients"].GetArray()) e->wanted.push_back(wanted_of(i));
      e->words = std::make_unique<Words>(e->recipe.text);
      e->read = read_mentions(e->recipe, *e->words, lexicon);
      align(*e);
      out.push_back(std::move(e));
    }
  }
  std::printf("%zu recipes, %zu annotations without one\n", out.size(), lost);
  return out;
}

}  // namespace gallipot::mention_training
