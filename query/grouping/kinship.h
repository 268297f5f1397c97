// Does one text draw on another, and how much of it? Judged from the passages that both share.
#pragma once

#include <string>
#include <vector>

#include "indexer/fault/fault.h"
#include "query/grouping/passages.h"
#include "query/grouping/word_row.h"

namespace gallipot {

/// A text made ready to be set beside others.
struct KinText {
  std::string id, book;
  WordRow row;
  std::vector<std::uint32_t> title;      ///< telling words of its title, sorted, each once
  std::vector<std::string> title_stems;  ///< under which the index keeps it; only of a text asked for
  /// What a word counts, 0..1: less in a run of words that stands in many recipes of the shelf (a formula of the
  /// author's or of the trade). One a word of `row`; empty where
  /// all count in full.
  std::vector<float> worth;
};

/// The signs by which kinship is judged.
struct KinSigns {
  double share = 0;     ///< 0..1: telling words in shared passages over those of the shorter text
  double evidence = 0;  ///< logarithm of 1 + what the shared passages tell
  double title = 0;     ///< 0..1: telling words of the shorter title that the other has
};

struct Kinship {
  std::vector<Passage> passages;  ///< left: the first text, right: the second; best first
  double of_first = 0;            ///< share of the first text's words that stand in passages
  double of_second = 0;           ///< and of the second's
  double telling_of_first = 0;    ///< the same by what the words tell and are worth
  double telling_of_second = 0;
  KinSigns signs;
  double likelihood = 0;  ///< 0..1: that one draws on the other, or both on a third
  bool tied() const { return likelihood >= 0.5; }
  /// Nearly all of the shorter text stands in the other, most of it in one passage.
  bool copy = false;
};

/// Weights of the model: kinship.tsv. The likelihood is 1 / (1 + exp(-(offset + sum of weight times sign))).
struct KinWeights {
  double share = 0, evidence = 0, title = 0, offset = 0;
  double likelihood(const KinSigns& signs) const;
};
/// Faults name the file and line.
Outcome<KinWeights> load_kin_weights(const std::string& overlay_folder = {});
/// The built-in weights, loaded once.
const KinWeights& built_in_kin_weights();

/// The strongest signs that `kinship_of` could find, by the words alone and in any order: cheap, and no alignment can
/// beat them.
KinSigns most_in_common(const KinText& first, const KinText& second);

/// Sets two texts side by side. `explained`: words of the second that a better source accounts for; they count a
/// tenth. Empty: none is.
Kinship kinship_of(const KinText& first, const KinText& second, const std::vector<bool>& explained = {},
                   const KinWeights& weights = built_in_kin_weights());

}  // namespace gallipot
