// Amounts with no more digits than their range warrants.
#include "query/reporting/amounts.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

std::string written(double low, double likely, double high, Amount::Unit unit = Amount::Unit::gram) {
  return write_amount({unit, low, likely, high, ""}).text();
}

TEST(Amounts, RangeStandsInBrackets) {
  EXPECT_EQ(written(11, 12.5, 14),
            "12.5 g (11\xE2\x80\x93"
            "14)");
  EXPECT_EQ(written(900, 1234, 1500),
            "1230 g (900\xE2\x80\x93"
            "1500)");
}

TEST(Amounts, AnExactOneHasNoneAndThreeDigitsAtMost) {
  EXPECT_EQ(written(1000, 1000, 1000), "1000 g");
  EXPECT_EQ(written(453.592, 453.592, 453.592), "454 g");
  EXPECT_EQ(written(453.5, 453.592, 453.7), "454 g");
  EXPECT_EQ(written(0.12345, 0.12345, 0.12345), "0.123 g");
  EXPECT_EQ(written(3, 3, 3, Amount::Unit::count), "3");
}

TEST(Amounts, TheEndsAreRoundedOutwards) {
  EXPECT_EQ(written(1.32, 1.5, 1.59),
            "1.5 g (1.3\xE2\x80\x93"
            "1.6)");
  EXPECT_EQ(written(6.6, 9.4, 11.9),
            "9.4 g (6\xE2\x80\x93"
            "12)");
  EXPECT_EQ(written(3.12, 3.54, 3.75),
            "3.54 g (3.1\xE2\x80\x93"
            "3.8)");
}

TEST(Amounts, ASmallEndIsNeverWrittenAsNought) {
  EXPECT_EQ(written(3.7, 14, 39),
            "14 g (3\xE2\x80\x93"
            "40)");
  EXPECT_EQ(written(0.04, 1.5, 3.6),
            "1.5 g (0.04\xE2\x80\x93"
            "4)");
}

TEST(Amounts, LargeOnesInProseAreInKilograms) {
  EXPECT_EQ(write_large_amount({Amount::Unit::gram, 10000, 12000, 14000, ""}).text(),
            "12 kg (10\xE2\x80\x93"
            "14)");
  EXPECT_EQ(write_large_amount({Amount::Unit::gram, 900, 900, 900, ""}).text(), "900 g");
}

TEST(Amounts, NoughtIsWritten) { EXPECT_EQ(written(0, 0, 0), "0 g"); }

TEST(Amounts, MinutesAsACookSaysThem) {
  EXPECT_EQ(write_minutes({20, 20}), "20 min");
  EXPECT_EQ(write_minutes({60, 120}),
            "1\xE2\x80\x93"
            "2 h");
  EXPECT_EQ(write_minutes({90, 90}), "1.5 h");
  EXPECT_EQ(write_minutes({30, 60}),
            "30\xE2\x80\x93"
            "60 min");
  EXPECT_EQ(write_minutes({1440, 1440}), "1 day");
  EXPECT_EQ(write_minutes({4320, 5760}),
            "3\xE2\x80\x93"
            "4 days");
  EXPECT_EQ(write_minutes({20160, 20160}), "2 weeks");
  EXPECT_EQ(write_minutes({7 * 525600, 7 * 525600}), "7 years");
}

}  // namespace
}  // namespace gallipot
