// How are the letters at the head of a block set? A style for every byte, so that stretches can be weighed.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "indexer/reading/block.h"
#include "indexer/segmenting/opening.h"

namespace gallipot {

/// The settings of the first bytes of one block's text. The block must outlive it.
class Marking {
 public:
  static constexpr std::uint32_t reach = 320;  ///< bytes looked at; no title is longer

  explicit Marking(const Block& block);

  /// How [begin, end) is set; `plain` unless seven letters in ten share a setting or are set in some way.
  Setting setting(Span span) const;
  /// End of the marked stretch that begins at `from`: up to the first unmarked letter.
  std::uint32_t marked_until(std::uint32_t from) const;
  std::uint32_t size() const { return size_; }

 private:
  void mark_capitals(std::string_view text);

  std::string_view text_;
  std::array<std::uint8_t, reach> bits_{};  ///< Run styles used here, packed
  std::uint32_t size_ = 0;
};

}  // namespace gallipot
