// Indexing: whole books or nothing, the same whatever the threads, and the old index untouched when it fails.
#include "indexer/storing/build.h"

#include <gtest/gtest.h>

#include <set>

#include "indexer/storing/schema.h"
#include "indexer/storing/site.h"
#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;
using testing::Test;

class Build : public ShelfTest {};

TEST_F(Build, StoresEveryRecipeInShelfOrder) {
  const auto report = build({book("larch", 30), book("alder", 12)});
  ASSERT_TRUE(report.has_value()) << told(report);
  EXPECT_EQ(report->recipes, 42u);
  ASSERT_EQ(report->books.size(), 2u);
  EXPECT_EQ(report->books[0].book, "larch");
  EXPECT_EQ(report->books[0].format, "html");
  EXPECT_GT(report->books[0].ingredients, 30u);
  EXPECT_EQ(report->bytes, fs::file_size(path("larch.htm")) + fs::file_size(path("alder.htm")));

  const auto shelf = Shelf::open(index());
  ASSERT_TRUE(shelf.has_value()) << told(shelf);
  EXPECT_EQ(shelf->recipe_count(), 42u);
  EXPECT_EQ(shelf->fingerprint(), lexicon().fingerprint());
  EXPECT_EQ(findings(shelf), "");
  std::vector<std::string> ids;
  ASSERT_TRUE(shelf->each([&](const ComparableRecipe& r) {
    ids.push_back(r.id);
    return true;
  }));
  ASSERT_EQ(ids.size(), 42u);
  EXPECT_EQ(ids[0], "larch/0001");
  EXPECT_EQ(ids[29], "larch/0030");
  EXPECT_EQ(ids[30], "alder/0001");
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"generation-1", "shelf.json", "writing.lock"}));
}

TEST_F(Build, IsTheSameWhateverTheThreadsAndShards) {
  std::vector<Book> books;
  for (const unsigned n : {3u, 150u, 40u, 1u, 90u}) books.push_back(book("book-" + std::to_string(n), n));
  BuildOptions options;
  options.threads = 1;
  ASSERT_TRUE(build(books, options));
  const auto one = exported();
  EXPECT_EQ(one.size(), 284u);
  for (const bool merge : {true, false}) {
    options.threads = 4;
    options.shard_recipes = 17;
    options.merge = merge;
    fs::remove_all(index());
    ASSERT_TRUE(build(books, options));
    EXPECT_EQ(exported(), one) << "merge " << merge;
    EXPECT_EQ(findings(Shelf::open(index())), "");
  }
}

TEST_F(Build, AgreesWithReadRecipes) {
  const auto larch = book("larch", 20);
  ASSERT_TRUE(build({book("alder", 2), larch}));
  BookReport report;
  const auto recipes = read_recipes(larch, 1, lexicon(), measures(), &report);
  ASSERT_TRUE(recipes.has_value());
  EXPECT_EQ(report.recipes, 20u);
  const auto lines = exported();
  ASSERT_EQ(lines.size(), 22u);
  for (std::size_t i = 0; i < recipes->size(); ++i) EXPECT_EQ(export_line((*recipes)[i]), lines[i + 2]);
}

TEST_F(Build, ReplacesABookAndKeepsItsPlace) {
  ASSERT_TRUE(build({book("larch", 10), book("alder", 20), book("rowan", 5)}));
  const auto before = exported();
  for (const bool merge : {true, false}) {
    BuildOptions options;
    options.merge = merge;
    const auto report = build({book("alder", 8, "medlars"), book("aspen", 3)}, options);
    ASSERT_TRUE(report.has_value()) << told(report);
    const auto after = exported();
    ASSERT_EQ(after.size(), 10u + 8u + 5u + 3u);
    EXPECT_TRUE(std::equal(before.begin(), before.begin() + 10, after.begin()));
    EXPECT_NE(after[10].find("medlar"), std::string::npos);
    EXPECT_TRUE(std::equal(before.begin() + 30, before.end(), after.begin() + 18));
    EXPECT_NE(after[23].find("\"aspen/0001\""), std::string::npos);
    const auto shelf = Shelf::open(index());
    EXPECT_EQ(findings(shelf), "");
    EXPECT_EQ(shelf->books().size(), 4u);
    EXPECT_FALSE(shelf->docid_of("alder/0009"));
    EXPECT_EQ(names_in(index()).size(), 3u);
  }
}

TEST_F(Build, AddsToWhatIsThere) {
  ASSERT_TRUE(build({book("larch", 10)}));
  ASSERT_TRUE(build({book("alder", 20)}));
  const auto shelf = Shelf::open(index());
  ASSERT_TRUE(shelf.has_value());
  EXPECT_EQ(shelf->recipe_count(), 30u);
  EXPECT_EQ(findings(shelf), "");
  EXPECT_EQ(exported().size(), 30u);
}

TEST_F(Build, LeavesAReaderWhatItOpened) {
  ASSERT_TRUE(build({book("larch", 40)}));
  const auto reader = Shelf::open(index());
  const auto before = exported(*reader);
  ASSERT_TRUE(build({book("larch", 3, "medlars")}));
  EXPECT_EQ(exported(*reader), before);
  EXPECT_EQ(exported().size(), 3u);
}

TEST_F(Build, ReportsRefusedBooksAndIndexesTheOthers) {
  auto missing = book("missing", 3);
  fs::remove(missing.path);
  auto empty = book("empty", 3);
  write(empty.file, "");
  const auto report = build({missing, book("larch", 6), empty});
  ASSERT_TRUE(report.has_value()) << told(report);
  EXPECT_NE(report->books[0].refused.find("missing.htm"), std::string::npos) << report->books[0].refused;
  EXPECT_EQ(report->books[1].refused, "");
  EXPECT_NE(report->books[2].refused, "");
  const auto shelf = Shelf::open(index());
  ASSERT_EQ(shelf->books().size(), 1u);
  EXPECT_EQ(findings(shelf), "");
}

TEST_F(Build, KeepsTheOldBookWhereItsNewFileIsRefused) {
  auto larch = book("larch", 6);
  ASSERT_TRUE(build({larch, book("alder", 4)}));
  const auto before = exported();
  fs::remove(larch.path);
  ASSERT_TRUE(build({larch, book("alder", 4)}));
  EXPECT_EQ(exported(), before);
  EXPECT_EQ(findings(Shelf::open(index())), "");
}

TEST_F(Build, ChangesNothingWhereAllIsRefused) {
  ASSERT_TRUE(build({book("larch", 6)}));
  const auto manifest = read("index/shelf.json");
  const auto before = exported();
  auto alder = book("alder", 4);
  fs::remove(alder.path);
  const auto report = build({alder});
  EXPECT_NE(told(report).find("alder.htm"), std::string::npos) << told(report);
  EXPECT_EQ(read("index/shelf.json"), manifest);
  EXPECT_EQ(exported(), before);
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"generation-1", "shelf.json", "writing.lock"}));
}

TEST_F(Build, LeavesNoFolderBehindWhereNothingCouldBeIndexed) {
  auto alder = book("alder", 4);
  fs::remove(alder.path);
  EXPECT_FALSE(build({alder}));
  EXPECT_FALSE(fs::exists(index()));
}

TEST_F(Build, ClearsAwayWhatAnInterruptedRunLeft) {
  ASSERT_TRUE(build({book("larch", 6)}));
  const auto before = exported();
  write("index/building-2/shard-0-0/postlist.glass", "half written");
  write("index/generation-2/docdata.glass", "half written");
  write("index/notes.txt", "the user's own");
  EXPECT_EQ(exported(), before);  // a half-made generation is not seen
  ASSERT_TRUE(build({book("larch", 6)}));
  EXPECT_EQ(exported(), before);
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"generation-2", "notes.txt", "shelf.json", "writing.lock"}));
}

TEST_F(Build, RefusesAFolderOfOtherThings) {
  write("index/letters.txt", "not an index");
  const auto report = build({book("larch", 6)});
  EXPECT_NE(told(report).find("letters.txt"), std::string::npos) << told(report);
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"letters.txt"}));
  write("plain", "a file");
  EXPECT_NE(told(build_index({book("larch", 6)}, path("plain"), lexicon())).find("a file"), std::string::npos);
}

TEST_F(Build, RefusesASecondWriter) {
  ASSERT_TRUE(build({book("larch", 6)}));
  const auto before = exported();
  {
    const auto lock = take_writing_lock(index());
    ASSERT_TRUE(lock.has_value());
    EXPECT_NE(told(build({book("alder", 6)})).find("another run"), std::string::npos);
    EXPECT_EQ(exported(), before);
  }
  EXPECT_TRUE(build({book("alder", 6)}));
}

TEST_F(Build, RefusesAnIndexOfAnotherVersionOrDamaged) {
  ASSERT_TRUE(build({book("larch", 6)}));
  auto manifest = read("index/shelf.json");
  const auto ours = "\"schema\": " + std::to_string(schema::version);
  manifest.replace(manifest.find(ours), ours.size(), "\"schema\": 99");
  write("index/shelf.json", manifest);
  EXPECT_NE(told(build({book("larch", 6)})).find("schema 99"), std::string::npos);
  write("index/shelf.json", manifest.substr(0, manifest.size() / 2));
  EXPECT_NE(told(build({book("larch", 6)})).find("damaged"), std::string::npos);
  EXPECT_TRUE(fs::exists(path("index/generation-1")));
}

TEST_F(Build, RefusesNoBooksAndABookTwice) {
  EXPECT_NE(told(build({})).find("no book"), std::string::npos);
  EXPECT_NE(told(build({book("larch", 6), book("larch", 6)})).find("twice"), std::string::npos);
  EXPECT_FALSE(fs::exists(index()));
}

TEST_F(Build, TellsHowFarItIs) {
  std::vector<Book> books;
  for (unsigned i = 0; i < 12; ++i) books.push_back(book("book-" + std::to_string(i), 5));
  BuildOptions options;
  std::vector<Progress> told_of;
  options.progress = [&](const Progress& p) { told_of.push_back(p); };
  ASSERT_TRUE(build(books, options));
  ASSERT_FALSE(told_of.empty());
  EXPECT_EQ(told_of.back().books_done, 12u);
  EXPECT_EQ(told_of.back().books_all, 12u);
  EXPECT_EQ(told_of.back().recipes, 60u);
  EXPECT_EQ(told_of.back().bytes_done, told_of.back().bytes_all);
}

}  // namespace
}  // namespace gallipot
