// The verb measure as its user runs it: answers, decisions made, heeded and forgotten, and what is told of bad input.
#include <gtest/gtest.h>
#include <rapidjson/document.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace gallipot {
namespace {

namespace fs = std::filesystem;

struct Ran {
  int exit = -1;
  std::string out, err;
};

class Measure : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = fs::temp_directory_path() / ("gallipot-measure-test-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
    const Ran built = run("index --catalogue '" GALLIPOT_SOURCE "/corpus-sample/books.json' --index '" + index() + "'");
    ASSERT_EQ(built.exit, 0) << built.err;
  }
  static void TearDownTestSuite() { fs::remove_all(folder_); }
  void TearDown() override { fs::remove(decisions()); }

  static std::string index() { return (folder_ / "shelf").string(); }
  static std::string decisions() { return index() + ".decisions.json"; }

  static Ran run(const std::string& arguments) {
    Ran out;
    const std::string err = (folder_ / "err").string();
    const std::string command =
        "env -u GALLIPOT_INDEX COLUMNS=100 " GALLIPOT_PROGRAM " " + arguments + " 2>'" + err + "'";
    FILE* pipe = ::popen(command.c_str(), "r");
    if (pipe == nullptr) return out;
    std::array<char, 4096> piece{};
    for (std::size_t n = 0; (n = std::fread(piece.data(), 1, piece.size(), pipe)) > 0;) out.out.append(piece.data(), n);
    const int status = ::pclose(pipe);
    if (WIFEXITED(status)) out.exit = WEXITSTATUS(status);
    std::ifstream in(err);
    out.err.assign(std::istreambuf_iterator<char>(in), {});
    return out;
  }
  static Ran measure(const std::string& more) { return run("measure " + more); }
  static Ran on_shelf(const std::string& more) { return measure("--index '" + index() + "' " + more); }

  static rapidjson::Document json(const Ran& ran) {
    rapidjson::Document document;
    document.Parse(ran.out.c_str());
    EXPECT_FALSE(document.HasParseError()) << ran.out << ran.err;
    return document;
  }

  /// Bad input: exit 2, nothing answered, one line with these words.
  static void expect_fault(const Ran& ran, const std::string& words) {
    EXPECT_EQ(ran.exit, 2) << ran.out << ran.err;
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(ran.err.find('\n'), ran.err.size() - 1) << ran.err;
    EXPECT_NE(ran.err.find(words), std::string::npos) << ran.err;
  }

  static inline fs::path folder_;
};

TEST_F(Measure, AnswersWithoutAnIndex) {
  const Ran ran = measure("'half a small teacup' --year 1885 --country gb --of 'grated ginger'");
  EXPECT_EQ(ran.exit, 0) << ran.err;
  for (const char* words : {" g (", " of ginger", "by volume", "US measures:", "metric measures:", "Why: small: teacup",
                            "witnesses to one teacup", "Source: weight of ginger"})
    EXPECT_NE(ran.out.find(words), std::string::npos) << words << "\n" << ran.out;
  const auto answer = json(measure("'half a small teacup' --year 1885 --country GB --of ginger --json"));
  EXPECT_STREQ(answer["kind"].GetString(), "amount");
  EXPECT_STREQ(answer["amount"]["unit"].GetString(), "g");
  EXPECT_STREQ(answer["volume"]["unit"].GetString(), "ml");
  EXPECT_LT(answer["volume"]["low"].GetDouble(), answer["volume"]["likely"].GetDouble());
  EXPECT_STREQ(answer["rule"].GetString(), "table");
  EXPECT_GT(answer["agreement"]["witnesses"].GetUint(), 3U);
  EXPECT_LT(answer["agreement"]["least"].GetDouble(), answer["agreement"]["most"].GetDouble());
  EXPECT_FALSE(answer["witnesses"].Empty());
}

TEST_F(Measure, TellsHeatsAndWhereNoFigureIs) {
  const Ran oven = measure("'a slow oven'");
  EXPECT_EQ(oven.exit, 0);
  EXPECT_NE(oven.out.find("\u00b0F"), std::string::npos) << oven.out;
  EXPECT_NE(oven.out.find("\u00b0C"), std::string::npos) << oven.out;
  EXPECT_NE(oven.out.find("Source: "), std::string::npos) << oven.out;
  const auto heat = json(measure("'the crack' --json"));
  EXPECT_STREQ(heat["heat"]["kind"].GetString(), "sugar");
  const auto stiff = json(measure("'flour, as much as will make it stiff' --json"));
  EXPECT_STREQ(stiff["kind"].GetString(), "none");
  EXPECT_TRUE(stiff["amount"].IsNull());
}

TEST_F(Measure, ADecisionIsKeptHeededAndForgotten) {
  const auto before = json(on_shelf("'a small teacup' --year 1885 --country GB --json"));
  const Ran decided = on_shelf("'half a small teacup' --decide 90ml --note 'measured against the cup on the dresser'");
  EXPECT_EQ(decided.exit, 0) << decided.err;
  EXPECT_NE(decided.out.find("one small teacup is 180 ml, everywhere"), std::string::npos) << decided.out;
  ASSERT_TRUE(fs::exists(decisions()));
  const auto after = json(on_shelf("'a small teacup' --year 1885 --country GB --json"));
  EXPECT_STREQ(after["rule"].GetString(), "decision");
  EXPECT_EQ(after["amount"]["likely"].GetDouble(), 180);
  EXPECT_NE(std::string(after["why"].GetString()).find("cup on the dresser"), std::string::npos);
  EXPECT_STREQ(after["decision"]["note"].GetString(), "measured against the cup on the dresser");
  EXPECT_EQ(on_shelf("'a small teacup' --forget").exit, 0);
  const auto again = json(on_shelf("'a small teacup' --year 1885 --country GB --json"));
  EXPECT_EQ(again["amount"]["likely"].GetDouble(), before["amount"]["likely"].GetDouble());
  EXPECT_EQ(on_shelf("'a small teacup' --forget").exit, 1);
}

TEST_F(Measure, ADecisionHoldsForABookOrAPeriod) {
  ASSERT_EQ(on_shelf("'a wineglass' --decide '50-60 ml' --for-book oldacre-1838").exit, 0);
  ASSERT_EQ(on_shelf("'a wineglass' --decide 70ml --from 1800 --to 1850 --country GB").exit, 0);
  const auto likely = [](const Ran& ran) { return json(ran)["amount"]["likely"].GetDouble(); };
  EXPECT_EQ(likely(on_shelf("'a wineglass' --book oldacre-1838 --json")), 55);
  EXPECT_EQ(likely(on_shelf("'a wineglass' --year 1840 --country GB --json")), 70);
  EXPECT_NE(likely(on_shelf("'a wineglass' --year 1890 --country GB --json")), 70);
  EXPECT_NE(likely(on_shelf("'a wineglass' --year 1840 --country US --json")), 70);
  // without an index a file of decisions can be named
  EXPECT_EQ(likely(measure("'a wineglass' --year 1840 --country GB --json --decisions '" + decisions() + "'")), 70);
}

TEST_F(Measure, TheExportHeedsDecisionsWithoutIndexingAgain) {
  const auto teacups = [] {
    std::string out;
    const Ran all = run("export --index '" + index() + "'");
    for (std::size_t at = 0, end = 0; at < all.out.size(); at = end + 1) {
      end = all.out.find('\n', at);
      const std::string line = all.out.substr(at, end - at);
      if (line.find("\"measure\":\"pint\"") != std::string::npos) out += line + "\n";
    }
    return out;
  };
  const std::string before = teacups();
  ASSERT_NE(before, "");
  ASSERT_EQ(on_shelf("'a pint' --decide 500ml --note 'the jug in the scullery'").exit, 0);
  const std::string after = teacups();
  EXPECT_EQ(before.find("the jug in the scullery"), std::string::npos);
  EXPECT_NE(after.find("decided by you: the jug in the scullery"), std::string::npos);
  EXPECT_NE(after.find("\"low\":500"), std::string::npos);
}

TEST_F(Measure, ADamagedFileOfDecisionsIsNamedAndLeftAlone) {
  const std::string damaged = "{\"gallipot\":\"decisions\",\n\"version\":2,\n\"decisions\":[{\"measure\":\"cup\"}]}\n";
  std::ofstream(decisions()) << damaged;
  const auto text = [] {
    std::ifstream in(decisions());
    return std::string(std::istreambuf_iterator<char>(in), {});
  };
  const Ran ran = on_shelf("'a cup' --json");
  EXPECT_EQ(ran.exit, 0);  // the rest works without it
  EXPECT_NE(ran.err.find(decisions() + ":3: "), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("left as it is"), std::string::npos) << ran.err;
  EXPECT_EQ(run("export --index '" + index() + "'").exit, 0);
  EXPECT_EQ(on_shelf("'a cup' --decide 200ml").exit, 2);
  EXPECT_EQ(on_shelf("'a cup' --forget").exit, 2);
  EXPECT_EQ(text(), damaged);
}

TEST_F(Measure, BadInputIsToldInOneLine) {
  expect_fault(measure("'three flagons'"), "no measure is called \"flagons\"; perhaps \"gallon\"");
  expect_fault(measure("'-2 cups of sugar'"), "less than nothing");
  expect_fault(measure("'1000000 cups of sugar'"), "no amount that a kitchen knows");
  expect_fault(measure("'a pint' --year 1400"), "from 1500 to 1950");
  expect_fault(measure("'a pint' --year 1951"), "from 1500 to 1950");
  expect_fault(measure("'a pint' --country UK"), "perhaps GB is meant");
  expect_fault(measure("'a pint' --country ZQ"), "no country's two letters");
  expect_fault(measure("'a pint' --of flobber"), "no stuff is called \"flobber\"");
  expect_fault(measure("''"), "is given no amount");
  expect_fault(measure("'a pint' --decide 500ml"), "no file for your decisions");
  expect_fault(measure("'a pint' --book nobody"), "no index");
  expect_fault(on_shelf("'a pint' --book oldacre-1839"), "perhaps \"oldacre-1838\" is meant");
  expect_fault(on_shelf("'a pint' --decide lots"), "");
  expect_fault(on_shelf("'a slow oven' --decide 90ml"), "no measure on which to decide");
  expect_fault(on_shelf("'a pint' --decide 500ml --forget"), "at once");
  expect_fault(on_shelf("'a pint' --decide 500ml --from 1850 --to 1800"), "no year is from 1850 to 1800");
}

TEST_F(Measure, TheTableCountsTheShelf) {
  const Ran table = on_shelf("--table");
  EXPECT_EQ(table.exit, 0) << table.err;
  EXPECT_NE(table.out.find("| measure | amounts told in it |"), std::string::npos);
  expect_fault(measure("--table"), "name the index");
}

}  // namespace
}  // namespace gallipot
