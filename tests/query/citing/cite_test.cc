// A recipe's place in print, in words.
#include "query/citing/cite.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

ComparableRecipe seed_cake() {
  ComparableRecipe recipe;
  recipe.id = "hart-1846/0007";
  recipe.file = "hart-1846.txt";
  recipe.recipe.title = "A Good Seed Cake";
  recipe.recipe.page = "41";
  recipe.recipe.page_end = "41";
  recipe.recipe.line_start = 900;
  recipe.recipe.line_end = 912;
  return recipe;
}

Book hart() {
  Book book;
  book.id = "hart-1846";
  book.title = "The Hartshill Receipts";
  book.creator = "Anne Hart";
  book.date = "1846";
  book.first_published = "1839";
  book.place = "Leeds";
  book.publisher = "J. Moor";
  book.edition = "third edition";
  return book;
}

TEST(Cite, NoteHasAllThatIsKnownInBibliographicOrder) {
  ComparableRecipe recipe = seed_cake();
  recipe.recipe.contributor = "Mrs. P.";
  recipe.recipe.page_end = "42";
  EXPECT_EQ(cite(recipe, hart()).note(),
            "Anne Hart, The Hartshill Receipts (third edition; Leeds: J. Moor, 1846; first published 1839), pp. 41-42, "
            "\"A Good Seed Cake\", contributed by Mrs. P.");
}

TEST(Cite, WhatIsNotKnownIsLeftOut) {
  Book book;
  book.title = "The Hartshill Receipts";
  EXPECT_EQ(cite(seed_cake(), book).note(), "The Hartshill Receipts (no date), p. 41, \"A Good Seed Cake\".");
  book.place = "Leeds";
  book.date = "1846";
  book.edition = "3rd";
  EXPECT_EQ(cite(seed_cake(), book).note(),
            "The Hartshill Receipts (3rd edition; Leeds, 1846), p. 41, \"A Good Seed Cake\".");
}

TEST(Cite, WithoutPageMarksTheLinesAreNamed) {
  ComparableRecipe recipe = seed_cake();
  recipe.recipe.page.clear();
  recipe.recipe.page_end.clear();
  EXPECT_EQ(cite(recipe, hart()).place_in_book(), "no page marks; lines 900-912 of hart-1846.txt");
  recipe.recipe.line_end = 900;
  EXPECT_EQ(cite(recipe, hart()).place_in_book(), "no page marks; line 900 of hart-1846.txt");
}

}  // namespace
}  // namespace gallipot
