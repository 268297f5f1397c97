// How is a printed amount read? A number, what bends it, and a measure: "two heaped table-spoonfuls of", "a pound and a
// quarter", "a few slices", "half a dozen", "from ten to twelve".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/parsing/parsed.h"
#include "indexer/parsing/row.h"

namespace gallipot::parsing {

struct PrintedAmount {
  Extent all;                     ///< from its first word to its last, a following "of" not counted
  std::optional<Range> quantity;  ///< none for "a few slices", "some"
  Extent quantity_at;
  std::string measure;  ///< modern singular; empty for a plain count
  Extent measure_at;
  std::string note;         ///< "heaped", "small": the words that bend the measure or the count
  bool article = false;     ///< the number is only an "a"
  bool vague = false;       ///< "a little", "some", "enough"
  bool partial = false;     ///< a fraction of something the recipe named ("half of the butter"): no amount
  bool of = false;          ///< "of" follows
  bool ditto = false;       ///< "ditto" stands where the measure would
  bool elliptical = false;  ///< a fraction of the measure named before ("three quarters of butter")
  bool each = false;        ///< "each" stands before or after it
  bool container = false;   ///< counted in vessels or other things that may be no measure at all ("a dish")
  std::uint32_t next = 0;   ///< first word after it and its "of" or "each of"
};

/// All amounts of the row, in order, not overlapping. A plain "a" before no measure is one too (article set).
std::vector<PrintedAmount> find_amounts(const Row& row);

/// How many of the smaller measure make the larger one ("pound", "ounce" -> 16), 0 where the table knows no ratio.
double measures_in(std::string_view larger, std::string_view smaller);

}  // namespace gallipot::parsing
