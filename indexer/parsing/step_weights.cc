// A flat hash table from feature to its few weights: looked up some thirty times for every verb of a recipe.
#include "indexer/parsing/step_weights.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "indexer/lexicon/tables.h"

namespace gallipot::steps {
namespace {

constexpr unsigned sieve_bits = 18;  // 32 KB: stays in the nearest cache

// FNV leaves the high bits of short names poorly mixed; a multiplication mends that.
std::uint64_t sieve_bit(std::uint64_t feature) { return feature * 0x9E3779B97F4A7C15ULL >> (64 - sieve_bits); }

}  // namespace

Outcome<StepWeights> StepWeights::load(std::string_view table_bytes) {
  const auto table = parse_table(table_bytes, "step-weights", "step-weights.tsv");
  if (!table) return tl::unexpected(table.error());
  const int feature = table->column("feature"), weights = table->column("weights");
  if (feature < 0 || weights < 0)
    return fault("the table of weights lacks a column", "give it feature, weights and source", table->file, 1);
  StepWeights out;
  out.added_.reserve(table->rows.size() * 2);
  for (const auto& row : table->rows) {
    const std::string_view name = row.cells[static_cast<std::size_t>(feature)];
    for (const auto part : parts_of(row.cells[static_cast<std::size_t>(weights)])) {
      const auto colon = part.find(':');
      float value = 0;
      const bool number = colon != std::string_view::npos &&
                          std::from_chars(part.data() + colon + 1, part.data() + part.size(), value).ec == std::errc{};
      const std::string_view op = part.substr(0, colon);
      const int which = op == "any"     ? static_cast<int>(StepScores::any)
                        : op == "first" ? static_cast<int>(StepScores::first)
                                        : operation_number(op);
      if (!number || which < 0)
        return fault("\"" + std::string(part) + "\" is not a weight", "write operation:number", table->file, row.line);
      if (name == "accept")
        out.accept_step = value;
      else if (name == "t:accept")
        out.accept_time = value;
      else
        out.add((FeatureHash{} << name).value(), static_cast<std::size_t>(which), value);
    }
  }
  out.finish();
  return out;
}

void StepWeights::add(std::uint64_t feature, std::size_t column, float weight) {
  added_.push_back({feature, {static_cast<std::uint8_t>(column), weight}});
}

void StepWeights::finish() {
  std::stable_sort(added_.begin(), added_.end(), [](const Added& a, const Added& b) { return a.feature < b.feature; });
  std::size_t size = 16;
  while (size < added_.size() * 2) size *= 2;
  slots_.assign(size, {});
  sieve_.assign(std::size_t{1} << (sieve_bits - 6), 0);
  weights_.clear();
  for (std::size_t i = 0; i < added_.size();) {
    Slot s{added_[i].feature, static_cast<std::uint32_t>(weights_.size()), 0};
    for (; i < added_.size() && added_[i].feature == s.feature; ++i, ++s.count) weights_.push_back(added_[i].weight);
    std::size_t at = s.feature & (size - 1);
    while (slots_[at].count != 0) at = (at + 1) & (size - 1);
    slots_[at] = s;
    const std::uint64_t bit = sieve_bit(s.feature);
    sieve_[bit >> 6] |= std::uint64_t{1} << (bit & 63);
  }
  added_.clear();
  added_.shrink_to_fit();
}

void StepWeights::add_scores(const FeatureSink& sink, StepScores& to) const {
  if (slots_.empty()) return;
  const std::size_t mask = slots_.size() - 1;
  for (const std::uint64_t f : sink.hashes) {
    const std::uint64_t bit = sieve_bit(f);
    if (!(sieve_[bit >> 6] >> (bit & 63) & 1)) continue;
    for (std::size_t at = f & mask; slots_[at].count != 0; at = (at + 1) & mask) {
      if (slots_[at].feature != f) continue;
      for (std::uint32_t i = slots_[at].first; i < slots_[at].first + slots_[at].count; ++i)
        to.score[weights_[i].operation] += weights_[i].value;
      break;
    }
  }
}

float reading_score(const StepScores& scores, const StepVerb& verb, std::size_t reading) {
  return scores.score[StepScores::any] + scores.score[verb.operations[reading]] +
         (reading == 0 ? scores.score[StepScores::first] : 0);
}

Choice likeliest(const StepScores& scores, const StepVerb& verb) {
  float most = 0;  // no step scores nothing
  for (std::size_t r = 0; r < verb.operations.size(); ++r) most = std::max(most, reading_score(scores, verb, r));
  float sum = std::exp(-most);
  Choice best;
  for (std::size_t r = 0; r < verb.operations.size(); ++r) {
    const float e = std::exp(reading_score(scores, verb, r) - most);
    sum += e;
    if (e > best.probability) best = {verb.operations[r], e};
  }
  best.probability /= sum;
  return best;
}

float likelihood(const StepScores& scores) { return 1.0F / (1.0F + std::exp(-scores.score[StepScores::any])); }

}  // namespace gallipot::steps
