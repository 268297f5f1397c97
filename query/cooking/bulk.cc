// Asks the register with today's measures.
#include "query/cooking/bulk.h"

#include "indexer/measures/amount.h"

namespace gallipot {
namespace {

constexpr int today = 2000;  // any year of modern measures

std::optional<Amount> asked(const Yardstick& yardstick, std::string_view measure, const std::string& of) {
  Measured one;
  one.measure = measure;
  one.of = of;
  one.year = today;
  one.country = "US";
  return yardstick.weigh(one);
}

/// Grams a millilitre that a stuff takes up once it is in the pot.
struct Taken {
  double low, likely, high;
};

Taken taken_by(const std::string& kind) {
  if (kind == "sweet") return {1.35, 1.5, 1.6};  // sugar dissolved: 1.59 g/ml as crystal (CRC Handbook), from memory
  if (kind == "fat") return {0.88, 0.91, 0.95};
  if (kind == "grain") return {1.1, 1.35, 1.5};
  return {0.9, 1.0, 1.1};
}

}  // namespace

std::optional<Amount> density_of(const std::string& name, const Yardstick& yardstick) {
  const auto litre = asked(yardstick, "litre", name);
  if (!litre || litre->unit != Amount::Unit::gram || litre->low <= 0) return std::nullopt;
  return times(*litre, 0.001);
}

std::optional<Amount> piece_of(const std::string& name, const Yardstick& yardstick) {
  auto one = asked(yardstick, "", name);
  if (!one || one->unit != Amount::Unit::gram || one->low <= 0) return std::nullopt;
  return one;
}

std::optional<Amount> in_grams(const std::string& name, const Amount& amount, const Yardstick& yardstick) {
  if (amount.unit == Amount::Unit::gram) return amount;
  if (amount.unit == Amount::Unit::count) {
    const auto one = piece_of(name, yardstick);
    if (!one) return std::nullopt;
    Amount out = chained(amount, *one);
    out.unit = Amount::Unit::gram;
    return out;
  }
  if (const auto density = density_of(name, yardstick)) {
    Amount out = chained(amount, *density);
    out.unit = Amount::Unit::gram;
    return out;
  }
  return Amount{Amount::Unit::gram, amount.low * 0.95, amount.likely, amount.high * 1.05, amount.why};
}

std::optional<Amount> in_millilitres(const std::string& name, const std::string& kind, const Amount& amount,
                                     const Yardstick& yardstick) {
  if (amount.unit == Amount::Unit::millilitre) return amount;
  const auto grams = in_grams(name, amount, yardstick);
  if (!grams) return std::nullopt;
  const Taken taken = taken_by(kind);
  return Amount{Amount::Unit::millilitre, grams->low / taken.high, grams->likely / taken.likely,
                grams->high / taken.low, grams->why};
}

}  // namespace gallipot
