// Which step of one method answers to which of another? Rows of operations laid under one another, order kept.
#pragma once

#include <functional>
#include <optional>
#include <vector>

namespace gallipot {

/// What an alignment scores. `likeness` is 0..1 for an element of the one and of the other.
struct AlignmentCosts {
  double like = 2;      ///< times likeness, for two elements set against one another
  double unlike = -3;   ///< two that have nothing in common: dearer than two gaps, so they are never set together
  double gap = -0.5;    ///< an element of one that has no answer in the other
  unsigned rounds = 2;  ///< so often each row is taken out again and laid against all others
};

/// One column pair of a pairwise alignment: positions in the one and the other; none is a gap.
struct Pairing {
  std::optional<std::size_t> left, right;
};

struct Aligned {
  std::vector<Pairing> pairs;
  double score = 0;
};

/// Global alignment of a row of `left` elements with one of `right`, `score(i, j)` for setting i against j.
/// Source: Needleman and Wunsch 1970, Journal of Molecular Biology 48. Of equal alignments the one that pairs is taken,
/// then the one that leaves the left element alone.
Aligned align(std::size_t left, std::size_t right, const std::function<double(std::size_t, std::size_t)>& score,
              double gap);

/// Progressive alignment of many rows: the row most like all others first (centre), then the rest from the likest to
/// the least, each against the columns so far; then, `rounds` times, each row is taken out and laid anew against the
/// rest, which mends what the order of coming in spoilt. The answer is columns; each has one position (or none) a row,
/// in the order of `lengths`. `likeness(a, i, b, j)` is that of element i of row a and j of row b. Source: Feng and
/// Doolittle 1987, Journal of Molecular Evolution 25; the rounds: Barton and Sternberg 1987, Journal of Molecular
/// Biology 198.
std::vector<std::vector<std::optional<std::size_t>>> align_all(
    const std::vector<std::size_t>& lengths,
    const std::function<double(std::size_t, std::size_t, std::size_t, std::size_t)>& likeness,
    const AlignmentCosts& costs = {});

}  // namespace gallipot
