// How are the weights of the step model learnt? Expectation maximization: words and annotated operations are aligned
// with what is learnt so far, and the weights are learnt again from the alignment, a few rounds over.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "tools/training/step_examples.h"

namespace gallipot::step_training {

struct Settings {
  double l2 = 1e-1;
  double l1 = 0;  ///< pulls weights that are of no use to nothing at all
  double rate = 0.5;
  float caution = 60;  ///< how much must be seen of a feature before its weight moves freely
  float time_caution = 0.01F;
  double time_rate = 0.1;
  float blindness = 0.6F;  ///< share of the features not looked at in each turn, so that none is leant on alone
  int epochs = 12, rounds = 4;
  float accept_step = 0.31F, accept_time = 0.5F;
  float least_weight = 0.02F;  ///< smaller ones are left out of the table
  int least_count = 5, least_books = 3;
};

constexpr std::size_t width = operation_count + 2;

struct Model {
  std::vector<float> weight, squared;
  std::vector<bool> used;  ///< by feature: seen often enough, in books enough

  float score(const std::vector<std::uint32_t>& features, std::size_t column) const {
    float s = 0;
    for (const auto f : features)
      if (f < used.size()) s += weight[f * width + column];
    return s;
  }
  void learn(const std::vector<std::uint32_t>& features, std::size_t column, float gradient, const Settings& set) {
    for (const auto f : features) {
      if (!used[f]) continue;
      const std::size_t at = f * width + column;
      const float g = gradient + static_cast<float>(set.l2) * weight[at];
      squared[at] += g * g;
      const float step = static_cast<float>(set.rate) / std::sqrt(squared[at] + set.caution);
      const float moved = weight[at] - step * g, pull = step * static_cast<float>(set.l1);
      weight[at] = moved > pull ? moved - pull : moved < -pull ? moved + pull : 0;
    }
  }
};

/// Aligns and learns by turns.
Model learn(const std::vector<Example*>& examples, FeatureNames& names, const Settings& set);
/// What was learnt, as the parser uses it.
StepWeights weights_of(const Model& m, const FeatureNames& names, const Settings& set);
/// What was learnt, as the table step-weights.tsv.
void write(const Model& m, const FeatureNames& names, const Settings& set, const std::string& path,
           std::size_t recipes);

}  // namespace gallipot::step_training
