// What a recipe asks for and does, as read from its words. Nothing here is converted or guessed: amounts are as
// printed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/text/range.h"
#include "indexer/text/span.h"

namespace gallipot {

/// "half as much cloves", "the weight of the juice in sugar".
struct Relative {
  enum class By : unsigned char { weight, measure };
  double factor = 1;
  std::string to;  ///< plain modern name of what it is relative to ("fruit", "egg")
  By by = By::measure;
};

/// "to every quart of the liquor".
struct PerUnit {
  double quantity = 1;
  std::string measure;  ///< modern singular; empty for a plain count
  std::string of;       ///< plain name ("walnut liquor")
};

struct Ingredient {
  Span span;         ///< in Recipe::text: the printed words, amount and name
  Span name_span;    ///< in Recipe::text: the name alone
  std::string name;  ///< modern plain English singular, from the lexicon; the printed words where it knows none
  std::optional<Range> quantity;  ///< what the print says; none where it names no amount ("a few blades")
  Span quantity_span;
  std::string measure;  ///< printed measure, modern singular without "-ful"; empty for a plain count
  Span measure_span;
  std::string measure_note;  ///< "heaped", "scant", "small", "large", ...: words that bend the measure; may be empty
  std::optional<Relative> relative;
  std::optional<PerUnit> per;
  bool optional = false;
  std::string alternative_of;  ///< name of the ingredient it may stand for; empty where it is none
  double confidence = 1.0;
};

struct Step {
  std::string op;  ///< one of the operations of the export schema
  std::optional<Range> minutes;
  Span span;  ///< in Recipe::text
};

struct ParsedRecipe {
  std::vector<Ingredient> ingredients;  ///< in order of first mention
  std::vector<Step> steps;              ///< in order of doing, as told
};

}  // namespace gallipot
