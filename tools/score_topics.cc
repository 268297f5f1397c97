// How well do find and variants recover the recipes of a dish? Reads topics (JSON Lines, each a query, a seed and the
// graded relevant recipes by book and line), asks an index in process, and prints nDCG@50 and recall@200.
//
//   score_topics INDEX TOPICS [--set WEIGHT=VALUE ...] [--tune]
//
// --tune climbs along one weight at a time and prints the best set found; each topic has the same say.
#include <fmt/format.h>
#include <rapidjson/document.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>
#include <map>

#include "query/finding/find.h"
#include "query/grouping/variants.h"

namespace {

using namespace gallipot;

constexpr std::uint32_t near_lines = 4;

struct Topic {
  std::string name;
  std::vector<std::string> words;
  std::string seed;                  ///< recipe id; empty where the index lacks it
  std::map<std::string, int> grade;  ///< recipe id, or "book:line" where the index lacks it -> 1 | 2
};

/// Recipe ids by book and first line.
using Places = std::map<std::string, std::map<std::uint32_t, std::string>>;

Places places_of(const Shelf& shelf) {
  Places out;
  (void)shelf.each([&](const ComparableRecipe& r) {
    out[r.book][r.recipe.line_start] = r.id;
    return true;
  });
  return out;
}

std::string id_at(const Places& places, const std::string& book, std::uint32_t line) {
  const auto in_book = places.find(book);
  if (in_book == places.end()) return {};
  std::string best;
  std::uint32_t distance = near_lines + 1;
  for (auto it = in_book->second.lower_bound(line > near_lines ? line - near_lines : 0);
       it != in_book->second.end() && it->first <= line + near_lines; ++it) {
    const auto d = it->first > line ? it->first - line : line - it->first;
    if (d < distance) {
      distance = d;
      best = it->second;
    }
  }
  return best;
}

std::vector<Topic> read_topics(const std::string& path, const Places& places) {
  std::vector<Topic> out;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document json;
    if (json.Parse(line).HasParseError()) continue;
    Topic topic;
    topic.name = json["topic"].GetString();
    const Words words{std::string_view(json["query"].GetString())};
    for (const auto& word : words.all()) topic.words.emplace_back(word.key);
    topic.seed = id_at(places, json["seed"]["book"].GetString(), json["seed"]["line"].GetUint());
    for (const auto& r : json["relevant"].GetArray()) {
      const std::string book = r["book"].GetString();
      if (!places.contains(book)) continue;
      auto id = id_at(places, book, r["line"].GetUint());
      if (id.empty()) id = fmt::format("{}:{}", book, r["line"].GetUint());
      topic.grade[id] = r["grade"].GetInt();
    }
    out.push_back(std::move(topic));
  }
  return out;
}

struct Figures {
  double ndcg = 0, recall = 0;
};

/// Järvelin and Kekäläinen (2002): gains 3 and 1 for the grades 2 and 1, discounted by log2(rank + 1).
Figures figures_of(const std::vector<std::string>& ranked, const std::map<std::string, int>& grade,
                   const std::string& seed) {
  const auto gain = [](int g) { return g == 2 ? 3.0 : g == 1 ? 1.0 : 0.0; };
  std::vector<double> ideal;
  int strong = 0, found = 0;
  for (const auto& [id, g] : grade) {
    if (id == seed) continue;
    ideal.push_back(gain(g));
    strong += g == 2;
  }
  std::sort(ideal.rbegin(), ideal.rend());
  double dcg = 0, best = 0;
  for (std::size_t i = 0; i < std::min<std::size_t>(50, ideal.size()); ++i) best += ideal[i] / std::log2(double(i) + 2);
  for (std::size_t i = 0; i < std::min<std::size_t>(200, ranked.size()); ++i) {
    const auto it = grade.find(ranked[i]);
    if (it == grade.end() || ranked[i] == seed) continue;
    if (i < 50) dcg += gain(it->second) / std::log2(double(i) + 2);
    found += it->second == 2;
  }
  return {best > 0 ? dcg / best : 0, strong ? double(found) / strong : 0};
}

struct Total {
  Figures find, variants;
  double worth() const { return find.ndcg + variants.ndcg + 0.5 * variants.recall + 0.25 * find.recall; }
};

Total score(const Shelf& shelf, const Lexicon& lexicon, const std::vector<Topic>& topics, const Ranking& ranking,
            bool tell) {
  Total total;
  double seeds = 0;
  for (const auto& topic : topics) {
    std::vector<std::string> ids;
    if (const auto found = find(shelf, lexicon, topic.words, {}, 200, ranking))
      for (const auto& hit : found->hits) ids.push_back(hit.id);
    const auto f = figures_of(ids, topic.grade, {});
    total.find.ndcg += f.ndcg;
    total.find.recall += f.recall;
    Figures v;
    if (!topic.seed.empty()) {
      ids.clear();
      if (const auto set = variants_of(shelf, lexicon, topic.seed, {}, 200, ranking))
        for (const auto& variant : set->variants) ids.push_back(variant.id);
      v = figures_of(ids, topic.grade, topic.seed);
      total.variants.ndcg += v.ndcg;
      total.variants.recall += v.recall;
      ++seeds;
    }
    if (tell)
      fmt::print("{:24} find {:.3f} {:.3f}   variants {:.3f} {:.3f}\n", topic.name, f.ndcg, f.recall, v.ndcg, v.recall);
  }
  const auto n = std::max(1.0, double(topics.size()));
  total.find.ndcg /= n;
  total.find.recall /= n;
  total.variants.ndcg /= std::max(1.0, seeds);
  total.variants.recall /= std::max(1.0, seeds);
  if (tell)
    fmt::print("{:24} find {:.3f} {:.3f}   variants {:.3f} {:.3f}\n", "mean", total.find.ndcg, total.find.recall,
               total.variants.ndcg, total.variants.recall);
  return total;
}

void tune(const Shelf& shelf, const Lexicon& lexicon, const std::vector<Topic>& topics, Ranking ranking) {
  double best = score(shelf, lexicon, topics, ranking, false).worth();
  for (int round = 0; round < 3; ++round) {
    bool better = false;
    for (const auto& [name, member] : Ranking::fields()) {
      for (const double factor : {0.5, 0.75, 1.33, 2.0, 0.0}) {
        Ranking tried = ranking;
        tried.*member = factor == 0 ? (ranking.*member == 0 ? 0.3 : 0) : ranking.*member * factor;
        if (name == "candidates" || name == "feedback_recipes") tried.*member = std::max(2.0, tried.*member);
        if (name == "candidates" && tried.*member > 1000) continue;
        if (name == "feedback_share") tried.*member = std::min(0.95, tried.*member);
        const double worth = score(shelf, lexicon, topics, tried, false).worth();
        if (worth <= best + 0.001) continue;
        best = worth;
        ranking = tried;
        better = true;
        fmt::print("{} = {:.3g}: {:.4f}\n", name, ranking.*member, best);
        std::fflush(stdout);
      }
    }
    if (!better) break;
  }
  for (const auto& [name, member] : Ranking::fields()) fmt::print("{}\t{:.4g}\n", name, ranking.*member);
  score(shelf, lexicon, topics, ranking, true);
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Scores find and variants on graded topics"};
  std::string index, topics_path;
  std::vector<std::string> sets;
  bool climb = false;
  app.add_option("index", index)->required();
  app.add_option("topics", topics_path)->required();
  app.add_option("--set", sets, "WEIGHT=VALUE");
  app.add_flag("--tune", climb);
  CLI11_PARSE(app, argc, argv);
  const auto shelf = Shelf::open(index);
  const auto lexicon = Lexicon::load();
  if (!shelf || !lexicon) {
    std::cerr << (shelf ? lexicon.error() : shelf.error()).sentence() << '\n';
    return 2;
  }
  Ranking ranking = built_in_ranking();
  for (const auto& set : sets) {
    const auto at = set.find('=');
    if (at == std::string::npos || !ranking.set(set.substr(0, at), std::stod(set.substr(at + 1)))) {
      std::cerr << "there is no weight " << set << '\n';
      return 2;
    }
  }
  const auto topics = read_topics(topics_path, places_of(*shelf));
  if (climb) {
    tune(*shelf, **lexicon, topics, ranking);
  } else {
    score(*shelf, **lexicon, topics, ranking, true);
  }
  return 0;
}
