// What in a recipe can hurt someone? Usual cautions, matched on its words; they defer to local rules and licensed
// practice, and never say that a thing is safe.
#pragma once

#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"

namespace gallipot {

/// The cautions that apply to a recipe, each once, in the order of cautions.tsv. A row applies where one of its words
/// stands in the title or text and, if it names companions, one of those too; its exceptions are cut out first.
std::vector<std::string> cautions_of(const ComparableRecipe& recipe);

}  // namespace gallipot
