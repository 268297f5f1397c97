// Every measure that GNU units knows, asked of it and of the register. GNU units is another people's table of the same
// law; the program `units` (Debian package units) is called with the definitions that it brings along.
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "indexer/measures/register.h"

namespace gallipot {
namespace {

/// What `units` says `from` is in `to`; nought where it does not know.
double by_units(const std::string& from, const std::string& to) {
  const std::string command = "units --terse --output-format '%.12g' '" + from + "' '" + to + "' 2>/dev/null";
  FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return 0;
  std::array<char, 256> line{};
  const bool read = std::fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr;
  return ::pclose(pipe) == 0 && read ? std::strtod(line.data(), nullptr) : 0;
}

struct Known {
  const char *measure, *of;
  int year;
  const char *country, *units;  ///< as GNU units calls it
  double tolerance = 1e-5;
};

class ByGnuUnits : public testing::TestWithParam<Known> {};

TEST_P(ByGnuUnits, IsTheSame) {
  static const auto measures = Register::load().value();
  const Known& k = GetParam();
  Measured asked;
  asked.measure = k.measure;
  asked.of = k.of;
  asked.year = k.year;
  asked.country = k.country;
  const auto amount = measures->amount(asked);
  ASSERT_TRUE(amount.has_value()) << k.measure;
  const double said = by_units(k.units, amount->unit == Amount::Unit::gram ? "g" : "ml");
  ASSERT_GT(said, 0) << "units does not know " << k.units << "; is the package units installed?";
  EXPECT_NEAR(amount->likely, said, said * k.tolerance) << k.measure << " of " << k.of << ", " << k.country;
}

INSTANTIATE_TEST_SUITE_P(
    Weights, ByGnuUnits,
    testing::Values(Known{"pound", "", 1850, "GB", "lb"}, Known{"ounce", "", 1850, "GB", "oz"},
                    Known{"grain", "", 1850, "GB", "grain"}, Known{"stone", "", 1850, "GB", "stone"},
                    Known{"hundredweight", "", 1850, "GB", "brhundredweight"},
                    Known{"hundredweight", "", 1900, "US", "ushundredweight"}, Known{"ton", "", 1850, "GB", "brton"},
                    Known{"scruple", "", 1850, "GB", "apscruple"}, Known{"drachm", "salt", 1850, "GB", "apdram"},
                    Known{"pennyweight", "", 1850, "GB", "pennyweight"},
                    Known{"troy pound", "", 1850, "GB", "troypound"}, Known{"troy ounce", "", 1850, "GB", "troyounce"},
                    Known{"kilogram", "", 1900, "FR", "kg"}, Known{"gram", "", 1900, "FR", "gram"}));

INSTANTIATE_TEST_SUITE_P(
    UnitedStates, ByGnuUnits,
    testing::Values(Known{"gallon", "water", 1880, "US", "usgallon"}, Known{"quart", "water", 1880, "US", "usquart"},
                    Known{"pint", "water", 1880, "US", "uspint"}, Known{"half-pint", "water", 1880, "US", "0.5 uspint"},
                    Known{"gill", "water", 1880, "US", "usgill"}, Known{"half-gill", "water", 1880, "US", "0.5 usgill"},
                    Known{"fluid ounce", "water", 1880, "US", "usfluidounce"},
                    Known{"fluid drachm", "water", 1880, "US", "usfluidounce / 8"},
                    Known{"minim", "water", 1880, "US", "usfluidounce / 480"},
                    Known{"peck", "water", 1880, "US", "uspeck"}, Known{"bushel", "water", 1880, "US", "usbushel"},
                    Known{"barrel", "water", 1880, "US", "31.5 usgallon"},
                    Known{"hogshead", "water", 1880, "US", "ushogshead"}, Known{"cubic inch", "", 1880, "US", "in^3"},
                    Known{"measuring cup", "water", 1914, "US", "uscup", 0.02}));

INSTANTIATE_TEST_SUITE_P(
    Britain, ByGnuUnits,
    testing::Values(
        Known{"gallon", "water", 1880, "GB", "brgallon"}, Known{"quart", "water", 1880, "GB", "brquart"},
        Known{"pint", "water", 1880, "GB", "brpint"}, Known{"gill", "water", 1880, "GB", "0.25 brpint"},
        Known{"half-pint", "water", 1880, "GB", "0.5 brpint"}, Known{"half-gill", "water", 1880, "GB", "0.125 brpint"},
        Known{"quartern", "water", 1880, "GB", "0.25 brpint"}, Known{"pottle", "water", 1880, "GB", "0.5 brgallon"},
        Known{"fluid ounce", "water", 1880, "GB", "brfluidounce"},
        Known{"fluid drachm", "water", 1880, "GB", "brfluidounce / 8", 1e-4},
        Known{"minim", "water", 1880, "GB", "brfluidounce / 480"}, Known{"peck", "water", 1880, "GB", "brpeck"},
        Known{"bushel", "water", 1880, "GB", "brbushel"}, Known{"imperial gallon", "", 1700, "US", "brgallon"},
        Known{"imperial pint", "", 1700, "US", "brpint"}, Known{"litre", "", 1900, "GB", "litre"}));

INSTANTIATE_TEST_SUITE_P(
    OldEngland, ByGnuUnits,
    testing::Values(
        Known{"gallon", "water", 1760, "GB", "winegallon"}, Known{"pint", "water", 1760, "GB", "0.125 winegallon"},
        Known{"quart", "water", 1760, "GB", "0.25 winegallon"}, Known{"gallon", "ale", 1760, "GB", "alegallon"},
        Known{"quart", "ale", 1760, "GB", "0.25 alegallon"}, Known{"pint", "ale", 1760, "GB", "0.125 alegallon"},
        Known{"wine gallon", "", 1900, "GB", "winegallon"}, Known{"wine quart", "", 1900, "GB", "0.25 winegallon"},
        Known{"wine pint", "", 1900, "GB", "0.125 winegallon"}, Known{"beer gallon", "", 1900, "GB", "alegallon"},
        Known{"beer quart", "", 1900, "GB", "0.25 alegallon"}, Known{"beer pint", "", 1900, "GB", "0.125 alegallon"},
        Known{"bushel", "water", 1760, "GB", "usbushel", 1e-4},
        Known{"peck", "water", 1760, "GB", "0.25 usbushel", 1e-4}, Known{"tierce", "wine", 1760, "GB", "42 winegallon"},
        Known{"pipe", "wine", 1760, "GB", "126 winegallon"}, Known{"tun", "wine", 1760, "GB", "252 winegallon"},
        Known{"hogshead", "wine", 1760, "GB", "63 winegallon"}, Known{"rundlet", "wine", 1760, "GB", "18 winegallon"},
        Known{"butt", "wine", 1760, "GB", "126 winegallon"}, Known{"coomb", "water", 1760, "GB", "4 usbushel", 1e-4}));

INSTANTIATE_TEST_SUITE_P(ScotlandAndIreland, ByGnuUnits,
                         testing::Values(Known{"scots pint", "", 1760, "GB", "scotspint"},
                                         Known{"chopin", "water", 1760, "GB", "0.5 scotspint"},
                                         Known{"mutchkin", "water", 1760, "GB", "0.25 scotspint"}));

}  // namespace
}  // namespace gallipot
