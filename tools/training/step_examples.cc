// Reads annotations beside an export, and makes of each recipe what the model looks at.
#include "tools/training/step_examples.h"

#include <rapidjson/document.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

namespace gallipot::step_training {

bool same_time(Range a, Range b) {
  auto near = [](double x, double y) { return std::abs(x - y) <= 0.05 * std::max({std::abs(x), std::abs(y), 1e-9}); };
  return near(a.low, b.low) && near(a.high, b.high);
}

Exports read_export(const std::string& path) {
  Exports by_book;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document d;
    d.Parse(line.c_str());
    if (d.HasParseError()) throw std::runtime_error(path + ": not a line of JSON");
    by_book[d["book"].GetString()].push_back({d["source"]["line_start"].GetInt64(), d["text"].GetString()});
  }
  return by_book;
}

void read_annotations(const std::string& path, const Exports& exported, std::deque<Example>& out, int& unmatched) {
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document d;
    d.Parse(line.c_str());
    if (d.HasParseError()) throw std::runtime_error(path + ": not a line of JSON");
    const std::string kind = d.HasMember("kind") && d["kind"].IsString() ? d["kind"].GetString() : "";
    const auto book = exported.find(d["book"].GetString());
    if (kind == "household" || kind == "medical" || book == exported.end()) continue;
    const long at = d["line_start"].GetInt64();
    const auto hit = std::min_element(
        book->second.begin(), book->second.end(),
        [&](const Exported& a, const Exported& b) { return std::abs(a.line - at) < std::abs(b.line - at); });
    if (std::abs(hit->line - at) > 4) {
      ++unmatched;
      continue;
    }
    Example& e = out.emplace_back();
    e.book = book->first;
    e.title = d["title"].GetString();
    e.text = hit->text;
    if (!d.HasMember("steps") || !d["steps"].IsArray()) continue;
    for (const auto& s : d["steps"].GetArray()) {
      GoldStep g{operation_number(s["op"].GetString()), false, {}};
      if (s["minutes"].IsArray()) g = {g.operation, true, {s["minutes"][0].GetDouble(), s["minutes"][1].GetDouble()}};
      if (g.operation >= 0) e.gold.push_back(g);
    }
  }
}

std::vector<std::uint32_t> numbers_of(const FeatureSink& sink, FeatureNames& names) {
  std::vector<std::uint32_t> out;
  out.reserve(sink.names.size());
  for (const auto& n : sink.names) out.push_back(names.number(n));
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

namespace {

void label_times(Example& e) {
  std::vector<bool> taken(e.gold.size());
  e.time_label.assign(e.scene.durations.size(), false);
  for (std::size_t d = 0; d < e.scene.durations.size(); ++d)
    for (std::size_t j = 0; j < e.gold.size(); ++j)
      if (!taken[j] && e.gold[j].timed && same_time(e.gold[j].minutes, e.scene.durations[d].minutes)) {
        taken[j] = e.time_label[d] = true;
        break;
      }
}

}  // namespace

void prepare(Example& e, const StepVerbs& verbs, const Lexicon& lexicon, FeatureNames& names) {
  e.words = Words(e.text);
  e.scene = set_scene(e.words, verbs, lexicon);
  FeatureSink sink;
  sink.keep_names = true;
  for (std::size_t i = 0; i < e.scene.mentions.size(); ++i) {
    sink.clear();
    mention_features(e.scene, i, sink);
    e.mention_features.push_back(numbers_of(sink, names));
  }
  for (std::size_t d = 0; d < e.scene.durations.size(); ++d) {
    sink.clear();
    duration_features(e.scene, d, sink);
    e.time_features.push_back(numbers_of(sink, names));
  }
  label_times(e);
}

}  // namespace gallipot::step_training
