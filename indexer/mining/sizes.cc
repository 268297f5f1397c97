// Rough sizes from the register, vagueness from the table.
#include "indexer/mining/sizes.h"

#include <algorithm>
#include <charconv>

#include "indexer/lexicon/tables.h"

namespace gallipot::mining {
namespace {

using Ranks = std::unordered_map<std::string, int>;

Ranks load_ranks() {
  Ranks ranks;
  const auto table = parse_table(built_in_table("vague-measures"), "vague-measures", "vague-measures.tsv");
  if (!table) return ranks;
  for (const auto& row : table->rows) {
    int rank = 0;
    const auto cell = row.cells[1];
    std::from_chars(cell.data(), cell.data() + cell.size(), rank);
    ranks.emplace(row.cells[0], rank);
  }
  return ranks;
}

int rank_named(const std::string& name, int otherwise) {
  static const Ranks ranks = load_ranks();
  const auto at = ranks.find(name);
  return at == ranks.end() ? otherwise : at->second;
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

/// A weight against a capacity: grams a millilitre, from dry herbs and bran to heaped spoons of syrup.
bool dense_enough(double low, double high, bool spoon) { return high >= 0.2 && low <= (spoon ? 4.2 : 1.65); }

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
  return rank_named(measure, rank_named(word ? word->kind : "stuff", 5));
}

bool may_equal(Sizes& sizes, double count_a, const std::string& a, double count_b, const std::string& b,
               Closeness closeness) {
  if (count_a <= 0 || count_b <= 0 || a == b) return false;
  const auto size = [&](const std::string& m) { return sizes.lexicon().measure(m) ? sizes.of(m) : sizes.of_one(m); };
  const auto one_a = size(a), one_b = size(b);
  if (!one_a || !one_b || one_a->unit == Amount::Unit::count || one_b->unit == Amount::Unit::count)
    return closeness == Closeness::stated;
  const double low_a = count_a * one_a->low, high_a = count_a * one_a->high;
  const double low_b = count_b * one_b->low, high_b = count_b * one_b->high;
  if (one_a->unit != one_b->unit) {
    const bool a_weighs = one_a->unit == Amount::Unit::gram;
    const bool spoon = is_spoon(a_weighs ? b : a);
    return a_weighs ? dense_enough(low_a / high_b, high_a / low_b, spoon)
                    : dense_enough(low_b / high_a, high_b / low_a, spoon);
  }
  const bool by_law = sizes.vagueness(a) <= 1 && sizes.vagueness(b) <= 1;
  const double room =
      by_law ? (closeness == Closeness::stated ? 1.45 : 1.1) : (closeness == Closeness::stated ? 2.2 : 1.35);
  return apart(low_a, high_a, low_b, high_b) <= room;
}

}  // namespace gallipot::mining
