// What must a cook of today be told before making this? Looks for words of hazard, and for stuffs and amounts that are
// one, in a recipe.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// The usual cautions, matched by whole phrases and by canonical stuffs. Immutable once loaded; thread-safe.
class Cautions {
 public:
  /// Reads a table of cautions (data/cautions.tsv says what its columns are). Faults name the line.
  static Outcome<Cautions> load(std::string_view table_bytes);
  /// The table compiled in.
  static const Cautions& built_in();

  /// The caution sentences that a recipe calls for, each once, in the order of the table.
  std::vector<std::string> of(const Recipe& recipe, const std::vector<ComparableIngredient>& ingredients) const;

  /// Places in the table of the cautions that a recipe calls for; for looking at alarms one by one.
  std::vector<std::size_t> places_of(const Recipe& recipe, const std::vector<ComparableIngredient>& ingredients) const;
  /// How many there are.
  std::size_t size() const { return cautions_.size(); }
  /// The few words for a hazard of the table.
  const std::string& hazard(std::size_t place) const { return cautions_[place].hazard; }

 private:
  using PhraseWords = std::vector<std::string>;
  enum class Where : unsigned char { text, title, chapter };
  struct Caution {
    std::string hazard, sentence;
    Where where = Where::text;
    bool unheated = false;  ///< only where nothing is cooked
    bool wants_also = false;
    double least = 0;                ///< of a stuff, in its metric unit; 0: any
    bool for_each_kilogram = false;  ///< `least` is for each kilogram of meat and fish
    std::vector<PhraseWords> also, unless;
    std::vector<std::string> also_stuffs, also_kinds;
  };
  struct Start {
    PhraseWords more;  ///< the words after the first
    std::uint32_t caution = 0;
  };
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  template <typename T>
  using ByText = std::unordered_map<std::string, T, Hash, std::equal_to<>>;

  void add(std::string_view phrase, std::uint32_t caution);
  static void add_also(std::string_view part, Caution& caution);
  void look(std::string_view text, Where where, std::vector<bool>& raised) const;
  static bool enough(const Caution& caution, const ComparableIngredient& stuff,
                     const std::vector<ComparableIngredient>& ingredients);
  bool holds(const Caution& caution, const Recipe& recipe, const std::vector<ComparableIngredient>& ingredients) const;

  std::vector<Caution> cautions_;
  ByText<std::vector<Start>> by_first_;
  ByText<std::vector<std::uint32_t>> by_stuff_;
  std::vector<bool> starts_;  ///< by the first two letters: whether any phrase begins with them
};

}  // namespace gallipot
