// Rough sizes from the register, vagueness from the table.
#include "indexer/mining/sizes.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/amounts.h"

namespace gallipot::mining {
namespace {

struct Rank {
  int vagueness = 0;
  bool bare = false;
};
using Ranks = std::unordered_map<std::string, Rank>;

Ranks load_ranks() {
  Ranks ranks;
  const auto table = parse_table(built_in_table("vague-measures"), "vague-measures", "vague-measures.tsv");
  if (!table) return ranks;
  for (const auto& row : table->rows) {
    Rank rank;
    const auto cell = row.cells[1];
    std::from_chars(cell.data(), cell.data() + cell.size(), rank.vagueness);
    rank.bare = row.cells[2] == "1";
    ranks.emplace(row.cells[0], rank);
  }
  return ranks;
}

/// The row of a measure, or else of its kind.
Rank rank_of(const std::string& measure, const std::string& kind) {
  static const Ranks ranks = load_ranks();
  auto at = ranks.find(measure);
  if (at == ranks.end()) at = ranks.find(kind);
  return at == ranks.end() ? Rank{-1, false} : at->second;
}

/// What the tables that come with the program hold of a measure.
std::optional<Amount> general(const Measured& asked) {
  static const auto tables = Register::load();
  return tables ? (*tables)->amount(asked) : std::nullopt;
}

/// Times by which two intervals miss each other; 1 where they touch.
double apart(double low_a, double high_a, double low_b, double high_b) {
  if (low_a > high_b) return low_a / high_b;
  if (low_b > high_a) return low_b / high_a;
  return 1;
}

/// What so many of a measure come to: of a lawful one all that law and place make of it, of others what is likely,
/// since what any book meant by them reaches too far to tell anything.
std::pair<double, double> reach(const Amount& one, int vagueness, double count) {
  if (vagueness <= 1) return {one.low * count, one.high * count};
  return {one.likely * count, one.likely * count};
}

/// A weight against a capacity: grams a millilitre, from dry herbs and bran to heaped spoons of syrup.
bool dense_enough(double low, double high, bool spoon, bool stated) {
  return high >= (stated ? 0.1 : 0.2) && low <= (spoon ? 4.2 : 1.65);
}

/// Whether two lawful measures stand in the ratio of the tables, or in one that the tables do not tell.
bool in_known_ratio(double count_a, const std::string& a, double count_b, const std::string& b) {
  const double b_in_a = parsing::measures_in(a, b), a_in_b = parsing::measures_in(b, a);
  if (b_in_a <= 0 && a_in_b <= 0) return true;
  const double expected = b_in_a > 0 ? b_in_a : 1 / a_in_b;
  const double told = count_b / count_a;
  return told < expected * 1.04 && told > expected / 1.04;
}

bool is_spoon(const std::string& measure) { return measure.ends_with("spoon"); }

}  // namespace

const std::optional<Amount>& Sizes::of(const std::string& measure) {
  const auto [at, fresh] = measures_known_.try_emplace(measure);
  if (fresh) {
    Measured asked;
    asked.measure = measure;
    at->second = general(asked);
  }
  return at->second;
}

const std::optional<Amount>& Sizes::of_one(const std::string& stuff) {
  const auto [at, fresh] = stuffs_known_.try_emplace(stuff);
  if (fresh) {
    Measured asked;
    asked.of = stuff;
    at->second = general(asked);
    if (at->second && at->second->unit != Amount::Unit::gram) at->second.reset();
  }
  return at->second;
}

int Sizes::vagueness(const std::string& measure) const {
  const auto* word = lexicon_.measure(measure);
  return rank_of(measure, word ? word->kind : "stuff").vagueness;
}

bool Sizes::tells(const std::string& measure, const std::string& kind) { return rank_of(measure, kind).vagueness >= 0; }

bool Sizes::may_stand_bare(const MeasureWord& measure) { return rank_of(measure.name, measure.kind).bare; }

bool may_equal(Sizes& sizes, double count_a, const std::string& a, double count_b, const std::string& b,
               Closeness closeness) {
  if (count_a <= 0 || count_b <= 0 || a == b) return false;
  const auto size = [&](const std::string& m) { return sizes.lexicon().measure(m) ? sizes.of(m) : sizes.of_one(m); };
  const auto one_a = size(a), one_b = size(b);
  const bool stated = closeness == Closeness::stated;
  const int vague_a = sizes.vagueness(a), vague_b = sizes.vagueness(b);
  if (!one_a || !one_b || one_a->unit == Amount::Unit::count || one_b->unit == Amount::Unit::count)
    return stated ? std::min(vague_a, vague_b) <= 1 || std::max(vague_a, vague_b) <= 2
                  : std::min(vague_a, vague_b) <= 1 && std::max(vague_a, vague_b) == 4;
  const auto [low_a, high_a] = reach(*one_a, vague_a, count_a);
  const auto [low_b, high_b] = reach(*one_b, vague_b, count_b);
  if (one_a->unit != one_b->unit) {
    const bool a_weighs = one_a->unit == Amount::Unit::gram;
    const bool spoon = is_spoon(a_weighs ? b : a);
    return a_weighs ? dense_enough(low_a / high_b, high_a / low_b, spoon, stated)
                    : dense_enough(low_b / high_a, high_b / low_a, spoon, stated);
  }
  const bool by_law = vague_a <= 1 && vague_b <= 1;
  if (!stated && by_law && !in_known_ratio(count_a, a, count_b, b)) return false;
  double room = by_law ? (stated ? 1.45 : 1.1) : (stated ? 2.7 : 1.75);
  if (a == "drop" || b == "drop") room *= 2;  // as large as the neck of the bottle is wide
  return apart(low_a, high_a, low_b, high_b) <= room;
}

}  // namespace gallipot::mining
