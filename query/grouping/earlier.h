// Which of two books had its text first? Decided by first publication, else by the edition's date; where the dates
// cannot decide it is said.
#pragma once

#include <optional>
#include <string>

#include "indexer/catalogue/book.h"

namespace gallipot {

struct Order {
  enum class Which : unsigned char { first, second, undecided };
  Which which = Which::undecided;
  std::string why;  ///< one sentence with a full stop
};

/// The years in which a book's text can have been new: those of `first_published` where the shelf list has them, else
/// those of `date`; nothing where it has neither.
std::optional<Years> years_of_text(const Book& book);

/// Undecided where a book has no date, or where the years that their dates allow overlap.
Order earlier_of(const Book& first, const Book& second);

/// Whether two books name one author: the same words in `creator`, whatever their order and capitals.
bool same_author(const Book& first, const Book& second);

/// "Susan Oldacre, 1857 (first printed 1838)": how a book is named in prose about dates. Title where it has no creator.
std::string name_and_year(const Book& book);

}  // namespace gallipot
