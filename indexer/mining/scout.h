// Where could a statement stand? Goes over a text once, byte by byte, so that the grammar need not be asked about the
// nine hundred and ninety-nine sentences in a thousand that tell nothing of measures.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/text/span.h"

namespace gallipot::mining {

class Scout {
 public:
  explicit Scout(const Lexicon& lexicon);

  /// Stretches of the text, whole sentences, that may hold a statement; in order, not overlapping. Valid until the next
  /// call.
  const std::vector<Span>& windows(std::string_view text);

  /// Whether the text names a measure or a number.
  bool names_measure(std::string_view text);

 private:
  struct Mark {
    std::uint32_t at = 0, end = 0;
    std::uint32_t flags = 0;
  };
  struct Slot {
    std::uint64_t key = 0;  ///< of the lower-case word; 0 is free
    std::uint32_t flags = 0;
  };

  void enter_measure(std::string_view name, std::string_view kind);
  void enter(std::string_view word, std::uint32_t flags);
  std::uint32_t flags_of(std::uint64_t key) const;
  void find_marks(std::string_view text);
  bool ties_measures(std::size_t i) const;
  std::size_t told_with(std::size_t i) const;
  bool measure_before(std::size_t i, std::uint32_t within) const;
  bool amount_after(std::size_t i, std::uint32_t to_number, std::uint32_t to_measure) const;
  bool renamed_after(std::size_t i) const;
  std::size_t partner(std::size_t i, std::uint32_t flags, std::uint32_t within) const;
  void add_window(std::string_view text, std::uint32_t begin, std::uint32_t end);

  std::vector<Slot> slots_;
  std::vector<Mark> marks_;
  std::vector<Span> windows_;
};

}  // namespace gallipot::mining
