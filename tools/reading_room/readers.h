// An open shelf for each reader: Xapian's database is not thread-safe, so each request borrows one that no other has.
#pragma once

#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "query/comparing/yardstick.h"

namespace gallipot {
class Heats;
struct Kitchen;
struct Borrowings;
struct Families;
}  // namespace gallipot

namespace gallipot::room {

/// All that a query needs. What is loaded once is shared; the shelf and its yardstick are the borrower's.
struct OpenedShelf {
  Shelf shelf;
  std::shared_ptr<const Lexicon> lexicon;
  Yardstick yardstick;
};

class Readers {
 public:
  /// `index` need not be there yet. Faults: a wrong row in the user's own tables.
  static Outcome<std::unique_ptr<Readers>> open(const std::string& index, const std::string& tables);

  /// Gives the shelf back when it goes.
  class Lent {
   public:
    Lent(Readers& from, std::unique_ptr<OpenedShelf> reading, std::string stamp)
        : from_(&from), reading_(std::move(reading)), stamp_(std::move(stamp)) {}
    Lent(Lent&&) = default;
    Lent& operator=(Lent&&) = delete;
    Lent(const Lent&) = delete;
    Lent& operator=(const Lent&) = delete;
    ~Lent() {
      if (reading_) from_->take_back(std::move(reading_), stamp_);
    }
    const OpenedShelf& operator*() const { return *reading_; }
    const OpenedShelf* operator->() const { return reading_.get(); }

   private:
    Readers* from_;
    std::unique_ptr<OpenedShelf> reading_;
    std::string stamp_;
  };

  /// A shelf as the index, the decisions and the corrections are now. Faults: as Shelf::open.
  Outcome<Lent> lend();

  const std::shared_ptr<const Lexicon>& lexicon() const { return tables_shared_.lexicon; }
  const Kitchen& kitchen() const { return *tables_shared_.kitchen; }
  const Heats& heats() const { return *tables_shared_.heats; }
  /// The families of dishes, worked out once for each state of the index.
  Outcome<std::shared_ptr<const Families>> families(const Shelf& shelf);
  /// The borrowings of a book, likewise.
  Outcome<std::shared_ptr<const Borrowings>> borrowings(const Shelf& shelf, const std::string& book);

  /// An answer worked out before for the same question of the same index, or `make`'s, kept for the next who asks:
  /// going back to a list of results is what a reader does most. `key` must tell kind and question apart. Faults are
  /// not kept.
  template <typename T, typename Make>
  Outcome<std::shared_ptr<const T>> remembered(const std::string& key, Make make) {
    const std::string whole = stamp() + key;
    if (auto kept = recalled(whole)) return std::static_pointer_cast<const T>(kept);
    Outcome<T> fresh = make();
    if (!fresh) return tl::unexpected(fresh.error());
    auto out = std::make_shared<const T>(std::move(*fresh));
    remember(whole, out);
    return out;
  }

  const std::string& index() const { return index_; }
  const std::string& tables() const { return tables_; }

 private:
  /// What is loaded once and read by all.
  struct Shared {
    std::shared_ptr<const Lexicon> lexicon;
    std::shared_ptr<const Kitchen> kitchen;
    std::shared_ptr<const Heats> heats;
  };
  Readers(std::string index, std::string tables, Shared shared)
      : index_(std::move(index)), tables_(std::move(tables)), tables_shared_(std::move(shared)) {}
  void take_back(std::unique_ptr<OpenedShelf> reading, const std::string& stamp);
  std::string stamp() const;
  std::shared_ptr<const void> recalled(const std::string& key);
  void remember(const std::string& key, std::shared_ptr<const void> answer);

  const std::string index_, tables_;
  const Shared tables_shared_;
  std::mutex mutex_;
  std::vector<std::unique_ptr<OpenedShelf>> idle_;  ///< all of `stamp_`
  std::string stamp_;                               ///< of the files when they were opened
  std::mutex remembered_mutex_;
  std::map<std::string, std::shared_ptr<const void>> remembered_;
  std::deque<std::string> remembered_order_;  ///< the oldest first
  std::mutex families_mutex_;
  std::shared_ptr<const Families> families_;
  std::string families_stamp_;
  std::mutex borrowings_mutex_;
  std::map<std::string, std::shared_ptr<const Borrowings>> borrowings_;  ///< by book
  std::string borrowings_stamp_;
};

}  // namespace gallipot::room
