// Values as compact bytes, and back: varints, length-prefixed strings, lists. What is written and read is laid down by
// whoever uses it (codec.cc, statements.cc).
#pragma once

#include <algorithm>
#include <bit>
#include <cmath>
#include <concepts>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace gallipot::bytes {

template <typename T>
concept Enumeration = std::is_enum_v<T>;

inline std::uint64_t zigzag(std::int64_t v) {
  return (static_cast<std::uint64_t>(v) << 1) ^ static_cast<std::uint64_t>(v >> 63);
}
inline std::int64_t unzigzag(std::uint64_t v) {
  return static_cast<std::int64_t>(v >> 1) ^ -static_cast<std::int64_t>(v & 1);
}

/// How a real number is written: most printed numbers are small and whole, or exact in single precision (halves,
/// quarters), and then need not take eight bytes.
enum class Real : std::uint8_t { whole, single, full };

/// A share of one, as it is kept: what lies outside 0..1 is brought inside.
inline std::uint64_t in_ten_thousandths(double v) {
  return v > 0 ? static_cast<std::uint64_t>(std::lround(std::fmin(v, 1) * 10'000)) : 0;
}

class Writer {
 public:
  std::string bytes;

  void number(std::uint64_t v) {
    for (; v >= 0x80; v >>= 7) bytes += static_cast<char>(v | 0x80);
    bytes += static_cast<char>(v);
  }
  void operator()(const std::string& s) {
    number(s.size());
    bytes += s;
  }
  void operator()(const bool& b) { bytes += b ? '\1' : '\0'; }
  template <std::unsigned_integral T>
  requires(!std::same_as<T, bool>) void operator()(const T& v) { number(v); }
  void operator()(const int& v) { number(zigzag(v)); }
  template <Enumeration E>
  void operator()(const E& v, E /*last*/) {
    bytes += static_cast<char>(v);
  }
  void operator()(const double& v) {
    if (v >= 0 && v < 1e15 && std::trunc(v) == v && !std::signbit(v)) {
      bytes += static_cast<char>(Real::whole);
      number(static_cast<std::uint64_t>(v));
    } else if (std::isfinite(v) && std::fabs(v) < 1e30 && static_cast<double>(static_cast<float>(v)) == v) {
      bytes += static_cast<char>(Real::single);
      raw(std::bit_cast<std::uint32_t>(static_cast<float>(v)));
    } else {
      bytes += static_cast<char>(Real::full);
      raw(std::bit_cast<std::uint64_t>(v));
    }
  }
  void share(const double& v) { number(in_ten_thousandths(v)); }
  /// A number near to the last one of its kind: the difference is written.
  void near(const std::uint32_t& v, std::uint32_t& last) {
    number(zigzag(static_cast<std::int64_t>(v) - static_cast<std::int64_t>(last)));
    last = v;
  }
  template <typename T, typename Each>
  void list(const std::vector<T>& items, Each each) {
    number(items.size());
    for (const T& item : items) each(item);
  }
  template <typename T, typename Each>
  void maybe(const std::optional<T>& item, Each each) {
    (*this)(item.has_value());
    if (item) each(*item);
  }
  std::uint32_t span_at = 0;  ///< where the span before began

 private:
  template <typename T>
  void raw(T v) {
    for (std::size_t i = 0; i < sizeof v; ++i, v = static_cast<T>(v >> 8)) bytes += static_cast<char>(v & 0xFF);
  }
};

/// Reads what Writer wrote. Once anything is wrong `broken` is set and all further reads give zeros; no read goes past
/// the end, and no list is made longer than the bytes that are left could fill.
class Reader {
 public:
  explicit Reader(std::string_view bytes) : rest_(bytes) {}
  bool broken() const { return broken_; }
  bool at_end() const { return rest_.empty(); }

  std::uint64_t number() {
    std::uint64_t v = 0;
    for (unsigned shift = 0; shift < 64; shift += 7) {
      const std::uint8_t b = byte();
      v |= static_cast<std::uint64_t>(b & 0x7F) << shift;
      if (!(b & 0x80)) return v;
    }
    broken_ = true;
    return 0;
  }
  void operator()(std::string& s) { s = text(); }
  void operator()(bool& b) {
    const auto v = byte();
    if (v > 1) broken_ = true;
    b = v == 1;
  }
  template <std::unsigned_integral T>
  requires(!std::same_as<T, bool>) void operator()(T& v) {
    const auto n = number();
    v = static_cast<T>(n);
    if (v != n) broken_ = true;
  }
  void operator()(int& v) {
    const auto n = unzigzag(number());
    v = static_cast<int>(n);
    if (v != n) broken_ = true;
  }
  template <Enumeration E>
  void operator()(E& v, E last) {
    const auto n = byte();
    if (n > static_cast<std::uint8_t>(last)) broken_ = true;
    v = broken_ ? E{} : static_cast<E>(n);
  }
  void operator()(double& v) {
    switch (static_cast<Real>(byte())) {
      case Real::whole:
        v = static_cast<double>(number());
        return;
      case Real::single:
        v = static_cast<double>(std::bit_cast<float>(raw<std::uint32_t>()));
        return;
      case Real::full:
        v = std::bit_cast<double>(raw<std::uint64_t>());
        return;
    }
    broken_ = true;
    v = 0;
  }
  void share(double& v) {
    const auto n = number();
    if (n > 10'000) broken_ = true;
    v = static_cast<double>(n) / 10'000;
  }
  void near(std::uint32_t& v, std::uint32_t& last) {
    const auto n =
        static_cast<std::int64_t>(static_cast<std::uint64_t>(last) + static_cast<std::uint64_t>(unzigzag(number())));
    v = static_cast<std::uint32_t>(n);
    if (v != n) broken_ = true;
    last = v;
  }
  template <typename T, typename Each>
  void list(std::vector<T>& items, Each each) {
    const auto n = number();
    if (n > rest_.size()) broken_ = true;  // every item takes a byte at the least
    if (broken_) return;
    items.clear();
    items.reserve(std::min<std::size_t>(n, 4096));
    for (std::uint64_t i = 0; i < n && !broken_; ++i) each(items.emplace_back());
  }
  template <typename T, typename Each>
  void maybe(std::optional<T>& item, Each each) {
    bool there = false;
    (*this)(there);
    if (there) each(item.emplace());
  }
  std::string_view text() {
    const auto n = number();
    if (n > rest_.size()) broken_ = true;
    if (broken_) return {};
    const auto s = rest_.substr(0, n);
    rest_.remove_prefix(n);
    return s;
  }
  std::uint32_t span_at = 0;

 private:
  std::uint8_t byte() {
    if (rest_.empty()) broken_ = true;
    if (broken_) return 0;
    const auto b = static_cast<std::uint8_t>(rest_.front());
    rest_.remove_prefix(1);
    return b;
  }
  template <typename T>
  T raw() {
    T v = 0;
    for (std::size_t i = 0; i < sizeof v; ++i)
      v = static_cast<T>(v | static_cast<T>(static_cast<T>(byte()) << (8 * i)));
    return v;
  }
  std::string_view rest_;
  bool broken_ = false;
};

/// T, const where the archive only reads from it.
template <typename Archive, typename T>
using Of = std::conditional_t<std::same_as<Archive, Writer>, const T, T>;

}  // namespace gallipot::bytes
