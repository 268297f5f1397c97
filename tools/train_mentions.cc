// Learns to tell ingredients from other mentions of stuff, from recipes annotated by hand, and says how well it does on
// books that it did not learn from.
//
//   train_mentions --shelf books.json ANNOTATIONS.jsonl... --folds 8                cross-validates by book
//   train_mentions --shelf books.json ANNOTATIONS.jsonl... --out mention-weights.tsv  learns from all, writes the model
//   ... --judge OTHER.jsonl      judges what was learnt on other annotations        ... --detail     tells every
//   mistake
//
// A line of ANNOTATIONS is one recipe of a book on the shelf: {"book","line_start","kind",
//   "ingredients":[{"name","accept":[...],"raw","quantity":[low,high]|null,"measure"},...]}. The recipe is that of the
//   book
// which begins nearest to line_start, within four lines. Those of kind "household" and "medical" are left out.
#include <rapidjson/document.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <map>
#include <memory>
#include <random>
#include <set>
#include <unordered_map>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/parsing/decide.h"
#include "indexer/parsing/mentioned.h"
#include "indexer/reading/read.h"
#include "indexer/segmenting/segment.h"
#include "indexer/text/unicode.h"

namespace {

using namespace gallipot;
using namespace gallipot::parsing;

struct Wanted {
  std::set<std::string> names;  ///< name and accepted names, as keys
  std::string raw;
  std::optional<Range> quantity;
  std::string measure;
};

struct Example {
  std::string book;
  Recipe recipe;
  std::unique_ptr<Words> words;
  Mentioned read;
  std::vector<Wanted> wanted;
  std::vector<char> truth;  ///< one a mention
};

/// Words of a name in the singular, sorted, without those that say nothing: two names with one key are one name.
std::string name_key(const std::string& name) {
  const std::string plain = to_plain(name);
  const Words words(plain);
  std::vector<std::string> keys;
  for (const auto& w : words.all())
    if (w.kind != Word::Kind::point && w.key != "of" && w.key != "the" && w.key != "a" && w.key != "fresh")
      keys.push_back(singular(w.key));
  std::sort(keys.begin(), keys.end());
  std::string out;
  for (const auto& k : keys) out += k + " ";
  return out;
}

std::string text_of(const rapidjson::Value& v, const char* field) {
  const auto it = v.FindMember(field);
  return it != v.MemberEnd() && it->value.IsString() ? it->value.GetString() : "";
}

Wanted wanted_of(const rapidjson::Value& v) {
  Wanted w;
  w.names.insert(name_key(text_of(v, "name")));
  if (v.HasMember("accept") && v["accept"].IsArray())
    for (const auto& a : v["accept"].GetArray()) w.names.insert(name_key(a.GetString()));
  w.raw = text_of(v, "raw");
  w.measure = text_of(v, "measure");
  if (v.HasMember("quantity") && v["quantity"].IsArray())
    w.quantity = Range{v["quantity"][0].GetDouble(), v["quantity"][1].GetDouble()};
  return w;
}

/// Marks which mentions the annotation means: the same name, best where its printed words stand, else the first free.
void align(Example& e) {
  const auto& mentions = e.read.mentions;
  e.truth.assign(mentions.size(), 0);
  std::map<std::string, std::size_t> searched;
  for (const auto& w : e.wanted) {
    std::vector<std::size_t> named;
    for (std::size_t j = 0; j < mentions.size(); ++j)
      if (!e.truth[j] && w.names.count(name_key(mentions[j].text))) named.push_back(j);
    if (named.empty()) continue;
    std::size_t best = named.front();
    int best_fit = -1;
    for (const auto j : named) {
      const auto span = e.read.row.span(mentions[j].name);
      int fit = mentions[j].quantity == w.quantity && w.quantity ? 3 : 0;
      for (auto at = e.recipe.text.find(w.raw); !w.raw.empty() && at != std::string::npos;
           at = e.recipe.text.find(w.raw, at + 1))
        if (span.begin < at + w.raw.size() && at < span.end) fit = std::max(fit, fit + 2);
      if (fit > best_fit) best = j, best_fit = fit;
    }
    e.truth[best] = 1;
  }
}

/// The books of a shelf, cut into recipes as they are asked for.
class Shelf {
 public:
  Shelf(std::vector<Book> books, const Lexicon& lexicon) : books_(std::move(books)), lexicon_(lexicon) {}

  /// The recipe that begins within four raw lines of `line`; nullptr where the book has none there.
  const Recipe* at(const std::string& id, std::uint32_t line) {
    const Recipe* best = nullptr;
    for (const auto& r : recipes(id)) {
      const auto away = [&](const Recipe& x) {
        return x.line_start > line ? x.line_start - line : line - x.line_start;
      };
      if (away(r) <= 4 && (!best || away(r) < away(*best))) best = &r;
    }
    return best;
  }

 private:
  const std::vector<Recipe>& recipes(const std::string& id) {
    const auto [place, fresh] = cut_.try_emplace(id);
    if (!fresh) return place->second;
    for (const auto& book : books_) {
      if (book.id != id) continue;
      if (const auto read = read_book_file(book.path))
        place->second = segment(read->blocks, lexicon_).recipes;
      else
        std::cerr << read.error().sentence() << '\n';
    }
    return place->second;
  }

  std::vector<Book> books_;
  const Lexicon& lexicon_;
  std::map<std::string, std::vector<Recipe>> cut_;
};

std::vector<std::unique_ptr<Example>> load(const std::vector<std::string>& files, Shelf& shelf,
                                           const Lexicon& lexicon) {
  std::vector<std::unique_ptr<Example>> out;
  std::size_t lost = 0;
  for (const auto& file : files) {
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
      rapidjson::Document d;
      d.Parse(line.c_str());
      if (d.HasParseError() || !d.IsObject() || !d.HasMember("ingredients") || !d.HasMember("line_start")) continue;
      if (const auto kind = text_of(d, "kind"); kind == "household" || kind == "medical") continue;
      auto e = std::make_unique<Example>();
      e->book = text_of(d, "book");
      const auto* recipe = shelf.at(e->book, d["line_start"].GetUint());
      if (!recipe) {
        ++lost;
        continue;
      }
      e->recipe = *recipe;
      for (const auto& i : d["ingredients"].GetArray()) e->wanted.push_back(wanted_of(i));
      e->words = std::make_unique<Words>(e->recipe.text);
      e->read = read_mentions(e->recipe, *e->words, lexicon);
      align(*e);
      out.push_back(std::move(e));
    }
  }
  std::printf("%zu recipes, %zu annotations without one\n", out.size(), lost);
  return out;
}

/// Logistic regression by stochastic gradient with AdaGrad steps and an L2 pull to zero.
class Model {
 public:
  double score(const std::vector<std::string>& features) const {
    double sum = 0;
    for (const auto& f : features)
      if (const auto it = weights_.find(f); it != weights_.end()) sum += it->second.value;
    return sum;
  }

  /// Decides one recipe from left to right with this model.
  std::vector<char> decide(const Example& e) const {
    auto c = circumstances(e.read.row, e.read.mentions, e.read.variant);
    std::vector<std::string> f;
    for (std::uint32_t j = 0; j < e.read.mentions.size(); ++j) {
      f.clear();
      name_features(c, j, f);
      c.accepted[j] = score(f) > 0;
    }
    return c.accepted;
  }

  void learn(const std::vector<const Example*>& examples, int least, double pull) {
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

  void write(std::ostream& out) const {
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

  static void add(const Example& e, const std::vector<char>& history, std::vector<Instance>& out) {
    auto c = circumstances(e.read.row, e.read.mentions, e.read.variant);
    c.accepted = history;
    for (std::uint32_t j = 0; j < e.read.mentions.size(); ++j) {
      Instance i;
      name_features(c, j, i.features);
      i.truth = e.truth[j];
      out.push_back(std::move(i));
    }
  }

  void keep_common(const std::vector<Instance>& instances, int least) {
    std::unordered_map<std::string, int> count;
    for (const auto& i : instances)
      for (const auto& f : i.features) ++count[f];
    weights_.clear();
    for (const auto& [f, n] : count)
      if (n >= least) weights_[f] = {};
  }

  void descend(std::vector<Instance>& instances, double pull) {
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

  std::unordered_map<std::string, Weight> weights_;
};

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
