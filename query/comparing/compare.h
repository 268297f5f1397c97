// How do recipes of one dish differ? Ingredients down, recipes across by year, amounts per the same basis, methods
// side by side. The model only; query/reporting renders it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "indexer/storing/shelf.h"
#include "query/citing/cite.h"
#include "query/comparing/yardstick.h"

namespace gallipot {

/// A recipe in a comparison. Witnesses are ordered by year, then id, and carry a siglum (A, B, C ...); those without a
/// year come last.
struct Witness {
  std::string siglum;
  ComparableRecipe recipe;
  Citation citation;
  std::optional<Amount> basis;  ///< how much of the basis this witness has; none where it gives no amount
};

/// An ingredient of one witness, brought to the basis.
struct Cell {
  bool present = false;
  std::string printed;              ///< the printed words, several joined with "; "
  std::optional<Amount> amount;     ///< as printed, in SI; several mentions summed
  std::optional<Amount> per_basis;  ///< per `Comparison::per` of the basis; none where it cannot be told
  std::string how;                  ///< where the amount was told through another: "per quart of plum"; may be empty
  bool more = false;                ///< a further mention names no amount: the figure is the least it can be
  bool optional = false;
  std::string alternative_of;  ///< ingredient it may stand for; empty where it is none
  bool out_of_line = false;    ///< far from the others (see Row::note)
};

struct Row {
  std::string name;              ///< canonical ingredient
  std::vector<Cell> cells;       ///< one a witness, in their order
  std::size_t witnesses = 0;     ///< how many have it
  std::size_t measured = 0;      ///< how many of them the median is of
  std::optional<Amount> median;  ///< of per_basis over those with an amount: low and high are the quartiles
  double least = 0, most = 0;    ///< of the likely values
  std::string note;              ///< what is out of line, in words; may be empty
};

struct StepCell {
  std::string op;  ///< empty: this witness lacks the step
  std::optional<Range> minutes;
  std::string printed;
};

struct StepRow {
  std::string op;  ///< the commonest in the row
  std::vector<StepCell> cells;
  std::size_t witnesses = 0;
};

struct Comparison {
  std::string dish;
  std::vector<Witness> witnesses;
  std::string basis;      ///< canonical ingredient, "batch" or "as printed"
  std::string basis_why;  ///< why that basis, as a clause
  double per = 1000;      ///< amounts are per this much of the basis; 0 for "as printed", where per_basis is amount
  Amount::Unit per_unit = Amount::Unit::gram;
  std::vector<Row> rows;           ///< by share of witnesses, then by amount
  std::vector<StepRow> steps;      ///< in order of doing
  std::vector<std::string> notes;  ///< findings in sentences, the weightiest first, then what could not be done and why
};

/// Lays recipes side by side. `basis`: empty to choose, or an ingredient, "batch" (the weight of all that can be
/// weighed), "as printed" (no scaling).
/// Faults: an id that does not exist, fewer than one recipe, an id twice, a basis that no recipe has.
Outcome<Comparison> compare(const Shelf& shelf, const std::vector<std::string>& ids, const Yardstick& yardstick,
                            const std::string& basis = {});

/// The same of recipes in hand; `books[i]` is that of `recipes[i]`.
Outcome<Comparison> compare(std::vector<ComparableRecipe> recipes, const std::vector<Book>& books,
                            const Yardstick& yardstick, const std::string& basis = {});

}  // namespace gallipot
