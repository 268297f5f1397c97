// Which terms, values and data does a recipe get in the index?
#pragma once

#include <xapian.h>

#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/storing/stems.h"

namespace gallipot {

/// Makes the Xapian document of a recipe as schema.h lays it down. One a thread: it keeps the stems of the words that
/// it has met. The lexicon must outlive it.
class Documents {
 public:
  explicit Documents(const Lexicon& lexicon) : lexicon_(lexicon), stems_(lexicon) {}

  Xapian::Document of(const ComparableRecipe& recipe);

 private:
  void add_words(Xapian::Document& document, std::string_view prefix);
  void add_stems(Xapian::Document& document, const ComparableRecipe& recipe);
  void add_shingles(Xapian::Document& document) const;
  void add_names(Xapian::Document& document, const ComparableRecipe& recipe) const;

  const Lexicon& lexicon_;
  Stems stems_;
  std::vector<std::uint32_t> numbers_;  ///< of the words at hand; kept to be used again
  std::vector<std::uint64_t> marks_;    ///< of the words of the text at hand; likewise
};

}  // namespace gallipot
