// Scores every mention in view of the steps already chosen, then hangs each length of time on the step that it belongs
// to.
#include "indexer/parsing/step_choice.h"

#include <algorithm>

namespace gallipot::steps {
namespace {

// The mention that a length of time tells of: in its own clause the nearest before it, else the nearest after it, else
// the nearest before it in its sentence. A chosen step is worth more than a mention that was not chosen.
int bearer(const Scene& s, const Duration& d, const std::vector<Choice>& choices, const std::vector<bool>& chosen) {
  const std::uint32_t clause = s.clause_of(d.first);
  const Clause& c = s.clauses[clause];
  int best = -1;
  double best_cost = 1e9;
  for (std::size_t i = 0; i < s.mentions.size(); ++i) {
    const Mention& m = s.mentions[i];
    const Clause& mc = s.clauses[m.clause];
    if (mc.sentence != c.sentence) continue;
    const bool after = m.word >= d.last;
    double cost = after ? 4.0 + (m.word - d.last) : (d.first - m.word);
    if (m.clause != clause) cost += after ? 12 : 6;
    if (!chosen[i]) cost += 10 + 20 * (1.0 - static_cast<double>(choices[i].probability));
    if (cost < best_cost) {
      best_cost = cost;
      best = static_cast<int>(i);
    }
  }
  return best;
}

// "It will keep good for two years", "three weeks old", "ten years ago": how long the thing lasts or is, not what is
// done.
bool is_age(const Scene& s, const Duration& d) {
  const std::string_view next = s.key(d.last);
  if (next == "old" || next == "ago") return true;
  const Clause& c = s.clauses[s.clause_of(d.first)];
  for (std::uint32_t i = d.first > c.first + 7 ? d.first - 7 : c.first; i < d.first; ++i) {
    const std::string_view k = s.key(i);
    if (k == "keeps") return true;
    const std::string_view before = s.key(static_cast<std::int64_t>(i) - 1);
    if (k == "keep" && (before == "will" || before == "may" || before == "can" || before == "would" || before == "not"))
      return true;
  }
  return false;
}

}  // namespace

std::vector<ChosenStep> choose_steps(const Scene& s, const StepWeights& weights) {
  std::vector<Choice> choices(s.mentions.size());
  std::vector<bool> chosen(s.mentions.size());
  StepsSoFar so_far;
  FeatureSink sink;
  for (std::size_t i = 0; i < s.mentions.size(); ++i) {
    sink.clear();
    StepScores scores;
    mention_features(s, i, sink);
    history_features(s, i, so_far, sink);
    weights.add_scores(sink, scores);
    choices[i] = likeliest(scores, *s.mentions[i].verb);
    chosen[i] = choices[i].probability >= weights.accept_step;
    if (!chosen[i]) continue;
    so_far.last_but_one = so_far.last_operation;
    so_far.last_operation = choices[i].operation;
    so_far.last_word = s.mentions[i].word;
    so_far.last_clause = s.mentions[i].clause;
  }
  std::vector<int> time_of(s.mentions.size(), -1);
  for (std::size_t d = 0; d < s.durations.size(); ++d) {
    if (is_age(s, s.durations[d])) continue;
    sink.clear();
    StepScores scores;
    duration_features(s, d, sink);
    weights.add_scores(sink, scores);
    if (likelihood(scores) < weights.accept_time) continue;
    const int i = bearer(s, s.durations[d], choices, chosen);
    if (i < 0) continue;
    const auto at = static_cast<std::size_t>(i);
    if (time_of[at] >= 0) continue;
    time_of[at] = static_cast<int>(d);
    chosen[at] = true;
  }
  std::vector<ChosenStep> out;
  for (std::size_t i = 0; i < s.mentions.size(); ++i)
    if (chosen[i]) out.push_back({static_cast<std::uint32_t>(i), choices[i].operation, time_of[i]});
  return out;
}

}  // namespace gallipot::steps
