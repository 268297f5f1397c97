// How are the weights of the mention model learnt? By logistic regression on the features of parsing/features.h.
#pragma once

#include <iosfwd>
#include <string>
#include <unordered_map>
#include <vector>

#include "tools/training/mention_examples.h"

namespace gallipot::mention_training {

/// Logistic regression by stochastic gradient with AdaGrad steps and an L2 pull to zero.
class Model {
 public:
  double score(const std::vector<std::string>& features) const;

  /// Decides one recipe from left to right with this model.
  std::vector<char> decide(const Example& e) const;
  void learn(const std::vector<const Example*>& examples, int least, double pull);
  void write(std::ostream& out) const;

  std::size_t size() const { return weights_.size(); }

 private:
  struct Instance {
    std::vector<std::string> features;
    bool truth = false;
  };
  struct Weight {
    double value = 0;
    double squares = 1e-6;
    double sum = 0;  ///< of the values after each of the later rounds: their mean depends little on the order
  };
  static void add(const Example& e, const std::vector<char>& history, std::vector<Instance>& out);
  void keep_common(const std::vector<Instance>& instances, int least);
  void descend(std::vector<Instance>& instances, double pull);

  std::unordered_map<std::string, Weight> weights_;
};

}  // namespace gallipot::mention_training
