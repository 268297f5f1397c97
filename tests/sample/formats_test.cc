// One book in three formats, and one as a scan was read: the same recipes come out of each.
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"
#include "tests/sample/likeness.h"
#include "tests/sample/pipeline.h"

namespace gallipot::sample {
namespace {

struct Found {
  double headings = 0;  ///< of the gold's, found by title
  double pages = 0;     ///< of those found, on the page that the gold has
  double signatures = 0;
  std::size_t recipes = 0;
  std::string notes;
};

std::vector<ComparableRecipe> recipes_of(const std::string& id) {
  const auto lexicon = must(Lexicon::load());
  const auto measures = must(Register::load());
  for (const Book& book : must(read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/formats.json")))
    if (book.id == id) return must(read_recipes(book, 0, *lexicon, *measures));
  throw std::runtime_error("no book " + id + " in formats.json");
}

bool is_answered(const GoldHeading& heading, const ComparableRecipe& recipe) {
  return std::any_of(heading.titles.begin(), heading.titles.end(),
                     [&](const std::string& title) { return same_title(title, recipe.recipe.title); });
}

Found found_in(const std::string& id, const std::string& gold_book) {
  const std::vector<ComparableRecipe> recipes = recipes_of(id);
  Found out;
  out.recipes = recipes.size();
  std::size_t wanted = 0, hits = 0, pages = 0, signatures = 0;
  for (const GoldWindow& window : load_windows()) {
    if (window.book != gold_book) continue;
    for (const GoldHeading& heading : window.recipes) {
      ++wanted;
      const auto hit = std::find_if(recipes.begin(), recipes.end(),
                                    [&](const ComparableRecipe& recipe) { return is_answered(heading, recipe); });
      if (hit == recipes.end()) {
        out.notes += "\n  missed: " + heading.titles.front();
        continue;
      }
      ++hits;
      const bool page = hit->recipe.page == heading.page;
      const bool signature = same_words(hit->recipe.contributor, heading.contributor);
      pages += page, signatures += signature;
      if (!page || !signature)
        out.notes += "\n  " + heading.titles.front() + ": page \"" + hit->recipe.page + "\" for \"" + heading.page +
                     "\", signed \"" + hit->recipe.contributor + "\" for \"" + heading.contributor + "\"";
    }
  }
  out.headings = static_cast<double>(hits) / static_cast<double>(wanted);
  out.pages = static_cast<double>(pages) / static_cast<double>(hits);
  out.signatures = static_cast<double>(signatures) / static_cast<double>(hits);
  std::cout << "  " << id << ": headings " << out.headings << ", pages " << out.pages << ", signatures "
            << out.signatures << ", recipes " << out.recipes << " for " << wanted << "\n";
  return out;
}

TEST(SampleFormats, TheManuscriptAsNotes) {
  const Found found = found_in("tivoran-1831-notes", "tivoran-1831");
  EXPECT_EQ(found.recipes, 38u) << found.notes;
  EXPECT_DOUBLE_EQ(found.headings, 1) << found.notes;
  EXPECT_DOUBLE_EQ(found.pages, 1) << found.notes;
  EXPECT_GE(found.signatures, 0.97) << found.notes;
}

TEST(SampleFormats, TheManuscriptInTei) {
  const Found found = found_in("tivoran-1831-tei", "tivoran-1831");
  EXPECT_EQ(found.recipes, 38u) << found.notes;
  EXPECT_DOUBLE_EQ(found.headings, 1) << found.notes;
  EXPECT_DOUBLE_EQ(found.pages, 1) << found.notes;
  EXPECT_GE(found.signatures, 0.97) << found.notes;
}

TEST(SampleFormats, TheDamagedBookAsTheMachineReadIt) {
  const Found found = found_in("quilhampton-1897-hocr", "quilhampton-1897");
  EXPECT_GE(found.headings, 0.95) << found.notes;
  EXPECT_GE(found.pages, 0.82) << found.notes;
}

}  // namespace
}  // namespace gallipot::sample
