// The lexicon as a whole: what a cook calls things leads to one name.
#include "indexer/lexicon/lexicon.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

std::shared_ptr<const Lexicon> loaded() {
  static const auto lexicon = Lexicon::load();
  EXPECT_TRUE(lexicon.has_value()) << (lexicon ? "" : lexicon.error().sentence());
  return lexicon ? *lexicon : nullptr;
}

std::string food(std::string_view print) {
  std::uint32_t i = 0;
  return loaded()->foodstuff_phrases().find(print, i) ? loaded()->foodstuffs()[i].name : "";
}

TEST(Lexicon, PeriodNamesLeadToModernOnes) {
  EXPECT_EQ(food("eschalots"), "shallot");
  EXPECT_EQ(food("Jamaica pepper"), "allspice");
  EXPECT_EQ(food("cowcumbers"), "cucumber");
  EXPECT_EQ(food("yelks of eggs"), "egg yolk");
  EXPECT_EQ(food("calves’ feet"), "calf's foot");
  EXPECT_EQ(food("pepper"), "black pepper");
  EXPECT_EQ(food("Indian meal"), "corn meal");
}

TEST(Lexicon, MeasuresAreFoundByTheirShortForms) {
  std::uint32_t i = 0;
  const auto& p = loaded()->measure_phrases();
  const auto name = [&](std::string_view print) { return p.find(print, i) ? loaded()->measures()[i].name : ""; };
  EXPECT_EQ(name("lbs"), "pound");
  EXPECT_EQ(name("table-spoonsful"), "tablespoon");
  EXPECT_EQ(name("tea-cupful"), "teacup");
  EXPECT_EQ(name("size of a walnut"), "size of a walnut");
}

TEST(Lexicon, UnknownNamesAreNull) {
  EXPECT_EQ(loaded()->foodstuff("moonstone"), nullptr);
  ASSERT_NE(loaded()->foodstuff("shallot"), nullptr);
  EXPECT_EQ(loaded()->foodstuff("shallot")->kind, "vegetable");
  EXPECT_EQ(loaded()->measure("moonstone"), nullptr);
}

}  // namespace
}  // namespace gallipot
