// A recipe made ready for the bench: the one door to this room.
//
//   const auto kitchen = Kitchen::load();
//   Wanted wanted;
//   wanted.yield = "1l";
//   const auto sheet = cook(shelf, lexicon, yardstick, **kitchen, "oldacre-1838/0019", wanted);
#pragma once

#include "query/cooking/batch.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"
#include "query/grouping/variants.h"

namespace gallipot {

/// A variant counts as a sibling, to be asked for what the recipe leaves out, from this likeness up.
inline constexpr double sibling_score = 0.6;

/// The kitchen sheet of recipe `id`. Faults: no such id; a scale, yield, basket or start that cannot be (see Wanted).
Outcome<Sheet> cook(const Shelf& shelf, const Lexicon& lexicon, const Yardstick& yardstick, const Kitchen& kitchen,
                    std::string_view id, const Wanted& wanted = {});

/// The same of a recipe in hand, with its siblings; `sibling_books[i]` is that of `siblings[i]`.
Outcome<Sheet> cook(const ComparableRecipe& recipe, const Book& book, std::vector<ComparableRecipe> siblings,
                    std::vector<Book> sibling_books, const Lexicon& lexicon, const Yardstick& yardstick,
                    const Kitchen& kitchen, const Wanted& wanted = {});

}  // namespace gallipot
