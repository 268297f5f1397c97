// The reading room without a socket: who may ask, what may be written, and that print stays print.
#include "tools/reading_room/room.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"
#include "query/dossier/keep.h"
#include "tools/reading_room/guard.h"
#include "tools/reading_room/visit.h"

namespace gallipot::room {
namespace {

namespace fs = std::filesystem;

/// A book that would like to be a page: every sign of HTML, in title, words, contributor and chapter.
constexpr const char* hostile =
    "<html><head><title>Hostile</title></head><body><h1>RECEIPTS</h1>\n"
    "<h2>OF &lt;script&gt;alert(1)&lt;/script&gt; SAUCES</h2>\n"
    "<h3>DAMSON CATSUP &lt;img src=x onerror=alert(2)&gt; \"WITH\" 'SIGNS'</h3>\n"
    "<p>Take two pounds of damsons &lt;/p&gt;&lt;script&gt;alert(3)&lt;/script&gt;, an ounce of ginger &amp;amp; half "
    "a pint "
    "of vinegar. Boil them for twenty minutes {{secret}} and strain the whole.</p>\n"
    "<h3>PLUM SOY</h3><p>Take one pound of plums and a pint of vinegar. Boil for an hour, then bottle it.</p>\n"
    "</body></html>\n";

class ReadingRoom : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    home_ = fs::temp_directory_path() / ("gallipot-room-" + std::to_string(::getpid()));
    fs::create_directories(home_);
    const auto lexicon = Lexicon::load().value();
    auto books = read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json").value();
    std::ofstream(home_ / "hostile.htm") << hostile;
    Book bad;
    bad.id = "hostile-1850";
    bad.file = "hostile.htm";
    bad.path = (home_ / "hostile.htm").string();
    bad.title = "<b>Bold</b> & \"Quoted\"</title><script>alert(4)</script>";
    bad.creator = "<i>Nobody</i>";
    bad.date = "1850";
    bad.years = Years{1850, 1850};
    books.push_back(bad);
    ASSERT_TRUE(build_index(books, (home_ / "shelf").string(), *lexicon).has_value());
  }
  static void TearDownTestSuite() { fs::remove_all(home_); }

  void SetUp() override {
    for (const auto& entry : fs::directory_iterator(home_)) {
      const std::string name = entry.path().filename().string();
      if (name != "shelf" && name != "hostile.htm") fs::remove_all(entry.path());
    }
    room_ = open({});
  }

  std::unique_ptr<Room> open(const std::string& token) const {
    RoomOptions options;
    options.index = (home_ / "shelf").string();
    options.token = token;
    options.catalogue = std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json";
    return Room::open(options).value();
  }

  static Request get(const std::string& path, Pairs query = {}) {
    Request out;
    out.path = path;
    out.query = std::move(query);
    out.host = "127.0.0.1:8461";
    return out;
  }
  Request post(const std::string& path, Pairs form) const {
    Request out = get(path);
    out.method = "POST";
    out.form = std::move(form);
    out.form.emplace_back("secret", room_->secret());
    out.origin = "http://127.0.0.1:8461";
    out.site = "same-origin";
    return out;
  }
  std::string location(const Answer& answer) const {
    for (const auto& [name, value] : answer.headers)
      if (name == "Location") return value;
    return {};
  }
  void wait_until_idle() const {
    for (int i = 0; i < 600 && room_->indexing().busy(); ++i)
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
    ASSERT_FALSE(room_->indexing().busy());
  }
  static bool has(const Answer& answer, std::string_view words) { return answer.body.find(words) != std::string::npos; }

  static inline fs::path home_;
  std::unique_ptr<Room> room_;
};

TEST_F(ReadingRoom, EveryPageAnswersWithTheGuardingHeaders) {
  const std::vector<Request> pages = {get("/"),
                                      get("/shelf"),
                                      get("/book", {{"id", "oldacre-1838"}}),
                                      get("/search"),
                                      get("/search", {{"dish", "damson catsup"}}),
                                      get("/recipe", {{"id", "oldacre-1838/0019"}}),
                                      get("/variants", {{"of", "oldacre-1838/0019"}}),
                                      get("/variants", {{"dish", "damson catsup"}}),
                                      get("/comparison", {{"id", "oldacre-1838/0019"}, {"id", "wimbrell-1752/0017"}}),
                                      get("/measures"),
                                      get("/measures", {{"measure", "teacup"}, {"year", "1850"}, {"country", "GB"}}),
                                      get("/dossiers"),
                                      get("/corrections"),
                                      get("/api"),
                                      get("/gallipot.css"),
                                      get("/room.js")};
  for (const Request& page : pages) {
    const Answer answer = room_->answer(page);
    EXPECT_EQ(answer.status, 200) << page.path << answer.body;
    bool policy = false;
    for (const auto& [name, value] : answer.headers)
      if (name == "Content-Security-Policy") {
        policy = true;
        EXPECT_EQ(value.find("unsafe"), std::string::npos);
        EXPECT_NE(value.find("default-src 'none'"), std::string::npos);
      }
    EXPECT_TRUE(policy) << page.path;
    EXPECT_FALSE(has(answer, " style=")) << page.path << ": the policy allows no inline style";
    EXPECT_FALSE(has(answer, "http://www.") || has(answer, "https://")) << page.path << ": something from elsewhere";
  }
}

TEST_F(ReadingRoom, OnlyOurOwnHostIsAnswered) {
  for (const char* host : {"127.0.0.1:8461", "localhost:8461", "localhost", "[::1]:8461"}) {
    Request asked = get("/");
    asked.host = host;
    EXPECT_EQ(room_->answer(asked).status, 200) << host;
  }
  for (const char* host :
       {"", "evil.example", "evil.example:8461", "127.0.0.1.evil.example", "localhost.evil.example", "10.0.0.7"}) {
    Request asked = get("/");
    asked.host = host;
    EXPECT_EQ(room_->answer(asked).status, 403) << host;
  }
}

TEST_F(ReadingRoom, AWriteMustComeFromAPageOfOurs) {
  const Pairs form = {{"title", "Damsons"}};
  EXPECT_EQ(room_->answer(post("/write/dossier", form)).status, 303);
  Request other = post("/write/dossier", form);
  other.origin = "http://evil.example";
  EXPECT_EQ(room_->answer(other).status, 403);
  other = post("/write/dossier", form);
  other.site = "cross-site";
  EXPECT_EQ(room_->answer(other).status, 403);
  other = post("/write/dossier", form);
  other.form.back().second[0] = other.form.back().second[0] == 'a' ? 'b' : 'a';
  EXPECT_EQ(room_->answer(other).status, 403);
  other = post("/write/dossier", form);
  other.form.pop_back();
  EXPECT_EQ(room_->answer(other).status, 403);
  Request read = get("/write/dossier", {{"title", "x"}, {"secret", room_->secret()}});
  EXPECT_EQ(room_->answer(read).status, 404) << "nothing is written by GET";
  EXPECT_EQ(list_dossiers(room_->options().dossiers).size(), 1U);
}

TEST_F(ReadingRoom, ARoomOpenToOthersWantsItsToken) {
  room_ = open("a-long-enough-token");
  Request asked = get("/");
  asked.host = "192.168.1.20:8461";
  EXPECT_EQ(room_->answer(asked).status, 403);
  asked.query = {{"token", "a-long-enough-tokem"}};
  EXPECT_EQ(room_->answer(asked).status, 403);
  asked.query = {{"token", "a-long-enough-token"}};
  const Answer in = room_->answer(asked);
  EXPECT_EQ(in.status, 303);
  std::string cookie;
  for (const auto& [name, value] : in.headers)
    if (name == "Set-Cookie") cookie = value;
  EXPECT_NE(cookie.find("HttpOnly"), std::string::npos);
  EXPECT_NE(cookie.find("SameSite=Strict"), std::string::npos);
  asked.query.clear();
  asked.cookie = "other=1; gallipot_token=a-long-enough-token";
  EXPECT_EQ(room_->answer(asked).status, 200);
  asked.cookie.clear();
  asked.authorization = "Bearer a-long-enough-token";
  EXPECT_EQ(room_->answer(asked).status, 200);
  asked.host = "evil.example:8461";
  EXPECT_EQ(room_->answer(asked).status, 403) << "a name is no address";
}

TEST_F(ReadingRoom, PrintStaysPrint) {
  const std::vector<Request> pages = {get("/shelf"),
                                      get("/book", {{"id", "hostile-1850"}}),
                                      get("/search", {{"dish", "damson catsup"}, {"book", "hostile-1850"}}),
                                      get("/recipe", {{"id", "hostile-1850/0001"}}),
                                      get("/variants", {{"of", "hostile-1850/0001"}}),
                                      get("/comparison", {{"id", "hostile-1850/0001"}, {"id", "hostile-1850/0002"}}),
                                      get("/search", {{"dish", "<script>alert(5)</script>"}}),
                                      get("/search", {{"dish", "damson"}, {"with", "<script>alert(6)</script>"}}),
                                      get("/recipe", {{"id", "<script>alert(7)</script>"}}),
                                      get("/dossier", {{"name", "<script>alert(8)</script>"}}),
                                      get("/<script>alert(9)</script>")};
  for (const Request& page : pages) {
    const Answer answer = room_->answer(page);
    EXPECT_FALSE(has(answer, "<script>alert")) << page.path << answer.body;
    EXPECT_FALSE(has(answer, "<img src=x")) << page.path;
    EXPECT_FALSE(has(answer, "<i>Nobody")) << page.path;
    EXPECT_FALSE(has(answer, "<b>Bold")) << page.path;
  }
  const Answer recipe = room_->answer(get("/recipe", {{"id", "hostile-1850/0001"}}));
  EXPECT_EQ(recipe.status, 200);
  EXPECT_TRUE(has(recipe, "{{secret}}")) << "print is not a template";
  EXPECT_TRUE(has(recipe, "&lt;script&gt;alert(3)"));
}

TEST_F(ReadingRoom, NoAddressLeadsToAFile) {
  for (const char* path : {"/../../etc/passwd", "/gallipot.css/../../x", "/room_frame.mustache",
                           "/%2e%2e/%2e%2e/etc/passwd", "//etc/passwd"})
    EXPECT_EQ(room_->answer(get(path)).status, 404) << path;
  std::ofstream(home_ / "outside.dossier.json") << R"({"gallipot":"dossier","version":1,"title":"Outside"})";
  for (const char* name : {"../outside", "..%2foutside", "/etc/passwd", "outside\n"}) {
    EXPECT_EQ(room_->answer(get("/dossier", {{"name", name}})).status, 404) << name;
    EXPECT_EQ(room_->answer(get("/dossier/export", {{"name", name}, {"as", "json"}})).status, 404) << name;
  }
  Request upload = post("/write/book", {{"title", "T"}, {"id", "../escaped"}});
  upload.uploads["file"] = {"book.txt", "SOUP.\n\nTake an onion and boil it for an hour in water.\n"};
  EXPECT_EQ(room_->answer(upload).status, 400);
  upload = post("/write/book", {{"title", "T"}, {"id", "fine"}});
  upload.uploads["file"] = {"../../book.sh", "x"};
  EXPECT_EQ(room_->answer(upload).status, 400);
  EXPECT_FALSE(fs::exists(home_ / "escaped.txt"));
}

TEST_F(ReadingRoom, FromSearchToExportedDossier) {
  const Answer found = room_->answer(get("/search", {{"dish", "damson catsup"}}));
  EXPECT_TRUE(has(found, "wimbrell-1752/0017"));
  const Answer kept = room_->answer(post("/write/set", {{"do", "keep"},
                                                        {"title", "Damson Catsup"},
                                                        {"id", "wimbrell-1752/0017"},
                                                        {"reason wimbrell-1752/0017", "named damson catsup"},
                                                        {"reason pellowe-1884/0014", "made of damson"},
                                                        {"by_hand", "oldacre-1838/0019"}}));
  ASSERT_EQ(kept.status, 303) << kept.body;
  EXPECT_EQ(location(kept), "/dossier?name=damson-catsup#recipes");
  const auto dossier = open_dossier(room_->options().dossiers, "damson-catsup").value();
  ASSERT_EQ(dossier.recipes.size(), 3U);
  EXPECT_EQ(dossier.recipe("pellowe-1884/0014")->standing, DossierRecipe::Standing::struck);
  EXPECT_TRUE(dossier.recipe("oldacre-1838/0019")->by_hand);
  EXPECT_FALSE(dossier.recipe("wimbrell-1752/0017")->citation.empty());
  EXPECT_EQ(room_
                ->answer(post("/write/dossier-recipe", {{"dossier", "damson-catsup"},
                                                        {"id", "wimbrell-1752/0017"},
                                                        {"standing", "chosen"},
                                                        {"note", "The oldest <em>of all</em>"},
                                                        {"caption", "Kept seven years"}}))
                .status,
            303);
  EXPECT_EQ(
      room_
          ->answer(post("/write/trial", {{"dossier", "damson-catsup"}, {"of", "wimbrell-1752/0017"}, {"batch", "1/4"}}))
          .status,
      303);
  EXPECT_EQ(room_
                ->answer(post("/write/trial", {{"dossier", "damson-catsup"},
                                               {"of", "wimbrell-1752/0017"},
                                               {"changes", "turn the ginger down by a third"}}))
                .status,
            303);
  EXPECT_EQ(room_
                ->answer(post(
                    "/write/trial-words",
                    {{"dossier", "damson-catsup"}, {"number", "2"}, {"tasting", "Rounder"}, {"verdict", "This one"}}))
                .status,
            303);
  EXPECT_EQ(room_
                ->answer(post("/write/dossier-decision",
                              {{"dossier", "damson-catsup"}, {"about", "damsons"}, {"words", "sloes will do"}}))
                .status,
            303);
  const auto after = open_dossier(room_->options().dossiers, "damson-catsup").value();
  ASSERT_EQ(after.trials.size(), 2U);
  const auto ginger = [&](const Trial& trial) {
    for (const TrialAmount& one : trial.amounts)
      if (one.stuff == "ginger") return one.amount.value_or(-1);
    return -2.0;
  };
  EXPECT_NEAR(ginger(after.trials[1]), ginger(after.trials[0]) * 2 / 3, 1e-3);
  const Answer page = room_->answer(get("/dossier", {{"name", "damson-catsup"}}));
  EXPECT_EQ(page.status, 200);
  EXPECT_TRUE(has(page, "The oldest &lt;em&gt;of all&lt;/em&gt;"));
  EXPECT_TRUE(has(page, "Rounder"));
  for (const char* form : {"html", "markdown", "csl", "bibtex", "ris", "csv", "json"}) {
    const Answer file = room_->answer(get("/dossier/export", {{"name", "damson-catsup"}, {"as", form}}));
    EXPECT_EQ(file.status, 200) << form << file.body;
    EXPECT_FALSE(file.body.empty()) << form;
  }
  EXPECT_EQ(room_->answer(get("/dossier/export", {{"name", "damson-catsup"}, {"as", "word"}})).status, 400);
}

TEST_F(ReadingRoom, ACorrectionShowsAtOnceAndIsSearchedByAfterwards) {
  const std::string id = "oldacre-1838/0019";
  const Answer before = room_->answer(get("/api/recipe", {{"id", id}}));
  ASSERT_TRUE(has(before, "\"name\":\"ginger\"")) << before.body;
  const auto shelf = Shelf::open(room_->options().index).value();
  const auto recipe = shelf.recipe(id).value();
  std::string printed;
  for (const auto& one : recipe.ingredients)
    if (one.printed.name == "ginger") printed = std::string(one.printed.span.in(recipe.recipe.text));
  const Answer done = room_->answer(
      post("/write/correction",
           {{"id", id}, {"kind", "ingredient"}, {"printed", printed}, {"name", "turmeric"}, {"was", "ginger"}}));
  ASSERT_EQ(done.status, 303) << done.body;
  const Answer page = room_->answer(get("/recipe", {{"id", id}}));
  EXPECT_TRUE(has(page, "Corrected:"));
  EXPECT_TRUE(has(page, "turmeric"));
  EXPECT_FALSE(has(room_->answer(get("/api/recipe", {{"id", id}})), "\"name\":\"ginger\""));
  wait_until_idle();
  const Answer found = room_->answer(get("/search", {{"dish", "plum catsup"}, {"with", "turmeric"}}));
  EXPECT_TRUE(has(found, id)) << "searched by what it was corrected to";
  EXPECT_EQ(room_->answer(post("/write/withdrawal", {{"number", "1"}, {"id", id}})).status, 303);
  wait_until_idle();
  EXPECT_TRUE(has(room_->answer(get("/api/recipe", {{"id", id}})), "\"name\":\"ginger\""));
  EXPECT_FALSE(has(room_->answer(get("/search", {{"dish", "plum catsup"}, {"with", "turmeric"}})), id));
}

TEST_F(ReadingRoom, AWrongCutIsPutRightFromTheBooksOwnFile) {
  const std::string id = "oldacre-1838/0002";
  ASSERT_EQ(room_->answer(get("/recipe", {{"id", id}})).status, 200);
  const Answer done = room_->answer(post("/write/correction", {{"id", id}, {"kind", "no recipe"}}));
  ASSERT_EQ(done.status, 303) << done.body;
  EXPECT_EQ(location(done), "/corrections");
  wait_until_idle();
  EXPECT_EQ(room_->answer(get("/recipe", {{"id", id}})).status, 404);
  EXPECT_EQ(room_->answer(get("/recipe", {{"id", "oldacre-1838/0003"}})).status, 200);
  EXPECT_EQ(room_->answer(post("/write/withdrawal", {{"number", "1"}})).status, 303);
  wait_until_idle();
  EXPECT_EQ(room_->answer(get("/recipe", {{"id", id}})).status, 200);
}

TEST_F(ReadingRoom, ABookIsAddedWhileItIsRead) {
  Request upload =
      post("/write/book",
           {{"title", "The Tidy Pantry"}, {"creator", "Prudence Rillock"}, {"date", "1871"}, {"country", "GB"}});
  std::string text = "THE TIDY PANTRY\n\n\n";
  for (int i = 1; i <= 12; ++i)
    text +=
        "QUINCE JELLY, No. " + std::to_string(i) +
        ".\n\nTake four pounds of quinces and three pounds of sugar. Boil them for an hour, strain, and pot it.\n\n\n";
  upload.uploads["file"] = {"tidy.txt", text};
  const Answer added = room_->answer(upload);
  ASSERT_EQ(added.status, 303) << added.body;
  EXPECT_EQ(room_->answer(get("/search", {{"dish", "damson catsup"}})).status, 200) << "readers are not kept waiting";
  wait_until_idle();
  const Answer shelf = room_->answer(get("/shelf"));
  EXPECT_TRUE(has(shelf, "The Tidy Pantry"));
  EXPECT_TRUE(has(shelf, "done"));
  EXPECT_TRUE(
      has(room_->answer(get("/search", {{"dish", "quince jelly"}, {"book", "rillock-1871"}})), "rillock-1871/"));
  const Answer again = room_->answer(upload);
  EXPECT_EQ(again.status, 400) << "an id is given once";
  Request wrong = post("/write/book", {{"title", "T"}, {"date", "long ago"}, {"id", "other"}});
  wrong.uploads["file"] = {"tidy.txt", text};
  EXPECT_EQ(room_->answer(wrong).status, 400);
}

TEST_F(ReadingRoom, FaultsSayWhatToDo) {
  const Answer stuff = room_->answer(get("/search", {{"dish", "damson"}, {"with", "granite"}}));
  EXPECT_EQ(stuff.status, 400);
  EXPECT_TRUE(has(stuff, "No ingredient is known as"));
  EXPECT_EQ(room_->answer(get("/search", {{"dish", "damson"}, {"from", "early"}})).status, 400);
  EXPECT_EQ(room_->answer(get("/recipe", {{"id", "oldacre-1838/9999"}})).status, 404);
  const Answer json = room_->answer(get("/api/recipe", {{"id", "none"}}));
  EXPECT_EQ(json.status, 404);
  EXPECT_TRUE(has(json, "\"fault\"") && has(json, "\"mend\""));
  const Answer misspelt = room_->answer(get("/search", {{"dish", "damsen catsup"}}));
  EXPECT_TRUE(has(misspelt, "Did you mean"));
  EXPECT_FALSE(has(stuff, home_.string())) << "no path of this machine on a page";
}

TEST_F(ReadingRoom, AnEmptyShelfSaysWhatToDoNext) {
  RoomOptions options;
  options.index = (home_ / "empty").string();
  room_ = Room::open(options).value();
  EXPECT_TRUE(has(room_->answer(get("/")), "The shelf is empty"));
  EXPECT_TRUE(has(room_->answer(get("/shelf")), "No book stands here yet"));
  EXPECT_EQ(room_->answer(get("/search", {{"dish", "soup"}})).status, 503);
  EXPECT_TRUE(has(room_->answer(get("/dossiers")), "No dossier yet"));
}

TEST_F(ReadingRoom, ManyReadersAtOnceWhileABookIsIndexed) {
  std::atomic<int> wrong{0};
  room_->indexing().renew("oldacre-1838", false);
  {
    std::vector<std::jthread> readers;
    for (int r = 0; r < 8; ++r)
      readers.emplace_back([&, r] {
        for (int i = 0; i < 6; ++i) {
          const Answer answer =
              room_->answer(i % 2 == 0 ? get("/search", {{"dish", "damson catsup"}})
                                       : get("/recipe", {{"id", "oldacre-1838/000" + std::to_string(1 + r)}}));
          if (answer.status != 200) ++wrong;
        }
      });
  }
  EXPECT_EQ(wrong, 0);
  wait_until_idle();
}

TEST(CooksNumbers, AsCooksWriteThem) {
  EXPECT_EQ(cooks_number("3"), 3);
  EXPECT_EQ(cooks_number("1/4"), 0.25);
  EXPECT_EQ(cooks_number("1 1/2"), 1.5);
  EXPECT_EQ(cooks_number("0,5"), 0.5);
  for (const char* wrong : {"", "x", "1/0", "-1", "1e99", "1/2/3", "nan", "inf"})
    EXPECT_FALSE(cooks_number(wrong).has_value()) << wrong;
}

TEST(Addresses, AreEscaped) {
  EXPECT_EQ(address("/search", {{"dish", "plum & \"jam\"?"}, {"from", ""}}), "/search?dish=plum%20%26%20%22jam%22%3F");
  EXPECT_EQ(in_address("é"), "%C3%A9");
}

}  // namespace
}  // namespace gallipot::room
