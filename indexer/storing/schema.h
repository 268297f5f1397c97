// The one place that says how a recipe lies in the Xapian index: term prefixes, value slots, document data.
//
// An index is a folder:
//   shelf.json        the manifest: version of this schema, fingerprint of the tables, the books, which generation is
//   live generation-N/     a Xapian database (one, compacted), or a stub file naming several (then searched as one)
// Indexing writes a new generation beside the live one and swaps the manifest by rename; a reader keeps what it opened.
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot::schema {

/// Raised by one whenever an index written before could be misread. An index of another version is refused.
inline constexpr int version = 1;

// Term prefixes. Multi-letter prefixes start with X, as Xapian's own conventions ask.
inline constexpr std::string_view id = "Q";             ///< unique: recipe id
inline constexpr std::string_view book = "XB";          ///< book id
inline constexpr std::string_view country = "XC";       ///< ISO 3166
inline constexpr std::string_view title = "S";          ///< stemmed word of the title (Xapian's usual letter for it)
inline constexpr std::string_view title_word = "XW";       ///< word of the title as spelt, plain lower case: for spelling help
inline constexpr std::string_view dish_base = "XDB";    ///< canonical base of the dish
inline constexpr std::string_view dish_kind = "XDK";    ///< canonical kind of the dish
inline constexpr std::string_view dish_family = "XDF";  ///< family of that kind
inline constexpr std::string_view ingredient = "XI";    ///< canonical ingredient name
inline constexpr std::string_view ingredient_base = "XIB";  ///< what it is made of
inline constexpr std::string_view operation = "XO";         ///< operation
inline constexpr std::string_view chapter = "XH";           ///< stemmed word of the chapter head
inline constexpr std::string_view shingle = "XL";           ///< MinHash signature piece, for lineage
// Words of the text: stemmed, prefix "Z" as Xapian's stemmers write them; normalized spelling first.

// Value slots.
inline constexpr unsigned slot_year = 0;  ///< sortable_serialise(year)
inline constexpr unsigned slot_order =
    1;  ///< book order and ordinal, big-endian, so that plain byte order is shelf order
inline constexpr unsigned slot_country = 2;  ///< ISO 3166

}  // namespace gallipot::schema
