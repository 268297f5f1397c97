// Every row of the tables of comparing is sound, and a user's own rows lie over them.
#include "indexer/lexicon/tables.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

#include "indexer/lexicon/lexicon.h"
#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

const std::set<std::string_view> operations = {
    "wash",   "peel",  "pare",   "core", "stone",  "shell", "cut",   "chop",   "slice", "grate",  "pound",   "grind",
    "rub",    "sift",  "beat",   "whip", "cream",  "mix",   "stir",  "knead",  "roll",  "add",    "season",  "soak",
    "salt",   "stand", "pickle", "boil", "simmer", "stew",  "scald", "steam",  "fry",   "roast",  "broil",   "bake",
    "toast",  "melt",  "brown",  "skim", "strain", "sieve", "press", "reduce", "cool",  "freeze", "ferment", "fill",
    "bottle", "pot",   "cover",  "seal", "turn",   "lay",   "pour",  "dry",    "smoke", "glaze",  "garnish", "serve"};

TEST(Tables, LikenessIsOfOperationsThatTheSchemaKnows) {
  const auto table = load_table("operation-likeness");
  ASSERT_TRUE(table) << table.error().sentence();
  std::set<std::pair<std::string_view, std::string_view>> seen;
  for (const auto& row : table->rows) {
    EXPECT_TRUE(operations.contains(row.cells[0])) << row.cells[0];
    EXPECT_TRUE(operations.contains(row.cells[1])) << row.cells[1];
    EXPECT_NE(row.cells[0], row.cells[1]);
    EXPECT_TRUE(seen.insert(std::minmax(row.cells[0], row.cells[1])).second) << row.cells[0] << " " << row.cells[1];
  }
}

TEST(Tables, ASortIsNeverItselfAStuffOfAnother) {
  const auto table = load_table("sorts");
  ASSERT_TRUE(table) << table.error().sentence();
  std::set<std::string_view> sorts, stuffs;
  for (const auto& row : table->rows) {
    EXPECT_TRUE(sorts.insert(row.cells[0]).second) << row.cells[0];
    stuffs.insert(row.cells[1]);
  }
  for (const auto stuff : stuffs) EXPECT_FALSE(sorts.contains(stuff)) << stuff;
}

TEST(Tables, SortsComeUnderNamesThatTheLexiconGives) {
  const auto lexicon = Lexicon::load();
  ASSERT_TRUE(lexicon) << lexicon.error().sentence();
  const auto table = load_table("sorts");
  ASSERT_TRUE(table);
  for (const auto& row : table->rows) EXPECT_TRUE((*lexicon)->foodstuff(row.cells[1])) << row.cells[1];
}

TEST(Tables, LikenessIsTheSameBothWays) {
  const auto yardstick = bench::yardstick();
  EXPECT_EQ(yardstick.likeness("boil", "boil"), 1);
  EXPECT_GT(yardstick.likeness("simmer", "stew"), 0.5);
  EXPECT_EQ(yardstick.likeness("simmer", "stew"), yardstick.likeness("stew", "simmer"));
  EXPECT_EQ(yardstick.likeness("boil", "bottle"), 0);
}

TEST(Tables, AUsersOwnRowsLieOverTheBuiltInOnes) {
  const auto folder = std::filesystem::temp_directory_path() / "gallipot-comparing-tables";
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "sorts.tsv") << "sort\tstuff\tsource\nbullace\tdamson\tcommon practice\n";
  const auto own = Yardstick::load(Yardstick::Weigh(bench::weigh), folder.string());
  ASSERT_TRUE(own) << own.error().sentence();
  EXPECT_EQ(own->stuff("bullace"), "damson");
  EXPECT_EQ(own->stuff("brown sugar"), "sugar");
  std::ofstream(folder / "sorts.tsv");
  std::ofstream(folder / "yields.tsv")
      << "product\tfrom\tlow\tlikely\thigh\tdensity\tsource\njuice\tquince\t0.6\t0.5\t0.7\t1\tme\n";
  std::filesystem::remove(folder / "sorts.tsv");
  const auto wrong = Yardstick::load(Yardstick::Weigh(bench::weigh), folder.string());
  ASSERT_FALSE(wrong);
  EXPECT_NE(wrong.error().sentence().find("yields.tsv:2: the yield does not run"), std::string::npos)
      << wrong.error().sentence();
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace gallipot
