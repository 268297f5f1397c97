// The register against published standards: the figures of NIST Handbook 44, Appendix C (General Tables of Units of
// Measurement), and of the statutes that fixed the English measures.
#include <gtest/gtest.h>

#include "indexer/measures/register.h"

namespace gallipot {
namespace {

Amount one(std::string_view measure, std::string_view of, int year, std::string_view country) {
  static const auto loaded = Register::load();
  Measured m;
  m.measure = measure;
  m.of = of;
  m.year = year;
  m.country = country;
  const auto a = (*loaded)->amount(m);
  EXPECT_TRUE(a.has_value()) << measure;
  return a.value_or(Amount{});
}

constexpr double cubic_inch = 16.387064;  // ml; NIST Handbook 44, Appendix C

struct Standard {
  const char *measure, *of;
  int year;
  const char* country;
  double value;  ///< g or ml
};

class PublishedMeasure : public testing::TestWithParam<Standard> {};

TEST_P(PublishedMeasure, IsTheStandard) {
  const Standard& s = GetParam();
  EXPECT_NEAR(one(s.measure, s.of, s.year, s.country).likely, s.value, s.value * 1e-5) << s.measure;
}

INSTANTIATE_TEST_SUITE_P(
    Handbook44, PublishedMeasure,
    testing::Values(
        Standard{"pound", "", 1900, "US", 453.59237}, Standard{"ounce", "", 1900, "US", 28.349523125},
        Standard{"grain", "", 1900, "US", 0.06479891}, Standard{"pennyweight", "", 1800, "GB", 1.55517384},
        Standard{"scruple", "", 1800, "GB", 1.2959782}, Standard{"hundredweight", "", 1900, "GB", 50802.34544},
        Standard{"hundredweight", "", 1900, "US", 45359.237}, Standard{"ton", "", 1900, "GB", 1016046.9},
        Standard{"gallon", "water", 1900, "US", 3785.411784}, Standard{"quart", "water", 1900, "US", 946.352946},
        Standard{"pint", "water", 1900, "US", 473.176473}, Standard{"gill", "water", 1900, "US", 118.29411825},
        Standard{"fluid ounce", "water", 1900, "US", 29.5735295625},
        Standard{"fluid drachm", "water", 1900, "US", 3.6966911953}, Standard{"peck", "", 1900, "US", 8809.76754},
        Standard{"bushel", "", 1900, "US", 35239.07017}));

INSTANTIATE_TEST_SUITE_P(
    Statutes, PublishedMeasure,
    testing::Values(Standard{"gallon", "wine", 1750, "GB", 231 * cubic_inch},  // 5 Anne c. 27 (1706)
                    Standard{"gallon", "ale", 1750, "GB", 282 * cubic_inch},   // 12 Charles II c. 23 (1660)
                    Standard{"bushel", "", 1750, "GB", 2150.42 * cubic_inch},  // 13 and 14 William III c. 5 (1701)
                    Standard{"gallon", "wine", 1850, "GB", 4546.09},  // 5 Geo. IV c. 74 (1824): ten pounds of water
                    Standard{"gill", "wine", 1850, "IE", 142.0653125}));

TEST(PublishedMeasures, RatiosAreStatutory) {
  for (const auto& [year, country] :
       {std::pair{1760, "GB"}, std::pair{1860, "GB"}, std::pair{1760, "US"}, std::pair{1900, "US"}}) {
    const auto likely = [&, y = year, c = country](const char* m, const char* of) { return one(m, of, y, c).likely; };
    EXPECT_NEAR(likely("gallon", "wine"), 4 * likely("quart", "wine"), 1e-3);
    EXPECT_NEAR(likely("quart", "wine"), 2 * likely("pint", "wine"), 1e-3);
    EXPECT_NEAR(likely("pint", "wine"), 4 * likely("gill", "wine"), 1e-3);
    EXPECT_NEAR(likely("pound", ""), 16 * likely("ounce", ""), 1e-4);
    EXPECT_NEAR(likely("scruple", ""), 20 * likely("grain", ""), 1e-6);
    EXPECT_NEAR(likely("bushel", ""), 4 * likely("peck", ""), 0.1);
  }
}

TEST(PublishedMeasures, TheImperialGallonIsTenPoundsOfWater) {
  // Weights and Measures Act 1824: ten pounds avoirdupois of water at 62 F, 277.274 cubic inches
  EXPECT_NEAR(one("gallon", "water", 1900, "GB").likely / cubic_inch, 277.42, 0.02);
  EXPECT_NEAR(one("gallon", "water", 1900, "GB").likely, 10 * one("pound", "", 1900, "GB").likely, 12);
}

}  // namespace
}  // namespace gallipot
