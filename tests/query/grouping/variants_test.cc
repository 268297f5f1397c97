// Variants on the sample shelf: who is in the set, and the reasons given.
#include "query/grouping/variants.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

using Grouping = SampleShelf;

TEST_F(Grouping, VariantsLeaveOutTheRecipeAskedForAndSayWhy) {
  const auto seed = found({"quince", "marmalade"}, {}, 1).front().id;
  const auto set = variants_of(*shelf_, *lexicon_, seed, {}, 10);
  ASSERT_TRUE(set.has_value());
  ASSERT_GE(set->variants.size(), 5u);
  for (const auto& variant : set->variants) {
    EXPECT_NE(variant.id, seed);
    EXPECT_FALSE(variant.reason.empty());
  }
  EXPECT_NE(std::find(set->variants[0].shared.begin(), set->variants[0].shared.end(), "quince"),
            set->variants[0].shared.end());
}

TEST_F(Grouping, VariantsOfAnUnknownIdOfferTheNearest) {
  const auto set = variants_of(*shelf_, *lexicon_, "lantern-1906/9999");
  ASSERT_FALSE(set.has_value());
  EXPECT_NE(set.error().sentence().find("lantern-1906/"), std::string::npos) << set.error().sentence();
}

}  // namespace
}  // namespace gallipot
