// What must a cook of today be told before making this? Looks for words of hazard in a recipe.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot {

/// The usual cautions, matched by whole phrases. Immutable once loaded; thread-safe.
class Cautions {
 public:
  /// Reads a table of cautions (data/cautions.tsv says what its columns are). Faults name the line.
  static Outcome<Cautions> load(std::string_view table_bytes);
  /// The table compiled in.
  static const Cautions& built_in();

  /// The caution sentences that a recipe calls for, each once, in the order of the table.
  std::vector<std::string> of(const Recipe& recipe) const;

 private:
  enum class Where : unsigned char { text, title, chapter };
  enum class Part : unsigned char { raises, also, unless };
  struct Caution {
    std::string sentence;
    Where where = Where::text;
    bool wants_also = false;
  };
  struct Phrase {
    std::vector<std::string> more;  ///< the words after the first
    std::uint32_t caution = 0;
    Part part = Part::raises;
  };
  struct Seen;
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  void add(std::string_view phrase, std::uint32_t caution, Part part);
  void look(std::string_view text, Where where, std::vector<Seen>& seen) const;

  std::vector<Caution> cautions_;
  std::unordered_map<std::string, std::vector<Phrase>, Hash, std::equal_to<>> by_first_;
  std::vector<bool> starts_;  ///< by the first two letters: whether any phrase begins with them
};

}  // namespace gallipot
