// Mending: what is misread is read as it was meant, what is good is left alone, and the copy's words are kept. The
// receipts are invented.
#include "indexer/mending/mend.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

const Mender& mender() {
  static const auto loaded = [] {
    const auto lexicon = Lexicon::load();
    if (!lexicon) throw std::runtime_error(lexicon.error().sentence());
    return Mender::of(**lexicon);
  }();
  return *loaded;
}

Block block(std::string text) {
  Block b;
  while (text.ends_with(' ')) text.pop_back();  // as readers give it
  b.text = std::move(text);
  b.lines.push_back({0, 1});
  return b;
}

const std::string clean =
    "Take six ounces of fine sugar and the juice of two lemons, set them on a slow fire and stir them well together. "
    "When it is almost cold, beat the whites of four eggs to a froth, and mix them with the sugar and a little rose "
    "water. Butter a dish, put in the mixture, sift some sugar over it and send it to the oven; bake it half an hour. "
    "You must use the best flour for the paste, and season the sauce with salt, mace and a slice of lemon peel. ";

/// The book's own habit: many pages of sound print.
std::vector<Block> book_with(const std::string& damaged, int pages = 30) {
  std::vector<Block> blocks;
  for (int i = 0; i < pages; ++i) blocks.push_back(block(clean));
  blocks.push_back(block(damaged));
  return blocks;
}

/// The text with every long s taken for an f.
std::string with_f(std::string text) {
  for (std::size_t i = 0; i + 1 < text.size(); ++i)
    if (text[i] == 's' && text[i + 1] >= 'a' && text[i + 1] <= 'z') text[i] = 'f';
  return text;
}

TEST(Mending, LeavesASoundBookAlone) {
  auto blocks = book_with("Take the best parsley, chop it small, and strew it over the collops with a little mace.");
  const auto before = blocks.back().text;
  const Mending told = mender().mend(blocks);
  EXPECT_EQ(blocks.back().text, before);
  EXPECT_EQ(told.mended, 0u);
  EXPECT_EQ(told.unread, 0u);
  EXPECT_TRUE(told.sentence.empty());
}

TEST(Mending, LeavesUnknownWordsOfASoundBookAlone) {
  auto blocks = book_with("Mrs. Hatterby of Wexcombe gave this receipt for Snorkle cake, and Miss Fanshaw another.");
  const auto before = blocks.back().text;
  mender().mend(blocks);
  EXPECT_EQ(blocks.back().text, before);
}

TEST(Mending, ReadsTheLongSBack) {
  std::vector<Block> blocks;
  for (int i = 0; i < 12; ++i) blocks.push_back(block(with_f(clean)));
  blocks.push_back(
      block("To make Catfup. Take fix pounds of fugar, diffolve it on the fire with two fpoonfuls of fat."));
  const Mending told = mender().mend(blocks);
  EXPECT_EQ(blocks.back().text,
            "To make Catsup. Take six pounds of sugar, dissolve it on the fire with two spoonfuls of fat.");
  EXPECT_GT(told.long_s, 0.5);
  EXPECT_NE(told.sentence.find("long s"), std::string::npos) << told.sentence;
  EXPECT_EQ(blocks.front().text, block(clean).text);
}

TEST(Mending, KnowsALongSThatIsTranscribedAsOne) {
  auto blocks = book_with("Take the be\u017Ft \u017Fugar and di\u017F\u017Folve it.");
  const auto before = blocks.back().text;
  mender().mend(blocks);
  EXPECT_EQ(blocks.back().text, before) << "as printed; the plain key of the word is its modern letters already";
}

TEST(Mending, ReadsShapesTakenForOneAnother) {
  std::string bad;
  for (int i = 0; i < 6; ++i) bad += "Put tlie sugar iu tbe dish arid stir thc whole witb a spoon. ";
  auto blocks = book_with(bad);
  mender().mend(blocks);
  EXPECT_EQ(blocks.back().text.substr(0, 56), "Put the sugar in the dish and stir the whole with a spoo");
}

TEST(Mending, ReadsEarlyLettersAndContractions) {
  std::string early;
  for (int i = 0; i < 8; ++i)
    early +=
        "Take ye iuice of two lemons wth vvater, boil them ouer the fire vntill halfe is left, and giue it to ye "
        "cook. ";
  auto blocks = book_with(early, 6);
  mender().mend(blocks);
  EXPECT_TRUE(blocks.back().text.starts_with(
      "Take the juice of two lemons with water, boil them over the fire until half is left, and give it to the cook."))
      << blocks.back().text.substr(0, 120);
}

TEST(Mending, KeepsWhatStandsInTheCopyAndWhere) {
  std::string bad;
  for (int i = 0; i < 6; ++i) bad += "Put tbe sugar in tlie dish. ";
  auto blocks = book_with(bad);
  Block& b = blocks.back();
  b.runs.push_back({{14, 16}, Run::italic, "i"});  // "in"
  mender().mend(blocks);
  ASSERT_GE(b.mends.size(), 2u);
  EXPECT_EQ(b.mends[0].printed, "tbe");
  EXPECT_EQ(b.mends[0].read, "the");
  EXPECT_EQ(b.mends[1].span.in(b.text), "the");
  EXPECT_EQ(b.runs[0].span.in(b.text), "in");
  EXPECT_EQ(as_it_stood(b).text, block(bad).text);
  EXPECT_EQ(span_as_it_stood(b, b.mends[1].span).in(bad), "tlie");
}

TEST(Mending, KeepsCapitals) {
  std::string bad = "TBE CAKE. Tbe cake. ";
  for (int i = 0; i < 5; ++i) bad += "Put tbe sugar in. ";
  auto blocks = book_with(bad);
  mender().mend(blocks);
  EXPECT_TRUE(blocks.back().text.starts_with("THE CAKE. The cake."));
}

TEST(Mending, TellsWhatCouldNotBeReadOnlyInADamagedBook) {
  std::string bad;
  for (int i = 0; i < 40; ++i) bad += "Tbe sngar aud thc eggs witb flonr iu tlie ovcn; ";
  bad += "then xqzvk it.";
  auto blocks = book_with(bad, 2);
  const Mending told = mender().mend(blocks);
  EXPECT_GT(told.scan, 0.005);
  EXPECT_GT(told.mended, 200u);
}

TEST(Mending, IsBoundedOnAbsurdWords) {
  std::vector<Block> blocks = {block(std::string(500'000, 'f')), block(std::string(39, 'f')), block("")};
  std::string many;
  for (int i = 0; i < 2000; ++i) many += "rnrn" + std::to_string(i % 7) + "cl ";
  blocks.push_back(block(many));
  mender().mend(blocks);
  EXPECT_EQ(blocks[0].text.size(), 500'000u);
}

TEST(MendingTables, EveryRowIsUsable) {
  const auto confusions = load_table("confusions");
  ASSERT_TRUE(confusions.has_value());
  for (const auto& row : confusions->rows) {
    EXPECT_NE(confusions->cell(row, "printed"), confusions->cell(row, "misread")) << "line " << row.line;
    EXPECT_FALSE(confusions->cell(row, "misread").empty()) << "line " << row.line;
  }
  const auto words = load_table("known-words");
  ASSERT_TRUE(words.has_value());
  for (const auto& row : words->rows)
    for (const auto word : parts_of(words->cell(row, "words")))
      for (const char c : word) EXPECT_TRUE(c >= 'a' && c <= 'z') << word;
}

}  // namespace
}  // namespace gallipot
