// A fault's sentence has the file, the line, the matter and the mend, each only when there is one.
#include "indexer/fault/fault.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

TEST(Fault, SaysWhereWhatAndMend) {
  EXPECT_EQ((Fault{"the book is empty", "a.txt", 3, "give another file"}.sentence()),
            "a.txt:3: the book is empty; give another file.");
  EXPECT_EQ((Fault{"nothing found", "", 0, ""}.sentence()), "nothing found.");
}

}  // namespace
}  // namespace gallipot
