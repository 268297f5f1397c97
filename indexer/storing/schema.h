// The one place that says how a recipe lies in the Xapian index: term prefixes, value slots, document data.
//
// An index is a folder:
//   shelf.json        the manifest: version of this schema, fingerprint of the tables, the books, which generation is
//   live generation-N/     a Xapian database (one, compacted), or a stub file naming several (then searched as one)
// Indexing writes a new generation beside the live one and swaps the manifest by rename; a reader keeps what it opened.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace gallipot::schema {

/// Raised by one whenever an index written before could be misread. An index of another version is refused.
inline constexpr int version = 3;

// Term prefixes. Multi-letter prefixes start with X, as Xapian's own conventions ask.
inline constexpr std::string_view id = "Q";        ///< unique: recipe id
inline constexpr std::string_view book = "XB";     ///< book id
inline constexpr std::string_view country = "XC";  ///< ISO 3166
inline constexpr std::string_view title = "S";     ///< stemmed word of the title (Xapian's usual letter for it)
inline constexpr std::string_view title_word =
    "XW";  ///< word of the title as spelt, plain lower case: for spelling help
inline constexpr std::string_view dish_base = "XDB";        ///< canonical base of the dish
inline constexpr std::string_view dish_kind = "XDK";        ///< canonical kind of the dish
inline constexpr std::string_view dish_family = "XDF";      ///< family of that kind
inline constexpr std::string_view ingredient = "XI";        ///< canonical ingredient name
inline constexpr std::string_view ingredient_base = "XIB";  ///< what it is made of
inline constexpr std::string_view operation = "XO";         ///< operation
inline constexpr std::string_view chapter = "XH";           ///< stemmed word of the chapter head
inline constexpr std::string_view statements = "XM";        ///< book id: what the book says of its own measures
inline constexpr std::string_view shingle = "XL";           ///< a run of telling words, for lineage (see shingles.h)
inline constexpr std::string_view lot = "XR";  ///< one of 256 lots into which all recipes fall, for samples
inline constexpr std::string_view word = "Z";  ///< stem of a word of title or text (see stems.h)

/// The term of a value: the two put together, with no sign between them, cut to what a Xapian term can hold.
/// Canonical names are in lower case and so cannot be mistaken for a longer prefix.
inline std::string term(std::string_view prefix, std::string_view value) {
  constexpr std::size_t longest = 240;  // glass: 245 bytes, in which a NUL counts twice
  return std::string(prefix).append(value.substr(0, longest - prefix.size()));
}

// What a book says of its own measures lies in one document more, which has that one term and no other, no value and no
// length: no query for recipes meets it.

/// The term of one of the 256 lots: a sample of every term of the index that is the same for the same shelf, whatever
/// the threads that indexed it.
inline constexpr unsigned lots = 256;
inline std::string lot_term(unsigned number) {
  constexpr std::string_view digits = "0123456789abcdef";
  return std::string(lot) + digits[number / 16 % 16] + digits[number % 16];
}

/// The lot of a recipe, by its id (FNV-1a, 64 bits, folded).
inline unsigned lot_of(std::string_view recipe_id) {
  std::uint64_t hash = 14695981039346656037U;
  for (const char c : recipe_id) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
  hash ^= hash >> 32U;
  return static_cast<unsigned>((hash ^ (hash >> 16U)) % lots);
}

// How often a term counts in a document (wdf): id, book, country, lot, shingle and title_word 0 (they say nothing of
// likeness); operation, title, chapter and word as often as they stand there; all others 1.

// Value slots.
inline constexpr unsigned slot_year = 0;  ///< sortable_serialise(year)
inline constexpr unsigned slot_order =
    1;  ///< book order and ordinal, big-endian, so that plain byte order is shelf order
inline constexpr unsigned slot_country = 2;  ///< ISO 3166

/// The value of slot_order. Ties in weight broken by it come out the same whatever the threads that indexed.
inline std::string order_value(std::uint32_t book_order, std::uint32_t ordinal) {
  std::string out(8, '\0');
  for (int i = 3; i >= 0; --i, book_order >>= 8, ordinal >>= 8) {
    out[static_cast<std::size_t>(i)] = static_cast<char>(book_order & 0xFF);
    out[static_cast<std::size_t>(i) + 4] = static_cast<char>(ordinal & 0xFF);
  }
  return out;
}

}  // namespace gallipot::schema
