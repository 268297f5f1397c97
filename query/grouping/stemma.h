// The family tree of a text: which witness was probably taken from which.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "query/grouping/earlier.h"
#include "query/grouping/kin_texts.h"

namespace gallipot {

/// A witness in its place in the tree.
struct StemmaNode {
  std::string id;
  std::string siglum;                 ///< A, B, C ... in order of year
  std::optional<Years> years;         ///< of its text (see years_of_text); none where the shelf list has no date
  std::optional<std::size_t> parent;  ///< place in `nodes` of what it was probably taken from; always before it
  double share = 0;                   ///< 0..1: words of it that stand in the parent
  bool sure_of_order = true;          ///< whether the dates say that the parent is the earlier
  std::string why;                    ///< one sentence
};

/// Witnesses in order of year, those without one last. A node without a parent is the oldest, or has no witness before
/// it on the shelf that it is kin to.
struct Stemma {
  std::vector<StemmaNode> nodes;
};

/// A text with its book.
struct StemmaText {
  std::shared_ptr<const KinText> text;
  const Book* book = nullptr;
};

/// Each witness hangs on the one before it in time in which most of what it says stands, word for word; of two as good,
/// the older. A simple tree: a text drawn from two sources shows one of them, and what is lost from the shelf cannot
/// stand in it. A text counts by what its words tell.
Stemma stemma_of(std::vector<StemmaText> texts);

}  // namespace gallipot
