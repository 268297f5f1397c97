// What is right about the sample shelf, as written by hand in tests/sample/gold (README there).
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <vector>

#include "indexer/parsing/parsed.h"

namespace gallipot::sample {

/// A line of a book: where a heading stands.
struct Place {
  std::string book;
  long line = 0;  ///< raw line, from 1
  friend auto operator<=>(const Place&, const Place&) = default;
};

struct GoldHeading {
  Place place;
  std::vector<std::string> titles;  ///< as printed without number and point; any of them is right
  bool doubtful = false;            ///< counts neither way
  std::string page;                 ///< empty where the book has no page marks
  std::string contributor;          ///< empty where none signed it
};

/// Every heading of a recipe between two lines of a book.
struct GoldWindow {
  std::string book;
  long first = 0, last = 0;
  std::vector<GoldHeading> recipes;
  std::vector<GoldHeading> not_recipes;
};

struct GoldIngredient {
  std::vector<std::string> names;  ///< the first is the best; the others are as good
  std::string raw;
  std::optional<Range> quantity;
  std::string measure;  ///< empty for a plain count
  std::optional<double> relative;
  std::optional<PerUnit> per;
  bool optional = false;
  std::string alternative_of;
};

struct GoldRecipe {
  Place place;
  std::string title;
  std::string page;         ///< empty where the book has no page marks
  std::string contributor;  ///< empty where none signed it
  bool household = false;   ///< household or medical, not food: not scored
  std::vector<GoldIngredient> ingredients;
  std::vector<Step> steps;  ///< without spans
};

struct GoldTopic {
  struct Relevant {
    Place place;
    int grade = 0;  ///< 2 the same thing, 1 a cousin
  };
  std::string topic;
  std::string query;
  Place seed;
  std::vector<Relevant> relevant;
};

/// What a cook must be told of a recipe.
struct GoldCaution {
  Place place;
  std::string title;
  std::vector<std::string>
      says;  ///< of each, one of the words parted by "|" stands in its cautions; empty: it is to have none
};

/// Two recipes read side by side.
struct GoldPair {
  Place earlier, later;
  bool copied = false;       ///< "copy": the words of the later are the earlier's, with edits
  bool independent = false;  ///< neither draws on the other; where both are false, the later is a revision
};

/// An entry of a book's own printed index.
struct GoldEntry {
  Place place;             ///< of the entry
  Place heading;           ///< of the recipe it means
  std::string page;        ///< as the index has it
  bool confirmed = false;  ///< the recipe does stand on that page
};

/// A word that the machine that read the page got wrong.
struct GoldTrueWord {
  Place place;
  std::string printed;  ///< as it stands in the file
  std::string truth;    ///< as it stood on the page
};

/// The files of the gold. They throw std::runtime_error with file and line where a row does not read: a fault of the
/// test's own data, which no test should go on from.
std::vector<GoldWindow> load_windows();
std::vector<GoldRecipe> load_recipes();
std::vector<GoldTopic> load_topics();
std::vector<GoldCaution> load_cautions();
std::vector<GoldPair> load_pairs();
std::vector<GoldEntry> load_printed_index();
std::vector<GoldTrueWord> load_true_words();

}  // namespace gallipot::sample
