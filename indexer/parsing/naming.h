// What is a mention called? Phrases of the lexicon, parts of things ("the juice of two lemons"), names that are put
// together from two ("veal broth") or that share a head ("mushroom or walnut ketchup").
#pragma once

#include <vector>

#include "indexer/parsing/mentions.h"

namespace gallipot::parsing {

/// The mentions that stand in the row, in order, without amounts; amounts inside a name ("juice of TWO lemons") are
/// set. `taken` marks the words that are measures of amounts; such words name no stuff.
std::vector<Mention> name_mentions(const Row& row, const std::vector<PrintedAmount>& amounts,
                                   const std::vector<bool>& taken);

/// A mention of stuff that the lexicon does not know, from the words of the extent ("2 cups of OLEO").
Mention unknown_mention(const Row& row, Extent words);

/// First word of the noun phrase that ends with the name: modifiers such as "finely powdered" belong to it.
std::uint32_t phrase_begin(const Row& row, std::uint32_t name_begin, std::uint32_t floor);

/// Whether word i can stand between an amount or determiner and the name ("very", "fresh", "finely-chopped").
bool modifier(const Row& row, std::uint32_t i);

}  // namespace gallipot::parsing
