// An open index: looking up, walking, checking, on one disk or over Xapian's remote protocol.
#include "indexer/storing/shelf.h"

#include <gtest/gtest.h>

#include "indexer/storing/manifest.h"
#include "indexer/storing/nearest.h"
#include "indexer/storing/schema.h"
#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

class OpenShelf : public ShelfTest {
 protected:
  /// The database of the index, to do damage to.
  Xapian::WritableDatabase writable() const {
    return Xapian::WritableDatabase(path("index/generation-1"), Xapian::DB_OPEN);
  }
};

TEST_F(OpenShelf, LooksUpByIdAndByDocument) {
  ASSERT_TRUE(build({book("larch", 12)}));
  const auto shelf = Shelf::open(index());
  const auto recipe = shelf->recipe("larch/0007");
  ASSERT_TRUE(recipe.has_value()) << told(recipe);
  EXPECT_EQ(recipe->id, "larch/0007");
  EXPECT_EQ(recipe->country, "GB");
  const auto docid = shelf->docid_of("larch/0007");
  ASSERT_TRUE(docid.has_value());
  EXPECT_EQ(shelf->id_of(*docid), "larch/0007");
  EXPECT_EQ(shelf->recipe(*docid)->recipe.title, recipe->recipe.title);
  EXPECT_FALSE(shelf->recipe(Xapian::docid{999}).has_value());
  ASSERT_NE(shelf->book("larch"), nullptr);
  EXPECT_EQ(shelf->book("larch")->year(), 1811);
  EXPECT_EQ(shelf->book("birch"), nullptr);
}

TEST_F(OpenShelf, NamesTheNearestRecipes) {
  ASSERT_TRUE(build({book("larch-1811", 12), book("alder-1790", 3)}));
  const auto shelf = Shelf::open(index());
  const auto mend = [&](const char* id) { return shelf->recipe(id).error().mend; };
  EXPECT_NE(mend("larch-1811/7").find("\"larch-1811/0007\""), std::string::npos) << mend("larch-1811/7");
  EXPECT_NE(mend("larch-1811/0099").find("\"larch-1811/0012\""), std::string::npos);
  EXPECT_NE(mend("larhc-1811/0002").find("\"larch-1811/0002\""), std::string::npos);
  EXPECT_NE(mend("alder-1790").find("\"alder-1790/0001\""), std::string::npos);
  EXPECT_NE(mend("walnut catsup of the north").find("named by its book and number"), std::string::npos);
}

TEST(Nearest, CountsSlipsOfThePen) {
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(edit_distance("larch", "larch"), 0u);
  EXPECT_EQ(edit_distance("larhc", "larch"), 1u);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("ca", "abc"), 3u);  // restricted: no edit inside a swap
}

TEST_F(OpenShelf, StopsWhenTheVisitorHasEnough) {
  ASSERT_TRUE(build({book("larch", 12)}));
  std::size_t seen = 0;
  const auto all = Shelf::open(index())->each([&](const ComparableRecipe&) { return ++seen < 5; });
  ASSERT_TRUE(all.has_value());
  EXPECT_FALSE(*all);
  EXPECT_EQ(seen, 5u);
}

TEST_F(OpenShelf, RefusesWhatIsNoIndex) {
  EXPECT_NE(told(Shelf::open(index())).find("no such folder"), std::string::npos);
  write("index/readme.txt", "nothing");
  EXPECT_NE(told(Shelf::open(index())).find("no index"), std::string::npos);
}

TEST_F(OpenShelf, RefusesAnotherVersion) {
  ASSERT_TRUE(build({book("larch", 3)}));
  auto manifest = read("index/shelf.json");
  const auto ours = "\"schema\": " + std::to_string(schema::version);
  manifest.replace(manifest.find(ours), ours.size(), "\"schema\": 99");
  write("index/shelf.json", manifest);
  const auto sentence = told(Shelf::open(index()));
  EXPECT_NE(sentence.find("schema 99"), std::string::npos) << sentence;
  EXPECT_NE(sentence.find("index the books again"), std::string::npos) << sentence;
}

TEST_F(OpenShelf, RefusesADamagedManifest) {
  ASSERT_TRUE(build({book("larch", 3)}));
  const auto whole = read("index/shelf.json");
  for (std::size_t n = 0; n + 2 < whole.size(); n += 7) {  // the last brace and line end may be missed
    write("index/shelf.json", whole.substr(0, n));
    ASSERT_NE(told(Shelf::open(index())).find("damaged"), std::string::npos) << n;
  }
  for (const auto& [from, to] :
       {std::pair{"\"generation\"", "\"generations\""}, std::pair{"\"recipes\": 3", "\"recipes\": -3"},
        std::pair{"generation-1", "../generation-1"}, std::pair{"\"id\"", "\"title\""}}) {
    auto changed = whole;
    changed.replace(changed.find(from), std::string(from).size(), to);
    write("index/shelf.json", changed);
    EXPECT_NE(told(Shelf::open(index())).find("damaged"), std::string::npos) << from;
  }
  write("index/shelf.json", whole.substr(0, 40) + "]" + whole.substr(40));
  EXPECT_NE(told(Shelf::open(index())).find("shelf.json:"), std::string::npos);  // and names the line
}

TEST_F(OpenShelf, FindsTheDatabaseGone) {
  ASSERT_TRUE(build({book("larch", 3)}));
  fs::remove_all(path("index/generation-1"));
  EXPECT_NE(told(Shelf::open(index())).find("index the books again"), std::string::npos);
}

TEST_F(OpenShelf, CheckFindsWhatIsMissingTwiceOrGarbled) {
  ASSERT_TRUE(build({book("larch", 12)}));
  {
    auto database = writable();
    const auto shelf = Shelf::open(index());
    auto twice = database.get_document(*shelf->docid_of("larch/0004"));
    database.add_document(twice);
    database.delete_document(*shelf->docid_of("larch/0009"));
    auto garbled = database.get_document(*shelf->docid_of("larch/0002"));
    garbled.set_data(garbled.get_data().substr(0, 30));
    database.replace_document(*shelf->docid_of("larch/0002"), garbled);
    database.commit();
  }
  const auto all = findings(Shelf::open(index()));
  EXPECT_NE(all.find("\"larch/0004\" is there twice"), std::string::npos) << all;
  EXPECT_NE(all.find("\"larch/0009\" is missing"), std::string::npos) << all;
  EXPECT_NE(all.find("garbled"), std::string::npos) << all;
}

TEST_F(OpenShelf, CheckFindsDamageOnDisk) {
  ASSERT_TRUE(build({book("larch", 200)}));
  ASSERT_EQ(findings(Shelf::open(index())), "");
  auto bytes = read("index/generation-1/postlist.glass");
  ASSERT_GT(bytes.size(), 3u * 8192);
  std::fill(bytes.begin() + 8192, bytes.begin() + 3 * 8192, '\xAA');
  write("index/generation-1/postlist.glass", bytes);
  EXPECT_NE(findings(Shelf::open(index())), "");
}

TEST_F(OpenShelf, ReadsAnIndexThatLiesElsewhere) {
  const fs::path server = "/usr/bin/xapian-progsrv";
  if (!fs::exists(server)) GTEST_SKIP() << "Xapian's remote server is not installed";
  BuildOptions options;
  options.merge = false;
  options.threads = 2;
  options.shard_recipes = 10;
  ASSERT_TRUE(build({book("larch", 30), book("alder", 9)}, options));
  const auto local = exported();
  std::string stub;
  for (const auto& name : names_in(path("index/generation-1")))
    if (name.starts_with("shard")) stub += "remote :" + server.string() + " " + path("elsewhere/" + name) + "\n";
  fs::rename(path("index/generation-1"), path("elsewhere"));
  write("index/generation-1", stub);

  const auto shelf = Shelf::open(index());
  ASSERT_TRUE(shelf.has_value()) << told(shelf);
  EXPECT_EQ(exported(*shelf), local);
  EXPECT_TRUE(shelf->recipe("alder/0009").has_value());
  EXPECT_EQ(findings(shelf), "");
  const auto sentence = told(build({book("rowan", 3)}));
  EXPECT_NE(sentence.find("other machines"), std::string::npos) << sentence;
  EXPECT_EQ(exported(), local);
}

TEST_F(OpenShelf, GivesTheTermsThatTheSchemaNames) {
  ASSERT_TRUE(build({book("larch", 12)}));
  const auto shelf = Shelf::open(index());
  const auto& database = shelf->database();
  for (const auto& [prefix, value] :
       {std::pair{schema::book, "larch"}, std::pair{schema::country, "GB"}, std::pair{schema::title, "jelli"},
        std::pair{schema::word, "bottl"}, std::pair{schema::word, "saffron"}, std::pair{schema::chapter, "preserv"},
        std::pair{schema::operation, "boil"}})
    EXPECT_GT(database.get_termfreq(schema::term(prefix, value)), 0u) << prefix << value;
  EXPECT_EQ(database.get_termfreq(schema::term(schema::word, "the")), 0u);
  EXPECT_EQ(database.get_termfreq(schema::term(schema::id, "larch/0001")), 1u);
}

}  // namespace
}  // namespace gallipot
