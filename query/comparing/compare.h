// How do recipes of one dish differ? Ingredients down, recipes across by year, amounts per the same basis, methods
// side by side. The model only; query/reporting renders it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "indexer/storing/shelf.h"
#include "query/citing/cite.h"

namespace gallipot {

/// A recipe in a comparison. Witnesses are ordered by year and carry a siglum (A, B, C ...).
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
  std::optional<Amount> amount;     ///< as printed, in SI
  std::optional<Amount> per_basis;  ///< per `Comparison::per` of the basis; none where it cannot be told
  bool optional = false;
  bool out_of_line = false;  ///< far from the others (see Row::note)
};

struct Row {
  std::string name;              ///< canonical ingredient
  std::vector<Cell> cells;       ///< one a witness, in their order
  std::size_t witnesses = 0;     ///< how many have it
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
  std::string basis_why;  ///< why that basis
  double per = 1000;      ///< amounts are per this much of the basis
  Amount::Unit per_unit = Amount::Unit::gram;
  std::vector<Row> rows;  ///< by share of witnesses, then by amount
  std::vector<StepRow> steps;
  std::vector<std::string> notes;  ///< findings in sentences, the weightiest first, then what could not be done and why
};

/// Lays recipes side by side. `basis`: empty to choose, or an ingredient, "batch", "as printed".
/// Faults: an id that does not exist, fewer than one recipe, an id twice, a basis that no recipe has.
Outcome<Comparison> compare(const Shelf& shelf, const std::vector<std::string>& ids, const std::string& basis = {});

}  // namespace gallipot
