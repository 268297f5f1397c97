// From shared passages to a likelihood.
#include "query/grouping/kinship.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

constexpr double least_passage = 8;      // what a passage must score: two or three rare words, or a dozen common ones
constexpr float explained_worth = 0.1F;  // of a word that a better source accounts for
constexpr double copy_share = 0.75;      // of the shorter text's words
constexpr double copy_in_one_passage = 0.5;  // of the words that are shared

WeighedWords weighed(const WordRow& row) { return {row.words, row.tells}; }

double worth_of(const KinText& text, std::size_t word) {
  return static_cast<double>(text.row.tells[word]) *
         (word < text.worth.size() ? static_cast<double>(text.worth[word]) : 1.0);
}

double ratio(double part, double whole) { return whole > 0 ? std::min(1.0, part / whole) : 0; }

double title_likeness(const std::vector<std::uint32_t>& a, const std::vector<std::uint32_t>& b) {
  std::vector<std::uint32_t> both;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(both));
  return ratio(static_cast<double>(both.size()), static_cast<double>(std::min(a.size(), b.size())));
}

struct Field {
  std::string_view name;
  double KinWeights::*member;
};
constexpr Field fields[] = {{"share", &KinWeights::share},
                            {"evidence", &KinWeights::evidence},
                            {"title", &KinWeights::title},
                            {"offset", &KinWeights::offset}};

}  // namespace

double KinWeights::likelihood(const KinSigns& signs) const {
  const double sum = offset + share * signs.share + evidence * signs.evidence + title * signs.title;
  return 1 / (1 + std::exp(-sum));
}

Outcome<KinWeights> load_kin_weights(const std::string& overlay_folder) {
  const auto table = load_table("kinship", overlay_folder);
  if (!table) return tl::unexpected<Fault>(table.error());
  KinWeights out;
  for (const auto& row : table->rows) {
    const auto name = table->cell(row, "name"), value = table->cell(row, "value");
    const auto* field =
        std::find_if(std::begin(fields), std::end(fields), [&](const Field& f) { return f.name == name; });
    double number = 0;
    const auto [end, error] = std::from_chars(value.data(), value.data() + value.size(), number);
    if (field == std::end(fields) || error != std::errc{} || end != value.data() + value.size())
      return fault("\"" + std::string(name) + "\" with \"" + std::string(value) + "\" is no weight of kinship",
                   "write share, evidence, title or offset and a number", table->file_of(row), row.line);
    out.*(field->member) = number;
  }
  return out;
}

const KinWeights& built_in_kin_weights() {
  static const KinWeights weights = load_kin_weights().value();
  return weights;
}

KinSigns most_in_common(const KinText& first, const KinText& second) {
  const auto bag = [](const WordRow& row) {
    std::vector<std::pair<std::uint32_t, float>> out;
    out.reserve(row.size());
    for (std::size_t i = 0; i < row.size(); ++i) out.emplace_back(row.words[i], row.tells[i]);
    std::sort(out.begin(), out.end());
    return out;
  };
  const auto a = bag(first.row), b = bag(second.row);
  double common = 0;
  for (auto i = a.begin(), j = b.begin(); i != a.end() && j != b.end();) {
    if (i->first == j->first) {
      common += static_cast<double>(i->second);
      ++i;
      ++j;
    } else if (i->first < j->first) {
      ++i;
    } else {
      ++j;
    }
  }
  return {ratio(common, std::min(first.row.tells_all, second.row.tells_all)), std::log1p(common),
          title_likeness(first.title, second.title)};
}

Kinship kinship_of(const KinText& first, const KinText& second, const std::vector<bool>& explained,
                   const KinWeights& weights) {
  Kinship out;
  out.passages = passages(weighed(first.row), weighed(second.row), least_passage);
  double telling = 0;
  std::size_t words = 0, longest = 0;
  for (const Passage& passage : out.passages) {
    for (const auto& [i, j] : passage.pairs) {
      double worth = std::min(worth_of(first, i), worth_of(second, j));
      if (j < explained.size() && explained[j]) worth *= static_cast<double>(explained_worth);
      telling += worth;
    }
    words += passage.pairs.size();
    longest = std::max(longest, passage.pairs.size());
  }
  const auto count = static_cast<double>(words);
  out.of_first = ratio(count, static_cast<double>(first.row.size()));
  out.of_second = ratio(count, static_cast<double>(second.row.size()));
  out.telling_of_first = ratio(telling, first.row.tells_all);
  out.telling_of_second = ratio(telling, second.row.tells_all);
  out.signs = {std::max(out.telling_of_first, out.telling_of_second), std::log1p(telling),
               title_likeness(first.title, second.title)};
  out.likelihood = words == 0 ? 0 : weights.likelihood(out.signs);
  out.copy = out.tied() && std::max(out.of_first, out.of_second) >= copy_share &&
             static_cast<double>(longest) >= copy_in_one_passage * count;
  return out;
}

}  // namespace gallipot
