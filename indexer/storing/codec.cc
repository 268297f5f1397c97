// Recipes as bytes. Each struct lists its fields once, in `fields`; writing and reading both walk that list, so that
// the two cannot drift apart. Anything that adds, drops or reorders a field must raise schema::version.
#include "indexer/storing/codec.h"

#include <bit>
#include <cmath>
#include <concepts>
#include <cstring>
#include <type_traits>

namespace gallipot {
namespace {

template <typename T>
concept Enumeration = std::is_enum_v<T>;

std::uint64_t zigzag(std::int64_t v) {
  return (static_cast<std::uint64_t>(v) << 1) ^ static_cast<std::uint64_t>(v >> 63);
}
std::int64_t unzigzag(std::uint64_t v) { return static_cast<std::int64_t>(v >> 1) ^ -static_cast<std::int64_t>(v & 1); }

/// How a real number is written: most printed numbers are small and whole, or exact in single precision (halves,
/// quarters), and then need not take eight bytes.
enum class Real : std::uint8_t { whole, single, full };

/// A share of one, as it is kept: what lies outside 0..1 is brought inside.
std::uint64_t in_ten_thousandths(double v) {
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

template <typename A>
void fields(A& a, Of<A, Span>& s) {
  a.near(s.begin, a.span_at);
  std::uint32_t from = s.begin;
  a.near(s.end, from);
}

template <typename A>
void fields(A& a, Of<A, Range>& r) {
  a(r.low);
  a(r.high);
}

template <typename A>
void fields(A& a, Of<A, Relative>& r) {
  a(r.factor);
  a(r.to);
  a(r.by, Relative::By::measure);
}

template <typename A>
void fields(A& a, Of<A, PerUnit>& p) {
  a(p.quantity);
  a(p.measure);
  a(p.of);
}

template <typename A>
void fields(A& a, Of<A, Amount>& m) {
  a(m.unit, Amount::Unit::count);
  a(m.low);
  a(m.likely);
  a(m.high);
  a(m.why);
}

template <typename A>
void fields(A& a, Of<A, Ingredient>& i) {
  fields(a, i.span);
  fields(a, i.name_span);
  a(i.name);
  a.maybe(i.quantity, [&](auto& r) { fields(a, r); });
  fields(a, i.quantity_span);
  a(i.measure);
  fields(a, i.measure_span);
  a(i.measure_note);
  a.maybe(i.relative, [&](auto& r) { fields(a, r); });
  a.maybe(i.per, [&](auto& p) { fields(a, p); });
  a(i.optional);
  a(i.alternative_of);
  a.share(i.confidence);
}

template <typename A>
void fields(A& a, Of<A, ComparableIngredient>& i) {
  fields(a, i.printed);
  a(i.kind);
  a.maybe(i.metric, [&](auto& m) { fields(a, m); });
}

template <typename A>
void fields(A& a, Of<A, Step>& s) {
  a(s.op);
  a.maybe(s.minutes, [&](auto& r) { fields(a, r); });
  fields(a, s.span);
}

template <typename A>
void fields(A& a, Of<A, Part>& p) {
  a(p.kind, Part::Kind::subtitle);
  fields(a, p.span);
}

template <typename A>
void fields(A& a, Of<A, Recipe>& r) {
  a(r.ordinal);
  a(r.title);
  a(r.title_printed);
  a(r.dish_title);
  a(r.chapter);
  a(r.number);
  a(r.text);
  a.list(r.parts, [&](auto& p) { fields(a, p); });
  a(r.contributor);
  a(r.page);
  a(r.page_end);
  a(r.line_start);
  std::uint32_t line = r.line_start;
  a.near(r.line_end, line);
  line = r.line_start;
  std::uint32_t at = 0;
  a.list(r.lines, [&](auto& l) {
    a.near(l.at, at);
    a.near(l.line, line);
  });
  at = 0;
  a.list(r.pages, [&](auto& p) {
    a.near(p.at, at);
    a(p.page);
  });
  a.list(r.mends, [&](auto& m) {
    fields(a, m.span);
    a(m.printed);
    a(m.read);
  });
  a(r.title_stands);
  a(r.image);
  a.share(r.confidence);
  a(r.doubt);
}

template <typename A>
void fields(A& a, Of<A, ComparableRecipe>& r) {
  a(r.id);  // first, so that recipe_id_in need not decode the rest
  a(r.book);
  a(r.book_order);
  a(r.year);
  a(r.country);
  a(r.file);
  fields(a, r.recipe);
  a(r.dish.base);
  a(r.dish.kind);
  a.list(r.ingredients, [&](auto& i) { fields(a, i); });
  a.list(r.steps, [&](auto& s) { fields(a, s); });
  a.list(r.cautions, [&](auto& c) { a(c); });
}

}  // namespace

std::string encode(const ComparableRecipe& recipe) {
  Writer writer;
  writer.bytes.reserve(recipe.recipe.text.size() + 1024);
  fields(writer, recipe);
  return std::move(writer.bytes);
}

Outcome<ComparableRecipe> decode_recipe(std::string_view bytes) {
  Reader reader(bytes);
  ComparableRecipe recipe;
  fields(reader, recipe);
  if (reader.broken())
    return fault("the index is damaged: a stored recipe is cut short or garbled", "index the books again");
  if (!reader.at_end()) return fault("the index is damaged: a stored recipe is too long", "index the books again");
  return recipe;
}

std::string_view recipe_id_in(std::string_view bytes) { return Reader(bytes).text(); }

}  // namespace gallipot
