// Arithmetic on amounts: whatever the numbers, the truth stays inside and a wider reading stays wider.
#include "indexer/measures/amount.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace gallipot {
namespace {

constexpr int trials = 20'000;

class Random {
 public:
  double real(double from, double to) { return std::uniform_real_distribution<double>(from, to)(engine_); }
  std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(engine_); }
  Extent extent() {
    double a = real(0.01, 100), b = real(0.01, 100);
    if (a > b) std::swap(a, b);
    return {a, real(a, b), b};
  }
  double in(const Extent& e) { return real(e.low, e.high); }
  Amount amount(Amount::Unit unit) {
    const Extent e = extent();
    return {unit, e.low, e.likely, e.high, "x"};
  }

 private:
  std::mt19937 engine_{20261125};
};

Extent wider(const Extent& e, Random& random) {
  return {e.low * random.real(0.3, 1), e.likely, e.high * random.real(1, 3)};
}

bool in_order(const Extent& e) { return e.low <= e.likely && e.likely <= e.high; }

bool holds(const Extent& e, double v) { return e.low <= v * (1 + 1e-9) && v <= e.high * (1 + 1e-9); }

bool holds(const Extent& outer, const Extent& inner) { return holds(outer, inner.low) && holds(outer, inner.high); }

TEST(Amounts, TheTruthStaysInside) {
  Random random;
  for (int i = 0; i < trials; ++i) {
    const Extent a = random.extent(), b = random.extent();
    const double x = random.in(a), y = random.in(b);
    ASSERT_TRUE(holds(sum(a, b), x + y));
    ASSERT_TRUE(holds(product(a, b), x * y));
    ASSERT_TRUE(holds(quotient(a, b), x / y));
    ASSERT_TRUE(holds(hull(a, b), x));
    ASSERT_TRUE(holds(hull(a, b), y));
    for (const Extent& e : {sum(a, b), product(a, b), quotient(a, b)}) ASSERT_TRUE(in_order(e));
  }
}

TEST(Amounts, AWiderReadingIsNeverNarrower) {
  Random random;
  for (int i = 0; i < trials; ++i) {
    const Extent a = random.extent(), b = random.extent(), wide_a = wider(a, random), wide_b = wider(b, random);
    ASSERT_TRUE(holds(sum(wide_a, wide_b), sum(a, b)));
    ASSERT_TRUE(holds(product(wide_a, wide_b), product(a, b)));
    ASSERT_TRUE(holds(quotient(wide_a, wide_b), quotient(a, b)));
    ASSERT_TRUE(holds(hull(wide_a, wide_b), hull(a, b)));
  }
}

// A true volume and a true density are carried through a random chain of conversions, sums, scalings and ratios; the
// interval that goes the same way holds what came of them.
TEST(Amounts, ChainsOfConversionsContainTheTruth) {
  Random random;
  for (int i = 0; i < trials; ++i) {
    const Extent density = random.extent();
    const double true_density = random.in(density);
    Amount amount = random.amount(Amount::Unit::millilitre);
    double truth = random.in(amount.extent());
    for (int step = 0; step < 8; ++step) {
      switch (random.below(4)) {
        case 0: {
          const bool volume = amount.unit == Amount::Unit::millilitre;
          truth = volume ? truth * true_density : truth / true_density;
          amount = volume ? in_grams(amount, density) : in_millilitres(amount, density);
          break;
        }
        case 1: {
          const Amount more = random.amount(amount.unit);
          truth += random.in(more.extent());
          amount = sum(amount, more);
          break;
        }
        case 2: {
          const double factor = random.real(0.1, 10);
          truth *= factor;
          amount = times(amount, factor);
          break;
        }
        default: {
          const Amount whole = random.amount(Amount::Unit::gram);
          truth = truth / random.in(whole.extent()) * 1000;
          amount = ratio(amount, whole, 1000);
        }
      }
      ASSERT_TRUE(in_order(amount.extent()));
      ASSERT_TRUE(holds(amount.extent(), truth)) << "step " << step << " of trial " << i;
    }
  }
}

TEST(Amounts, ConversionsThatMakeNoSenseChangeNothing) {
  const Amount counted{Amount::Unit::count, 2, 2, 3, "onions"};
  EXPECT_EQ(in_grams(counted, {1, 1, 1}).unit, Amount::Unit::count);
  EXPECT_EQ(in_millilitres(counted, {1, 1, 1}).high, 3);
  const Amount weighed{Amount::Unit::gram, 2, 2, 3, ""};
  EXPECT_EQ(in_grams(weighed, {0.5, 0.5, 0.5}).low, 2);
}

TEST(Amounts, ReasonsAreKeptOnce) {
  const Amount a{Amount::Unit::gram, 1, 1, 1, "pound"}, b{Amount::Unit::gram, 1, 1, 1, "ounce"};
  EXPECT_EQ(sum(a, a).why, "pound");
  EXPECT_EQ(sum(a, b).why, "pound; ounce");
}

}  // namespace
}  // namespace gallipot
