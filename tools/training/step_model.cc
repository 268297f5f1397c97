// Learns the step model.
#include "tools/training/step_model.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <limits>
#include <numeric>
#include <random>
#include <set>

namespace gallipot::step_training {
namespace {

std::vector<double> reading_probabilities(const Model& m, const std::vector<std::uint32_t>& f, const StepVerb& verb,
                                          float scale = 1) {
  const float any = scale * m.score(f, StepScores::any), first = scale * m.score(f, StepScores::first);
  std::vector<double> p(verb.operations.size() + 1);
  double sum = 1;
  p.back() = 1;
  for (std::size_t r = 0; r < verb.operations.size(); ++r)
    sum += p[r] = std::exp(std::min(30.0F, any + (r ? 0 : first) + scale * m.score(f, verb.operations[r])));
  for (double& x : p) x /= sum;
  return p;
}

// Before anything is learnt: a bare verb is likelier a step than a participle, its first meaning likelier than others.
std::vector<double> first_guess(const Mention& m) {
  std::vector<double> p(m.verb->operations.size() + 1);
  const double step = m.form == VerbForm::plain ? 0.7 : m.form == VerbForm::third ? 0.1 : 0.3;
  double share = 0.6 * step;
  for (std::size_t r = 0; r + 1 < p.size(); ++r, share *= 0.5) p[r] = share;
  p.back() = 1 - step;
  return p;
}

// How well a mention goes with an annotated step, as a logarithm; -infinity where its verb cannot mean it. A time ties
// the step to the verb that it stands by.
double pairing(const Example& e, const Mention& m, const std::vector<double>& p, const GoldStep& g) {
  const auto r = std::find(m.verb->operations.begin(), m.verb->operations.end(), g.operation);
  if (r == m.verb->operations.end()) return -std::numeric_limits<double>::infinity();
  double match = std::log(std::max(p[static_cast<std::size_t>(r - m.verb->operations.begin())], 1e-4));
  if (!g.timed) return match;
  const std::uint32_t sentence = e.scene.clauses[m.clause].sentence;
  double tie = -1.0;
  for (const Duration& d : e.scene.durations)
    if (same_time(d.minutes, g.minutes) && e.scene.clauses[e.scene.clause_of(d.first)].sentence == sentence)
      tie = std::max(tie, d.first > m.word ? 2.0 - 0.05 * (d.first - m.word) : 0.5);
  return match + tie;
}

double log_sum(double a, double b) {
  const double most = std::max(a, b);
  if (!(most > -1e300)) return most;
  return most + std::log1p(std::exp(std::min(a, b) - most));
}

// Words and annotated operations, both in order: every pairing that keeps the order, weighed by its likelihood (forward
// and backward sums). Leaves for each mention how likely it tells each operation, and the likeliest as its label.
void align(Example& e, const Model* model) {
  const std::size_t n = e.scene.mentions.size(), k = e.gold.size();
  constexpr double unmatched = -6;
  using Grid = std::vector<std::vector<double>>;
  constexpr double never = -std::numeric_limits<double>::infinity();
  Grid pair(n, std::vector<double>(k, never)), to(n + 1, std::vector<double>(k + 1, never)), on = to;
  std::vector<double> none(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Mention& m = e.scene.mentions[i];
    const auto p = model ? reading_probabilities(*model, e.mention_features[i], *m.verb) : first_guess(m);
    none[i] = std::log(std::max(p.back(), 1e-6));
    for (std::size_t j = 0; j < k; ++j) pair[i][j] = pairing(e, m, p, e.gold[j]);
  }
  // a left-out step is taken before a left-out mention, so that each pairing is counted once
  for (std::size_t i = 0; i <= n; ++i)
    for (std::size_t j = 0; j <= k; ++j) {
      double s = i == 0 && j == 0 ? 0 : never;
      if (i > 0) s = log_sum(s, to[i - 1][j] + none[i - 1]);
      if (j > 0) s = log_sum(s, to[i][j - 1] + unmatched);
      if (i > 0 && j > 0) s = log_sum(s, to[i - 1][j - 1] + pair[i - 1][j - 1]);
      to[i][j] = s;
    }
  for (std::size_t i = n + 1; i-- > 0;)
    for (std::size_t j = k + 1; j-- > 0;) {
      double s = i == n && j == k ? 0 : never;
      if (i < n) s = log_sum(s, none[i] + on[i + 1][j]);
      if (j < k) s = log_sum(s, unmatched + on[i][j + 1]);
      if (i < n && j < k) s = log_sum(s, pair[i][j] + on[i + 1][j + 1]);
      on[i][j] = s;
    }
  e.label.assign(n, -1);
  e.belief.assign(n, {});
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < k; ++j) {
      const double share = std::exp(to[i][j] + pair[i][j] + on[i + 1][j + 1] - to[n][k]);
      if (!(share > 1e-6)) continue;
      e.belief[i].try_emplace(e.gold[j].operation, 0).first->second += static_cast<float>(share);
    }
    for (const auto& [op, share] : e.belief[i])
      if (share > 0.5) e.label[i] = op;
  }
}

std::vector<std::uint32_t> with_history(const Example& e, std::size_t mention, const StepsSoFar& so_far,
                                        FeatureNames& names) {
  FeatureSink sink;
  sink.keep_names = true;
  history_features(e.scene, mention, so_far, sink);
  auto f = numbers_of(sink, names);
  f.insert(f.end(), e.mention_features[mention].begin(), e.mention_features[mention].end());
  return f;
}

void learn_recipe(Model& m, const Example& e, const std::vector<std::vector<std::uint32_t>>& all, const Settings& set,
                  std::mt19937& chance) {
  std::vector<std::uint32_t> features;
  std::bernoulli_distribution blind(static_cast<double>(set.blindness));
  for (std::size_t i = 0; i < e.scene.mentions.size(); ++i) {
    const StepVerb& verb = *e.scene.mentions[i].verb;
    features.clear();
    for (const auto f : all[i])
      if (set.blindness <= 0 || !blind(chance)) features.push_back(f);
    const auto p = reading_probabilities(m, features, verb, 1 / (1 - set.blindness));
    float step = 0;
    for (std::size_t r = 0; r < verb.operations.size(); ++r) {
      const auto told = e.belief[i].find(verb.operations[r]);
      const float belief = told == e.belief[i].end() ? 0 : told->second;
      step += belief;
      m.learn(features, verb.operations[r], static_cast<float>(p[r]) - belief, set);
      if (r == 0) m.learn(features, StepScores::first, static_cast<float>(p[0]) - belief, set);
    }
    m.learn(features, StepScores::any, static_cast<float>(1 - p.back()) - step, set);
  }
  Settings bold = set;  // lengths of time are few: what little is seen of a feature must do
  bold.caution = set.time_caution;
  bold.rate = set.time_rate;
  for (std::size_t d = 0; d < e.scene.durations.size(); ++d) {
    const float p = 1 / (1 + std::exp(-m.score(e.time_features[d], StepScores::any)));
    m.learn(e.time_features[d], StepScores::any, p - e.time_label[d], bold);
  }
}

// Features seen in recipes enough and in books enough to be worth a weight.
std::vector<bool> seen_often(const std::vector<Example*>& examples,
                             const std::vector<std::vector<std::vector<std::uint32_t>>>& features, std::size_t names,
                             const Settings& set) {
  std::vector<int> count(names);
  std::vector<std::set<std::string>> books(names);
  auto see = [&](const std::vector<std::uint32_t>& f, const std::string& book) {
    for (const auto i : f) {
      ++count[i];
      if (static_cast<int>(books[i].size()) < set.least_books) books[i].insert(book);
    }
  };
  for (std::size_t x = 0; x < examples.size(); ++x) {
    for (const auto& f : features[x]) see(f, examples[x]->book);
    for (const auto& f : examples[x]->time_features) see(f, examples[x]->book);
  }
  std::vector<bool> often(names);
  for (std::size_t i = 0; i < names; ++i)
    often[i] = count[i] >= set.least_count && static_cast<int>(books[i].size()) >= set.least_books;
  return often;
}

// Learns from what the examples are believed to tell.
Model fit(const std::vector<Example*>& examples, FeatureNames& names, const Settings& set) {
  std::vector<std::vector<std::vector<std::uint32_t>>> features(examples.size());
  for (std::size_t x = 0; x < examples.size(); ++x) {
    StepsSoFar so_far;
    const Example& e = *examples[x];
    for (std::size_t i = 0; i < e.scene.mentions.size(); ++i) {
      features[x].push_back(with_history(e, i, so_far, names));
      if (e.label[i] >= 0)
        so_far = {e.label[i], e.scene.mentions[i].word, e.scene.mentions[i].clause, so_far.last_operation};
    }
  }
  Model model;
  model.weight.assign(names.size() * width, 0);
  model.squared.assign(names.size() * width, 0);
  model.used = seen_often(examples, features, names.size(), set);
  std::vector<std::size_t> order(examples.size());
  std::iota(order.begin(), order.end(), 0);
  std::mt19937 chance(7);
  std::vector<float> sum(model.weight.size());  // the mean of the later passes wavers less than the last one
  const int settled = set.epochs / 2;
  for (int epoch = 0; epoch < set.epochs; ++epoch) {
    std::shuffle(order.begin(), order.end(), chance);
    for (const std::size_t x : order) learn_recipe(model, *examples[x], features[x], set, chance);
    if (epoch >= settled)
      for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += model.weight[i];
  }
  for (std::size_t i = 0; i < sum.size(); ++i) model.weight[i] = sum[i] / static_cast<float>(set.epochs - settled);
  return model;
}

}  // namespace

Model learn(const std::vector<Example*>& examples, FeatureNames& names, const Settings& set) {
  for (Example* e : examples) align(*e, nullptr);
  Model model = fit(examples, names, set);
  for (int round = 1; round < set.rounds; ++round) {
    for (Example* e : examples) align(*e, &model);
    model = fit(examples, names, set);
  }
  return model;
}

StepWeights weights_of(const Model& m, const FeatureNames& names, const Settings& set) {
  StepWeights w;
  for (std::size_t f = 0; f * width < m.weight.size(); ++f)
    for (std::size_t c = 0; c < width; ++c)
      if (std::abs(m.weight[f * width + c]) >= set.least_weight)
        w.add((FeatureHash{} << names.name(f)).value(), c, m.weight[f * width + c]);
  w.accept_step = set.accept_step;
  w.accept_time = set.accept_time;
  w.finish();
  return w;
}

namespace {

std::string_view column_name(std::size_t c) {
  return c == StepScores::any ? "any" : c == StepScores::first ? "first" : operation_name(c);
}

}  // namespace

void write(const Model& m, const FeatureNames& names, const Settings& set, const std::string& path,
           std::size_t recipes) {
  std::ofstream out(path);
  out << "# What each feature of a verb's place speaks for: see step_features.cc for the features, "
         "tools/train_steps.cc for the\n"
         "# learning. Not for editing by hand: learn it again.\n"
         "feature\tweights\tsource\n";
  const std::string source = fmt::format("learnt from {} receipts", recipes);
  out << fmt::format("accept\tany:{:.2f}\t{}\nt:accept\tany:{:.2f}\t{}\n", set.accept_step, source, set.accept_time,
                     source);
  for (std::size_t f = 0; f * width < m.weight.size(); ++f) {
    std::string cell;
    for (std::size_t c = 0; c < width; ++c) {
      const float w = m.weight[f * width + c];
      if (std::abs(w) < set.least_weight) continue;
      cell += fmt::format("{}{}:{:.2f}", cell.empty() ? "" : "|", column_name(c), w);
    }
    if (!cell.empty()) out << names.name(f) << '\t' << cell << '\t' << source << '\n';
  }
}

}  // namespace gallipot::step_training
