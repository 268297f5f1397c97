// The lexicon as a whole: what a cook calls things leads to one name.
#include "indexer/lexicon/lexicon.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

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

TEST(Lexicon, CompoundsFollowByRule) {
  EXPECT_EQ(food("juice of raspberries"), "raspberry juice");
  EXPECT_EQ(food("quince marmalade"), "quince marmalade");
  EXPECT_EQ(food("damson cheese"), "damson cheese");
  EXPECT_EQ(food("pine-apple jelly"), "pineapple jelly");
  EXPECT_EQ(loaded()->foodstuff("raspberry juice")->base, "raspberry");
  EXPECT_EQ(food("juice of water"), "");
}

TEST(Lexicon, PartsAreReadApartFromTheirWhole) {
  std::uint32_t part = 0;
  const auto of = [&](std::string_view word, std::string_view whole) {
    if (!loaded()->part_phrases().find(word, part)) return std::string("no such part");
    const auto* made = loaded()->part_of(part, *loaded()->foodstuff(whole));
    return made ? made->name : std::string();
  };
  EXPECT_EQ(of("juice", "lemon"), "lemon juice");
  EXPECT_EQ(of("rinds", "orange"), "orange peel");
  EXPECT_EQ(of("yelks", "egg"), "egg yolk");
  EXPECT_EQ(of("whites", "egg"), "egg white");
  EXPECT_EQ(of("juice", "flour"), "");
  EXPECT_EQ(of("moonbeam", "egg"), "no such part");
}

TEST(Lexicon, APluralThatIsAThingOfItsOwnIsNoPlural) {
  EXPECT_EQ(food("greens"), "greens");
  EXPECT_EQ(food("green"), "");
  EXPECT_EQ(food("bitters"), "bitters");
  EXPECT_EQ(food("whites"), "egg white");
  EXPECT_EQ(food("peppers"), "green pepper");
  EXPECT_EQ(food("olives"), "olive");
}

TEST(Lexicon, UnknownNamesAreNull) {
  EXPECT_EQ(loaded()->foodstuff("moonstone"), nullptr);
  ASSERT_NE(loaded()->foodstuff("shallot"), nullptr);
  EXPECT_EQ(loaded()->foodstuff("shallot")->kind, "vegetable");
  EXPECT_EQ(loaded()->measure("moonstone"), nullptr);
}

/// A folder for one test's own tables, gone with it.
struct Folder {
  std::string path =
      (std::filesystem::path(testing::TempDir()) / testing::UnitTest::GetInstance()->current_test_info()->name())
          .string();
  Folder() { std::filesystem::create_directories(path); }
  ~Folder() { std::filesystem::remove_all(path); }
  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream(std::filesystem::path(path) / name, std::ios::binary) << bytes;
  }
};

TEST(Lexicon, OnesOwnTablesRuleAndChangeTheFingerprint) {
  const Folder folder;
  folder.write("foodstuffs.tsv",
               "name\tkind\tbase\tweak\tforms\tsource\nfrumenty wheat\tgrain\t\t0\tfurmity|cowcumber\tour house\n");
  const auto own = Lexicon::load(folder.path);
  ASSERT_TRUE(own.has_value()) << own.error().sentence();
  std::uint32_t i = 0;
  ASSERT_TRUE((*own)->foodstuff_phrases().find("cowcumbers", i));
  EXPECT_EQ((*own)->foodstuffs()[i].name, "frumenty wheat") << "a form in one's own table beats the built-in claim";
  EXPECT_NE((*own)->fingerprint(), loaded()->fingerprint());
  EXPECT_EQ(loaded()->fingerprint(), (*Lexicon::load())->fingerprint());
}

TEST(Lexicon, TellsWhatIsWrongWithATableOfOnesOwn) {
  const Folder folder;
  folder.write("compounds.tsv", "name\tkind\tof\tpatterns\tsource\nX tea\tdrink\therb\ttea of herbs\tour house\n");
  const auto bad = Lexicon::load(folder.path);
  ASSERT_FALSE(bad.has_value());
  EXPECT_NE(bad.error().sentence().find("compounds.tsv:2: the pattern \"tea of herbs\" has no X"), std::string::npos)
      << bad.error().sentence();
}

}  // namespace
}  // namespace gallipot
