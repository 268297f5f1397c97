// Opens an index and reads recipes from it.
#include "indexer/storing/shelf.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <utility>

#include "indexer/correcting/readings.h"
#include "indexer/measures/decisions.h"
#include "indexer/normalizing/normalize.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/manifest.h"
#include "indexer/storing/nearest.h"
#include "indexer/storing/schema.h"
#include "indexer/storing/statements.h"

namespace gallipot {
namespace {

constexpr const char* again = "index the books again";

tl::unexpected<Fault> unreadable(const Xapian::Error& error, const std::string& folder) {
  return fault("the index cannot be read: " + error.get_msg(), again, folder);
}

/// The tables that all books were indexed with; empty where they differ.
std::string common_tables(const Manifest& manifest) {
  if (manifest.books.empty()) return {};
  const std::string& first = manifest.books.front().tables;
  const bool same =
      std::all_of(manifest.books.begin(), manifest.books.end(), [&](const auto& b) { return b.tables == first; });
  return same ? first : std::string();
}

struct Stored {
  std::string order;
  std::string data;
};

}  // namespace

Outcome<Shelf> Shelf::open(const std::string& folder, const ShelfReading& reading) {
  constexpr int attempts = 3;  // a run that ends just now removes the generation that we were about to open
  auto tables = Register::load(reading.tables);
  if (!tables) return tl::unexpected(tables.error());
  for (int attempt = 1;; ++attempt) {
    auto manifest = read_manifest(folder);
    if (!manifest) return tl::unexpected(manifest.error());
    try {
      Shelf shelf;
      shelf.folder_ = folder;
      shelf.generation_ = (std::filesystem::path(folder) / manifest->generation).string();
      shelf.database_ = std::make_unique<Xapian::Database>(shelf.generation_);
      shelf.fingerprint_ = common_tables(*manifest);
      for (auto& shelved : manifest->books) {
        shelf.books_.push_back(std::move(shelved.book));
        shelf.counts_.push_back(shelved.recipes);
        shelf.statement_counts_.push_back(shelved.statements);
      }
      shelf.tables_ = *tables;
      shelf.take_decisions(reading.decisions.empty() ? decisions_beside(folder) : reading.decisions);
      shelf.take_corrections(reading.corrections.empty() ? corrections_beside(folder) : reading.corrections);
      return shelf;
    } catch (const Xapian::Error& error) {
      if (attempt == attempts) return unreadable(error, folder);
    }
  }
}

void Shelf::take_decisions(const std::string& path) {
  auto decisions = read_decisions(path);
  if (decisions)
    decisions_ = std::move(*decisions);
  else
    doubts_.push_back(decisions.error());
}

void Shelf::take_corrections(const std::string& path) {
  auto corrections = read_corrections(path);
  if (corrections)
    corrections_ = std::move(*corrections);
  else
    doubts_.push_back(corrections.error());
}

Outcome<ComparableRecipe> Shelf::corrected(std::string_view data) const {
  auto recipe = decode_recipe(data);
  if (recipe && !corrections_.empty()) correct_readings(*recipe, corrections_);
  return recipe;
}

const std::shared_ptr<const Register>& Shelf::measures() const {
  if (!measures_) {
    auto told = statements();
    measures_ = tables_->with({told ? std::move(*told) : std::vector<Statement>{}, books_, decisions_});
  }
  return measures_;
}

const Book* Shelf::book(std::string_view id) const {
  const auto at = std::find_if(books_.begin(), books_.end(), [&](const Book& b) { return b.id == id; });
  return at == books_.end() ? nullptr : &*at;
}

std::size_t Shelf::recipe_count() const {
  std::size_t n = 0;
  for (const auto count : counts_) n += count;
  return n;
}

std::size_t Shelf::statement_count() const {
  std::size_t n = 0;
  for (const auto count : statement_counts_) n += count;
  return n;
}

Outcome<std::vector<Statement>> Shelf::statements(const std::string& book) const {
  try {
    return statements_of(*database_, book);
  } catch (const Xapian::Error& error) {
    return unreadable(error, folder_);
  }
}

Outcome<std::vector<Statement>> Shelf::statements() const {
  std::vector<Statement> all;
  for (const auto& book : books_) {
    auto some = statements(book.id);
    if (!some) return some;
    std::move(some->begin(), some->end(), std::back_inserter(all));
  }
  return all;
}

std::optional<Xapian::docid> Shelf::docid_of(std::string_view id) const {
  const std::string term = schema::term(schema::id, id);
  const auto at = database_->postlist_begin(term);
  if (at == database_->postlist_end(term)) return std::nullopt;
  return *at;
}

Outcome<ComparableRecipe> Shelf::recipe(std::string_view id) const {
  try {
    if (const auto docid = docid_of(id)) return recipe(*docid);
  } catch (const Xapian::Error& error) {
    return unreadable(error, folder_);
  }
  return fault(fmt::format("there is no recipe \"{}\"", id), nearest_recipes(id, books_, counts_));
}

Outcome<ComparableRecipe> Shelf::recipe(Xapian::docid docid) const {
  auto out = unweighed(docid);
  if (out) weigh(*out, *measures());
  return out;
}

Outcome<ComparableRecipe> Shelf::unweighed(Xapian::docid docid) const {
  try {
    return corrected(database_->get_document(docid).get_data());
  } catch (const Xapian::Error& error) {
    return unreadable(error, folder_);
  }
}

std::string Shelf::id_of(Xapian::docid docid) const {
  return std::string(recipe_id_in(database_->get_document(docid).get_data()));
}

Outcome<bool> Shelf::each(const std::function<bool(const ComparableRecipe&)>& visit) const {
  std::vector<Stored> stored;  // of one book
  for (const auto& book : books_) {
    stored.clear();
    try {
      const std::string term = schema::term(schema::book, book.id);
      const auto end = database_->postlist_end(term);
      for (auto at = database_->postlist_begin(term); at != end; ++at) {
        const Xapian::Document document = database_->get_document(*at);
        stored.push_back({document.get_value(schema::slot_order), document.get_data()});
      }
    } catch (const Xapian::Error& error) {
      return unreadable(error, folder_);
    }
    std::sort(stored.begin(), stored.end(), [](const Stored& a, const Stored& b) { return a.order < b.order; });
    for (const auto& one : stored) {
      auto recipe = corrected(one.data);
      if (!recipe) return tl::unexpected(recipe.error());
      weigh(*recipe, *measures());
      if (!visit(*recipe)) return false;
    }
  }
  return true;
}

}  // namespace gallipot
