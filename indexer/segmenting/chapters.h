// Under which heads of the book does a receipt stand?
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/segmenting/opening.h"

namespace gallipot {

/// The heads that are open at a place of the book, outermost first.
class Chapters {
 public:
  /// A head has been met; `adjacent` where nothing but heads stands between it and the one before.
  void enter(std::string_view title, const Opening& opening, int level, bool adjacent);
  /// All open heads joined with " / ".
  std::string path() const;

 private:
  struct Head {
    std::string title;
    int rank;
    std::uint32_t group;
  };
  std::vector<Head> open_;
};

}  // namespace gallipot
