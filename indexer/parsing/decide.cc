// The linear model: features hashed to weights, and decisions from left to right.
#include "indexer/parsing/decide.h"

#include <cmath>
#include <cstdlib>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/features.h"

namespace gallipot::parsing {
namespace {

constexpr std::uint64_t kBasis = 1469598103934665603ULL;

std::uint64_t hash_more(std::uint64_t h, std::string_view s) {
  for (const char c : s) h = (h ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return h;
}

/// The written form of a feature, of which the key is the hash: "det+past=the|taken|".
std::uint64_t feature_key(std::string_view name, std::string_view a, std::string_view b, std::string_view c) {
  auto h = hash_more(kBasis, name);
  h = hash_more(h, "=");
  h = hash_more(h, a);
  h = hash_more(h, "|");
  h = hash_more(h, b);
  h = hash_more(h, "|");
  return hash_more(h, c);
}

/// Weights by feature key: an open table at most half full, so that a look-up is mostly one cache line.
class Weights {
 public:
  Weights() {
    const auto table = parse_table(built_in_table("mention-weights"), "mention-weights", "mention-weights.tsv");
    const std::size_t count = table ? table->rows.size() : 0;
    std::size_t size = 64;
    while (size < 2 * count) size *= 2;
    slots_.resize(size);
    for (std::size_t r = 0; r < count; ++r) {
      const auto& cells = table->rows[r].cells;
      put(hash_more(kBasis, cells[0]), std::strtof(std::string(cells[1]).c_str(), nullptr));
    }
  }

  float of(std::uint64_t key) const {
    for (std::size_t i = place(key);; i = (i + 1) & (slots_.size() - 1)) {
      if (slots_[i].key == key) return slots_[i].weight;
      if (slots_[i].key == 0) return 0;
    }
  }

 private:
  struct Slot {
    std::uint64_t key = 0;
    float weight = 0;
  };
  std::size_t place(std::uint64_t key) const {
    return static_cast<std::size_t>(key ^ (key >> 32)) & (slots_.size() - 1);
  }
  void put(std::uint64_t key, float weight) {
    auto i = place(key);
    while (slots_[i].key != 0 && slots_[i].key != key) i = (i + 1) & (slots_.size() - 1);
    slots_[i] = {key, weight};
  }
  std::vector<Slot> slots_;
};

void add_title(Circumstances& c, const Row& row) {
  const Words words(row.recipe->dish_title.empty() ? row.recipe->title : row.recipe->dish_title);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto match = row.lexicon->foodstuff_phrases().longest(words.all(), i);
    if (!match.words) continue;
    const auto& food = row.lexicon->foodstuffs()[match.value];
    c.title.push_back(food.name);
    if (!food.base.empty()) c.title.push_back(food.base);
  }
}

/// Sentences that open with an amount and hold three or more are lists, set as prose.
void mark_listing(Circumstances& c) {
  const Row& row = *c.row;
  if (row.size() == 0) return;
  const std::size_t sentences = row.tags.back().sentence + 1u;
  std::vector<std::uint32_t> first(sentences, kNone), amounts(sentences, 0);
  for (std::uint32_t i = 0; i < row.size(); ++i)
    if (auto& f = first[row.tags[i].sentence]; f == kNone && !row.point(i)) f = i;
  c.listing.assign(sentences, 0);
  c.sentences.assign(sentences, {});
  for (const auto& t : row.tags) {
    auto& s = c.sentences[t.sentence];
    s.imperatives += t.operation != kNone && row.lexicon->operations()[t.operation].form == "imperative";
    s.auxiliaries += (t.roles & auxiliary) != 0;
  }
  std::vector<char> opens(sentences, 0);
  for (const auto& m : *c.mentions) {
    const auto s = row.tags[m.name.begin].sentence;
    if (!m.quantity || m.amount == kNone) continue;
    c.measured += m.amount_kind == AmountKind::measured;
    ++amounts[s];
    if (m.amount_at.begin <= first[s] + 1 || m.name.begin <= first[s] + 1) opens[s] = 1;
  }
  for (std::size_t s = 0; s < sentences; ++s) c.listing[s] = opens[s] && amounts[s] >= 3;
}

}  // namespace

Circumstances circumstances(const Row& row, const std::vector<Mention>& mentions, const std::vector<bool>& variant) {
  Circumstances c;
  c.row = &row;
  c.mentions = &mentions;
  c.variant = &variant;
  c.accepted.assign(mentions.size(), 0);
  for (const bool listed : row.listed) c.has_list = c.has_list || listed;
  add_title(c, row);
  mark_listing(c);
  return c;
}

void name_features(const Circumstances& c, std::uint32_t at, std::vector<std::string>& out) {
  features(c, at, [&](std::string_view name, std::string_view a, std::string_view b, std::string_view d) {
    std::string f(name);
    f.append("=").append(a).append("|").append(b).append("|").append(d);
    out.push_back(std::move(f));
  });
}

double score(const Circumstances& c, std::uint32_t at) {
  static const Weights weights;
  double sum = 0;
  features(c, at, [&](std::string_view name, std::string_view a, std::string_view b, std::string_view d) {
    sum += static_cast<double>(weights.of(feature_key(name, a, b, d)));
  });
  return sum;
}

std::vector<char> decide(const Circumstances& c, std::vector<double>& scores) {
  Circumstances so_far = c;
  scores.assign(c.mentions->size(), 0);
  for (std::uint32_t j = 0; j < c.mentions->size(); ++j) {
    scores[j] = score(so_far, j);
    so_far.accepted[j] = scores[j] > 0;
  }
  return so_far.accepted;
}

}  // namespace gallipot::parsing
