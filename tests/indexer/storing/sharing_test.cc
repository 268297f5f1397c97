// Every recipe of every book is given out once, whoever asks and whatever the order.
#include "indexer/storing/sharing.h"

#include <gtest/gtest.h>

#include <atomic>
#include <thread>

namespace gallipot {
namespace {

TEST(Sharing, GivesTheLargestBookFirst) {
  Sharing sharing({10, 30, 20});
  EXPECT_EQ(sharing.next({})->book, 1u);
  EXPECT_EQ(sharing.next({})->book, 2u);
  EXPECT_EQ(sharing.next({})->book, 0u);
}

TEST(Sharing, LetsAThreadGoOnWithItsOwnBookAndHelpWhenNoneIsLeft) {
  Sharing sharing({2, 1});
  ASSERT_EQ(sharing.next({})->book, 0u);
  const auto own = sharing.opened(0, std::vector<Recipe>(100));
  auto work = sharing.next(own);
  ASSERT_EQ(work->open, own);
  EXPECT_EQ(work->from, 0u);
  EXPECT_FALSE(sharing.finished(*work));
  ASSERT_EQ(sharing.next({})->book, 1u);  // another thread begins a book rather than help
  const auto other = sharing.opened(1, {});
  auto help = sharing.next(other);
  ASSERT_TRUE(help.has_value());
  EXPECT_EQ(help->open, own);
  EXPECT_EQ(help->from, work->to);
  EXPECT_EQ(help->to, 100u);
  EXPECT_TRUE(sharing.finished(*help));
  EXPECT_FALSE(sharing.next(own).has_value());
}

TEST(Sharing, EndsWhenStopped) {
  Sharing sharing({1});
  ASSERT_TRUE(sharing.next({}).has_value());
  std::jthread waiting([&] { EXPECT_FALSE(sharing.next({}).has_value()); });  // for the book that is being read
  sharing.stop();
  EXPECT_FALSE(sharing.next({}).has_value());
}

TEST(Sharing, GivesOutEveryRecipeOnceToManyThreads) {
  constexpr std::size_t books = 40;
  std::vector<std::uint64_t> sizes;
  for (std::size_t i = 0; i < books; ++i) sizes.push_back(i * 7919 % 101);
  Sharing sharing(sizes);
  std::vector<std::atomic<int>> given(books * 1000);
  std::atomic<std::size_t> ended{0};
  {
    std::vector<std::jthread> threads;
    for (int t = 0; t < 4; ++t)
      threads.emplace_back([&] {
        std::shared_ptr<OpenBook> own;
        while (const auto work = sharing.next(own)) {
          if (!work->open) {
            own = sharing.opened(work->book, std::vector<Recipe>(work->book * 20));
            continue;
          }
          for (auto i = work->from; i < work->to; ++i) ++given[work->book * 1000 + i];
          ended += sharing.finished(*work);
        }
      });
  }
  for (std::size_t b = 0; b < books; ++b)
    for (std::size_t i = 0; i < 1000; ++i) ASSERT_EQ(given[b * 1000 + i], i < b * 20 ? 1 : 0) << b << " " << i;
  EXPECT_EQ(ended, books - 1);  // the first has no recipes
}

}  // namespace
}  // namespace gallipot
