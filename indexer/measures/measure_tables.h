// The tables behind the register, as rows: what a legal measure held, which household measures there were, who bears
// witness to what they held, what a millilitre of a stuff weighs, what one of a counted thing weighs, and how a word
// bends a measure.
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
  bool always() const { return from == 0 && to == 0; }
};

/// What a stuff is measured as. `heap` is a dry stuff that was sold by heaped measure: fruit, roots.
enum class StuffClass : unsigned char { unknown, dry, heap, thick, liquid, ale };

/// One way to read a measure: what it held where, when and of which stuffs.
struct Held {
  std::vector<std::string> of;       ///< foodstuffs' names or classes; empty for any stuff
  std::vector<std::string> country;  ///< ISO 3166; empty for anywhere
  Period period;
  Amount::Unit unit = Amount::Unit::millilitre;
  Extent extent;
  std::string why;
  std::string source;
  bool household = false;                ///< by custom: its extent is reckoned from witnesses
  std::vector<std::uint32_t> witnesses;  ///< of a household measure: indices, see evidence.h

  bool names(std::string_view word) const;
  bool may_be_in(std::string_view a_country) const;
};

/// A household measure: a group of witnesses of one place and time. Its extent is not in the table.
struct Witnessed {
  std::string measure, of, country, source;
  int year = 0;
  double low = 0, high = 0;  ///< in `unit`, for one
  std::string unit;
};

struct Stuff {
  StuffClass stuff_class = StuffClass::unknown;
  Extent density;  ///< grams a millilitre
  std::string source;
};

struct Counted {
  Period period;
  Extent extent;  ///< grams for one
  std::string why, source;
};

struct Bend {
  Extent factor;
  std::string source;
};

struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
};
template <typename T>
using ByText = std::unordered_map<std::string, T, TextHash, std::equal_to<>>;

struct MeasureTables {
  ByText<std::vector<Held>> held;  ///< by measure; those of the household have no extent yet
  std::vector<Witnessed> witnesses;
  ByText<Stuff> stuffs;                  ///< by foodstuff
  ByText<std::vector<Counted>> counted;  ///< by foodstuff, '/', measure
  ByText<Extent> eaten;                  ///< by foodstuff: the part of its weight that is left of it when it is cleaned
  ByText<Bend> bends;                    ///< by note, '/', "spoon" or "*"

  const Stuff& stuff(std::string_view name) const;
};

/// Reads units, households, witnesses, densities, counted, eaten and bends; the user's own folder laid over them.
/// Faults name file and line.
Outcome<MeasureTables> load_measure_tables(const std::string& overlay_folder);

}  // namespace gallipot::measuring
