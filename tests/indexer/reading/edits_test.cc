// Edits move everything that points into a text.
#include "indexer/reading/edits.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

TEST(Edits, MoveRunsCellsLinesAndPages) {
  Block block;
  block.text = "26ab cd";
  block.runs = {{{0, 2}, Run::bold, ""}, {{2, 4}, Run::italic, ""}, {{4, 5}, Run::bold, "gone"}};
  block.cells = {{5, 7}};
  block.lines = {{0, 1}, {5, 2}};
  block.pages = {{2, "9"}};
  apply_edits({{2, 0, " "}, {4, 1, ""}, {5, 2, "xyz"}}, block);
  EXPECT_EQ(block.text, "26 abxyz");
  ASSERT_EQ(block.runs.size(), 2u);
  EXPECT_EQ(block.runs[0].span, (Span{0, 2}));
  EXPECT_EQ(block.runs[1].span, (Span{3, 5}));
  EXPECT_EQ(block.cells[0], (Span{5, 8}));
  EXPECT_EQ(block.lines[1].at, 5u);
  EXPECT_EQ(block.pages[0].at, 3u);
}

TEST(Edits, MoveTheMarksAndSeamsOfTheirBlockOnly) {
  Draft draft;
  draft.blocks.resize(3);
  draft.blocks[1].text = "abcdef";
  draft.marks = {{0, 3, 1, "1", true}, {1, 3, 1, "2", true}, {2, 3, 1, "3", true}};
  draft.seams = {{1, 4}};
  apply_edits({{0, 2, ""}}, draft, 1);
  EXPECT_EQ(draft.marks[0].at, 3u);
  EXPECT_EQ(draft.marks[1].at, 1u);
  EXPECT_EQ(draft.marks[2].at, 3u);
  EXPECT_EQ(draft.seams[0].at, 2u);
}

TEST(Drafts, DroppedBlocksHandTheirMarksOn) {
  Draft draft;
  draft.blocks.resize(3);
  draft.blocks[0].text = "a";
  draft.blocks[2].text = "c";
  draft.marks = {{1, 0, 1, "5", true}, {3, 0, 2, "6", true}};
  draft.seams = {{1, 0}};
  drop_blocks(draft, {false, true, false});
  EXPECT_EQ(draft.blocks.size(), 2u);
  EXPECT_EQ(draft.marks[0].block, 1u);
  EXPECT_EQ(draft.marks[1].block, 2u);
  EXPECT_TRUE(draft.seams.empty());
}

}  // namespace
}  // namespace gallipot
