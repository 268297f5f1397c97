#include "indexer/keeping/whole_file.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>

#include "indexer/keeping/json_places.h"

namespace gallipot {
namespace {

class WholeFile : public testing::Test {
 protected:
  void SetUp() override { std::filesystem::create_directories(folder_); }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string path(const char* name) const { return (folder_ / name).string(); }
  const Fault held_{"held by another", {}, 0, {}};

 private:
  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("gallipot-keeping-" + std::to_string(::getpid()));
};

TEST_F(WholeFile, IsReplacedAndReadBack) {
  ASSERT_TRUE(replace_file(path("a"), "one\n"));
  ASSERT_TRUE(replace_file(path("a"), std::string_view("two\0", 4)));
  EXPECT_EQ(read_whole_file(path("a")).value(), std::string("two\0", 4));
  EXPECT_FALSE(std::filesystem::exists(path("a.new")));
  const auto missing = read_whole_file(path("b"));
  ASSERT_FALSE(missing.has_value());
  EXPECT_EQ(missing.error().file, path("b"));
  EXPECT_FALSE(replace_file(path("no/such/folder"), "x").has_value());
}

TEST_F(WholeFile, IsLockedAgainstASecondWriter) {
  auto lock = std::make_unique<Outcome<FileLock>>(FileLock::take(path("a.lock"), held_));
  ASSERT_TRUE(lock->has_value());
  EXPECT_EQ(FileLock::take(path("a.lock"), held_).error().what, "held by another");
  EXPECT_EQ(FileLock::wait(path("a.lock"), held_, 0.05).error().what, "held by another");
  const pid_t child = ::fork();
  if (child == 0) {  // another process waits until this one lets go
    const bool got = FileLock::wait(path("a.lock"), held_, 20).has_value();
    ::_exit(got ? 0 : 1);
  }
  ::usleep(60'000);
  lock.reset();
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  EXPECT_TRUE(FileLock::take(path("a.lock"), held_).has_value());  // gone with the process that held it
}

TEST(JsonPlaces, FindsTheLineOfEachEntry) {
  const char* json =
      "{\n \"a\": [\n  {\"a\": [1, 2]},\n  3,\n\n  \"],\\\"[\", {\"b\":\n {}}\n ],\n \"b\": [], \"c\": [\n7]\n}";
  EXPECT_EQ(entry_lines(json, "a"), (std::vector<long>{3, 4, 6, 6}));
  EXPECT_EQ(entry_lines(json, "b"), std::vector<long>{});
  EXPECT_EQ(entry_lines(json, "c"), std::vector<long>{10});
  EXPECT_EQ(entry_lines(json, "d"), std::vector<long>{});
  EXPECT_EQ(line_of("a\nb\n", 2), 2);
  EXPECT_EQ(line_of("a\nb\n", 99), 3);
}

}  // namespace
}  // namespace gallipot
