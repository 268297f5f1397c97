// An open index, read only. A snapshot: what is indexed later is not seen until it is opened again.
#pragma once

#include <xapian.h>

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/correcting/correction.h"
#include "indexer/fault/fault.h"
#include "indexer/measures/decisions.h"
#include "indexer/measures/register.h"
#include "indexer/measures/statement.h"
#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// What a shelf's amounts are read by, beside what its own books say of their measures.
struct ShelfReading {
  std::string tables = {};       ///< folder of the user's own tables; may be empty
  std::string decisions = {};    ///< file of the cook's decisions; empty for the one beside the index folder
  std::string corrections = {};  ///< file of the cook's corrections; likewise
};

class Shelf {
 public:
  /// Opens the index folder. Faults: none there, another version (says which and to index again), damaged manifest, a
  /// wrong row in the user's own tables. A damaged file of decisions or corrections is no
  /// fault but a doubt.
  static Outcome<Shelf> open(const std::string& folder, const ShelfReading& reading = {});

  const std::vector<Book>& books() const { return books_; }
  const Book* book(std::string_view id) const;
  std::size_t recipe_count() const;
  const std::string& folder() const { return folder_; }
  /// Lexicon::fingerprint() that all books were indexed with; empty where they were indexed with different tables.
  const std::string& fingerprint() const { return fingerprint_; }

  /// The register by which amounts are read: the tables, over them what the books of this shelf say of their own
  /// measures, over that the decisions of the cook.
  const std::shared_ptr<const Register>& measures() const;
  /// The cook's corrections. Those of amounts and ingredients are applied to every recipe that is read.
  const Corrections& corrections() const { return corrections_; }
  /// What could not be used though the shelf is open: a damaged file of decisions or corrections.
  const std::vector<Fault>& doubts() const { return doubts_; }

  /// The recipe of that id, with its amounts. Faults: no such id - with the nearest ones that exist in `mend`.
  Outcome<ComparableRecipe> recipe(std::string_view id) const;
  /// The recipe of a Xapian document, with its amounts.
  Outcome<ComparableRecipe> recipe(Xapian::docid docid) const;
  /// The same without metric amounts, for those who read many recipes and no amounts.
  Outcome<ComparableRecipe> unweighed(Xapian::docid docid) const;
  /// Its Xapian document; nothing where there is no such id. Throws Xapian::Error where the database is damaged.
  std::optional<Xapian::docid> docid_of(std::string_view id) const;
  /// The id of a Xapian document, without decoding the rest. Throws Xapian::Error where there is no such document.
  std::string id_of(Xapian::docid docid) const;

  /// Every recipe in shelf order. `visit` returns false to stop.
  Outcome<bool> each(const std::function<bool(const ComparableRecipe&)>& visit) const;

  /// What the books say of their own measures, in order of book and line.
  Outcome<std::vector<Statement>> statements() const;
  /// What one book says of them; nothing where it says nothing or is not here.
  Outcome<std::vector<Statement>> statements(const std::string& book) const;
  std::size_t statement_count() const;

  /// The database, for finding and grouping. Not thread-safe: one Shelf a thread.
  Xapian::Database& database() const { return *database_; }

  /// Whether the index is whole: every book's counts against the manifest, every document decodes, ids are unique,
  /// Xapian's own consistency. Each finding is a fault; empty is whole.
  std::vector<Fault> check() const;

 private:
  Shelf() = default;
  void take_decisions(const std::string& path);
  void take_corrections(const std::string& path);
  Outcome<ComparableRecipe> corrected(std::string_view data) const;
  std::string folder_;
  std::string generation_;  ///< path of the database
  std::string fingerprint_;
  std::vector<Book> books_;
  std::vector<std::size_t> counts_;
  std::vector<std::size_t> statement_counts_;
  std::unique_ptr<Xapian::Database> database_;
  std::vector<Decision> decisions_;
  Corrections corrections_;
  std::vector<Fault> doubts_;
  std::shared_ptr<const Register> tables_;            ///< without this shelf's books and decisions
  mutable std::shared_ptr<const Register> measures_;  ///< made when first asked for
};

}  // namespace gallipot
