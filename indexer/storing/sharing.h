// How is a shelf shared out among threads, so that none stands idle while another has a large book before it?
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// A book that has been cut and whose recipes are being taken, some at a time, by whoever is free.
struct OpenBook {
  std::size_t index = 0;  ///< of the book in the list given to Sharing
  std::vector<Recipe> recipes;
  std::size_t taken = 0;  ///< recipes given out; guarded by Sharing
  std::size_t done = 0;   ///< recipes handed back; guarded by Sharing
  std::atomic<std::size_t> ingredients{0};
};

/// Gives out work to threads: the largest book not yet begun to read and cut, or some recipes of a book that has been
/// cut. A thread goes on with the book that it cut itself, then begins another, and only when no book is left takes
/// recipes of other threads' books; so there are never more books in memory than threads. Thread-safe.
class Sharing {
 public:
  /// `sizes`: bytes of each book.
  explicit Sharing(const std::vector<std::uint64_t>& sizes);

  struct Work {
    std::size_t book = 0;            ///< to be read and cut, where `open` is empty
    std::shared_ptr<OpenBook> open;  ///< else recipes [from, to) of it are to be parsed and stored
    std::size_t from = 0, to = 0;
  };

  /// The next work of a thread; waits while others may yet bring some. Nothing when all is given out, or on `stop`.
  std::optional<Work> next(const std::shared_ptr<OpenBook>& own);

  /// A book that a thread was given to read has been cut; it may have no recipes.
  std::shared_ptr<OpenBook> opened(std::size_t book, std::vector<Recipe> recipes);
  /// Recipes that a thread was given are stored; whether they were the last of their book.
  bool finished(const Work& work);

  /// Gives out no more work.
  void stop();

 private:
  std::optional<Work> take_from(const std::shared_ptr<OpenBook>& open);

  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<std::size_t> waiting_;             ///< books not begun, smallest first
  std::vector<std::shared_ptr<OpenBook>> open_;  ///< books with recipes not given out
  std::size_t reading_ = 0;                      ///< books given out to be read and not yet opened
  bool stopped_ = false;
};

}  // namespace gallipot
