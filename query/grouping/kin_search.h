// Which recipes of the shelf are kin to a text? Candidates from the index, each set beside it, siblings told apart.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "query/grouping/kin_texts.h"

namespace gallipot {

/// A text that is kin to the one asked for.
struct FoundKin {
  Xapian::docid docid = 0;
  std::shared_ptr<const KinText> text;
  Kinship kinship;  ///< first: this text, second: the one asked for
};

/// Candidates that are set beside a text. On 79 pairs of real recipes of which one draws on the other twelve were
/// enough to have them all.
inline constexpr std::size_t kin_candidates = 24;

/// The kin of `asked` in other books, likeliest first. One beside a better one stands only where the two are themselves
/// kin (one text handed on from book to book) and in different books, or where it accounts for words that the better
/// ones do not: an author's formulas tie all her recipes to a copy of one of them, and a text spliced from two has two
/// sources. Throws Xapian::Error.
std::vector<FoundKin> kin_in_other_books(KinTexts& texts, const KinText& asked);

/// The kin of `asked` in its own book, or in another one, likeliest first; siblings are not told apart.
std::vector<FoundKin> kin_in_book(KinTexts& texts, const KinText& asked, const std::string& book);

/// Whether `source` is still kin to `copy` when what better sources of the same book account for does not count.
bool is_source_of(KinTexts& texts, const KinText& source, const KinText& copy);

}  // namespace gallipot
