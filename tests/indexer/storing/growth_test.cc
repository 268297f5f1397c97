// A shelf eight times as large takes no more memory: only books at hand and a bounded buffer are held.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

class Growth : public ShelfTest {
 protected:
  /// Largest resident memory, in MB, of a process that indexes the books; 0 where it failed.
  double peak_mb(const std::vector<Book>& books) const {
    const pid_t child = ::fork();
    if (child == 0) std::_Exit(build(books).has_value() ? 0 : 1);
    int status = 1;
    rusage use{};
    ::wait4(child, &status, 0, &use);
    return status == 0 ? static_cast<double>(use.ru_maxrss) / 1024 : 0;
  }
};

TEST_F(Growth, OfAShelfNeedsNoMoreMemory) {
#ifdef __SANITIZE_ADDRESS__
  GTEST_SKIP() << "a sanitizer's own memory drowns what is measured";
#endif
  lexicon();
  measures();
  std::vector<Book> books;
  for (unsigned i = 0; i < 64; ++i) books.push_back(book("shelf-" + std::to_string(i), 250));
  const double small = peak_mb({books.begin(), books.begin() + 8});
  const double large = peak_mb(books);
  ASSERT_GT(small, 0);
  ASSERT_GT(large, 0);
  EXPECT_LT(large, 400);
  EXPECT_LT(large, small + 60) << "2000 recipes took " << small << " MB";
  EXPECT_EQ(Shelf::open(index())->recipe_count(), 64u * 250u);
}

}  // namespace
}  // namespace gallipot
