// Words of a title that name neither dish nor stuff: "to make", "nice", "pickled", "for". The table title-words.tsv.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/phrases.h"

namespace gallipot {

struct TitleWord {
  enum class Role : unsigned char { verb, strong_verb, skip, stop, of };
  Role role = Role::skip;
  std::string kind;  ///< of dish, that a verb implies; empty for the other roles
};

struct TitleWords {
  Phrases phrases;  ///< value: index in `words`
  std::vector<TitleWord> words;

  /// Faults: an unknown role, a verb without a kind.
  static Outcome<TitleWords> load(std::string_view table_bytes);
  static const TitleWords& built_in();
};

}  // namespace gallipot
