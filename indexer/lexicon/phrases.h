// Finds phrases of a table in a row of words, longest first. Knows nothing of what the phrases mean.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/text/words.h"

namespace gallipot {

/// A set of phrases, each with a number of the owner's. Two words are the same when their singulars are ("potatoes",
/// "potato"), possessives count as the thing itself ("calf's", "calfs", "calves'" are "calf"), an older "'d" is "-ed"
/// ("distill'd"), and hyphens do not count. A phrase of several words is found written together too: "rose water" given
/// finds "rose-water", "rose water" and "rosewater"; "rosewater" given finds only itself. Immutable once filled; then
/// thread-safe. Matching allocates nothing.
class Phrases {
 public:
  struct Match {
    std::uint32_t value = 0;  ///< the owner's number
    std::uint32_t words = 0;  ///< how many Words of the row it covers, hyphens and possessive apostrophes included
  };

  /// Adds a phrase. A phrase already there keeps its first value; returns whether it was new.
  bool add(std::string_view phrase, std::uint32_t value);

  /// The numbers of a phrase's words here, entering those not met before. For building many phrases out of few parts.
  std::vector<std::uint32_t> numbers(std::string_view phrase);
  /// The place in the tree of phrases that numbers() lead to from another place (0: from the beginning).
  std::uint32_t place(std::uint32_t from, const std::vector<std::uint32_t>& numbers);
  /// Makes a place other than 0 the end of a phrase, whose words are not joined. A place claimed already keeps its
  /// first value; returns whether it was free.
  bool claim(std::uint32_t place, std::uint32_t value);
  /// Makes room for so many phrases at once.
  void reserve(std::size_t phrases);

  /// The longest phrase that begins at words[at]; `words == 0` in the answer where there is none.
  Match longest(const std::vector<Word>& words, std::size_t at) const;

  /// The value of a phrase given as text; nothing matched unless it covers the whole text.
  bool find(std::string_view phrase, std::uint32_t& value) const;

  std::size_t size() const { return count_; }

  /// Calls `use` with every word of every phrase, as it may be spelt: "potato", "potatoes", "potato's".
  template <typename Use>
  void each_spelling(Use use) const {
    for (const Slot& slot : slots_)
      if (slot.id != none) use(std::string_view(letters_).substr(slot.offset, slot.length));
  }

  /// The form under which a word is looked up: singular, without a possessive, "'d" as "ed". For reference matchers.
  static std::string plain_word(std::string_view key);

 private:
  static constexpr std::uint32_t none = 0xFFFFFFFF;
  struct Slot {  ///< one spelling of a word in an open-addressed table
    std::uint32_t hash = 0;
    std::uint32_t id = none;
    std::uint32_t offset = 0;
    std::uint32_t length = 0;
  };
  struct Edge {
    std::uint64_t from = ~0ULL;  ///< node << 32 | word id
    std::uint32_t to = 0;
  };
  struct Node {
    std::uint32_t value = none;
    bool leads_on = false;  ///< has edges to longer phrases
  };
  std::uint32_t word_id(std::string_view key) const;
  std::uint32_t enter_word(const std::string& word, bool joined = false);
  void enter_spelling(std::string_view spelling, std::uint32_t id);
  std::uint32_t step(std::uint32_t node, std::uint32_t id) const;
  static std::size_t seat(const std::vector<Edge>& edges, std::uint64_t from);
  void widen_edges(std::size_t for_count);
  std::uint32_t enter_step(std::uint32_t node, std::uint32_t id);
  void enter_joined(const std::vector<std::string>& words, std::uint32_t value);

  std::vector<Slot> slots_;  ///< size a power of two
  std::size_t spellings_ = 0;
  std::string letters_;  ///< all spellings end to end
  std::uint32_t word_count_ = 0;
  std::vector<std::uint32_t> first_;  ///< word id -> node of the phrases that begin with it; 0 where none does
  std::vector<bool> spelt_out_;       ///< word id -> all its spellings are entered, not only those of a joined word
  std::vector<Edge> edges_;           ///< open-addressed, size a power of two
  std::size_t edge_count_ = 0;
  std::vector<Node> nodes_;  ///< 0 is the root
  std::size_t count_ = 0;
};

}  // namespace gallipot
