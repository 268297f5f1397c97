// Learns indexer/parsing/data/step-weights.tsv from receipts annotated by hand, and measures how well it does on books
// that it has not learnt from.
//
//   train_steps --export recipes.jsonl annotations.jsonl... [--folds 8] [--write step-weights.tsv]
//
// The export gives the words of the recipes (schema: DEVELOPERS.md), the annotations their operations in order; a
// recipe of the one is that of the other which begins within four raw lines in the same book. The annotations do not
// say which word tells which operation: words and operations are aligned by dynamic programming with the model learnt
// so far, and the model is learnt again from that, a few rounds over (expectation maximization).
#include <fmt/core.h>
#include <rapidjson/document.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <deque>
#include <fstream>
#include <limits>
#include <map>
#include <numeric>
#include <random>
#include <set>
#include <unordered_map>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/step_choice.h"

namespace {

using namespace gallipot;
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

bool same_time(Range a, Range b) {
  auto near = [](double x, double y) { return std::abs(x - y) <= 0.05 * std::max({std::abs(x), std::abs(y), 1e-9}); };
  return near(a.low, b.low) && near(a.high, b.high);
}

// ---- reading ----------------------------------------------------------------------------------------------------

struct Exported {
  long line;
  std::string text;
};

std::map<std::string, std::vector<Exported>> read_export(const std::string& path) {
  std::map<std::string, std::vector<Exported>> by_book;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document d;
    d.Parse(line.c_str());
    if (d.HasParseError()) throw std::runtime_error(path + ": not a line of JSON");
    by_book[d["book"].GetString()].push_back({d["source"]["line_start"].GetInt64(), d["text"].GetString()});
  }
  return by_book;
}

void read_annotations(const std::string& path, const std::map<std::string, std::vector<Exported>>& exported,
                      std::deque<Example>& out, int& unmatched) {
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

// ---- features by number ------------------------------------------------------------------------------------------

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

std::vector<std::uint32_t> numbers_of(const FeatureSink& sink, FeatureNames& names) {
  std::vector<std::uint32_t> out;
  out.reserve(sink.names.size());
  for (const auto& n : sink.names) out.push_back(names.number(n));
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

// ---- the model ---------------------------------------------------------------------------------------------------

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

// Aligns and learns by turns.
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

// ---- measuring ---------------------------------------------------------------------------------------------------

struct Tally {
  double gold = 0, told = 0, hit = 0, gold_times = 0, told_times = 0, hit_times = 0;
  static double f1(double h, double t, double g) { return t + g > 0 ? 2 * h / (t + g) : 0; }
  void print(const char* what) const {
    fmt::print(
        "{}: operations F1 {:.4f} (precision {:.3f}, recall {:.3f}, of {}); durations F1 {:.4f} (precision {:.3f}, "
        "recall {:.3f}, of {})\n",
        what, f1(hit, told, gold), hit / told, hit / gold, gold, f1(hit_times, told_times, gold_times),
        hit_times / told_times, hit_times / gold_times, gold_times);
  }
};

void measure(const Example& e, const std::vector<ChosenStep>& steps, Tally& t) {
  std::vector<std::size_t> row(steps.size() + 1);
  for (const GoldStep& g : e.gold) {
    std::size_t previous = 0;
    for (std::size_t j = 1; j <= steps.size(); ++j) {
      const std::size_t here = g.operation == steps[j - 1].operation ? previous + 1 : std::max(row[j], row[j - 1]);
      previous = row[j];
      row[j] = here;
    }
  }
  t.gold += static_cast<double>(e.gold.size());
  t.told += static_cast<double>(steps.size());
  t.hit += static_cast<double>(row.back());
  std::vector<Range> times;
  for (const auto& s : steps)
    if (s.duration >= 0) times.push_back(e.scene.durations[static_cast<std::size_t>(s.duration)].minutes);
  t.told_times += static_cast<double>(times.size());
  for (const GoldStep& g : e.gold) {
    if (!g.timed) continue;
    ++t.gold_times;
    const auto hit = std::find_if(times.begin(), times.end(), [&](Range r) { return same_time(r, g.minutes); });
    if (hit == times.end()) continue;
    ++t.hit_times;
    times.erase(hit);
  }
}

void show(const Example& e, const std::vector<ChosenStep>& steps) {
  auto range = [](Range r) { return fmt::format("[{:g},{:g}]", r.low, r.high); };
  std::string gold, told;
  for (const auto& g : e.gold)
    gold +=
        fmt::format(" {}{}", operation_name(static_cast<std::size_t>(g.operation)), g.timed ? range(g.minutes) : "");
  for (const auto& s : steps)
    told += fmt::format(" {}{}({})", operation_name(static_cast<std::size_t>(s.operation)),
                        s.duration >= 0 ? range(e.scene.durations[static_cast<std::size_t>(s.duration)].minutes) : "",
                        e.words[e.scene.mentions[s.mention].word].key);
  fmt::print("## {} {}\n{}\n  gold:{}\n  told:{}\n", e.book, e.title, e.text, gold, told);
}

std::string_view column_name(std::size_t c) {
  return c == StepScores::any ? "any" : c == StepScores::first ? "first" : operation_name(c);
}

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

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Learns which words of a receipt tell its steps."};
  std::string export_path, write_path, check_path;
  std::vector<std::string> annotations;
  Settings set;
  int folds = 8;
  bool detail = false;
  app.add_option("--export", export_path, "recipes, JSON Lines")->required();
  app.add_option("annotations", annotations, "annotated recipes, JSON Lines")->required();
  app.add_option("--folds", folds, "groups of books to learn without and measure on; 0 for none");
  app.add_option("--write", write_path, "where to write the table learnt from everything");
  app.add_option("--check", check_path, "annotations to measure only, never learnt from");
  app.add_option("--l2", set.l2);
  app.add_option("--caution", set.caution);
  app.add_option("--time-caution", set.time_caution);
  app.add_option("--time-rate", set.time_rate);
  app.add_option("--blindness", set.blindness);
  app.add_option("--l1", set.l1);
  app.add_option("--rate", set.rate);
  app.add_option("--epochs", set.epochs);
  app.add_option("--rounds", set.rounds);
  app.add_option("--least-count", set.least_count);
  app.add_option("--least-books", set.least_books);
  app.add_option("--least-weight", set.least_weight);
  app.add_option("--accept", set.accept_step);
  app.add_option("--accept-time", set.accept_time);
  app.add_flag("--detail", detail, "show every recipe with what was told and what was annotated");
  CLI11_PARSE(app, argc, argv);
  try {
    const auto lexicon = Lexicon::load();
    if (!lexicon) throw std::runtime_error(lexicon.error().sentence());
    const auto verbs = StepVerbs::load(built_in_table("step-verbs"), built_in_table("step-places"));
    if (!verbs) throw std::runtime_error(verbs.error().sentence());
    const auto exported = read_export(export_path);
    std::deque<Example> examples, checks;
    int unmatched = 0;
    for (const auto& path : annotations) read_annotations(path, exported, examples, unmatched);
    if (!check_path.empty()) read_annotations(check_path, exported, checks, unmatched);
    fmt::print("{} recipes, {} to check with; {} annotated ones are not in the export\n", examples.size(),
               checks.size(), unmatched);
    FeatureNames names;
    auto prepare = [&](Example& e) {
      e.words = Words(e.text);
      e.scene = set_scene(e.words, *verbs, **lexicon);
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
    };
    for (auto& e : examples) prepare(e);
    for (auto& e : checks) prepare(e);
    std::vector<std::string> books;
    for (const auto& e : examples) books.push_back(e.book);
    std::sort(books.begin(), books.end());
    books.erase(std::unique(books.begin(), books.end()), books.end());
    Tally unseen;
    for (int fold = 0; fold < folds; ++fold) {
      std::vector<Example*> learning, measuring;
      for (auto& e : examples) {
        const auto book = std::lower_bound(books.begin(), books.end(), e.book) - books.begin();
        (book % folds == fold ? measuring : learning).push_back(&e);
      }
      const StepWeights w = weights_of(learn(learning, names, set), names, set);
      for (const Example* e : measuring) {
        const auto steps = choose_steps(e->scene, w);
        measure(*e, steps, unseen);
        if (detail) show(*e, steps);
      }
    }
    if (folds > 0) {
      unseen.print("books not learnt from");
      std::map<std::string_view, int> lost;
      double paired = 0, all = 0;
      for (const auto& e : examples) {
        std::map<int, int> left;
        for (const GoldStep& g : e.gold) ++left[g.operation];
        for (const int l : e.label) paired += l >= 0, left[l] -= l >= 0;
        all += static_cast<double>(e.gold.size());
        for (const auto& [op, n] : left)
          if (op >= 0) lost[operation_name(static_cast<std::size_t>(op))] += n;
      }
      fmt::print("annotated operations that no verb of the table could tell: {:.1f} in a hundred",
                 100 * (1 - paired / all));
      for (const auto& [op, n] : lost)
        if (n >= 4) fmt::print(" {} {}", op, n);
      fmt::print("\n");
    }
    if (!write_path.empty() || !checks.empty()) {
      std::vector<Example*> all;
      for (auto& e : examples) all.push_back(&e);
      const Model m = learn(all, names, set);
      if (!write_path.empty()) write(m, names, set, write_path, all.size());
      const StepWeights w = weights_of(m, names, set);
      Tally t;
      for (const auto& e : checks) measure(e, choose_steps(e.scene, w), t);
      if (!checks.empty()) t.print("recipes to check with");
    }
  } catch (const std::exception& e) {
    fmt::print(stderr, "train_steps: {}\n", e.what());
    return 2;
  }
}
