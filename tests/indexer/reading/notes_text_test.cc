// A cook's own notes: each mark of the convention (notes_text.h) in a test. Invented receipts.
#include <gtest/gtest.h>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

ReadBook read_notes(const std::string& text) {
  auto book = read_book(text, "gran.md");
  if (!book) throw std::runtime_error(book.error().sentence());
  EXPECT_EQ(book->format, "notes");
  return std::move(*book);
}

TEST(Notes, HeadsOfTwoRanks) {
  const ReadBook book = read_notes("# Puddings\n## Apple Snow\nPare the apples.\n");
  ASSERT_EQ(book.blocks.size(), 3u);
  EXPECT_EQ(book.blocks[0].kind, Block::Kind::heading);
  EXPECT_EQ(book.blocks[0].level, 1);
  EXPECT_EQ(book.blocks[1].level, 2);
  EXPECT_EQ(book.blocks[1].text, "Apple Snow");
  EXPECT_EQ(book.blocks[1].line_start(), 2u);
}

TEST(Notes, ItemsAndSteps) {
  const ReadBook book = read_notes("## Snow\n- 3 apples\n* 2 eggs,\n  beaten\n1. Pare them.\n2) Beat\nwell.\n");
  ASSERT_EQ(book.blocks.size(), 5u);
  EXPECT_EQ(book.blocks[1].kind, Block::Kind::list_item);
  EXPECT_EQ(book.blocks[2].text, "2 eggs, beaten");
  EXPECT_EQ(book.blocks[3].kind, Block::Kind::paragraph);
  EXPECT_EQ(book.blocks[3].text, "Pare them.");
  EXPECT_EQ(book.blocks[4].text, "Beat well.");
}

TEST(Notes, ParagraphsAndKeptLineEnds) {
  const ReadBook book = read_notes("Stew figs\nslowly.\n\nServe  \ncold.\n");
  ASSERT_EQ(book.blocks.size(), 2u);
  EXPECT_EQ(book.blocks[0].text, "Stew figs slowly.");
  EXPECT_EQ(book.blocks[1].text, "Serve\ncold.");
}

TEST(Notes, GiverRemarkAndPage) {
  const ReadBook book =
      read_notes("[p. 12]\n## Snow\nPare them.\n-- Mrs. Tolliver\n> Too sweet.\n\n[p. 13]\n## Rice\nBoil it.\n");
  ASSERT_EQ(book.blocks.size(), 6u);
  EXPECT_EQ(book.blocks[0].page, "12");
  EXPECT_TRUE(book.blocks[2].right_aligned);
  EXPECT_EQ(book.blocks[2].text, "Mrs. Tolliver");
  EXPECT_EQ(book.blocks[3].kind, Block::Kind::note);
  EXPECT_EQ(book.blocks[4].page, "13");
}

TEST(Notes, WordsThatCouldNotBeRead) {
  const ReadBook book = read_notes("Add [?butter] and [...] then *slowly* **stir**.\n");
  const Block& b = book.blocks.at(0);
  EXPECT_EQ(b.text, "Add butter and [...] then slowly stir.");
  ASSERT_EQ(b.mends.size(), 2u);
  EXPECT_EQ(b.mends[0].span.in(b.text), "butter");
  EXPECT_EQ(b.mends[0].printed, b.mends[0].read);
  EXPECT_EQ(b.mends[1].span.in(b.text), "[...]");
  EXPECT_EQ(b.runs.size(), 2u);
}

TEST(Notes, WhatIsKnownOfTheBook) {
  const ReadBook book = read_notes("---\ntitle: Gran's copybook\ndate: 1923~\nmood: good\n---\n## Snow\nPare.\n");
  ASSERT_GE(book.proposals.size(), 2u);
  EXPECT_EQ(book.proposals[0].field, "title");
  EXPECT_EQ(book.proposals[0].value, "Gran's copybook");
  EXPECT_EQ(book.proposals[1].value, "1923~");
  EXPECT_EQ(book.blocks[0].text, "Snow");
  EXPECT_EQ(book.blocks[0].line_start(), 6u);
}

TEST(Notes, ALoneRuleIsNoHeadOfNotes) {
  const ReadBook book = read_notes("---\n## Snow\nPare them.\n");
  EXPECT_EQ(book.blocks.front().kind, Block::Kind::rule);
}

}  // namespace
}  // namespace gallipot
