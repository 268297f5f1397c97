// Whose footnote is this? Marks met in the text are remembered with the receipt that bears them.
#pragma once

#include <cstddef>
#include <string>
#include <unordered_map>

#include "indexer/reading/block.h"

namespace gallipot {

class NoteMarks {
 public:
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

  /// The block belongs to the receipt with that index (`nowhere`: to none): so do the marks in it.
  void meet(const Block& block, std::size_t recipe);
  /// The receipt whose text bears the mark of this footnote; a note without a mark goes on from the note before it.
  /// `otherwise` where the mark has not been met.
  std::size_t owner(const Block& note, std::size_t otherwise);

 private:
  std::unordered_map<std::string, std::size_t> owner_;
  std::size_t last_ = nowhere;
};

}  // namespace gallipot
