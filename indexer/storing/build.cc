// Builds a generation of an index: threads over the books, then one merge, then the manifest is swapped.
#include "indexer/storing/build.h"

#include <fmt/format.h>
#include <xapian.h>

#include <algorithm>
#include <chrono>
#include <exception>
#include <filesystem>
#include <map>
#include <mutex>
#include <set>
#include <thread>
#include <utility>

#include "indexer/storing/manifest.h"
#include "indexer/storing/shards.h"
#include "indexer/storing/sharing.h"
#include "indexer/storing/site.h"
#include "indexer/storing/stages.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) { return std::chrono::duration<double>(Clock::now() - start).count(); }

tl::unexpected<Fault> xapian_fault(const Xapian::Error& error, const std::string& folder) {
  return fault("the index cannot be written: " + error.get_msg(), "see whether the disk is full and who may write here",
               folder);
}

/// What the threads of one run share.
class IndexingRun {
 public:
  IndexingRun(const std::vector<Book>& books, const std::vector<std::uint32_t>& orders, const Lexicon& lexicon,
              const Corrections& corrections, const BuildOptions& options)
      : books_(books),
        orders_(orders),
        lexicon_(lexicon),
        corrections_(corrections),
        options_(options),
        sizes_(sizes_of(books)),
        sharing_(sizes_),
        reports_(books.size()) {
    progress_.books_all = books.size();
    for (const auto size : sizes_) progress_.bytes_all += size;
  }

  /// Runs the threads; the paths of all shards. Throws what a thread threw.
  std::vector<std::string> shards_in(const std::string& building) {
    const unsigned count = options_.threads > 0 ? options_.threads : std::max(1u, std::thread::hardware_concurrency());
    std::vector<std::vector<std::string>> paths(count);
    {
      std::vector<std::jthread> threads;
      for (unsigned t = 1; t < count; ++t)
        threads.emplace_back(
            [this, t, &building, &paths] { paths[t] = work(fmt::format("{}/shard-{}-", building, t)); });
      paths[0] = work(fmt::format("{}/shard-0-", building));
    }
    if (thrown_) std::rethrow_exception(thrown_);
    std::vector<std::string> all;
    for (const auto& some : paths) all.insert(all.end(), some.begin(), some.end());
    return all;
  }

  std::vector<BookReport> take_reports() { return std::move(reports_); }

 private:
  static std::vector<std::uint64_t> sizes_of(const std::vector<Book>& books) {
    std::vector<std::uint64_t> sizes;
    for (const auto& book : books) {
      std::error_code error;
      const auto size = fs::file_size(book.path, error);
      sizes.push_back(error ? 0 : size);
    }
    return sizes;
  }

  /// One thread's work; the paths of its shards.
  std::vector<std::string> work(const std::string& prefix) {
    try {
      Shards shards(prefix, options_.shard_recipes, lexicon_);
      std::shared_ptr<OpenBook> own;
      while (auto work = sharing_.next(own)) {
        if (work->open) {
          store(*work, shards);
        } else {
          own.reset();  // the book before goes from memory before the next is read
          own = open(work->book, shards);
        }
      }
      return shards.finish();
    } catch (...) {
      sharing_.stop();
      const std::lock_guard lock(mutex_);
      if (!thrown_) thrown_ = std::current_exception();
      return {};
    }
  }

  std::shared_ptr<OpenBook> open(std::size_t book, Shards& shards) {
    CutBook cut = read_and_cut(books_[book], lexicon_, corrections_);
    shards.add_statements(books_[book].id, cut.statements);
    const bool nothing = cut.recipes.empty();
    {
      const std::lock_guard lock(mutex_);
      reports_[book] = std::move(cut.report);
    }
    auto opened = sharing_.opened(book, std::move(cut.recipes));
    if (nothing) tell_of(book);
    return opened;
  }

  void store(const Sharing::Work& work, Shards& shards) {
    std::size_t ingredients = 0;
    for (std::size_t i = work.from; i < work.to; ++i) {
      const auto recipe =
          make_comparable(std::move(work.open->recipes[i]), books_[work.book], orders_[work.book], lexicon_);
      ingredients += recipe.ingredients.size();
      shards.add(recipe, corrections_);
    }
    work.open->ingredients += ingredients;
    if (!sharing_.finished(work)) return;
    {
      const std::lock_guard lock(mutex_);
      reports_[work.book].ingredients = work.open->ingredients;
    }
    tell_of(work.book);
  }

  /// Counts a book as done and tells of it, at most ten times a second.
  void tell_of(std::size_t book) {
    const std::lock_guard lock(mutex_);
    ++progress_.books_done;
    progress_.bytes_done += sizes_[book];
    progress_.recipes += reports_[book].recipes;
    progress_.seconds = seconds_since(start_);
    progress_.book = books_[book].id;
    const bool last = progress_.books_done == progress_.books_all;
    if (!options_.progress || (!last && progress_.seconds - told_ < 0.1)) return;
    told_ = progress_.seconds;
    options_.progress(progress_);
  }

  const std::vector<Book>& books_;
  const std::vector<std::uint32_t>& orders_;
  const Lexicon& lexicon_;
  const Corrections& corrections_;
  const BuildOptions& options_;
  const std::vector<std::uint64_t> sizes_;
  Sharing sharing_;
  const Clock::time_point start_ = Clock::now();
  std::mutex mutex_;  ///< guards what follows
  std::vector<BookReport> reports_;
  Progress progress_;
  double told_ = -1;
  std::exception_ptr thrown_;
};

Outcome<bool> no_book_twice(const std::vector<Book>& books) {
  if (books.empty()) return fault("there is no book to index", "name a shelf list with books in it");
  std::set<std::string_view> ids;
  for (const auto& book : books)
    if (!ids.insert(book.id).second)
      return fault(fmt::format("the book \"{}\" is listed twice", book.id), "list it once");
  return true;
}

/// A book that the index has keeps its place on the shelf; others come after, in order of the list.
std::vector<std::uint32_t> places(const std::vector<Book>& books, const Manifest& old) {
  std::map<std::string_view, std::uint32_t> known;
  std::uint32_t next = 0;
  for (const auto& shelved : old.books) {
    known.emplace(shelved.book.id, shelved.order);
    next = std::max(next, shelved.order + 1);
  }
  std::vector<std::uint32_t> orders;
  for (const auto& book : books) {
    const auto at = known.find(book.id);
    orders.push_back(at != known.end() ? at->second : next++);
  }
  return orders;
}

/// The manifest once the books that were not refused have taken the places of their old selves.
Manifest manifest_of(const Manifest& old, const std::vector<Book>& books, const std::vector<std::uint32_t>& orders,
                     const std::vector<BookReport>& reports, const Lexicon& lexicon) {
  std::map<std::uint32_t, ShelvedBook> by_order;
  for (const auto& shelved : old.books) by_order[shelved.order] = shelved;
  for (std::size_t i = 0; i < books.size(); ++i) {
    if (!reports[i].refused.empty()) continue;
    ShelvedBook& shelved = by_order[orders[i]];
    shelved = {books[i], orders[i], reports[i].recipes, reports[i].bytes, reports[i].statements, lexicon.fingerprint()};
    shelved.book.path.clear();
  }
  Manifest out;
  for (auto& [order, shelved] : by_order) out.books.push_back(std::move(shelved));
  return out;
}

/// Books of the old manifest that have been indexed anew.
std::vector<std::string> replaced_books(const Manifest& old, const std::vector<BookReport>& reports) {
  std::set<std::string_view> indexed;
  for (const auto& report : reports)
    if (report.refused.empty()) indexed.insert(report.book);
  std::vector<std::string> out;
  for (const auto& shelved : old.books)
    if (indexed.contains(shelved.book.id)) out.push_back(shelved.book.id);
  return out;
}

}  // namespace

Outcome<BuildReport> build_index(const std::vector<Book>& books, const std::string& folder, const Lexicon& lexicon,
                                 const BuildOptions& options) {
  const auto start = Clock::now();
  if (auto once = no_book_twice(books); !once) return tl::unexpected(once.error());
  const auto corrections =
      read_corrections(options.corrections.empty() ? corrections_beside(folder) : options.corrections);
  if (!corrections) return tl::unexpected(corrections.error());
  try {
    Site site(folder);
    if (auto begun = site.begin(); !begun) return tl::unexpected(begun.error());
    const auto orders = places(books, site.old());
    IndexingRun run(books, orders, lexicon, *corrections, options);
    auto shards = run.shards_in(site.building());
    BuildReport report;
    report.books = run.take_reports();
    const auto refused = [](const BookReport& book) { return !book.refused.empty(); };
    if (std::all_of(report.books.begin(), report.books.end(), refused))
      return fault("none of the books could be indexed: " + report.books.front().refused);
    auto manifest = manifest_of(site.old(), books, orders, report.books, lexicon);
    auto finished =
        site.finish(std::move(shards), std::move(manifest), replaced_books(site.old(), report.books), options.merge);
    if (!finished) return tl::unexpected(finished.error());
    for (const auto& book : report.books) {
      report.recipes += book.recipes;
      report.bytes += book.bytes;
    }
    report.seconds = seconds_since(start);
    return report;
  } catch (const Xapian::Error& error) {
    return xapian_fault(error, folder);
  }
}

}  // namespace gallipot
