// Needleman-Wunsch for two rows, then progressive alignment for many.
#include "query/comparing/alignment.h"

#include <algorithm>
#include <numeric>

namespace gallipot {
namespace {

using Column = std::vector<std::optional<std::size_t>>;  // one position a row

double scored(double likeness, const AlignmentCosts& costs) {
  return likeness > 0 ? costs.like * likeness : costs.unlike;
}

/// The columns with row `added` aligned against them.
std::vector<Column> with_row(const std::vector<Column>& columns, std::size_t rows, std::size_t added,
                             std::size_t length,
                             const std::function<double(std::size_t, std::size_t, std::size_t, std::size_t)>& likeness,
                             const AlignmentCosts& costs) {
  const auto against = [&](std::size_t c, std::size_t j) {
    double best = 0, total = 0;
    std::size_t filled = 0;
    for (std::size_t row = 0; row < columns[c].size(); ++row) {
      if (!columns[c][row]) continue;
      const double like = likeness(row, *columns[c][row], added, j);
      best = std::max(best, like);
      total += like;
      ++filled;
    }
    // A column that many share draws more than one that a single witness has.
    const double weight = 1 + 0.1 * static_cast<double>(filled - 1);
    return best > 0 ? scored(total / static_cast<double>(filled), costs) * weight : costs.unlike;
  };
  const Aligned aligned = align(columns.size(), length, against, costs.gap);
  std::vector<Column> out;
  out.reserve(aligned.pairs.size());
  for (const Pairing& pair : aligned.pairs) {
    Column column = pair.left ? columns[*pair.left] : Column(rows);
    column[added] = pair.right;
    out.push_back(std::move(column));
  }
  return out;
}

/// The columns without a row; those that only it had are gone.
std::vector<Column> without_row(std::vector<Column> columns, std::size_t row) {
  for (Column& column : columns) column[row].reset();
  std::erase_if(columns, [](const Column& column) {
    return std::none_of(column.begin(), column.end(), [](const auto& cell) { return cell.has_value(); });
  });
  return columns;
}

}  // namespace

Aligned align(std::size_t left, std::size_t right, const std::function<double(std::size_t, std::size_t)>& score,
              double gap) {
  enum class Step : unsigned char { pair, left_alone, right_alone };
  const std::size_t width = right + 1;
  std::vector<double> best((left + 1) * width, 0);
  std::vector<Step> step((left + 1) * width, Step::pair);
  for (std::size_t i = 0; i <= left; ++i) {
    for (std::size_t j = 0; j <= right; ++j) {
      if (i == 0 && j == 0) continue;
      const std::size_t at = i * width + j;
      bool open = true;  // nothing chosen yet
      const auto consider = [&](double value, Step how) {
        if (!open && value <= best[at]) return;
        best[at] = value;
        step[at] = how;
        open = false;
      };
      if (i > 0 && j > 0) consider(best[at - width - 1] + score(i - 1, j - 1), Step::pair);
      if (i > 0) consider(best[at - width] + gap, Step::left_alone);
      if (j > 0) consider(best[at - 1] + gap, Step::right_alone);
    }
  }
  Aligned out;
  out.score = best.back();
  for (std::size_t i = left, j = right; i > 0 || j > 0;) {
    Pairing pair;
    const Step how = step[i * width + j];
    if (how != Step::right_alone) pair.left = --i;
    if (how != Step::left_alone) pair.right = --j;
    out.pairs.push_back(pair);
  }
  std::reverse(out.pairs.begin(), out.pairs.end());
  return out;
}

std::vector<std::vector<std::optional<std::size_t>>> align_all(
    const std::vector<std::size_t>& lengths,
    const std::function<double(std::size_t, std::size_t, std::size_t, std::size_t)>& likeness,
    const AlignmentCosts& costs) {
  const std::size_t rows = lengths.size();
  std::vector<double> nearness(rows * rows, 0);
  for (std::size_t a = 0; a < rows; ++a) {
    for (std::size_t b = a + 1; b < rows; ++b) {
      const auto score = [&](std::size_t i, std::size_t j) { return scored(likeness(a, i, b, j), costs); };
      nearness[a * rows + b] = nearness[b * rows + a] = align(lengths[a], lengths[b], score, costs.gap).score;
    }
  }
  std::size_t centre = 0;
  double nearest = 0;
  for (std::size_t a = 0; a < rows; ++a) {
    const auto begin = nearness.begin() + static_cast<std::ptrdiff_t>(a * rows);
    const double total = std::accumulate(begin, begin + static_cast<std::ptrdiff_t>(rows), 0.0);
    if (a == 0 || total > nearest) {
      nearest = total;
      centre = a;
    }
  }
  std::vector<std::size_t> order(rows);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if ((a == centre) != (b == centre)) return a == centre;
    return nearness[centre * rows + a] > nearness[centre * rows + b];
  });
  std::vector<Column> columns;
  for (const std::size_t row : order) {
    if (columns.empty()) {
      for (std::size_t i = 0; i < lengths[row]; ++i) {
        columns.emplace_back(rows);
        columns.back()[row] = i;
      }
    } else {
      columns = with_row(columns, rows, row, lengths[row], likeness, costs);
    }
  }
  for (unsigned round = 0; round < costs.rounds && rows > 2; ++round)
    for (const std::size_t row : order)
      columns = with_row(without_row(std::move(columns), row), rows, row, lengths[row], likeness, costs);
  return columns;
}

}  // namespace gallipot
