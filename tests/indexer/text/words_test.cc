// The tokenizer and the character functions, against what print really holds.
#include "indexer/text/words.h"

#include <gtest/gtest.h>

#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

std::string keys(std::string_view text) {
  const Words words(text);
  std::string out;
  for (const auto& w : words.all()) {
    if (!out.empty()) out += w.glued ? "" : " ";
    out += w.key;
  }
  return out;
}

TEST(Words, FoldsPrintToPlainKeys) {
  EXPECT_EQ(keys("Béchamel Sauce—à la Reine"), "bechamel sauce--a la reine");
  EXPECT_EQ(keys("Calf’s-foot"), "calf's-foot");
  EXPECT_EQ(keys("2½ lbs. of œufs"), "21/2 lbs. of oeufs");
}

TEST(Words, KeepsSpansOfThePrint) {
  const std::string text = "To 1,000 Walnuts, ½ an ounce";
  const Words words(text);
  ASSERT_EQ(words.size(), 7u);
  EXPECT_EQ(words[1].kind, Word::Kind::number);
  EXPECT_EQ(words[1].span.in(text), "1,000");
  EXPECT_EQ(words[4].key, "1/2");
  EXPECT_EQ(words[4].span.in(text), "½");
  EXPECT_TRUE(words[3].glued);
  EXPECT_FALSE(words[4].glued);
  EXPECT_TRUE(words[2].capital);
}

TEST(Words, QuotesAreNoLetters) {
  const Words words("the cooks' 'best' way");
  EXPECT_EQ(words[1].key, "cooks");
  EXPECT_EQ(words[4].key, "best");
}

TEST(Words, KeysOutliveAMove) {
  Words a("ÉCLAIRS");
  const Words b = std::move(a);
  EXPECT_EQ(b[0].key, "eclairs");
  EXPECT_TRUE(b[0].all_capitals);
}

TEST(Singular, FollowsOrdinarySpelling) {
  EXPECT_EQ(singular("potatoes"), "potato");
  EXPECT_EQ(singular("loaves"), "loaf");
  EXPECT_EQ(singular("cloves"), "clove");
  EXPECT_EQ(singular("cherries"), "cherry");
  EXPECT_EQ(singular("radishes"), "radish");
  EXPECT_EQ(singular("molasses"), "molasses");
  EXPECT_EQ(singular("ounces"), "ounce");
  EXPECT_EQ(singular("pies"), "pie");
}

TEST(Decode, TakesTheMarkThenTheDeclarationThenTheBytes) {
  EXPECT_EQ(decode("\xEF\xBB\xBF"
                   "caf\xC3\xA9")
                ->text,
            "café");
  EXPECT_EQ(decode("caf\xE9", "iso-8859-1")->text, "café");
  EXPECT_EQ(decode("caf\xC3\xA9", "iso-8859-1")->charset, "UTF-8");
  const auto guessed = decode(
      "Un peu de cr\xE8me fra\xEE"
      "che, s'il vous pla\xEEt, \x93not too much\x94");
  ASSERT_TRUE(guessed.has_value());
  EXPECT_EQ(guessed->charset, "windows-1252");
  EXPECT_NE(guessed->text.find("“not too much”"), std::string::npos);
}

TEST(Decode, RefusesWhatIsNoText) {
  const auto out = decode(std::string_view("PK\0\0\1\2", 6));
  ASSERT_FALSE(out.has_value());
  EXPECT_NE(out.error().sentence().find("NUL"), std::string::npos);
}

TEST(Plain, NfcAndCodePoints) {
  EXPECT_EQ(to_nfc("e\xCC\x81"), "é");
  EXPECT_EQ(code_points_before("éa", 2), 1u);
  EXPECT_EQ(fold_case("WALNUT ÉCLAIR"), "walnut éclair");
}

}  // namespace
}  // namespace gallipot
