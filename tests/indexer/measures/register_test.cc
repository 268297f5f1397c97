#include "indexer/measures/register.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <random>

namespace gallipot {
namespace {

const Register& measures() {
  static const auto loaded = Register::load();
  EXPECT_TRUE(loaded.has_value()) << loaded.error().sentence();
  return **loaded;
}

Measured ask(double n, std::string_view measure, std::string_view of = {}, int year = 0,
             std::string_view country = {}) {
  Measured m;
  m.low = m.high = n;
  m.measure = measure;
  m.of = of;
  m.year = year;
  m.country = country;
  return m;
}

Amount sure(const Measured& m) {
  const auto a = measures().amount(m);
  EXPECT_TRUE(a.has_value()) << m.measure << " of " << m.of;
  return a.value_or(Amount{});
}

TEST(RegisterTest, WeightsArePoundsAndOunces) {
  const Amount a = sure(ask(2, "pound", "beef", 1861, "GB"));
  EXPECT_EQ(a.unit, Amount::Unit::gram);
  EXPECT_NEAR(a.likely, 907.18, 0.01);
  EXPECT_EQ(a.low, a.high);
  EXPECT_FALSE(a.why.empty());
}

TEST(RegisterTest, APrintedRangeStaysARange) {
  Measured m = ask(3, "ounce", "sugar", 1850, "US");
  m.high = 4;
  const Amount a = sure(m);
  EXPECT_NEAR(a.low, 85.05, 0.01);
  EXPECT_NEAR(a.likely, 99.22, 0.01);
  EXPECT_NEAR(a.high, 113.40, 0.01);
}

TEST(RegisterTest, LiquidsStayMillilitres) {
  EXPECT_EQ(sure(ask(1, "pint", "vinegar", 1880, "US")).unit, Amount::Unit::millilitre);
  EXPECT_NEAR(sure(ask(1, "pint", "vinegar", 1880, "US")).likely, 473.18, 0.01);
  EXPECT_NEAR(sure(ask(1, "pint", "vinegar", 1880, "GB")).likely, 568.26, 0.01);
}

TEST(RegisterTest, TheEnglishPintGrewIn1826) {
  EXPECT_NEAR(sure(ask(1, "pint", "milk", 1790, "GB")).high, 473.18, 0.01);
  const Amount change =
      sure(ask(1, "pint", "milk", 1828, "GB"));  // either may be meant while the old measures wore out
  EXPECT_NEAR(change.low, 473.18, 0.01);
  EXPECT_NEAR(change.high, 568.26, 0.01);
  EXPECT_NEAR(sure(ask(1, "pint", "milk", 1870, "GB")).low, 568.26, 0.01);
}

TEST(RegisterTest, AleHadItsOwnGallon) {
  EXPECT_NEAR(sure(ask(1, "gallon", "ale", 1760, "GB")).likely, 4621.15, 0.01);
  EXPECT_NEAR(sure(ask(1, "gallon", "ale", 1760, "US")).likely, 3785.41, 0.01);
}

TEST(RegisterTest, SolidsOfKnownDensityAreWeighed) {
  const Amount a = sure(ask(1, "quart", "flour", 1840, "US"));
  EXPECT_EQ(a.unit, Amount::Unit::gram);
  // books of the time have a quart of flour weigh a pound
  EXPECT_LE(a.low, 454);
  EXPECT_GE(a.high, 454);
}

TEST(RegisterTest, CountedThingsAreWeighed) {
  const Amount eggs = sure(ask(10, "", "egg", 1830, "US"));
  EXPECT_EQ(eggs.unit, Amount::Unit::gram);
  EXPECT_LE(eggs.low, 454 * 8 / 9.0);  // ten in the shell to the pound
  EXPECT_GE(eggs.high, 454 * 8 / 9.0);
  EXPECT_EQ(sure(ask(2, "blade", "mace")).unit, Amount::Unit::gram);
  EXPECT_EQ(sure(ask(3, "", "some stuff that no table has")).unit, Amount::Unit::count);
  EXPECT_NEAR(sure(ask(2, "dozen", "some stuff that no table has")).likely, 24, 1e-9);
  EXPECT_EQ(sure(ask(1, "dozen", "egg", 1850)).unit, Amount::Unit::gram);
}

TEST(RegisterTest, NothingWhereNoNumberCanBeGiven) {
  EXPECT_FALSE(measures().amount(ask(1, "bit", "butter")));
  EXPECT_FALSE(measures().amount(ask(1, "pennyworth", "saffron")));
  EXPECT_FALSE(measures().amount(ask(0, "pound", "butter")));
  Measured backwards = ask(3, "pound", "butter");
  backwards.high = 2;
  EXPECT_FALSE(measures().amount(backwards));
}

TEST(RegisterTest, NotesBendTheMeasure) {
  Measured plain = ask(1, "tablespoon", "flour", 1880, "US"), heaped = plain, scant = plain;
  heaped.note = "heaped";
  scant.note = "scant";
  EXPECT_GT(sure(heaped).likely, sure(plain).likely);
  EXPECT_GE(sure(heaped).high - sure(heaped).low, sure(plain).high - sure(plain).low);
  EXPECT_LT(sure(scant).likely, sure(plain).likely);
  EXPECT_NE(sure(heaped).why.find("heaped"), std::string::npos);
  Measured level = plain;
  level.note = "level";
  EXPECT_LT(sure(level).high, sure(plain).high);
}

TEST(RegisterTest, AllAmountsAreInOrder) {
  for (const char* measure : {"pound", "pint", "gill", "teacup", "wineglass", "peck", "saltspoon", "handful",
                              "size of an egg", "drachm", "cup"})
    for (const char* of : {"", "flour", "vinegar", "butter", "ale", "apple", "honey"})
      for (const int year : {0, 1700, 1825, 1826, 1850, 1910})
        for (const char* country : {"", "GB", "US", "CA", "FR"}) {
          const Amount a = sure(ask(1.5, measure, of, year, country));
          EXPECT_LT(0, a.low) << measure << ' ' << of;
          EXPECT_LE(a.low, a.likely) << measure << ' ' << of << ' ' << year << ' ' << country;
          EXPECT_LE(a.likely, a.high) << measure << ' ' << of << ' ' << year << ' ' << country;
          EXPECT_FALSE(a.why.empty());
        }
}

// A wider reading - a year or country not known, a range for a number - never gives a narrower amount.
TEST(RegisterTest, AWiderReadingIsNeverNarrower) {
  std::mt19937 random(11);
  auto pick = [&](const auto& from) { return from[random() % std::size(from)]; };
  const char* all_measures[] = {"pound",     "ounce",   "drachm", "pint",   "quart",      "gallon",
                                "gill",      "peck",    "teacup", "cup",    "tablespoon", "teaspoon",
                                "wineglass", "handful", "stone",  "bottle", "",           "dozen"};
  const char* stuffs[] = {"", "flour", "vinegar", "ale", "apple", "sugar", "egg", "onion", "walnut", "butter"};
  const char* countries[] = {"GB", "US", "CA", "IE", "AU"};
  int checked = 0;
  for (int trial = 0; trial < 4000; ++trial) {
    Measured narrow = ask(1 + static_cast<double>(random() % 8), pick(all_measures), pick(stuffs),
                          1690 + static_cast<int>(random() % 240), pick(countries));
    const auto a = measures().amount(narrow);
    if (!a) continue;
    Measured no_year = narrow, no_country = narrow, neither = narrow, range = narrow;
    no_year.year = neither.year = 0;
    no_country.country = neither.country = {};
    range.high += 2;
    for (const Measured& wide : {no_year, no_country, neither, range}) {
      const auto b = measures().amount(wide);
      ASSERT_TRUE(b.has_value());
      EXPECT_EQ(a->unit, b->unit) << narrow.measure << " of " << narrow.of;
      EXPECT_LE(b->low, a->low + 1e-9) << narrow.measure << " of " << narrow.of << ' ' << narrow.year << ' '
                                       << narrow.country;
      EXPECT_GE(b->high, a->high - 1e-9) << narrow.measure << " of " << narrow.of << ' ' << narrow.year << ' '
                                         << narrow.country;
      ++checked;
    }
  }
  EXPECT_GT(checked, 5000);
}

TEST(RegisterTest, TheUsersOwnTableIsLaidOver) {
  const auto folder = std::filesystem::temp_directory_path() / "gallipot-register-test";
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "units.tsv")
      << "measure\tsystem\tfor\tcountry\tfrom\tto\tunit\tlow\tlikely\thigh\twhy\tsource\n"
         "teacup\thousehold\t\t*\t\t\tml\t150\t155\t160\tthe cup on my own shelf\tmeasured at home\n";
  const auto own = Register::load(folder.string());
  ASSERT_TRUE(own.has_value()) << own.error().sentence();
  const auto a = (*own)->amount(ask(1, "teacup", "milk", 1850, "US"));
  ASSERT_TRUE(a.has_value());
  EXPECT_NEAR(a->likely, 155, 1e-9);
  std::ofstream(folder / "units.tsv")
      << "measure\tsystem\tfor\tcountry\tfrom\tto\tunit\tlow\tlikely\thigh\twhy\tsource\n"
         "teacup\thousehold\t\t*\t\t\tml\t150\tabout 155\t160\tmine\tmeasured at home\n";
  const auto wrong = Register::load(folder.string());
  ASSERT_FALSE(wrong.has_value());
  EXPECT_EQ(wrong.error().line, 2);
  EXPECT_NE(wrong.error().sentence().find("about 155"), std::string::npos);
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace gallipot
