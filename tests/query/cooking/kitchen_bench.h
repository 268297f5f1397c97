// Recipes made by hand for the tests of the kitchen, weighed with the real register.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/normalizing/normalize.h"
#include "indexer/parsing/parse.h"
#include "query/cooking/cook.h"

namespace gallipot::kitchen_bench {

inline std::shared_ptr<const Register> measures() {
  static const auto loaded = Register::load().value();
  return loaded;
}
inline const Yardstick& yardstick() {
  static const Yardstick loaded = Yardstick::load(measures()).value();
  return loaded;
}
inline const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load().value();
  return *loaded;
}
inline const Kitchen& kitchen() {
  static const auto loaded = [] {
    auto kitchen = Kitchen::load();
    EXPECT_TRUE(kitchen) << (kitchen ? "" : kitchen.error().sentence());
    return *kitchen;
  }();
  return *loaded;
}

inline Book book(const std::string& id = "larkspur-1840", int year = 1840, const std::string& country = "GB") {
  Book out;
  out.id = id;
  out.title = "The Larkspur Receipts";
  out.creator = "Ann Larkspur";
  out.date = std::to_string(year);
  out.years = Years{year, year};
  out.country = country;
  return out;
}

/// A receipt as the pipeline would store it: read, parsed and normalized from its words.
inline ComparableRecipe receipt(const std::string& title, const std::string& text, const Book& from = book(),
                                std::uint32_t ordinal = 1) {
  Recipe recipe;
  recipe.ordinal = ordinal;
  recipe.title = recipe.dish_title = recipe.title_printed = title;
  recipe.text = text;
  recipe.page = "7";
  recipe.page_end = "8";
  recipe.parts.push_back({Part::Kind::paragraph, {0, static_cast<std::uint32_t>(text.size())}});
  recipe.line_start = 10;
  recipe.line_end = 14;
  ParsedRecipe parsed = parse(recipe, lexicon());
  return normalize(std::move(recipe), std::move(parsed), from, 0, lexicon(), *measures());
}

inline Outcome<Sheet> cooked(const ComparableRecipe& recipe, const Wanted& wanted = {},
                             std::vector<ComparableRecipe> siblings = {}) {
  std::vector<Book> books;
  for (const ComparableRecipe& sibling : siblings) books.push_back(book(sibling.book, sibling.year));
  return cook(recipe, book(recipe.book, recipe.year), std::move(siblings), std::move(books), lexicon(), yardstick(),
              kitchen(), wanted);
}

inline const SheetLine* line(const Sheet& sheet, const std::string& name) {
  for (const SheetLine& one : sheet.lines)
    if (one.name == name) return &one;
  return nullptr;
}

}  // namespace gallipot::kitchen_bench
