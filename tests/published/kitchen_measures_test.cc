// Kitchen measures against publications: statutes, the pharmacopoeial spoon and drop, tables that cookbooks print, the
// degrees of boiled sugar, ovens. Each check names its source.
#include <gtest/gtest.h>

#include "indexer/measures/heats.h"
#include "indexer/measures/register.h"

namespace gallipot {
namespace {

constexpr double cubic_inch = 16.387064;  // ml; NIST Handbook 44, Appendix C

const Register& measures() {
  static const auto loaded = Register::load().value();
  return *loaded;
}

Amount one(std::string_view measure, std::string_view of, int year, std::string_view country) {
  Measured m;
  m.measure = measure;
  m.of = of;
  m.year = year;
  m.country = country;
  const auto a = measures().amount(m);
  EXPECT_TRUE(a.has_value()) << measure;
  return a.value_or(Amount{});
}

void expect_holds(const Amount& a, double value, const char* what) {
  EXPECT_LE(a.low, value * 1.001) << what << ": " << a.why;
  EXPECT_GE(a.high, value * 0.999) << what << ": " << a.why;
}

// Ratios between legal measures, each against the statute or NIST Handbook 44, Appendix C.
struct Ratio {
  const char *larger, *smaller;
  double times;
  const char *of, *source;
};

TEST(StatutoryRatios, HoldWhereverTheyAreLaw) {
  const Ratio ratios[] = {{"gallon", "quart", 4, "water", "5 Geo. IV c. 74, section 6; Handbook 44 Appendix C"},
                          {"quart", "pint", 2, "water", "5 Geo. IV c. 74, section 6; Handbook 44 Appendix C"},
                          {"pint", "half-pint", 2, "water", "Handbook 44 Appendix C"},
                          {"pint", "gill", 4, "water", "Handbook 44 Appendix C"},
                          {"gill", "half-gill", 2, "water", "Handbook 44 Appendix C"},
                          {"bushel", "peck", 4, "water", "5 Geo. IV c. 74, section 6; Handbook 44 Appendix C"},
                          {"pound", "ounce", 16, "", "Handbook 44 Appendix C"},
                          {"pound", "grain", 7000, "", "5 Geo. IV c. 74, section 4"},
                          {"scruple", "grain", 20, "", "Handbook 44 Appendix C, apothecaries units of mass"},
                          {"pennyweight", "grain", 24, "", "Handbook 44 Appendix C, troy units of mass"},
                          {"troy ounce", "pennyweight", 20, "", "Handbook 44 Appendix C, troy units of mass"},
                          {"troy ounce", "scruple", 24, "", "Handbook 44 Appendix C, apothecaries units of mass"},
                          {"troy pound", "troy ounce", 12, "", "Handbook 44 Appendix C, troy units of mass"},
                          {"troy pound", "grain", 5760, "", "5 Geo. IV c. 74, section 4"}};
  for (const Ratio& r : ratios)
    for (const auto& [year, country] :
         {std::pair{1760, "GB"}, std::pair{1860, "GB"}, std::pair{1760, "US"}, std::pair{1900, "US"}})
      EXPECT_NEAR(one(r.larger, r.of, year, country).likely / one(r.smaller, r.of, year, country).likely, r.times,
                  r.times * 2e-5)
          << r.larger << " to " << r.smaller << ", " << year << ' ' << country << ": " << r.source;
}

TEST(StatutoryRatios, FluidOuncesToThePint) {
  // 16 to the wine pint: Handbook 44 Appendix C; 20 to the imperial pint: 5 Geo. IV c. 74 with the Pharmacopoeia of
  // 1836
  EXPECT_NEAR(one("pint", "water", 1900, "US").likely / one("fluid ounce", "water", 1900, "US").likely, 16, 1e-4);
  EXPECT_NEAR(one("pint", "water", 1900, "GB").likely / one("fluid ounce", "water", 1900, "GB").likely, 20, 1e-4);
}

TEST(Statutes, FixTheOldGallonsInCubicInches) {
  EXPECT_NEAR(one("wine gallon", "", 0, "").likely, 231 * cubic_inch, 0.01);     // 5 Anne c. 27 (1706), section 17
  EXPECT_NEAR(one("beer gallon", "", 0, "").likely, 282 * cubic_inch, 0.01);     // 12 Charles II c. 23 (1660)
  EXPECT_NEAR(one("scots pint", "", 0, "").likely, 103.404 * cubic_inch, 0.01);  // the jug of Stirling, Act of 1618
  expect_holds(one("gallon", "wine", 1780, "IE"), 217.6 * cubic_inch, "7 William III c. 24 (Ireland, 1695)");
}

TEST(Statutes, BothReadingsHoldWhileTheMeasuresChanged) {
  // 5 Geo. IV c. 74: in force 1 January 1826; 5 and 6 William IV c. 63: the old measures ended with 1835
  for (const int year : {1826, 1830, 1835}) {
    const Amount pint = one("pint", "milk", year, "GB");
    EXPECT_NEAR(pint.low, 473.176, 0.01) << year;
    EXPECT_NEAR(pint.high, 568.261, 0.01) << year;
  }
  EXPECT_NEAR(one("pint", "milk", 1825, "GB").high, 473.176, 0.01);
  EXPECT_NEAR(one("pint", "milk", 1836, "GB").low, 568.261, 0.01);
}

TEST(Statutes, FruitAndRootsWereHeaped) {
  // 5 Geo. IV c. 74, sections 7 and 8: a bushel 19 1/2 inches across, and on it a cone of six inches
  const double cone = 3.14159265 / 3 * 6 * (19.5 / 2) * (19.5 / 2) * cubic_inch;
  Measured bushel;
  bushel.measure = "bushel";
  bushel.of = "apple";
  bushel.year = 1830;
  bushel.country = "GB";
  const auto apples = measures().read(bushel);
  ASSERT_TRUE(apples && apples->millilitres);
  EXPECT_NEAR(apples->millilitres->high, 36368.72 + cone, 1200);
  bushel.of = "wheat";
  EXPECT_NEAR(measures().read(bushel)->millilitres->high, 36368.72, 1);  // struck
}

TEST(Spoons, AreThoseOfTheDispensary) {
  // teaspoon a fluid drachm, dessertspoon two, tablespoon four, wineglass two fluid ounces, teacup four: Beck, A
  // Reference Hand-Book for Nurses (1905), approximate fluid measures
  for (const int year : {1850, 1885}) {
    const double drachm = one("fluid drachm", "water", year, "US").likely;
    expect_holds(one("teaspoon", "water", year, "US"), drachm, "teaspoon");
    expect_holds(one("dessertspoon", "water", year, "US"), 2 * drachm, "dessertspoon");
    expect_holds(one("tablespoon", "water", year, "US"), 4 * drachm, "tablespoon");
    expect_holds(one("wineglass", "water", year, "US"), 16 * drachm, "wineglass");
    expect_holds(one("teacup", "water", year, "US"), 32 * drachm, "teacup");
  }
  // Enquire Within Upon Everything: tablespoon 4 drachms, wineglass 2, teacup 6, tumbler 10 fluid ounces
  const double ounce = one("fluid ounce", "water", 1890, "GB").likely;
  expect_holds(one("tablespoon", "water", 1890, "GB"), ounce / 2, "tablespoon");
  expect_holds(one("wineglass", "water", 1890, "GB"), 2 * ounce, "wineglass");
  expect_holds(one("teacup", "water", 1890, "GB"), 6 * ounce, "teacup");
  expect_holds(one("tumbler", "water", 1890, "GB"), 10 * ounce, "tumbler");
}

TEST(Spoons, TheDropIsAMinim) {
  // Beeton 1861, after the College of Physicians: a drop of water is a grain, sixty make the fluid drachm
  expect_holds(one("drop", "water", 1861, "GB"), one("minim", "water", 1861, "GB").likely, "drop");
  EXPECT_NEAR(one("fluid drachm", "water", 1861, "GB").likely / one("minim", "water", 1861, "GB").likely, 60, 0.01);
}

// Tables that books of the time print, as ranges that must hold what each says.
struct Printed {
  const char *measure, *of;
  int year;
  const char* country;
  double value;  ///< ml, or g where the stuff is weighed
  const char* source;
};

TEST(PeriodTables, AreWithinTheirRanges) {
  const double gill = 118.294, pound = 453.592, ounce = 28.3495;
  const Printed rows[] = {
      {"wineglass", "brandy", 1828, "US", gill / 2, "Leslie 1828: half a gill"},
      {"tablespoon", "water", 1828, "US", gill / 8, "Leslie 1828: eight to the gill"},
      {"tumbler", "water", 1857, "US", 2 * gill, "Hale 1857, p. 702: half a pint"},
      {"teacup", "water", 1836, "US", gill, "New England Cook Book 1836, p. v: a gill"},
      {"coffee-cup", "water", 1887, "US", 2 * gill, "Gillette 1887, p. 603: half a pint"},
      {"cup", "water", 1880, "US", 2 * gill, "Parloa 1880: half a pint"},
      {"cup", "sugar", 1901, "US", pound / 2, "Ronald 1901, p. 387: half a pound"},
      {"cup", "flour", 1901, "US", pound / 4, "Ronald 1901, p. 387: a quarter of a pound"},
      {"cup", "butter", 1916, "US", pound / 2, "Community Cook Book 1916, p. 99: half a pound"},
      {"quart", "flour", 1860, "US", 1.25 * pound, "Randolph 1860: a pound and a quarter"},
      {"tablespoon", "flour", 1830, "US", ounce / 2, "Kitchiner 1830, p. 65: half an ounce"},
      {"tablespoon", "salt", 1887, "US", ounce, "Gillette 1887, p. 603: an ounce"},
      {"size of an egg", "butter", 1901, "US", 2 * ounce, "Ronald 1901, p. 387: two ounces"},
      {"size of a walnut", "butter", 1909, "US", ounce, "Served in Sayville 1909: an ounce"},
      {"saltspoon", "water", 1915, "US", 4.93 / 4, "Cocroft, Foods: Nutrition and Digestion: a quarter teaspoon"},
      {"bushel", "potato", 1857, "US", 60 * pound, "Hale 1857: 60 pounds, legal weight"}};
  for (const Printed& r : rows) expect_holds(one(r.measure, r.of, r.year, r.country), r.value, r.source);
  Measured eggs;
  eggs.of = "egg";
  eggs.year = 1796;
  eggs.low = eggs.high = 10;
  const auto ten = measures().amount(eggs);
  expect_holds(*ten, pound * 0.89, "Simmons 1796: ten eggs a pound; the shell a ninth of it");
}

TEST(Heats, SugarStagesAreAsPublished) {
  static const auto heats = Heats::load().value();
  // Ronald, The Century Cook Book (1901), degrees of boiling sugar; Farmer, Boston Cooking-School Cook Book (1896)
  const std::pair<const char*, double> stages[] = {{"small thread", 215}, {"large thread", 217}, {"little pearl", 220},
                                                   {"large pearl", 222},  {"blow", 230},         {"feather", 232},
                                                   {"small ball", 238},   {"large ball", 248},   {"small crack", 290},
                                                   {"crack", 310},        {"caramel", 350}};
  double before = 0;
  for (const auto& [name, degrees] : stages) {
    const Heat* heat = heats->named_in(name);
    ASSERT_NE(heat, nullptr) << name;
    const auto range = heat->extent({}, 0);
    EXPECT_LE(range->low, degrees) << name;
    EXPECT_GE(range->high, degrees) << name;
    EXPECT_GT(range->likely, before) << name;
    before = range->likely;
  }
}

TEST(Heats, OvensAreAsPublished) {
  static const auto heats = Heats::load().value();
  // Be an Artist at the Gas Range (1935): slow 250 to 350, moderate 350 to 400, hot 400 to 450, very hot 450 to 550 F
  const std::tuple<const char*, double, double> ovens[] = {
      {"slow oven", 250, 350}, {"moderate oven", 350, 400}, {"hot oven", 400, 450}, {"very hot oven", 450, 550}};
  for (const auto& [name, low, high] : ovens) {
    const auto range = heats->named_in(name)->extent({}, 0);
    EXPECT_LE(range->low, low) << name;
    EXPECT_GE(range->high, high) << name;
  }
  EXPECT_DOUBLE_EQ(celsius(212), 100);
  EXPECT_DOUBLE_EQ(celsius(32), 0);
}

TEST(Heats, ProofIsTwelveThirteenthsOfWater) {
  static const auto heats = Heats::load().value();
  // Hydrometer Act 1816 (56 Geo. III c. 140); 57.10 by volume: Encyclopaedia Britannica, "Proof spirit"
  const auto british = heats->named_in("proof spirit")->extent("GB", 1850);
  EXPECT_NEAR(british->likely, 57.1, 0.06);
  EXPECT_NEAR(over_proof(75, british->likely), 100,
              0.3);  // pure alcohol is 75 over proof: Cooley's Cyclopaedia, 6th ed.
}

}  // namespace
}  // namespace gallipot
