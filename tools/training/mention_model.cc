// Learns the mention model.
#include "tools/training/mention_model.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <ostream>
#include <random>

namespace gallipot::mention_training {

double Model::score(const std::vector<std::string>& features) const {
  double sum = 0;
  for (const auto& f : features)
    if (const auto it = weights_.find(f); it != weights_.end()) sum += it->second.value;
  return sum;
}

std::vector<char> Model::decide(const Example& e) const {
  auto c = circumstances(e.read.row, e.read.mentions, e.read.variant);
  std::vector<std::string> f;
  for (std::uint32_t j = 0; j < e.read.mentions.size(); ++j) {
    f.clear();
    name_features(c, j, f);
    c.accepted[j] = score(f) > 0;
  }
  return c.accepted;
}

void Model::learn(const std::vector<const Example*>& examples, int least, double pull) {
  weights_.clear();
  std::vector<Instance> instances;
  for (const auto* e : examples) add(*e, e->truth, instances);
  keep_common(instances, least);
  descend(instances, pull);
  // further rounds: the history that the model will really see is its own, faults included
  const auto taught = static_cast<std::ptrdiff_t>(instances.size());
  for (int round = 0; round < 2; ++round) {
    std::vector<Instance> own;
    for (const auto* e : examples) add(*e, decide(*e), own);
    instances.resize(static_cast<std::size_t>(taught));
    instances.insert(instances.end(), std::make_move_iterator(own.begin()), std::make_move_iterator(own.end()));
    keep_common(instances, least);
    descend(instances, pull);
  }
}

void Model::write(std::ostream& out) const {
  out << "# Weights of the model that tells ingredients from other mentions of stuff (log-odds a feature adds).\n"
         "# Made by tools/train_mentions.cc; the features are told in features.h. Do not edit by hand.\n"
         "feature\tweight\tsource\n";
  std::map<std::string, double> sorted;
  for (const auto& [name, w] : weights_)
    if (std::abs(w.value) >= 0.02) sorted[name] = w.value;
  char number[32];
  for (const auto& [name, value] : sorted) {
    std::snprintf(number, sizeof number, "%.3f", value);
    out << name << '\t' << number << "\ttrained on annotated recipes by tools/train_mentions.cc\n";
  }
}

void Model::add(const Example& e, const std::vector<char>& history, std::vector<Instance>& out) {
  auto c = circumstances(e.read.row, e.read.mentions, e.read.variant);
  c.accepted = history;
  for (std::uint32_t j = 0; j < e.read.mentions.size(); ++j) {
    Instance i;
    name_features(c, j, i.features);
    i.truth = e.truth[j];
    out.push_back(std::move(i));
  }
}

void Model::keep_common(const std::vector<Instance>& instances, int least) {
  std::unordered_map<std::string, int> count;
  for (const auto& i : instances)
    for (const auto& f : i.features) ++count[f];
  weights_.clear();
  for (const auto& [f, n] : count)
    if (n >= least) weights_[f] = {};
}

void Model::descend(std::vector<Instance>& instances, double pull) {
  std::vector<std::vector<Weight*>> rows;
  std::vector<char> truth;
  for (const auto& i : instances) {
    std::vector<Weight*> row;
    for (const auto& f : i.features)
      if (const auto it = weights_.find(f); it != weights_.end()) row.push_back(&it->second);
    rows.push_back(std::move(row));
    truth.push_back(i.truth);
  }
  std::vector<std::size_t> order(rows.size());
  for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
  std::mt19937 shuffle(7);
  constexpr int kRounds = 30, kSettled = 10;
  for (int round = 0; round < kRounds; ++round) {
    std::shuffle(order.begin(), order.end(), shuffle);
    for (const auto k : order) {
      double sum = 0;
      for (const auto* w : rows[k]) sum += w->value;
      const double slope = 1.0 / (1.0 + std::exp(-sum)) - truth[k];
      for (auto* w : rows[k]) {
        const double g = slope + pull * w->value;
        w->squares += g * g;
        w->value -= 0.15 * g / std::sqrt(w->squares);
      }
    }
    if (round >= kSettled)
      for (auto& [name, w] : weights_) w.sum += w.value;
  }
  for (auto& [name, w] : weights_) w.value = w.sum / (kRounds - kSettled);
}

}  // namespace gallipot::mention_training
