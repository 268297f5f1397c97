// EDTF dates. Source of the examples: Library of Congress, Extended Date/Time Format (EDTF) Specification (4 February
// 2019), levels 0 and 1.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "indexer/catalogue/shelf_list.h"

namespace gallipot {
namespace {

struct Example {
  const char* date;
  int first;
  int last;
};

class Edtf : public testing::TestWithParam<Example> {};

TEST_P(Edtf, AllowsTheseYears) {
  const auto years = edtf_years(GetParam().date);
  ASSERT_TRUE(years.has_value()) << GetParam().date;
  EXPECT_EQ(years->first, GetParam().first) << GetParam().date;
  EXPECT_EQ(years->last, GetParam().last) << GetParam().date;
}

INSTANTIATE_TEST_SUITE_P(
    Level0, Edtf,
    testing::Values(Example{"1985-04-12", 1985, 1985}, Example{"1985-04", 1985, 1985}, Example{"1985", 1985, 1985},
                    Example{"1985-04-12T23:20:30", 1985, 1985}, Example{"1985-04-12T23:20:30Z", 1985, 1985},
                    Example{"1985-04-12T23:20:30-04", 1985, 1985}, Example{"1985-04-12T23:20:30+04:30", 1985, 1985},
                    Example{"1964/2008", 1964, 2008}, Example{"2004-06/2006-08", 2004, 2006},
                    Example{"2004-02-01/2005-02-08", 2004, 2005}, Example{"2004-02-01/2005-02", 2004, 2005},
                    Example{"2005/2006-02", 2005, 2006}));

// "~" and "%" are five years either side: our reading. "?" doubts the source, not the year.
INSTANTIATE_TEST_SUITE_P(Level1, Edtf,
                         testing::Values(Example{"Y170000002", 170000002, 170000002},
                                         Example{"Y-170000002", -170000002, -170000002}, Example{"2001-21", 2001, 2001},
                                         Example{"1984?", 1984, 1984}, Example{"2004-06~", 1999, 2009},
                                         Example{"2004-06-11%", 1999, 2009}, Example{"201X", 2010, 2019},
                                         Example{"20XX", 2000, 2099}, Example{"2004-XX", 2004, 2004},
                                         Example{"1985-04-XX", 1985, 1985}, Example{"1985-XX-XX", 1985, 1985},
                                         Example{"1985-04-12/..", 1985, 1985}, Example{"../1985-04-12", 1985, 1985},
                                         Example{"1985/", 1985, 1985}, Example{"/1985-04", 1985, 1985},
                                         Example{"-1985", -1985, -1985}, Example{"1984~/2004-06", 1979, 2004}));

INSTANTIATE_TEST_SUITE_P(Books, Edtf,
                         testing::Values(Example{"1861", 1861, 1861}, Example{"1830~", 1825, 1835},
                                         Example{"18XX", 1800, 1899}, Example{"1830/1835", 1830, 1835},
                                         Example{"1900-02-28", 1900, 1900}));

TEST(EdtfRefuses, WhatIsNoDate) {
  for (const char* wrong : {"",           "about 1830", "183",       "18610",  "1861-13", "1861-00",
                            "1861-02-30", "1900-02-29", "1861/1850", "..",     "/",       "../..",
                            "1X61",       "XXXX",       "1861~~",    "1861-4", "Y186",    "1861-04-12T25:00:00",
                            "1861-21-03", "1861 ",      "[1861]"})
    EXPECT_FALSE(edtf_years(wrong).has_value()) << wrong;
  EXPECT_TRUE(edtf_years("1904-02-29").has_value());
}

}  // namespace
}  // namespace gallipot
