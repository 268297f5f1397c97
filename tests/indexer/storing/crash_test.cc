// A run that dies or cannot write leaves the old index whole, and the next run clears away what it left.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

class Crash : public ShelfTest {
 protected:
  /// Exit code of a process that does `work` and then exits with its answer.
  template <typename Work>
  static int in_a_process(Work work) {
    const pid_t child = ::fork();
    if (child == 0) std::_Exit(work());
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
};

TEST_F(Crash, InTheMidstOfARunLeavesTheOldIndex) {
  ASSERT_TRUE(build({book("larch", 30)}));
  const auto before = exported();
  const auto books = std::vector{book("larch", 10, "medlars"), book("alder", 20)};
  EXPECT_EQ(in_a_process([&] {
              BuildOptions options;
              options.threads = 1;
              options.progress = [](const Progress&) { std::_Exit(7); };  // no destructor runs
              return build(books, options).has_value() ? 0 : 1;
            }),
            7);
  EXPECT_TRUE(fs::exists(path("index/building-2")));
  EXPECT_EQ(exported(), before);
  EXPECT_EQ(findings(Shelf::open(index())), "");
  ASSERT_TRUE(build(books));
  EXPECT_EQ(exported().size(), 30u);
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"generation-2", "shelf.json", "writing.lock"}));
}

TEST_F(Crash, InTheFirstRunIsNoHindranceToTheNext) {
  EXPECT_EQ(in_a_process([&] {
              BuildOptions options;
              options.progress = [](const Progress&) { std::_Exit(7); };
              return build({book("larch", 10)}, options).has_value() ? 0 : 1;
            }),
            7);
  EXPECT_NE(told(Shelf::open(index())).find("no index"), std::string::npos);
  ASSERT_TRUE(build({book("larch", 10)}));
  EXPECT_EQ(exported().size(), 10u);
}

TEST_F(Crash, OfADiskThatTakesNoMoreIsAFault) {
  ASSERT_TRUE(build({book("larch", 30)}));
  const auto before = exported();
  const auto books = std::vector{book("larch", 400), book("alder", 400)};
  EXPECT_EQ(in_a_process([&] {
              ::signal(SIGXFSZ, SIG_IGN);  // a write beyond the limit fails as on a full disk
              const rlimit limit{64 << 10, 64 << 10};
              ::setrlimit(RLIMIT_FSIZE, &limit);
              const auto report = build(books);
              return told(report).find("cannot be written") != std::string::npos ? 3 : 0;
            }),
            3);
  EXPECT_EQ(exported(), before);
  EXPECT_EQ(findings(Shelf::open(index())), "");
  EXPECT_EQ(names_in(index()), (std::vector<std::string>{"generation-1", "shelf.json", "writing.lock"}));
}

}  // namespace
}  // namespace gallipot
