// What books say of their measures, kept in the index: through codec, merging, replacing, shards and other machines.
#include "indexer/storing/statements.h"

#include "indexer/storing/manifest.h"
#include "indexer/storing/schema.h"
#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

std::vector<Statement> some() {
  return {{"larch", "12", 300, "cup", "flour", {0.25, 0.25}, "pound", "four cups of flour are a pound"},
          {"larch", "", 40, "egg", "", {0.1, 0.125}, "pound", "8 or 10 eggs weigh a pound"},
          {"larch", "xii", 41, "candy height", "sugar", {0, 0}, "", "at candy height it flies like flakes"}};
}

TEST(StatementBytes, ComeBackAsTheyWere) {
  const auto all = some();
  const auto back = decode_statements(encode(all), "larch");
  ASSERT_TRUE(back.has_value()) << told(back);
  ASSERT_EQ(back->size(), all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Statement &a = all[i], &b = (*back)[i];
    EXPECT_EQ(std::tie(a.book, a.page, a.line, a.measure, a.of, a.unit, a.quote),
              std::tie(b.book, b.page, b.line, b.measure, b.of, b.unit, b.quote));
    EXPECT_EQ(a.equals, b.equals);
  }
}

TEST(StatementBytes, CutShortAreAFault) {
  const auto bytes = encode(some());
  for (std::size_t n = 0; n < bytes.size(); ++n)
    EXPECT_FALSE(decode_statements(bytes.substr(0, n), "larch").has_value()) << n;
  EXPECT_FALSE(decode_statements(bytes + "x", "larch").has_value());
}

class StoredStatements : public ShelfTest {
 protected:
  /// A book that says what its teacup holds.
  Book speaking(const std::string& id, const std::string& holds, unsigned recipes = 4) const {
    Book out = book(id, recipes);
    auto html = read(id + ".htm");
    html.insert(html.find("<h2>"), "<p>A common tea-cup holds " + holds + ".</p>\n");
    write(id + ".htm", html);
    return out;
  }
  std::string said() const {
    const auto shelf = Shelf::open(index());
    EXPECT_TRUE(shelf.has_value()) << told(shelf);
    std::string out;
    const auto all = shelf->statements();
    EXPECT_TRUE(all.has_value()) << told(all);
    for (const auto& s : *all) out += s.book + ": " + s.quote + "\n";
    EXPECT_EQ(shelf->statement_count(), all->size());
    EXPECT_EQ(findings(shelf), "");
    return out;
  }
};

TEST_F(StoredStatements, GoWithTheirBookAndStayWithTheOthers) {
  ASSERT_TRUE(build({speaking("larch", "a gill"), speaking("alder", "half a pint"), book("rowan", 3)}));
  EXPECT_EQ(said(), "larch: A common tea-cup holds a gill\nalder: A common tea-cup holds half a pint\n");
  ASSERT_TRUE(build({speaking("larch", "a gill and a half")}));
  EXPECT_EQ(said(), "larch: A common tea-cup holds a gill and a half\nalder: A common tea-cup holds half a pint\n");
  ASSERT_TRUE(build({book("larch", 5)}));
  EXPECT_EQ(said(), "alder: A common tea-cup holds half a pint\n");
  ASSERT_TRUE(build({speaking("larch", "a gill")}));
  EXPECT_EQ(said(), "larch: A common tea-cup holds a gill\nalder: A common tea-cup holds half a pint\n");
}

TEST_F(StoredStatements, AreCountedInTheReport) {
  const auto report = build({speaking("larch", "a gill"), book("rowan", 3)});
  ASSERT_TRUE(report.has_value()) << told(report);
  EXPECT_EQ(report->books[0].statements, 1u);
  EXPECT_EQ(report->books[1].statements, 0u);
}

TEST_F(StoredStatements, LieInShardsAndOnOtherMachinesAsWell) {
  BuildOptions options;
  options.merge = false;
  options.threads = 2;
  options.shard_recipes = 3;
  ASSERT_TRUE(build({speaking("larch", "a gill", 10), speaking("alder", "half a pint", 10)}, options));
  const auto local = said();
  EXPECT_EQ(local, "larch: A common tea-cup holds a gill\nalder: A common tea-cup holds half a pint\n");
  const fs::path server = "/usr/bin/xapian-progsrv";
  if (!fs::exists(server)) GTEST_SKIP() << "Xapian's remote server is not installed";
  std::string stub;
  for (const auto& name : names_in(path("index/generation-1")))
    if (name.starts_with("shard")) stub += "remote :" + server.string() + " " + path("elsewhere/" + name) + "\n";
  fs::rename(path("index/generation-1"), path("elsewhere"));
  write("index/generation-1", stub);
  EXPECT_EQ(said(), local);
}

TEST_F(StoredStatements, AreMetByNoQueryForRecipes) {
  ASSERT_TRUE(build({speaking("larch", "a gill", 4)}));
  const auto shelf = Shelf::open(index());
  Xapian::Enquire enquire(shelf->database());
  enquire.set_query(Xapian::Query(schema::term(schema::book, "larch")));
  EXPECT_EQ(enquire.get_mset(0, 100).size(), 4u);
  EXPECT_EQ(exported(*shelf).size(), 4u);
}

TEST_F(StoredStatements, CheckFindsThemGarbledTwiceOrMissing) {
  const auto damage = [&](const std::function<void(Xapian::WritableDatabase&, Xapian::docid)>& work) {
    fs::remove_all(index());
    EXPECT_TRUE(build({speaking("larch", "a gill")}));
    Xapian::WritableDatabase database(path("index/generation-1"), Xapian::DB_OPEN);
    work(database, *database.postlist_begin(schema::term(schema::statements, "larch")));
    database.commit();
    database.close();
    return findings(Shelf::open(index()));
  };
  const auto garbled = damage([](auto& database, Xapian::docid at) {
    auto document = database.get_document(at);
    document.set_data(document.get_data().substr(0, 5));
    database.replace_document(at, document);
  });
  EXPECT_NE(garbled.find("garbled"), std::string::npos) << garbled;
  const auto twice = damage([](auto& database, Xapian::docid at) { database.add_document(database.get_document(at)); });
  EXPECT_NE(twice.find("there twice"), std::string::npos) << twice;
  const auto missing = damage([](auto& database, Xapian::docid at) { database.delete_document(at); });
  EXPECT_NE(missing.find("1 statements on measures by the manifest and 0 in the database"), std::string::npos)
      << missing;
}

}  // namespace
}  // namespace gallipot
