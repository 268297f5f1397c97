// The tables behind the register: what a measure held, what a millilitre of a stuff weighs, what one of a counted thing
// weighs, and how a word bends a measure.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/measures/amount.h"

namespace gallipot::measuring {

/// Years of printing for which a row holds; 0 is without limit.
struct Period {
  int from = 0, to = 0;
  /// A book of unknown year (0) may be of any period.
  bool holds(int year) const { return year == 0 || ((from == 0 || year >= from) && (to == 0 || year <= to)); }
};

/// What a stuff is measured as.
enum class StuffClass : unsigned char { unknown, dry, thick, liquid, ale };

struct Unit {
  std::vector<std::string> of;  ///< foodstuffs' names or classes; empty for any stuff
  bool any_stuff = false;
  std::vector<std::string> country;  ///< ISO 3166; empty for anywhere
  Period period;
  Amount::Unit unit = Amount::Unit::millilitre;
  Extent extent;
  std::string why;
};

struct Density {
  StuffClass stuff_class = StuffClass::unknown;
  Extent extent;  ///< grams a millilitre
};

struct Counted {
  Period period;
  Extent extent;  ///< grams for one
  std::string why;
};

struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
};
template <typename T>
using ByText = std::unordered_map<std::string, T, TextHash, std::equal_to<>>;

struct MeasureTables {
  ByText<std::vector<Unit>> units;       ///< by measure
  ByText<Density> densities;             ///< by foodstuff
  ByText<std::vector<Counted>> counted;  ///< by foodstuff, '/', measure
  ByText<Extent> bends;                  ///< by note, '/', "spoon" or "*"
};

/// Reads units, densities, counted and bends; the user's own folder laid over them. Faults name file and line.
Outcome<MeasureTables> load_measure_tables(const std::string& overlay_folder);

}  // namespace gallipot::measuring
