// Which blocks stand in a table of measures, and what does the table's head say for its rows?
#pragma once

#include <string>
#include <vector>

#include "indexer/mining/equalities.h"
#include "indexer/mining/scout.h"
#include "indexer/reading/block.h"

namespace gallipot::mining {

/// Goes along the blocks of a book in order: for each `enter`, then `leave`.
class Tables {
 public:
  explicit Tables(Sizes& sizes) : sizes_(sizes) {}

  /// Whether the block is to be read as part of a table of measures: it stands under a head that says so ("Weights and
  /// Measures"), or after rows that have proved to be one.
  bool enter(const Block& block);
  /// `told`: the block held a statement.
  void leave(const Block& block, bool told);

  /// The words of a row in one line: cells parted by spaces, ditto marks replaced by what they stand for. Where a cell
  /// holds several lines that one brace ties to the next cell, a row for each of them.
  std::vector<std::string> plain(const Block& block);

  /// Statements of a row that names a stuff and a number only, the measure and the unit being told by the table's head
  /// ("pounds to the bushel") or by the first row.
  std::vector<Told> listed(const Passage& passage);

  /// What a row with measure and unit tells of the rows beneath it, which may say only the number.
  void learn(const Block& block, const std::vector<Told>& told);

 private:
  void note_head(const std::string& text);

  Sizes& sizes_;
  int warm_ = 0;                      ///< how many blocks more may belong to the table
  std::string of_each_, counted_in_;  ///< "bushel", "pound": what the rows' numbers are for and in
  std::vector<std::string> above_;    ///< the cells of the row above
};

}  // namespace gallipot::mining
