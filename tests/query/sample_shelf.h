// The sample shelf, indexed once for all tests of a program that need it.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"
#include "query/finding/find.h"

namespace gallipot {

/// The sample shelf, indexed once for all tests of this program.
class SampleShelf : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = std::filesystem::temp_directory_path() / ("gallipot-find-" + std::to_string(::getpid()));
    lexicon_ = Lexicon::load().value();
    const auto books = read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json").value();
    ASSERT_TRUE(build_index(books, folder_.string(), *lexicon_).has_value());
    shelf_ = new Shelf(Shelf::open(folder_.string()).value());
  }
  static void TearDownTestSuite() {
    delete shelf_;
    shelf_ = nullptr;
    std::filesystem::remove_all(folder_);
  }

  static std::vector<ComparableRecipe> found(const std::vector<std::string>& words, const Filter& filter = {},
                                             std::size_t limit = 20) {
    std::vector<ComparableRecipe> out;
    const auto answer = find(*shelf_, *lexicon_, words, filter, limit);
    EXPECT_TRUE(answer.has_value());
    for (const auto& hit : answer->hits) out.push_back(shelf_->recipe(hit.id).value());
    return out;
  }
  static bool has(const ComparableRecipe& recipe, const std::string& name) {
    return std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                       [&](const ComparableIngredient& i) { return i.printed.name == name; });
  }

  static std::filesystem::path folder_;
  static std::shared_ptr<const Lexicon> lexicon_;
  static Shelf* shelf_;
};
inline std::filesystem::path SampleShelf::folder_;
inline std::shared_ptr<const Lexicon> SampleShelf::lexicon_;
inline Shelf* SampleShelf::shelf_ = nullptr;

}  // namespace gallipot
