#include "indexer/keeping/whole_file.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
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
  {
    const auto lock = FileLock::take(path("a.lock"), held_);
    ASSERT_TRUE(lock.has_value());
    EXPECT_EQ(FileLock::take(path("a.lock"), held_).error().what, "held by another");
    EXPECT_EQ(FileLock::wait(path("a.lock"), held_, 0.05).error().what, "held by another");
  }
  std::array<int, 2> ends{};
  ASSERT_EQ(::pipe(ends.data()), 0);
  const pid_t child = ::fork();
  if (child == 0) {  // another process that takes the lock, tells, and dies with it a little later
    const bool taken = FileLock::take(path("a.lock"), held_).has_value();
    const auto lock = FileLock::take(path("a.lock"), held_);
    const char told = taken && lock ? 'y' : 'n';
    if (::write(ends[1], &told, 1) != 1) ::_exit(1);
    ::usleep(100'000);
    ::_exit(0);
  }
  char told = 'n';
  ASSERT_EQ(::read(ends[0], &told, 1), 1);
  EXPECT_EQ(told, 'y');
  EXPECT_FALSE(FileLock::take(path("a.lock"), held_).has_value());
  EXPECT_TRUE(FileLock::wait(path("a.lock"), held_, 20).has_value());
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
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
