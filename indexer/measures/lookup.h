// Which rows of the tables may be meant by a measure, and what do they hold together? Whatever is left open (year,
// country, stuff) is answered by the union of all that may be true, so that a wider reading never gives a narrower
// answer.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/measures/measure_tables.h"

namespace gallipot::measuring {

/// Of what, where and when a measure is asked.
struct Place {
  std::string_view of;
  std::string_view country;
  int year = 0;
};

/// One of the measure, before it is multiplied by the printed number.
struct One {
  Amount::Unit unit = Amount::Unit::gram;
  Extent extent;
  std::string why;
  std::vector<const Held*> rows;  ///< those that it rests on
};

/// Whether a row is for stuffs of the class; a stuff of unknown class may be any.
bool is_for(const Held& held, StuffClass stuff_class);

/// A spoon is filled above its brim with a dry stuff, unless the book says level.
bool is_spoon(std::string_view measure);

/// A measure of capacity of a stuff that is given by weight, weighed; others as they are.
void weigh(One& one, const Stuff& stuff, std::string_view of);

/// All rows that may be meant, joined; the first of the table is the likeliest. A row that names the stuff stands in
/// for those of its class, but only where it holds for certain. Household rows without witnesses are passed over. `as`
/// is the class that the stuff is measured as.
std::optional<One> one_of(const std::vector<Held>& rows, StuffClass as, const Stuff& stuff, const Place& place);

/// One of a counted stuff in grams: `measure` is a piece ("clove") or empty.
std::optional<One> one_counted(const MeasureTables& tables, const Place& place, std::string_view measure);

/// The factor by which a word bends a measure; nothing where the table has none.
const Bend* bend_of(const MeasureTables& tables, std::string_view note, std::string_view measure);

}  // namespace gallipot::measuring
