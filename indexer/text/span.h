// A span says where in a text something stands. Every value read from print carries one.
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot {

/// Half-open range of byte offsets [begin, end) into a UTF-8 text that the owner of the span names.
struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  bool empty() const { return begin >= end; }
  std::uint32_t size() const { return empty() ? 0 : end - begin; }
  bool overlaps(Span o) const { return begin < o.end && o.begin < end; }
  std::string_view in(std::string_view text) const {
    return begin <= text.size() ? text.substr(begin, size()) : std::string_view{};
  }
  friend bool operator==(const Span&, const Span&) = default;
};

}  // namespace gallipot
