// Words to stems, through the tokenizer and Xapian's English stemmer, as at indexing.
#include "query/finding/stems.h"

#include <xapian.h>

#include <unordered_set>

#include "indexer/lexicon/tables.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

struct Hash {
  using is_transparent = void;
  std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
};

const std::unordered_set<std::string, Hash, std::equal_to<>>& silent_words() {
  static const auto* words = [] {
    auto* out = new std::unordered_set<std::string, Hash, std::equal_to<>>;
    if (const auto table = load_table("silent-words"))
      for (const auto& row : table->rows) out->emplace(row.cells.front());
    return out;
  }();
  return *words;
}

}  // namespace

std::vector<std::string> telling_stems(std::string_view text, const Lexicon&) {
  static const Xapian::Stem stem("english");
  std::vector<std::string> out;
  const Words words(text);
  for (const auto& word : words.all()) {
    if (word.kind != Word::Kind::word || word.key.size() < 2 || silent_words().contains(word.key)) continue;
    out.push_back(stem(std::string(word.key)));
  }
  return out;
}

}  // namespace gallipot
