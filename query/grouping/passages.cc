// The table of a local alignment, filled row by row; only the way back is kept of it.
#include "query/grouping/passages.h"

#include <algorithm>

namespace gallipot {
namespace {

enum Way : std::uint8_t { stop, pair, differ, up, back };

constexpr std::size_t most_passages = 24;

struct Used {
  std::vector<bool> left, right;
};

/// Whether two words stand next to each other, unused, in both rows: without such a pair no further passage is worth
/// looking for. Rows are short; the pairs of the left one are put in order and looked up.
bool pair_left(const WeighedWords& left, const WeighedWords& right, const Used& used) {
  const auto pairs_of = [](const WeighedWords& row, const std::vector<bool>& taken) {
    std::vector<std::uint64_t> out;
    for (std::size_t i = 1; i < row.words.size(); ++i)
      if (!taken[i - 1] && !taken[i]) out.push_back((std::uint64_t{row.words[i - 1]} << 32) | row.words[i]);
    std::sort(out.begin(), out.end());
    return out;
  };
  const auto a = pairs_of(left, used.left), b = pairs_of(right, used.right);
  for (auto i = a.begin(), j = b.begin(); i != a.end() && j != b.end();) {
    if (*i == *j) return true;
    *i < *j ? ++i : ++j;
  }
  return false;
}

Passage way_back(const std::vector<std::uint8_t>& ways, std::size_t width, std::size_t i, std::size_t j) {
  Passage out;
  for (std::uint8_t way = ways[i * width + j]; way != stop; way = ways[i * width + j]) {
    if (way == pair) out.pairs.emplace_back(static_cast<std::uint32_t>(i - 1), static_cast<std::uint32_t>(j - 1));
    if (way != back) --i;
    if (way != up) --j;
  }
  std::reverse(out.pairs.begin(), out.pairs.end());
  return out;
}

WeighedWords cut(const WeighedWords& row) {
  const auto n = std::min(row.words.size(), longest_aligned);
  return {row.words.first(n), row.weights.first(n)};
}

}  // namespace

Passage best_passage(const WeighedWords& left, const WeighedWords& right, const PassageCosts& costs,
                     const std::vector<bool>& left_used, const std::vector<bool>& right_used) {
  const std::size_t n = left.words.size(), m = right.words.size(), width = m + 1;
  std::vector<std::uint8_t> ways((n + 1) * width, stop);
  std::vector<float> above(width, 0), here(width, 0);
  std::vector<char> barred(m, 0);  // as bytes: the inner loop reads it
  for (std::size_t j = 0; j < right_used.size(); ++j) barred[j] = right_used[j] ? 1 : 0;
  float best = 0;
  std::size_t best_i = 0, best_j = 0;
  for (std::size_t i = 1; i <= n; ++i) {
    if (!left_used.empty() && left_used[i - 1]) {
      std::fill(above.begin(), above.end(), 0.0F);
      continue;
    }
    const std::uint32_t word = left.words[i - 1];
    const float weight = left.weights[i - 1];
    std::uint8_t* way = &ways[i * width];
    here[0] = 0;
    for (std::size_t j = 1; j <= m; ++j) {
      const bool same = right.words[j - 1] == word;
      float score = above[j - 1] + (same ? weight : costs.unlike);
      std::uint8_t from = same ? pair : differ;
      if (const float gap = above[j] + costs.gap; gap > score) {
        score = gap;
        from = up;
      }
      if (const float gap = here[j - 1] + costs.gap; gap > score) {
        score = gap;
        from = back;
      }
      if (score <= 0 || barred[j - 1] != 0) {
        score = 0;
        from = stop;
      }
      here[j] = score;
      way[j] = from;
      if (score > best) {
        best = score;
        best_i = i;
        best_j = j;
      }
    }
    std::swap(above, here);
  }
  Passage out = way_back(ways, width, best_i, best_j);
  out.score = static_cast<double>(best);
  return out;
}

std::vector<Passage> passages(const WeighedWords& left_row, const WeighedWords& right_row, double least,
                              const PassageCosts& costs) {
  const auto left = cut(left_row), right = cut(right_row);
  std::vector<Passage> out;
  Used used{std::vector<bool>(left.words.size()), std::vector<bool>(right.words.size())};
  while (out.size() < most_passages && pair_left(left, right, used)) {
    Passage next = best_passage(left, right, costs, used.left, used.right);
    if (next.pairs.empty() || next.score < least) break;
    for (auto i = next.pairs.front().first; i <= next.pairs.back().first; ++i) used.left[i] = true;
    for (auto j = next.pairs.front().second; j <= next.pairs.back().second; ++j) used.right[j] = true;
    out.push_back(std::move(next));
  }
  return out;
}

}  // namespace gallipot
