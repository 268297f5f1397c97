// Which stretches of one text stand in another, word for word or nearly so?
#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace gallipot {

/// What a local alignment pays for words that differ and for words that one of the two lacks. A pair of equal words
/// earns the weight of the word.
struct PassageCosts {
  float unlike = -1.2F;
  float gap = -0.9F;  ///< for each word
};

/// A stretch that two rows share: the places of its equal words in both, in order.
struct Passage {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> pairs;
  double score = 0;
};

/// A row of words with a weight each; both spans have one length.
struct WeighedWords {
  std::span<const std::uint32_t> words;
  std::span<const float> weights;
};

/// The best local alignment of two rows: Smith and Waterman 1981, Journal of Molecular Biology 147, with a gap that
/// costs the same for each word. `left_used` and `right_used` mark words that it may not touch; empty: none. Of equal
/// alignments the one that ends first in `left`, then in `right`, is taken. No pairs where no word is shared.
Passage best_passage(const WeighedWords& left, const WeighedWords& right, const PassageCosts& costs = {},
                     const std::vector<bool>& left_used = {}, const std::vector<bool>& right_used = {});

/// All passages that score `least` or more, best first; no word stands in two of them (Waterman and Eggert 1987,
/// Journal of Molecular Biology 197: the best is taken out and the rest aligned again). So a sentence that was moved is
/// a passage of its own. Rows are read up to `longest_aligned` words.
std::vector<Passage> passages(const WeighedWords& left, const WeighedWords& right, double least,
                              const PassageCosts& costs = {});

inline constexpr std::size_t longest_aligned = 4000;

}  // namespace gallipot
