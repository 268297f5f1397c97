// A comparable recipe as the bytes of a Xapian document, and back. Every field that query/ needs survives, but for
// metric amounts: the register gives them when a recipe is read.
#pragma once

#include <string>
#include <string_view>

#include "indexer/fault/fault.h"
#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// Compact bytes (own binary form: varints and length-prefixed strings); the schema version guards it. All comes back
/// as it was, but for confidences: they are kept to a ten-thousandth (their further digits say nothing and would be a
/// tenth of the index).
std::string encode(const ComparableRecipe& recipe);

/// Faults: bytes cut short or out of range ("the index is damaged").
Outcome<ComparableRecipe> decode_recipe(std::string_view bytes);

/// The id alone, without decoding the rest: a view into `bytes`; empty where they are damaged.
std::string_view recipe_id_in(std::string_view bytes);

}  // namespace gallipot
