#include "indexer/measures/decisions.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "indexer/keeping/whole_file.h"

namespace gallipot {
namespace {

class Decisions : public testing::Test {
 protected:
  void SetUp() override { std::filesystem::create_directories(folder_); }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string file() const { return (folder_ / "shelf.decisions.json").string(); }
  void write(const std::string& text) const { std::ofstream(file()) << text; }
  std::string text() const { return read_whole_file(file()).value_or(""); }

  static Decision teacup(double ml) {
    Decision d;
    d.measure = "teacup";
    d.size = "small";
    d.low = ml - 5;
    d.likely = ml;
    d.high = ml + 5;
    d.country = "GB";
    d.from = 1830;
    d.to = 1860;
    d.note = "measured against \"the museum's\" cup";
    d.decided = "2026-11-25";
    return d;
  }

 private:
  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("gallipot-decisions-" + std::to_string(::getpid()));
};

TEST_F(Decisions, AreKeptAndForgotten) {
  EXPECT_TRUE(read_decisions(file())->empty());
  ASSERT_TRUE(record_decision(file(), teacup(90)));
  Decision egg;
  egg.of = "egg";
  egg.unit = Amount::Unit::gram;
  egg.low = egg.likely = egg.high = 42.5;
  ASSERT_TRUE(record_decision(file(), egg));
  ASSERT_TRUE(record_decision(file(), teacup(95)));  // the same question: takes the place of the first
  const auto all = read_decisions(file()).value();
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].of, "egg");
  EXPECT_EQ(all[0].likely, 42.5);
  const Decision& d = all[1];
  const Decision asked = teacup(95);
  EXPECT_TRUE(same_question(d, asked));
  EXPECT_EQ(d.low, 90);
  EXPECT_EQ(d.note, asked.note);
  EXPECT_EQ(d.decided, asked.decided);
  EXPECT_EQ(forget_decision(file(), teacup(0)).value(), true);
  EXPECT_EQ(forget_decision(file(), teacup(0)).value(), false);
  EXPECT_EQ(read_decisions(file())->size(), 1u);
}

TEST_F(Decisions, ADamagedFileIsNamedWithItsLineAndLeftAlone) {
  ASSERT_TRUE(record_decision(file(), teacup(90)));
  const std::string good = text();
  const auto damage = [&](const std::string& from, const std::string& to) {
    std::string bad = good;
    bad.replace(bad.find(from), from.size(), to);
    write(bad);
    const auto read = read_decisions(file());
    EXPECT_FALSE(read.has_value()) << to;
    EXPECT_EQ(read.error().file, file());
    EXPECT_FALSE(record_decision(file(), teacup(70)).has_value());
    EXPECT_FALSE(forget_decision(file(), teacup(90)).has_value());
    EXPECT_EQ(text(), bad);
    return read.error();
  };
  EXPECT_EQ(damage("\"version\": 2,", "\"version\": 2").line, 4);  // noticed where the next member stands
  EXPECT_NE(damage("\"version\": 2", "\"version\": 9").sentence().find("newer"), std::string::npos);
  const Fault wrong = damage("\"likely\": 90.0", "\"likely\": \"ninety\"");
  EXPECT_EQ(wrong.line, 5);
  EXPECT_NE(wrong.sentence().find("\"likely\" is not a number"), std::string::npos) << wrong.sentence();
  EXPECT_NE(damage("\"low\": 85.0", "\"low\": 185.0").sentence().find("in order"), std::string::npos);
  EXPECT_NE(damage("\"gallipot\": \"decisions\"", "\"gallipot\": \"corrections\"").line, 0);
}

TEST_F(Decisions, OlderFilesAreReadAndWrittenAnew) {
  write(
      R"({"gallipot":"decisions","version":1,"decisions":[{"measure":"cup","amount":240,"unit":"ml","note":"mine"}]})");
  const auto old = read_decisions(file()).value();
  ASSERT_EQ(old.size(), 1u);
  EXPECT_EQ(old[0].low, 240);
  EXPECT_EQ(old[0].note, "mine");
  ASSERT_TRUE(record_decision(file(), teacup(90)));
  EXPECT_NE(text().find("\"version\": 2"), std::string::npos);
  const auto migrated = read_decisions(file()).value();
  ASSERT_EQ(migrated.size(), 2u);
  EXPECT_EQ(migrated[0].high, 240);
}

TEST_F(Decisions, NoneIsLostOfManyWriters) {
  constexpr int writers = 4, each = 12;
  for (int w = 0; w < writers; ++w) {
    if (::fork() != 0) continue;
    for (int i = 0; i < each; ++i) {
      Decision d = teacup(90);
      d.book = "book-" + std::to_string(w * each + i);
      if (!record_decision(file(), d)) ::_exit(1);
    }
    ::_exit(0);
  }
  for (int w = 0; w < writers; ++w) {
    int status = 0;
    ::wait(&status);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  }
  EXPECT_EQ(read_decisions(file())->size(), static_cast<std::size_t>(writers * each));
}

TEST(DecisionsFile, LiesBesideTheIndex) {
  EXPECT_EQ(decisions_beside("/home/cook/shelf"), "/home/cook/shelf.decisions.json");
  EXPECT_EQ(decisions_beside("shelf/"), "shelf.decisions.json");
}

}  // namespace
}  // namespace gallipot
