// How much does each feature speak for each operation? The table step-weights.tsv, learnt from receipts read by hand.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/parsing/step_features.h"

namespace gallipot::steps {

/// Scores of all operations together.
struct StepScores {
  static constexpr std::size_t any = operation_count;        ///< a step of whatever kind
  static constexpr std::size_t first = operation_count + 1;  ///< the operation that stands first in the verb's row
  std::array<float, operation_count + 2> score{};
};

class StepWeights {
 public:
  /// From the bytes of the table: feature, weights ("boil:0.5|any:1.2"), source.
  static Outcome<StepWeights> load(std::string_view table_bytes);

  /// Adds a weight; the weights of one feature are added one after the other.
  void add(std::uint64_t feature, std::size_t column, float weight);
  /// Call once when all are added.
  void finish();

  /// Adds up the weights of the features in the sink.
  void add_scores(const FeatureSink& sink, StepScores& to) const;

  /// How likely a reading must be before it counts as a step, and a length of time before it counts as one of doing.
  float accept_step = 0.42F;
  float accept_time = 0.5F;

 private:
  struct Slot {
    std::uint64_t feature = 0;
    std::uint32_t first = 0, count = 0;
  };
  struct Weight {
    std::uint8_t operation;
    float value;
  };
  struct Added {
    std::uint64_t feature;
    Weight weight;
  };
  std::vector<Added> added_;
  std::vector<Slot> slots_;           ///< open addressing; a power of two
  std::vector<std::uint64_t> sieve_;  ///< a bit for each feature known, by its top bits: most features are not known
  std::vector<Weight> weights_;
};

/// The chosen reading of a mention: operation number and how likely; -1 where it is no step.
struct Choice {
  int operation = -1;
  float probability = 0;
};

/// Score of a verb's reading by its place in the verb's row.
float reading_score(const StepScores& scores, const StepVerb& verb, std::size_t reading);
/// The likeliest reading among those of the mention's verb, whatever its probability.
Choice likeliest(const StepScores& scores, const StepVerb& verb);
/// Logistic value of what `any` adds up to.
float likelihood(const StepScores& scores);

}  // namespace gallipot::steps
