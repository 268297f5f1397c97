// How large is a measure, roughly? So that two amounts that cannot be equal are not taken for equal, and so that it is
// known which of two measures is the vaguer.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/register.h"

namespace gallipot::mining {

/// Remembers what the register answers by its own tables, without any book's statements, since those are what is looked
/// for. One a thread; the lexicon must outlive it.
class Sizes {
 public:
  explicit Sizes(const Lexicon& lexicon) : lexicon_(lexicon) {}

  /// One of the measure, of any stuff, at any time and place; nothing where the register has no figure.
  const std::optional<Amount>& of(const std::string& measure);
  /// One of a counted stuff ("egg") in grams; nothing where the register does not know what one weighs.
  const std::optional<Amount>& of_one(const std::string& stuff);

  /// How vague a measure is; the higher the vaguer (data/vague-measures.tsv); -1: nothing is told of it or in it. Of a
  /// name that is no measure: that of a counted stuff.
  int vagueness(const std::string& measure) const;
  /// Whether anything is told of a measure of that name and kind, or in it.
  static bool tells(const std::string& measure, const std::string& kind);
  /// Whether the measure is meant as one where it stands without a number.
  static bool may_stand_bare(const MeasureWord& measure);

  const Lexicon& lexicon() const { return lexicon_; }

 private:
  const Lexicon& lexicon_;
  std::unordered_map<std::string, std::optional<Amount>> measures_known_, stuffs_known_;
};

/// By how much the two can miss each other and still be one: "by weight and measure the same" needs more room than
/// "4 gills are a pint".
enum class Closeness : unsigned char {
  stated,   ///< the print says that they are equal
  implied,  ///< set side by side, named anew after "or"
};

/// Whether `count_a` of the one measure can be `count_b` of the other. Where the register knows nothing of one of them:
/// whether the print says so.
bool may_equal(Sizes& sizes, double count_a, const std::string& a, double count_b, const std::string& b,
               Closeness closeness);

}  // namespace gallipot::mining
