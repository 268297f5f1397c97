// One thread's own databases, of bounded size, to be merged when all threads are done.
#pragma once

#include <xapian.h>

#include <cstddef>
#include <string>
#include <vector>

#include "indexer/correcting/correction.h"
#include "indexer/measures/statement.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/storing/documents.h"

namespace gallipot {

/// Writes recipes into Xapian databases in a folder of its own, a new one whenever the last is full: Xapian's writes
/// grow worse than in a straight line with the size of a database. Nothing is safe against a crash before the
/// generation is made of them, so nothing is synced here. Throws Xapian::Error (a full disk).
class Shards {
 public:
  /// `prefix` is the path that every shard's name begins with; its folder must exist.
  Shards(std::string prefix, std::size_t shard_recipes, const Lexicon& lexicon);

  /// Stores a recipe as it is, to be found by what `corrections` make of it.
  void add(const ComparableRecipe& recipe, const Corrections& corrections = {});
  /// Adds what a book says of its own measures; nothing where it says nothing. Once a book.
  void add_statements(const std::string& book, const std::vector<Statement>& statements);

  /// Closes the last shard. The paths of all shards, in order of writing.
  const std::vector<std::string>& finish();

 private:
  void open_next();
  void close();

  std::string prefix_;
  std::size_t shard_recipes_;
  Documents documents_;
  Xapian::WritableDatabase database_;
  bool open_ = false;
  std::size_t in_shard_ = 0, uncommitted_ = 0, uncommitted_bytes_ = 0;
  std::vector<std::string> paths_;
};

}  // namespace gallipot
