// Books are indexed one after the other behind the readers' backs: a reader keeps the shelf that it has until the new
// one stands.
#pragma once

#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/lexicon/lexicon.h"

namespace gallipot::room {

/// A piece of work on the index, and how far it is.
struct Job {
  enum class State : unsigned char { waiting, running, done, refused };
  unsigned number = 0;
  State state = State::waiting;
  std::string book, title;
  std::string what;  ///< "indexing", "putting corrections into the search"
  std::size_t recipes = 0, doubtful = 0;
  double seconds = 0;
  std::string told;  ///< what came of it, as a sentence
};

class Indexing {
 public:
  Indexing(std::string index, std::string catalogue, std::shared_ptr<const Lexicon> lexicon);
  ~Indexing();
  Indexing(const Indexing&) = delete;
  Indexing& operator=(const Indexing&) = delete;

  /// The folder in which books that were added here are kept, with their shelf list: "INDEX.books".
  std::string added_folder() const { return index_ + ".books"; }

  /// Keeps the file of a new book, enters it in the shelf list of the added books and has it indexed. Faults: an id
  /// that is taken or cannot be one, a date or country that is none, a file that is no .txt or .htm(l), the disk.
  Outcome<unsigned> add_book(Book book, const std::string& file_name, const std::string& bytes);

  /// Has a book that changed by corrections put right: read again where its file is known and a cut was corrected, else
  /// only searched by its corrections. Answers whether the file is known.
  bool renew(const std::string& book, bool cut);

  /// Latest first.
  std::vector<Job> jobs() const;
  bool busy() const;

 private:
  struct Task {
    Job job;
    std::function<void(Job&)> work;
  };
  unsigned queue(Job job, std::function<void(Job&)> work);
  void run(const std::stop_token& stop);
  Outcome<std::vector<Book>> known_books() const;
  void index_now(const Book& book, Job& job) const;

  const std::string index_, catalogue_;
  const std::shared_ptr<const Lexicon> lexicon_;
  mutable std::mutex mutex_;
  std::condition_variable_any changed_;
  std::deque<Task> waiting_;
  std::vector<Job> jobs_;  ///< by number
  std::mutex adding_;
  std::jthread thread_;  ///< last, so that it ends first
};

}  // namespace gallipot::room
