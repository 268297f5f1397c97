// Which dishes stand on the shelf? Recipes grouped into families, so that one can browse.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"

namespace gallipot {

/// A name under which a family goes, as plain words.
struct NameUsed {
  std::string name;
  std::size_t recipes = 0;
};

/// The ingredient in which the recipes of a family differ most.
struct MostVariable {
  std::string stuff;
  std::size_t have = 0;         ///< recipes that call for it
  bool by_amount = false;       ///< else by whether they call for it at all
  double lower = 0, upper = 0;  ///< by amount: quartiles of its share of the batch, 0..1
};

struct Family {
  std::string name;                  ///< the name that most of its recipes have
  std::vector<NameUsed> names;       ///< by recipes, then alphabet
  std::vector<std::string> recipes;  ///< ids, by year of the text, then shelf order
  std::size_t books = 0;
  std::optional<int> first, last;             ///< years of its oldest and youngest text; none where no book has a date
  std::optional<MostVariable> most_variable;  ///< none under four recipes
};

struct Families {
  std::vector<Family> families;  ///< in most books first
  std::size_t recipes = 0;       ///< on the shelf
  std::size_t alone = 0;         ///< recipes whose dish no other recipe names
};

/// The families of the shelf that have two recipes or more. Recipes come together by the dish that they name; names of
/// one stuff whose recipes are made of the same stuff in the same way ("damson catsup", "damson soy") are then put
/// together. Nearly linear in the recipes: only names of one stuff are compared with each other.
/// `dish`: only families that have all telling words of this in one of their names; empty: all. With it families of a
/// single recipe are told too. Faults: an index that cannot be read.
Outcome<Families> families_of(const Shelf& shelf, const Lexicon& lexicon, const std::string& dish = {});

}  // namespace gallipot
