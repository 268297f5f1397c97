// Books in, index out: runs the whole pipeline over a shelf and stores the result. Whole books or nothing.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"
#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/register.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/reading/proposal.h"

namespace gallipot {

/// A recipe that is not sure, for the person to look at.
struct DoubtfulRecipe {
  std::string id, title, page;
  std::string why;  ///< a clause
  double confidence = 0;
};

/// What became of one book.
struct BookReport {
  std::string book;
  std::string format, charset, habit;
  std::size_t bytes = 0, recipes = 0, doubtful = 0, ingredients = 0, page_marks = 0;
  std::size_t statements = 0;  ///< on measures
  std::vector<Fault> doubts;
  std::vector<DoubtfulRecipe> in_doubt;
  std::vector<Proposal> proposals;  ///< what the file says of the book where the shelf list is silent; not used
  std::string refused;              ///< why the book was not indexed, as a sentence; empty when it was
};

/// How far the work is, for a progress line.
struct Progress {
  std::size_t books_done = 0, books_all = 0, recipes = 0;
  std::uint64_t bytes_done = 0, bytes_all = 0;
  double seconds = 0;
  std::string book;  ///< the one just finished
};

struct BuildOptions {
  unsigned threads = 0;                           ///< 0: as many as the machine has
  std::size_t shard_recipes = 50000;              ///< a shard is closed at this size; see DESIGN on growth
  bool merge = true;                              ///< compact the shards into one database at the end
  std::string corrections;                        ///< file of the cook's; empty for the one beside the index
  std::function<void(const Progress&)> progress;  ///< called from one thread at a time; may be empty
};

struct BuildReport {
  std::vector<BookReport> books;  ///< in shelf order
  std::size_t recipes = 0;
  std::uint64_t bytes = 0;
  double seconds = 0;
};

/// Reads, cuts, parses, normalizes and stores `books` into the index folder `folder` (made if it is not there). Books
/// that the index has already are replaced whole; others in it stay. On a fault nothing of the index has changed.
/// The cook's corrections are applied: cuts to what is stored, readings to what is searched by (Shelf applies them to
/// what is read). A damaged file of corrections is a fault.
/// A book that cannot be read or has no recipes is reported in BookReport::refused and the others are indexed.
Outcome<BuildReport> build_index(const std::vector<Book>& books, const std::string& folder, const Lexicon& lexicon,
                                 const BuildOptions& options = {});

/// Makes a book of the index searchable by the cook's corrections as they are now, without reading its file again:
/// corrections of amounts and ingredients; corrections of cuts need build_index. Answers how many recipes it has.
/// Faults: as build_index; the index has no such book.
Outcome<std::size_t> renew_book(const std::string& book, const std::string& folder, const Lexicon& lexicon,
                                const BuildOptions& options = {});

/// The pipeline for one book, without storing, metric amounts filled in: for tests, tools and export without an index.
Outcome<std::vector<ComparableRecipe>> read_recipes(const Book& book, std::uint32_t book_order, const Lexicon& lexicon,
                                                    const Register& measures, BookReport* report = nullptr);

}  // namespace gallipot
