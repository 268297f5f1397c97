// Lineage on small shelves: sources, order of time, changes, the tree, and what is said where there is nothing.
#include "query/grouping/lineage.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "query/grouping/borrowings.h"
#include "tests/query/grouping/small_shelf.h"

namespace gallipot {
namespace {

class LineageTest : public SmallShelf {
 protected:
  static Lineage lineage(const Shelf& shelf, const std::string& id) {
    auto out = lineage_of(shelf, lexicon(), id);
    EXPECT_TRUE(out.has_value()) << told(out);
    return out ? std::move(*out) : Lineage{};
  }
  /// Three books: the second copies the first, the third revises it; each has another receipt of its own.
  Shelf handed_on() const {
    return shelf_of({written("first", 1741, {{"Medlar Sauce", medlar}, {"Barberry Drops", barberry}}),
                     written("second", 1790, {{"Medlar Sauce", medlar_copied}, {"Roasted Eel", eel}}),
                     written("third", 1850, {{"Medlar Catsup", medlar_revised}})});
  }
};

TEST_F(LineageTest, ACopyNamesItsSourceAndTheChangedAmountsFirst) {
  const Shelf shelf = handed_on();
  const auto found = lineage(shelf, id_of(shelf, "second", "Medlar Sauce"));
  ASSERT_EQ(found.earlier.size(), 1u);
  const Kin& source = found.earlier.front();
  EXPECT_EQ(source.book, "first");
  EXPECT_TRUE(source.copy);
  EXPECT_GT(source.verbatim, 0.9);
  EXPECT_EQ(found.first, source.id);
  ASSERT_EQ(source.changes.size(), 2u);  // "3" for "three" is none
  EXPECT_EQ(source.changes[0].kind, WordChange::Kind::amount);
  EXPECT_EQ(source.changes[0].was, "nine");
  EXPECT_EQ(source.changes[0].is, "six");
  EXPECT_EQ(source.changes[1].was, "two");
  EXPECT_EQ(source.changes[1].is, "four");
  EXPECT_EQ(source.changes[1].stuff, "horseradish");
  ASSERT_EQ(found.later.size(), 1u);
  EXPECT_EQ(found.later.front().book, "third");
  EXPECT_FALSE(found.later.front().copy);
}

TEST_F(LineageTest, TheStemmaHangsEachWitnessOnTheOneThatHasMostOfItsWords) {
  const Shelf shelf = handed_on();
  const auto nodes = lineage(shelf, id_of(shelf, "third", "Medlar Catsup")).stemma.nodes;
  ASSERT_EQ(nodes.size(), 3u);
  EXPECT_EQ(nodes[0].siglum, "A");
  EXPECT_FALSE(nodes[0].parent);
  EXPECT_EQ(nodes[1].parent, std::optional<std::size_t>(0));
  // The reviser has the nine days of the first, not the six of the second.
  EXPECT_EQ(nodes[2].parent, std::optional<std::size_t>(0));
  EXPECT_NE(nodes[2].why.find("stand in A"), std::string::npos) << nodes[2].why;
}

TEST_F(LineageTest, AReceiptOfItsOwnHasNoKin) {
  const Shelf shelf = handed_on();
  const auto found = lineage(shelf, id_of(shelf, "second", "Roasted Eel"));
  EXPECT_TRUE(found.earlier.empty());
  EXPECT_TRUE(found.later.empty());
  EXPECT_EQ(found.stemma.nodes.size(), 1u);
}

TEST_F(LineageTest, FirstPublicationDecidesWhoIsEarlier) {
  const Shelf shelf = shelf_of({written("reprint", 1830, {{"Medlar Sauce", medlar}}, 1741),
                                written("middle", 1790, {{"Medlar Sauce", medlar_copied}})});
  const auto found = lineage(shelf, id_of(shelf, "middle", "Medlar Sauce"));
  ASSERT_EQ(found.earlier.size(), 1u);
  EXPECT_EQ(found.earlier.front().order.which, Order::Which::first);
  EXPECT_NE(found.earlier.front().order.why.find("first published in 1741"), std::string::npos);
  EXPECT_NE(found.earlier.front().order.why.find("edition of 1830"), std::string::npos);
  EXPECT_TRUE(lineage(shelf, id_of(shelf, "reprint", "Medlar Sauce")).earlier.empty());
}

TEST_F(LineageTest, WhereTheDatesCannotDecideItIsSaid) {
  const Shelf shelf = shelf_of({written("one", 1790, {{"Medlar Sauce", medlar}}),
                                written("undated", 0, {{"Medlar Sauce", medlar_copied}}),
                                written("same", 1790, {{"Medlar Sauce", medlar}})});
  const auto found = lineage(shelf, id_of(shelf, "one", "Medlar Sauce"));
  ASSERT_EQ(found.earlier.size(), 2u);
  for (const Kin& kin : found.earlier) {
    EXPECT_EQ(kin.order.which, Order::Which::undecided);
    EXPECT_NE(kin.order.why.find("cannot be told"), std::string::npos) << kin.order.why;
  }
  EXPECT_FALSE(found.first);
  EXPECT_NE(found.first_why.find("do not say"), std::string::npos) << found.first_why;
}

TEST_F(LineageTest, TheSameBookIsNoWitnessToItself) {
  const Shelf shelf =
      shelf_of({written("twice", 1790, {{"Medlar Sauce", medlar}, {"Medlar Sauce again", medlar_copied}}),
                written("other", 1741, {{"Roasted Eel", eel}})});
  const auto found = lineage(shelf, id_of(shelf, "twice", "Medlar Sauce"));
  EXPECT_TRUE(found.earlier.empty());
  ASSERT_EQ(found.in_same_book.size(), 1u);
  EXPECT_GT(found.in_same_book.front().verbatim, 0.9);
}

TEST_F(LineageTest, AWholeReceiptInsideALongerOneIsFound) {
  const std::string merged = std::string(barberry) + " " + eel + " " + medlar +
                             " Set the kettle aside, and have by you a bundle of clean straw, some pipkins, and a "
                             "skimmer; and of the dregs make a wash for the hen roost.";
  const Shelf shelf = shelf_of(
      {written("first", 1741, {{"Roasted Eel", eel}}), written("second", 1790, {{"Divers Things together", merged}})});
  const auto found = lineage(shelf, id_of(shelf, "second", "Divers Things together"));
  ASSERT_EQ(found.earlier.size(), 1u);
  EXPECT_LT(found.earlier.front().verbatim, 0.4);
  EXPECT_GT(found.earlier.front().of_earlier, 0.95);
}

TEST_F(LineageTest, UnknownIdsOfferTheNearest) {
  const Shelf shelf = handed_on();
  const auto found = lineage_of(shelf, lexicon(), "first/0009");
  ASSERT_FALSE(found.has_value());
  EXPECT_NE(found.error().sentence().find("first/"), std::string::npos) << found.error().sentence();
  const auto book = borrowings_of(shelf, lexicon(), "thrid");
  ASSERT_FALSE(book.has_value());
  EXPECT_NE(book.error().sentence().find("\"third\""), std::string::npos) << book.error().sentence();
}

TEST_F(LineageTest, WhatCannotHaveALineageIsTold) {
  const Shelf oldest = handed_on();
  const auto first = lineage(oldest, id_of(oldest, "first", "Barberry Drops"));
  EXPECT_NE(first.note.find("No book of this shelf is earlier than first"), std::string::npos) << first.note;
}

TEST_F(LineageTest, AShelfOfOneRecipeHasNoLineage) {
  const Shelf shelf = shelf_of({written("lone", 1741, {{"Medlar Sauce", medlar}})});
  const auto found = lineage(shelf, id_of(shelf, "lone", "Medlar Sauce"));
  EXPECT_FALSE(found.note.empty());
  EXPECT_TRUE(found.earlier.empty());
}

TEST_F(LineageTest, AnUndatedBookAloneInItsWordsSaysWhy) {
  const Shelf shelf =
      shelf_of({written("undated", 0, {{"Medlar Sauce", medlar}}), written("other", 1741, {{"Roasted Eel", eel}})});
  const auto found = lineage(shelf, id_of(shelf, "undated", "Medlar Sauce"));
  EXPECT_NE(found.note.find("no date"), std::string::npos) << found.note;
}

TEST_F(LineageTest, ALaterEditionOfTheSameAuthorShowsAtOnce) {
  Book first = written("first", 1741, {{"Medlar Sauce", medlar}, {"Barberry Drops", barberry}, {"Roasted Eel", eel}});
  Book later = written("later", 1760, {{"Medlar Sauce", medlar_copied}, {"Barberry Drops", barberry}});
  first.creator = "Susan Oldacre";
  later.creator = "OLDACRE, Susan";
  const Shelf shelf = shelf_of({first, later});
  const auto found = borrowings_of(shelf, lexicon(), "later");
  ASSERT_TRUE(found.has_value()) << told(found);
  EXPECT_EQ(found->recipes, 2u);
  EXPECT_EQ(found->kin, 2u);
  ASSERT_EQ(found->earlier.size(), 1u);
  EXPECT_TRUE(found->earlier.front().same_author);
  EXPECT_EQ(found->earlier.front().recipes, 2u);
  EXPECT_EQ(found->earlier.front().copies, 2u);
  const auto back = borrowings_of(shelf, lexicon(), "first");
  ASSERT_TRUE(back.has_value());
  EXPECT_TRUE(back->earlier.empty());
  ASSERT_EQ(back->later.size(), 1u);
  EXPECT_NE(back->note.find("No book of this shelf is earlier"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
