// How long do answers take that go over much of a shelf? Lineage of a book, lineage of a recipe, families; on one index
// or on several of growing size (grow_shelf makes the books of large ones).
//
//   bench_answers INDEX... [--book ID] [--recipes N]
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <stdexcept>

#include "query/grouping/borrowings.h"
#include "query/grouping/families.h"
#include "query/grouping/lineage.h"

namespace {

using namespace gallipot;

struct Took {
  double wall = 0, processor = 0;
};

template <typename Work>
Took timed(Work work) {
  const auto start = std::chrono::steady_clock::now();
  const std::clock_t used = std::clock();
  work();
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(),
          static_cast<double>(std::clock() - used) / CLOCKS_PER_SEC};
}

template <typename T>
T must(Outcome<T> outcome) {
  if (!outcome) throw std::runtime_error(outcome.error().sentence());
  return std::move(*outcome);
}

void line(const std::string& what, const Took& took, std::size_t of) {
  fmt::print("  {:44}{:>9.3f} s wall{:>9.3f} s processor{:>10.3f} ms each\n", what, took.wall, took.processor,
             1e3 * took.processor / static_cast<double>(std::max<std::size_t>(1, of)));
}

/// Every so-manieth recipe of the shelf, `count` in all.
std::vector<std::string> spread(const Shelf& shelf, std::size_t count) {
  const std::size_t step = std::max<std::size_t>(1, shelf.recipe_count() / count);
  std::vector<std::string> out;
  std::size_t n = 0;
  (void)shelf.each([&](const ComparableRecipe& r) {
    if (n++ % step == 0) out.push_back(r.id);
    return out.size() < count;
  });
  return out;
}

void run(const std::string& index, std::string book, std::size_t recipes, const Lexicon& lexicon) {
  const Shelf shelf = must(Shelf::open(index));
  if (book.empty()) book = shelf.books().back().id;
  fmt::print("{}: {} recipes in {} books\n", index, shelf.recipe_count(), shelf.books().size());
  Borrowings borrowings;
  const Took whole = timed([&] { borrowings = must(borrowings_of(shelf, lexicon, book)); });
  line(fmt::format("lineage of {} ({} recipes, {} with a source)", book, borrowings.recipes, borrowings.kin), whole,
       borrowings.recipes);
  const auto ids = spread(shelf, recipes);
  std::size_t kin = 0;
  const Took each = timed([&] {
    for (const auto& id : ids) kin += must(lineage_of(shelf, lexicon, id)).earlier.size();
  });
  line(fmt::format("lineage of {} recipes ({} witnesses)", ids.size(), kin), each, ids.size());
  Families families;
  const Took grouped = timed([&] { families = must(families_of(shelf, lexicon)); });
  line(fmt::format("families ({})", families.families.size()), grouped, shelf.recipe_count());
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Times answers that go over much of a shelf.");
  std::vector<std::string> indexes;
  std::string book;
  std::size_t recipes = 100;
  app.add_option("index", indexes, "folders of indexes")->required();
  app.add_option("--book", book, "the book whose lineage is asked for; the last without it");
  app.add_option("--recipes", recipes, "so many single recipes are asked for")->check(CLI::PositiveNumber);
  CLI11_PARSE(app, argc, argv);
  try {
    const auto lexicon = must(Lexicon::load());
    for (const auto& index : indexes) run(index, book, recipes, *lexicon);
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    return EXIT_FAILURE;
  }
  return EXIT_SUCCESS;
}
