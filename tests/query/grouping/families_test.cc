// Families of the sample shelf: what is in them, and that a book more does not stir them.
#include "query/grouping/families.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "indexer/catalogue/shelf_list.h"
#include "tests/query/grouping/small_shelf.h"
#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

using FamiliesOfTheSample = SampleShelf;

TEST_F(FamiliesOfTheSample, AreDescribed) {
  const auto all = families_of(*shelf_, *lexicon_);
  ASSERT_TRUE(all.has_value());
  ASSERT_FALSE(all->families.empty());
  std::set<std::string> seen;
  std::size_t members = 0;
  for (const Family& family : all->families) {
    EXPECT_GE(family.recipes.size(), 2u);
    EXPECT_FALSE(family.name.empty());
    EXPECT_GE(family.books, 1u);
    ASSERT_TRUE(family.first);
    EXPECT_LE(*family.first, *family.last);
    for (const auto& id : family.recipes) EXPECT_TRUE(seen.insert(id).second) << id << " is in two families";
    members += family.recipes.size();
  }
  EXPECT_EQ(members + all->alone, all->recipes);
  EXPECT_TRUE(std::is_sorted(all->families.begin(), all->families.end(),
                             [](const Family& a, const Family& b) { return a.books > b.books; }));
}

TEST_F(FamiliesOfTheSample, ADishIsFoundUnderAnyOfItsNames) {
  const auto found = families_of(*shelf_, *lexicon_, "quince marmalade");
  ASSERT_TRUE(found.has_value());
  ASSERT_FALSE(found->families.empty());
  const Family& first = found->families.front();
  EXPECT_GE(first.recipes.size(), 3u);
  EXPECT_GE(first.books, 3u);
  EXPECT_NE(first.name.find("marmalade"), std::string::npos) << first.name;
  EXPECT_TRUE(first.most_variable || first.recipes.size() < 4);
  const auto nothing = families_of(*shelf_, *lexicon_, "zeppelin");
  ASSERT_TRUE(nothing.has_value());
  EXPECT_TRUE(nothing->families.empty());
}

class FamiliesOfAGrowingShelf : public SmallShelf {};

/// Id -> name of its family, of recipes in families.
std::map<std::string, std::string> named(const Families& all) {
  std::map<std::string, std::string> out;
  for (const Family& family : all.families)
    for (const auto& id : family.recipes) out[id] = family.name;
  return out;
}

// Every pair of recipes that stood together without the last book is to stand together with it. A family may take
// another name when most of its recipes have it now.
TEST_F(FamiliesOfAGrowingShelf, ABookMorePartsFewAndRenamesFew) {
  const auto books = read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json").value();
  const auto without = std::vector<Book>(books.begin(), books.end() - 1);
  const Shelf small = shelf_of(without);
  const auto before = families_of(small, lexicon()).value();
  ASSERT_TRUE(build({books.back()}).has_value());
  const Shelf large = Shelf::open(index()).value();
  const auto after = named(families_of(large, lexicon()).value());
  std::size_t pairs = 0, kept = 0, names_kept = 0;
  for (const Family& family : before.families) {
    names_kept += after.contains(family.recipes.front()) && after.at(family.recipes.front()) == family.name;
    for (std::size_t i = 1; i < family.recipes.size(); ++i) {
      ++pairs;
      const auto a = after.find(family.recipes[i - 1]), b = after.find(family.recipes[i]);
      kept += a != after.end() && b != after.end() && a->second == b->second;
    }
  }
  ASSERT_GT(pairs, 20u);
  RecordProperty("pairs", static_cast<int>(pairs));
  RecordProperty("pairs_kept", static_cast<int>(kept));
  EXPECT_GE(static_cast<double>(kept), 0.98 * static_cast<double>(pairs));
  EXPECT_GE(static_cast<double>(names_kept), 0.85 * static_cast<double>(before.families.size()));
}

TEST_F(FamiliesOfAGrowingShelf, AShelfOfOneRecipeHasNone) {
  const Shelf shelf = shelf_of({written("lone", 1741, {{"Medlar Sauce", medlar}})});
  const auto all = families_of(shelf, lexicon());
  ASSERT_TRUE(all.has_value());
  EXPECT_TRUE(all->families.empty());
  EXPECT_EQ(all->alone, 1u);
}

}  // namespace
}  // namespace gallipot
