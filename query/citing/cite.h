// Where does a recipe stand in print? Book, edition, place, year, contributor, printed page.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/catalogue/book.h"
#include "indexer/normalizing/comparable.h"
#include "indexer/storing/shelf.h"

namespace gallipot {

struct Citation {
  std::string id;
  std::string title, chapter, contributor;
  Book book;
  std::string page, page_end;  ///< empty where the transcription has no page marks
  std::string image;           ///< of the page: a file's path or an address; empty where none is known
  std::string file;
  std::uint32_t line_start = 0, line_end = 0;

  /// "p. 298", "pp. 298-299", or "no page marks; lines 5437-5454 of moxon-1764.txt".
  std::string place_in_book() const;
  /// A note in a usual bibliographic order: creator, title (edition; place, publisher, year), page, contributor.
  std::string note() const;
};

Citation cite(const ComparableRecipe& recipe, const Book& book);
Outcome<Citation> cite(const Shelf& shelf, std::string_view id);

}  // namespace gallipot
