// Stores the recipes of one book anew as they are, to be found by what the cook's corrections make of them now.
#include <fmt/format.h>
#include <xapian.h>

#include <algorithm>
#include <filesystem>
#include <utility>

#include "indexer/storing/build.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/schema.h"
#include "indexer/storing/shards.h"
#include "indexer/storing/site.h"
#include "indexer/storing/statements.h"

namespace gallipot {
namespace {

/// The stored recipes of a book, in shelf order.
Outcome<std::vector<ComparableRecipe>> stored_recipes(const Xapian::Database& database, const std::string& book) {
  std::vector<ComparableRecipe> out;
  const std::string term = schema::term(schema::book, book);
  for (auto at = database.postlist_begin(term); at != database.postlist_end(term); ++at) {
    auto recipe = decode_recipe(database.get_document(*at).get_data());
    if (!recipe) return tl::unexpected(recipe.error());
    out.push_back(std::move(*recipe));
  }
  std::sort(out.begin(), out.end(),
            [](const ComparableRecipe& a, const ComparableRecipe& b) { return a.recipe.ordinal < b.recipe.ordinal; });
  return out;
}

}  // namespace

Outcome<std::size_t> renew_book(const std::string& book, const std::string& folder, const Lexicon& lexicon,
                                const BuildOptions& options) {
  const auto corrections =
      read_corrections(options.corrections.empty() ? corrections_beside(folder) : options.corrections);
  if (!corrections) return tl::unexpected(corrections.error());
  try {
    Site site(folder);
    if (auto begun = site.begin(); !begun) return tl::unexpected(begun.error());
    const auto& books = site.old().books;
    if (std::none_of(books.begin(), books.end(), [&](const ShelvedBook& one) { return one.book.id == book; }))
      return fault(fmt::format("the index has no book \"{}\"", book), "take an id from the shelf list");
    const Xapian::Database live((std::filesystem::path(folder) / site.old().generation).string());
    const auto recipes = stored_recipes(live, book);
    if (!recipes) return tl::unexpected(recipes.error());
    const auto statements = statements_of(live, book);
    if (!statements) return tl::unexpected(statements.error());
    Shards shards(site.building() + "/shard-0-", options.shard_recipes, lexicon);
    for (const ComparableRecipe& recipe : *recipes) shards.add(recipe, *corrections);
    shards.add_statements(book, *statements);
    auto done = site.finish(shards.finish(), site.old(), {book}, options.merge);
    if (!done) return tl::unexpected(done.error());
    return recipes->size();
  } catch (const Xapian::Error& error) {
    return fault("the index cannot be written: " + error.get_msg(),
                 "see whether the disk is full and who may write here", folder);
  }
}

}  // namespace gallipot
