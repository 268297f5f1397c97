#include "indexer/catalogue/country.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

TEST(Countries, AreThoseOfIso3166) {
  EXPECT_EQ(country_named("GB").value(), "GB");
  EXPECT_EQ(country_named("us").value(), "US");
  EXPECT_EQ(country_named("ie").value(), "IE");
  for (const char* no : {"", "G", "GBR", "ZQ", "1!", "England"}) EXPECT_FALSE(country_named(no).has_value()) << no;
  EXPECT_NE(country_named("UK").error().sentence().find("GB"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
