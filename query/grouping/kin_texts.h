// Which recipes might a recipe's text be kin to, and their texts made ready? Candidates come from the index by one
// query, so that they come from other machines' shards too.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "indexer/storing/shelf.h"
#include "query/grouping/kinship.h"

namespace gallipot {

/// Reads recipes and makes their texts ready, each once. Keep one for an answer; the shelf and the lexicon must outlive
/// it. Throws Xapian::Error where the database is damaged.
class KinTexts {
 public:
  KinTexts(const Shelf& shelf, const Lexicon& lexicon) : shelf_(shelf), rows_(shelf, lexicon) {}

  /// The text of a stored recipe, to be set beside one asked for: every word counts in full. Nothing where it cannot be
  /// read.
  std::shared_ptr<const KinText> of(Xapian::docid docid);
  /// The text of a recipe that is asked for: runs of words that are common on the shelf count for less.
  KinText asked(const ComparableRecipe& recipe);

  /// Documents that share kept shingles or the telling words of the title with `text`, likest first, at most `most`.
  /// `only_book`: none but that book's; empty: any but the text's own. The text itself is never among them.
  std::vector<Xapian::docid> candidates(const KinText& text, std::size_t most, const std::string& only_book = {});

  const Shelf& shelf() const { return shelf_; }

 private:
  KinText plain(const ComparableRecipe& recipe);
  void weigh(KinText& text);
  std::size_t frequency(std::uint64_t shingle);
  double rarity(std::size_t frequency) const;

  const Shelf& shelf_;
  WordRows rows_;
  std::unordered_map<Xapian::docid, std::shared_ptr<const KinText>> texts_;
  std::unordered_map<std::uint64_t, std::size_t> frequencies_;  ///< of kept shingles, in recipes
};

}  // namespace gallipot
