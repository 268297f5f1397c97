// Receipts annotated by hand, as the step model learns from them: words, scene, annotated steps, features by number.
#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/parsing/step_choice.h"

namespace gallipot::step_training {

using namespace gallipot::steps;

struct GoldStep {
  int operation;
  bool timed = false;
  Range minutes;
};

struct Example {
  std::string book, title, text;
  Words words;
  Scene scene;
  std::vector<GoldStep> gold;
  std::vector<std::vector<std::uint32_t>> mention_features, time_features;  ///< by mention or length of time
  std::vector<std::map<int, float>> belief;  ///< by mention: how likely it tells each operation, given the annotation
  std::vector<int> label;                    ///< by mention: operation or -1
  std::vector<bool> time_label;              ///< by length of time
};

/// Whether two lengths of time are one within a twentieth.
bool same_time(Range a, Range b);

/// A recipe of the export: its first raw line and its words.
struct Exported {
  long line;
  std::string text;
};
using Exports = std::map<std::string, std::vector<Exported>>;  ///< by book

/// Throws std::runtime_error where a line is not JSON.
Exports read_export(const std::string& path);
/// Adds the annotated recipes that the export has; counts those it lacks. Throws as read_export does.
void read_annotations(const std::string& path, const Exports& exported, std::deque<Example>& out, int& unmatched);

class FeatureNames {
 public:
  std::uint32_t number(const std::string& name) {
    const auto [it, fresh] = numbers_.try_emplace(name, static_cast<std::uint32_t>(names_.size()));
    if (fresh) names_.push_back(name);
    return it->second;
  }
  const std::string& name(std::size_t i) const { return names_[i]; }
  std::size_t size() const { return names_.size(); }

 private:
  std::unordered_map<std::string, std::uint32_t> numbers_;
  std::vector<std::string> names_;
};

/// The numbers of a sink's features, sorted, each once.
std::vector<std::uint32_t> numbers_of(const FeatureSink& sink, FeatureNames& names);

/// Fills in words, scene and features.
void prepare(Example& e, const StepVerbs& verbs, const Lexicon& lexicon, FeatureNames& names);

}  // namespace gallipot::step_training
