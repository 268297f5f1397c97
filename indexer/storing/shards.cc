// Shards, with Xapian's buffer of changes kept small enough for the memory that an indexing run may take.
#include "indexer/storing/shards.h"

#include <fmt/format.h>

#include <utility>

#include "indexer/correcting/readings.h"
#include "indexer/storing/statements.h"

namespace gallipot {
namespace {

// Xapian holds postings in memory until it commits, some eight bytes for each byte of text. Committing oftener costs
// nothing that can be measured (250 to 8000 recipes: the same processor time), holding more costs memory.
constexpr std::size_t most_uncommitted_recipes = 2000;
constexpr std::size_t most_uncommitted_bytes = 2u << 20;

}  // namespace

Shards::Shards(std::string prefix, std::size_t shard_recipes, const Lexicon& lexicon)
    : prefix_(std::move(prefix)), shard_recipes_(shard_recipes == 0 ? 1 : shard_recipes), documents_(lexicon) {}

void Shards::open_next() {
  paths_.push_back(fmt::format("{}{}", prefix_, paths_.size()));
  database_ = Xapian::WritableDatabase(paths_.back(), Xapian::DB_CREATE_OR_OVERWRITE | Xapian::DB_BACKEND_GLASS |
                                                          Xapian::DB_NO_SYNC | Xapian::DB_DANGEROUS);
  open_ = true;
  in_shard_ = uncommitted_ = uncommitted_bytes_ = 0;
}

void Shards::close() {
  if (!open_) return;
  database_.commit();
  database_.close();
  open_ = false;
}

void Shards::add(const ComparableRecipe& recipe, const Corrections& corrections) {
  if (!open_) open_next();
  Xapian::Document document = documents_.of(recipe);
  if (!corrections.of(recipe.book).empty()) {
    ComparableRecipe corrected = recipe;
    correct_readings(corrected, corrections);
    const std::string stored = document.get_data();
    document = documents_.of(corrected);
    document.set_data(stored);
  }
  database_.add_document(document);
  ++uncommitted_;
  uncommitted_bytes_ += recipe.recipe.text.size();
  if (++in_shard_ >= shard_recipes_) {
    close();
  } else if (uncommitted_ >= most_uncommitted_recipes || uncommitted_bytes_ >= most_uncommitted_bytes) {
    database_.commit();
    uncommitted_ = uncommitted_bytes_ = 0;
  }
}

void Shards::add_statements(const std::string& book, const std::vector<Statement>& statements) {
  if (statements.empty()) return;
  if (!open_) open_next();
  database_.add_document(statements_document(book, statements));
}

const std::vector<std::string>& Shards::finish() {
  close();
  return paths_;
}

}  // namespace gallipot
