// A printed number, or two: "two or three".
#pragma once

namespace gallipot {

/// A closed range of printed numbers; low == high for a plain number.
struct Range {
  double low = 0;
  double high = 0;
  friend bool operator==(const Range&, const Range&) = default;
};

}  // namespace gallipot
