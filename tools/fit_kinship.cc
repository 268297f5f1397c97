// Fits the weights of kinship.tsv to pairs of recipes that were read side by side, and says how well they do on pairs
// of books that they were not fitted on.
//
//   fit_kinship INDEX PAIRS.jsonl [--folds N] [--list]
//
// A pair: {"earlier": {"book", "line"}, "later": {...}, "relation": "copy" | "revised" | "independent", "doubtful"}.
// Logistic regression with a ridge, by gradient; all pairs of the same two books are in one fold.
#include <fmt/format.h>
#include <rapidjson/document.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <map>

#include "query/grouping/kin_texts.h"

namespace {

using namespace gallipot;

constexpr std::uint32_t near_lines = 4;

struct Pair {
  std::string relation, books, earlier, later;
  Kinship kin;
  bool drawn = false;  ///< the index offers the earlier as a candidate for the later
};

using Places = std::map<std::string, std::map<std::uint32_t, std::string>>;

std::string id_at(const Places& places, const rapidjson::Value& place) {
  const auto book = places.find(place["book"].GetString());
  if (book == places.end()) return {};
  const auto line = place["line"].GetUint();
  std::string best;
  std::uint32_t distance = near_lines + 1;
  for (const auto& [at, id] : book->second) {
    const auto d = at > line ? at - line : line - at;
    if (d >= distance) continue;
    distance = d;
    best = id;
  }
  return best;
}

std::vector<Pair> read_pairs(const std::string& path, const Shelf& shelf, const Lexicon& lexicon) {
  Places places;
  (void)shelf.each([&](const ComparableRecipe& r) {
    places[r.book][r.recipe.line_start] = r.id;
    return true;
  });
  KinTexts texts(shelf, lexicon);
  std::vector<Pair> out;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document json;
    if (json.Parse(line).HasParseError() || (json.HasMember("doubtful") && json["doubtful"].GetBool())) continue;
    Pair pair;
    pair.relation = json["relation"].GetString();
    pair.earlier = id_at(places, json["earlier"]);
    pair.later = id_at(places, json["later"]);
    if (pair.earlier.empty() || pair.later.empty()) continue;
    const auto earlier = shelf.recipe(pair.earlier), later = shelf.recipe(pair.later);
    if (!earlier || !later) continue;
    pair.books = earlier->book + " " + later->book;
    const KinText asked = texts.asked(*later);
    const auto drawn = texts.candidates(asked, 24);
    const auto docid = shelf.docid_of(pair.earlier);
    pair.drawn = docid && std::find(drawn.begin(), drawn.end(), *docid) != drawn.end();
    pair.kin = kinship_of(texts.asked(*earlier), asked);
    out.push_back(std::move(pair));
  }
  return out;
}

bool is_kin(const Pair& pair) { return pair.relation != "independent"; }

KinWeights fitted(const std::vector<const Pair*>& pairs) {
  constexpr double ridge = 0.02, step = 0.05;
  std::array<double, 4> w{};
  const std::array<double, 4> scale{4, 1, 1, 1};  // brings the share to the range of the others
  for (int round = 0; round < 60000; ++round) {
    std::array<double, 4> slope{};
    for (const Pair* pair : pairs) {
      const auto& s = pair->kin.signs;
      const std::array<double, 4> x{scale[0] * s.share, s.evidence, s.title, 1};
      double sum = 0;
      for (std::size_t k = 0; k < 4; ++k) sum += w[k] * x[k];
      const double off = 1 / (1 + std::exp(-sum)) - (is_kin(*pair) ? 1 : 0);
      for (std::size_t k = 0; k < 4; ++k) slope[k] += off * x[k];
    }
    for (std::size_t k = 0; k < 4; ++k)
      w[k] -= step * (slope[k] / static_cast<double>(pairs.size()) + (k < 3 ? ridge * w[k] / 10 : 0));
  }
  return {w[0] * scale[0], w[1], w[2], w[3]};
}

struct Tally {
  std::map<std::string, std::pair<int, int>> tied;  ///< relation -> tied, all
  void add(const Pair& pair, const KinWeights& weights) {
    auto& [is, all] = tied[pair.relation];
    is += !pair.kin.passages.empty() && weights.likelihood(pair.kin.signs) >= 0.5;
    ++all;
  }
  void print(const char* name) const {
    fmt::print("{:32}", name);
    for (const auto& [relation, count] : tied) fmt::print(" {} {}/{}", relation, count.first, count.second);
    fmt::print("\n");
  }
};

/// Pairs of the same two books fall into one fold.
std::map<std::string, std::size_t> folds_of(const std::vector<Pair>& pairs, std::size_t folds) {
  std::map<std::string, std::size_t> out;
  for (const auto& pair : pairs) out.try_emplace(pair.books, 0);
  std::size_t n = 0;
  for (auto& [books, fold] : out) fold = n++ % folds;
  return out;
}

Tally left_out(const std::vector<Pair>& pairs, std::size_t folds) {
  const auto fold_of = folds_of(pairs, folds);
  Tally out;
  for (std::size_t fold = 0; fold < folds; ++fold) {
    std::vector<const Pair*> others;
    for (const auto& pair : pairs)
      if (fold_of.at(pair.books) != fold) others.push_back(&pair);
    const auto weights = fitted(others);
    for (const auto& pair : pairs)
      if (fold_of.at(pair.books) == fold) out.add(pair, weights);
  }
  return out;
}

void list(std::vector<Pair> pairs, const KinWeights& weights) {
  std::sort(pairs.begin(), pairs.end(), [&](const Pair& a, const Pair& b) {
    return weights.likelihood(a.kin.signs) < weights.likelihood(b.kin.signs);
  });
  for (const auto& pair : pairs) {
    const auto& k = pair.kin;
    fmt::print("{:12} p {:.3f} built-in {:.3f} share {:.2f} ({:.2f} {:.2f}) evidence {:.2f} title {:.2f} {} {} -> {}\n",
               pair.relation, weights.likelihood(k.signs), k.likelihood, k.signs.share, k.of_first, k.of_second,
               k.signs.evidence, k.signs.title, pair.drawn ? "drawn" : "NOT DRAWN", pair.earlier, pair.later);
  }
}

void report(const std::vector<Pair>& pairs, std::size_t folds, bool with_list) {
  std::vector<const Pair*> all;
  for (const auto& pair : pairs) all.push_back(&pair);
  const auto weights = fitted(all);
  if (with_list) list(pairs, weights);
  fmt::print("share {:.2f}\nevidence {:.2f}\ntitle {:.2f}\noffset {:.2f}\n", weights.share, weights.evidence,
             weights.title, weights.offset);
  Tally built_in, own, drawn;
  for (const auto& pair : pairs) {
    built_in.add(pair, built_in_kin_weights());
    own.add(pair, weights);
    auto& [is, count] = drawn.tied[pair.relation];
    is += pair.drawn;
    ++count;
  }
  drawn.print("offered by the index");
  built_in.print("tied by the built-in weights");
  own.print("tied by those fitted on all");
  left_out(pairs, folds).print("tied, books left out");
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Fits the weights of kinship to pairs of recipes.");
  std::string index, pairs;
  std::size_t folds = 8;
  bool with_list = false;
  app.add_option("index", index, "folder of the index")->required();
  app.add_option("pairs", pairs, "pairs, JSON Lines")->required();
  app.add_option("--folds", folds, "parts to leave out in turn")->check(CLI::PositiveNumber);
  app.add_flag("--list", with_list, "print every pair with its signs");
  CLI11_PARSE(app, argc, argv);
  try {
    const auto shelf = Shelf::open(index).value();
    const auto lexicon = Lexicon::load().value();
    report(read_pairs(pairs, shelf, *lexicon), folds, with_list);
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    return 2;
  }
  return 0;
}
