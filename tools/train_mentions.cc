// Learns to tell ingredients from other mentions of stuff, from recipes annotated by hand, and says how well it does on
// books that it did not learn from.
//
//   train_mentions --shelf books.json ANNOTATIONS.jsonl... --folds 8                  cross-validates by book
//   train_mentions --shelf books.json ANNOTATIONS.jsonl... --out mention-weights.tsv  learns from all, writes the model
//   ... --judge OTHER.jsonl                      judges what was learnt on other annotations
//   ... --detail                                 tells every mistake
//
// A line of ANNOTATIONS is one recipe of a book on the shelf: {"book","line_start","kind",
//   "ingredients":[{"name","accept":[...],"raw","quantity":[low,high]|null,"measure"},...]}. The recipe is that of the
// book which begins nearest to line_start, within four lines. Those of kind "household" and "medical" are left out.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <map>
#include <memory>

#include "indexer/catalogue/shelf_list.h"
#include "tools/training/mention_model.h"

namespace {

using namespace gallipot;
using namespace gallipot::mention_training;

struct Figures {
  int hit = 0, found = 0, wanted = 0, quantity_hit = 0, quantity_found = 0, quantity_wanted = 0;
  int reachable = 0;

  void print(const char* what) const {
    const auto f1 = [](int tp, int f, int w) { return f + w ? 2.0 * tp / (f + w) : 0.0; };
    std::printf("%-24s ingredient P %.3f R %.3f F1 %.3f   quantity F1 %.3f   (named %.3f of %d wanted)\n", what,
                found ? 1.0 * hit / found : 0, wanted ? 1.0 * hit / wanted : 0, f1(hit, found, wanted),
                f1(quantity_hit, quantity_found, quantity_wanted), wanted ? 1.0 * reachable / wanted : 0, wanted);
  }
};

std::string around(const Example& e, Extent words) {
  const auto& row = e.read.row;
  const Extent wide{words.begin > 7 ? words.begin - 7 : 0, std::min(words.end + 5, row.size())};
  return std::string(row.printed(wide));
}

void tell(const Example& e, const char* what, const std::string& which, Extent words) {
  std::printf("%s %s | %s | ...%s...  [%s]\n", what, e.book.c_str(), which.c_str(), around(e, words).c_str(),
              e.recipe.title.substr(0, 30).c_str());
}

std::string range_text(const std::optional<Range>& r) {
  if (!r) return "-";
  char text[48];
  std::snprintf(text, sizeof text, r->low == r->high ? "%g" : "%g..%g", r->low, r->high);
  return text;
}

void judge(const Example& e, const std::vector<char>& accepted, Figures& figures, bool detail = false) {
  std::vector<std::size_t> open;
  for (std::size_t j = 0; j < accepted.size(); ++j)
    if (accepted[j]) {
      open.push_back(j);
      figures.quantity_found += e.read.mentions[j].quantity.has_value();
    }
  figures.found += static_cast<int>(open.size());
  figures.wanted += static_cast<int>(e.wanted.size());
  figures.reachable += static_cast<int>(std::count(e.truth.begin(), e.truth.end(), 1));
  for (const auto& w : e.wanted) {
    figures.quantity_wanted += w.quantity.has_value();
    auto pick = open.end();
    for (auto it = open.begin(); it != open.end(); ++it) {
      const auto& m = e.read.mentions[*it];
      if (!w.names.count(name_key(m.text))) continue;
      if (pick == open.end() || (m.quantity == w.quantity && e.read.mentions[*pick].quantity != w.quantity)) pick = it;
    }
    if (pick == open.end()) {
      if (!detail) continue;
      bool named = false;
      for (std::size_t j = 0; j < accepted.size() && !named; ++j)
        if (!accepted[j] && w.names.count(name_key(e.read.mentions[j].text)))
          tell(e, "MISSED", *w.names.begin(), e.read.mentions[j].name), named = true;
      if (!named)
        std::printf("UNNAMED %s | %s | %s  [%s]\n", e.book.c_str(), w.names.begin()->c_str(), w.raw.c_str(),
                    e.recipe.title.substr(0, 30).c_str());
      continue;
    }
    const auto& m = e.read.mentions[*pick];
    ++figures.hit;
    const bool same =
        w.quantity && m.quantity && std::abs(w.quantity->low - m.quantity->low) < 0.011 * w.quantity->low &&
        std::abs(w.quantity->high - m.quantity->high) < 0.011 * w.quantity->high && w.measure == m.measure;
    figures.quantity_hit += same;
    if (detail && !same && (w.quantity || m.quantity))
      tell(e, "AMOUNT",
           m.text + " is " + range_text(w.quantity) + " " + w.measure + ", not " + range_text(m.quantity) + " " +
               m.measure,
           m.name);
    open.erase(pick);
  }
  if (detail)
    for (const auto j : open)
      tell(e, "EXTRA",
           e.read.mentions[j].text + " " + range_text(e.read.mentions[j].quantity) + " " + e.read.mentions[j].measure,
           e.read.mentions[j].name);
}

/// A book's fold: books are dealt round in alphabetical order.
std::map<std::string, int> deal(const std::vector<std::unique_ptr<Example>>& examples, int folds) {
  std::map<std::string, int> fold;
  for (const auto& e : examples) fold[e->book] = 0;
  int next = 0;
  for (auto& [book, f] : fold) f = next++ % folds;
  return fold;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Learns to tell ingredients from other mentions of stuff.");
  std::vector<std::string> files, others;
  std::string out, shelf_list;
  int folds = 0, least = 3;
  double pull = 0.15;
  bool detail = false;
  app.add_option("annotated", files, "recipes annotated by hand, JSON Lines")->required()->check(CLI::ExistingFile);
  app.add_option("--shelf", shelf_list, "the shelf list that names the books")->required()->check(CLI::ExistingFile);
  app.add_option("--judge", others, "annotations to judge on, not to learn from")->check(CLI::ExistingFile);
  app.add_option("--out", out, "where to write the model");
  app.add_option("--folds", folds, "cross-validate by book in so many folds");
  app.add_option("--least", least, "leave out features met less often");
  app.add_option("--pull", pull, "pull of the weights to zero");
  app.add_flag("--detail", detail, "print every mistake on the books not learnt from");
  CLI11_PARSE(app, argc, argv);
  const auto lexicon = Lexicon::load();
  if (!lexicon) {
    std::cerr << lexicon.error().sentence() << '\n';
    return 2;
  }
  auto books = read_shelf_list(shelf_list);
  if (!books) {
    std::cerr << books.error().sentence() << '\n';
    return 2;
  }
  Shelf shelf(std::move(*books), **lexicon);
  const auto examples = load(files, shelf, **lexicon);
  Figures best;
  for (const auto& e : examples) judge(*e, e->truth, best);
  best.print("every decision right");
  if (folds > 1) {
    const auto fold = deal(examples, folds);
    Figures figures;
    for (int f = 0; f < folds; ++f) {
      std::vector<const Example*> rest;
      for (const auto& e : examples)
        if (fold.at(e->book) != f) rest.push_back(e.get());
      Model model;
      model.learn(rest, least, pull);
      for (const auto& e : examples)
        if (fold.at(e->book) == f) judge(*e, model.decide(*e), figures, detail);
    }
    figures.print("books not learnt from");
  }
  if (out.empty() && others.empty()) return 0;
  std::vector<const Example*> all;
  for (const auto& e : examples) all.push_back(e.get());
  Model model;
  model.learn(all, least, pull);
  if (!others.empty()) {
    Figures figures;
    for (const auto& e : load(others, shelf, **lexicon)) judge(*e, model.decide(*e), figures, detail);
    figures.print("other annotations");
  }
  if (!out.empty()) {
    std::ofstream file(out);
    model.write(file);
    std::printf("%zu features\n", model.size());
  }
  return 0;
}
