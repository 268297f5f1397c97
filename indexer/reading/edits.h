// Changes to a block's text after it has been set, with everything that points into it moved along. For the
// readers and for indexer/mending.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/reading/draft.h"

namespace gallipot {

struct Edit {
  std::uint32_t at = 0;     ///< byte offset in the text as it is before any of the edits
  std::uint32_t erase = 0;  ///< bytes taken out from there
  std::string insert;       ///< put in their place
};

/// The moves that a list of edits makes. The edits are ordered and do not overlap; they must outlive the map.
class EditMap {
 public:
  explicit EditMap(const std::vector<Edit>& edits);
  /// The new offset of what begins at old offset `at`: behind what is put in there, before what replaces it. Inside an
  /// erased stretch that is the stretch's place.
  std::uint32_t moved(std::uint32_t at) const;
  /// The new offset of what ends at old offset `at`: before what is put in there.
  std::uint32_t moved_end(std::uint32_t at) const;

 private:
  std::uint32_t moved_past(std::size_t edits, std::uint32_t at) const;

  const std::vector<Edit>& edits_;
  std::vector<std::int64_t> shifts_;  ///< of all edits before each, and of all
};

/// Applies ordered edits to the text and moves runs, cells, lines and pages of the block. White space left doubled or
/// at the ends goes too: the answer is the edits that did that, for what else points into the text. Runs left empty go.
std::vector<Edit> apply_edits(const std::vector<Edit>& edits, Block& block);

/// The same, with the marks and seams of the draft that lie in block `index` moved as well.
std::vector<Edit> apply_edits(const std::vector<Edit>& edits, Draft& draft, std::uint32_t index);

}  // namespace gallipot
