// Which earlier books does a book draw on, and for how much?
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/grouping/earlier.h"
#include "query/grouping/kin_search.h"

namespace gallipot {

/// One recipe of the book with its counterpart in another.
struct Borrowing {
  std::string id, source;
  double verbatim = 0;  ///< 0..1: words of the recipe that stand in the counterpart
  double likelihood = 0;
  bool copy = false;  ///< else revised
  bool best = false;  ///< no other book has a likelier source of this recipe
};

/// What a book shares with one other.
struct SharedWith {
  std::string book;
  Order order;  ///< `first` is that book, `second` the one asked for
  bool same_author = false;
  std::size_t recipes = 0;            ///< recipes of the asked book that are kin to one of that
  std::size_t copies = 0;             ///< of these, copied with little change
  std::size_t best = 0;               ///< of these, those of which that book has the likeliest source
  std::vector<Borrowing> borrowings;  ///< all of them, the most verbatim first
};

struct Borrowings {
  std::string of;                     ///< the book
  std::size_t recipes = 0;            ///< in it
  std::size_t kin = 0;                ///< of these, with a source in an earlier book
  std::vector<SharedWith> earlier;    ///< books that it draws on, by recipes
  std::vector<SharedWith> undecided;  ///< books of which the dates do not say whether they are earlier
  std::vector<SharedWith> later;      ///< books that draw on it
  std::string note;                   ///< why there can be nothing: no other book, no date; else empty
};

/// The borrowings of a book. Faults: no such book on the shelf (the nearest named), an index that cannot be read.
/// Every recipe is set beside its candidates, some milliseconds each.
Outcome<Borrowings> borrowings_of(const Shelf& shelf, const Lexicon& lexicon, std::string_view book);

}  // namespace gallipot
