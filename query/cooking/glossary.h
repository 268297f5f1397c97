// Which words of this recipe meant something else then, and what is to be bought or done now?
#pragma once

#include <vector>

#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// The terms of the table that this recipe has, in the order of its words, each once. A term applies where its form
/// stands (in an ingredient, in the text, in the title), in a book of its years, with the stuff or operation it wants.
std::vector<Gloss> glosses_of(const ComparableRecipe& recipe, const Kitchen& kitchen);

}  // namespace gallipot
