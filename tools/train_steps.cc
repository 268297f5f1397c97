// Learns indexer/parsing/data/step-weights.tsv from receipts annotated by hand, and measures how well it does on books
// that it has not learnt from.
//
//   train_steps --export recipes.jsonl annotations.jsonl... [--folds 8] [--write step-weights.tsv]
//
// The export gives the words of the recipes (schema: DEVELOPERS.md), the annotations their operations in order; a
// recipe of the one is that of the other which begins within four raw lines in the same book. The annotations do not
// say which word tells which operation: words and operations are aligned by dynamic programming with the model learnt
// so far, and the model is learnt again from that, a few rounds over (expectation maximization).
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <map>

#include "indexer/lexicon/tables.h"
#include "tools/training/step_model.h"

namespace {

using namespace gallipot;
using namespace gallipot::step_training;

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
    for (auto& e : examples) prepare(e, *verbs, **lexicon, names);
    for (auto& e : checks) prepare(e, *verbs, **lexicon, names);
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
