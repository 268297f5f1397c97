// Small shelves of books written out in a test: titles and texts, with the dates that the test is about.
#pragma once

#include <utility>
#include <vector>

#include "tests/indexer/storing/shelves.h"

namespace gallipot {

using Receipts = std::vector<std::pair<std::string, std::string>>;  ///< title, text

class SmallShelf : public ShelfTest {
 protected:
  /// A book in HTML. `date` and `first_published` are years; 0: none.
  Book written(const std::string& id, int date, const Receipts& receipts, int first_published = 0) const {
    std::string html = "<html><head><title>" + id + "</title></head><body>\n<h1>THE BOOK</h1>\n<h2>OF SAUCES</h2>\n";
    for (const auto& [title, text] : receipts) html += "<h3>" + title + "</h3>\n<p>" + text + "</p>\n";
    write(id + ".htm", html + "</body></html>\n");
    Book out;
    out.id = id;
    out.file = id + ".htm";
    out.path = path(out.file);
    out.title = "The Book of " + id;
    out.creator = "The author of " + id;
    if (date != 0) {
      out.date = std::to_string(date);
      out.years = Years{date, date};
    }
    if (first_published != 0) {
      out.first_published = std::to_string(first_published);
      out.first_years = Years{first_published, first_published};
    }
    return out;
  }

  Shelf shelf_of(const std::vector<Book>& books) const {
    const auto built = build(books);
    EXPECT_TRUE(built.has_value()) << told(built);
    return std::move(Shelf::open(index()).value());
  }

  /// Id of the recipe of that title in a book; empty where there is none.
  static std::string id_of(const Shelf& shelf, const std::string& book, const std::string& title) {
    std::string out;
    (void)shelf.each([&](const ComparableRecipe& r) {
      if (r.book == book && r.recipe.title == title) out = r.id;
      return out.empty();
    });
    EXPECT_FALSE(out.empty()) << book << " has no " << title;
    return out;
  }

  // Invented receipts. The second pair are the first as a copyist and as a reviser would have them.
  static constexpr const char* medlar =
      "Bruise two quarts of ripe medlars and lay them in a stone crock with a handful of bruised juniper. Pour upon "
      "them three pints of old perry, cover the crock with a wetted bladder, and let it stand in the cellar nine days. "
      "Then strain the liquor through a flannel, and simmer it with two ounces of sliced horseradish and a spoonful of "
      "cubebs until a third part is wasted.";
  static constexpr const char* medlar_copied =
      "Bruise two quarts of ripe medlars and lay them in a stone crock with a handful of bruised juniper. Pour upon "
      "them 3 pints of old perry, cover the crock with a wetted bladder, and let it stand in the cellar six days. "
      "Then strain the liquor through a flannel, and simmer it with four ounces of sliced horseradish and a spoonful "
      "of "
      "cubebs until a third part is wasted.";
  static constexpr const char* medlar_revised =
      "Take two quarts of ripe medlars, bruise them, and put them in a crock with some bruised juniper. Three pints of "
      "old perry are to be poured upon them; cover with a wetted bladder, and stand it in the cellar nine days. Strain "
      "through flannel and simmer with sliced horseradish and cubebs for half an hour. This is a favourite at hunt "
      "dinners.";
  static constexpr const char* barberry =
      "Pick a peck of barberries from the stalk and put them in a brass kettle with as much water as will cover them. "
      "When they are soft, rub them through a hair sieve; to each pint of pulp allow a pound of loaf sugar, boil it to "
      "a "
      "candy height, and drop it upon glazed paper to dry.";
  static constexpr const char* eel =
      "Skin a large eel and cut it in pieces as long as a finger. Roll each piece in bread crumbs with chopped sage, "
      "tie it in a vine leaf, and roast it before a brisk fire, basting it with verjuice. Serve it with a sliced "
      "orange.";
};

}  // namespace gallipot
