// Is an index whole? Everything is read once and held against the manifest.
#include <fmt/format.h>

#include <cstdint>
#include <filesystem>
#include <set>
#include <sstream>

#include "indexer/normalizing/normalize.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/schema.h"
#include "indexer/storing/shelf.h"
#include "indexer/storing/statements.h"

namespace gallipot {
namespace {

constexpr std::size_t most_findings_a_book = 5;

/// Findings of one book; when there are many the rest are only counted.
class Findings {
 public:
  Findings(const std::string& folder, const std::string& book, std::vector<Fault>& all)
      : folder_(folder), mend_(fmt::format("index the book \"{}\" again", book)), all_(all) {}
  ~Findings() {
    if (count_ > most_findings_a_book)
      all_.push_back(
          {fmt::format("and {} more faults of the same book", count_ - most_findings_a_book), folder_, 0, mend_});
  }
  Findings(const Findings&) = delete;
  Findings& operator=(const Findings&) = delete;
  void add(std::string what) {
    if (++count_ <= most_findings_a_book) all_.push_back({std::move(what), folder_, 0, mend_});
  }

 private:
  const std::string& folder_;
  std::string mend_;
  std::vector<Fault>& all_;
  std::size_t count_ = 0;
};

/// Reads every document of a book: does it decode, is it what its id says, is every number there once?
void check_book(const Xapian::Database& database, const Book& book, std::size_t count, Findings& findings) {
  const std::string term = schema::term(schema::book, book.id);
  std::set<std::uint32_t> seen;
  std::size_t documents = 0;
  for (auto at = database.postlist_begin(term); at != database.postlist_end(term); ++at) {
    ++documents;
    const auto recipe = decode_recipe(database.get_document(*at).get_data());
    if (!recipe) {
      findings.add(fmt::format("a recipe of \"{}\" is garbled", book.id));
      continue;
    }
    const auto ordinal = recipe->recipe.ordinal;
    if (recipe->book != book.id || recipe->id != recipe_id(book.id, ordinal)) {
      findings.add(fmt::format("the recipe \"{}\" stands under the book \"{}\"", recipe->id, book.id));
    } else if (!seen.insert(ordinal).second) {
      findings.add(fmt::format("the recipe \"{}\" is there twice", recipe->id));
    } else {
      if (database.get_termfreq(schema::term(schema::id, recipe->id)) != 1)
        findings.add(fmt::format("the recipe \"{}\" cannot be looked up by its id", recipe->id));
    }
  }
  if (documents != count)
    findings.add(
        fmt::format("\"{}\" has {} recipes by the manifest and {} in the database", book.id, count, documents));
  // Corrections of cuts leave gaps and number past the end; only where the sum is wrong are these faults.
  for (const auto ordinal : seen)
    if (documents > count && ordinal > count)
      findings.add(fmt::format("the recipe \"{}\" is not in the manifest", recipe_id(book.id, ordinal)));
  for (std::uint32_t i = 1; seen.size() < count && i <= count; ++i)
    if (!seen.contains(i)) findings.add(fmt::format("the recipe \"{}\" is missing", recipe_id(book.id, i)));
}

/// Reads what a book says of its measures: is it whole, is it there once and as the manifest says?
void check_statements(const Xapian::Database& database, const Book& book, std::size_t count, Findings& findings) {
  const auto documents = database.get_termfreq(schema::term(schema::statements, book.id));
  if (documents > 1) findings.add(fmt::format("what \"{}\" says of its measures is there twice", book.id));
  const auto statements = statements_of(database, book.id);
  if (!statements) {
    findings.add(fmt::format("what \"{}\" says of its measures is garbled", book.id));
  } else if (statements->size() != count) {
    findings.add(fmt::format("\"{}\" has {} statements on measures by the manifest and {} in the database", book.id,
                             count, statements->size()));
  }
}

/// Xapian's own check of the tables on disk. Parts on other machines must be checked there.
void check_database(const std::string& generation, const std::string& folder, std::vector<Fault>& found) {
  const auto stub = std::filesystem::path(generation) / "XAPIANDB";  // the check wants the stub file, not its folder
  std::error_code ignored;
  const std::string path = std::filesystem::exists(stub, ignored) ? stub.string() : generation;
  std::ostringstream words;
  std::size_t errors = 0;
  try {
    errors = Xapian::Database::check(path, 0, &words);
  } catch (const Xapian::UnimplementedError&) {
    return;
  } catch (const Xapian::Error& error) {
    errors = 1;
    words << error.get_msg();
  }
  if (errors == 0) return;
  std::string told = words.str();
  std::replace(told.begin(), told.end(), '\n', ' ');
  if (told.size() > 200) told = told.substr(0, 200) + "...";
  found.push_back(
      {fmt::format("the database is damaged ({} faults): {}", errors, told), folder, 0, "index all books again"});
}

}  // namespace

std::vector<Fault> Shelf::check() const {
  std::vector<Fault> found;
  try {
    check_database(generation_, folder_, found);
    std::size_t documents = 0;
    for (std::size_t i = 0; i < books_.size(); ++i) {
      Findings findings(folder_, books_[i].id, found);
      check_book(*database_, books_[i], counts_[i], findings);
      check_statements(*database_, books_[i], statement_counts_[i], findings);
      documents += counts_[i] + (statement_counts_[i] > 0 ? 1 : 0);
    }
    if (database_->get_doccount() != documents)
      found.push_back({fmt::format("the index has {} documents by the manifest and {} in the database", documents,
                                   database_->get_doccount()),
                       folder_, 0, "index all books again"});
  } catch (const Xapian::Error& error) {
    found.push_back({"the index cannot be read: " + error.get_msg(), folder_, 0, "index all books again"});
  }
  return found;
}

}  // namespace gallipot
