// Changes to a block's text after it has been set, with everything that points into it moved along. Internal to the
// room.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/reading/draft.h"

namespace gallipot {

struct Edit {
  std::uint32_t at = 0;       ///< byte offset in the text as it is before any of the edits
  std::uint32_t erase = 0;    ///< bytes taken out from there
  std::string insert;         ///< put in their place
};

/// The moves that a list of edits makes. The edits are ordered and do not overlap.
class EditMap {
 public:
  explicit EditMap(const std::vector<Edit>& edits) : edits_(edits) {}
  /// The new offset of old offset `at`; inside an erased stretch that is the stretch's place.
  std::uint32_t moved(std::uint32_t at) const;

 private:
  const std::vector<Edit>& edits_;
};

/// Applies ordered edits to the text and moves runs, cells, lines and pages of the block. Runs left empty go.
void apply_edits(const std::vector<Edit>& edits, Block& block);

/// The same, with the marks and seams of the draft that lie in block `index`.
void apply_edits(const std::vector<Edit>& edits, Draft& draft, std::uint32_t index);

}  // namespace gallipot
