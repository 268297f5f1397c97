// How do recipes of one dish differ? Ingredients down, recipes across by year, amounts per the same basis, methods
// side by side. The model only; query/reporting renders it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "indexer/normalizing/comparable.h"
#include "indexer/storing/shelf.h"
#include "query/citing/cite.h"
#include "query/comparing/yardstick.h"

namespace gallipot {

using Places = std::vector<std::size_t>;  ///< of witnesses, ascending

/// How one witness stands apart from the others.
struct Apart {
  std::vector<std::string> lacks_stuffs;  ///< in two thirds of the witnesses or more, not in this one
  std::vector<std::string> lacks_steps;   ///< operations that two thirds do, or do the like of, and this one does not
  std::vector<std::string> alone_stuffs;  ///< no other has them
  std::vector<std::string> alone_steps;   ///< no other does them or the like
};

/// A recipe in a comparison. Witnesses are ordered by year, then id, and carry a siglum (A, B, C ...); those without a
/// year come last.
struct Witness {
  std::string siglum;
  ComparableRecipe recipe;
  Citation citation;
  std::optional<Amount> basis;  ///< how much of the basis this witness has; none where it gives no amount
  Apart apart;                  ///< empty where there are fewer than four witnesses
};

/// An ingredient of one witness, brought to the basis.
struct Cell {
  bool present = false;
  std::string printed;              ///< the printed words, several joined with "; "
  std::optional<Amount> amount;     ///< as printed, in SI; several mentions summed
  std::optional<Amount> per_basis;  ///< per `Comparison::per` of the basis; none where it cannot be told
  std::optional<Amount> of_batch;   ///< per kilogram of all that can be weighed; none where it cannot be told
  std::string how;                  ///< where the amount was told through another: "per quart of plum"; may be empty
  bool more = false;                ///< a further mention names no amount: the figure is the least it can be
  bool optional = false;
  std::string alternative_of;  ///< ingredient it may stand for; empty where it is none
  bool out_of_line = false;    ///< far from the others (see Row::note)
};

/// A sort of a stuff that was merged into its row, and who has it: "brown sugar" into sugar.
struct Sort {
  std::string name;
  Places witnesses;
};

/// An amount out of line with the others of its row.
struct OutOfLine {
  std::size_t witness = 0;
  double times = 1;          ///< of the median of the others
  double low = 1, high = 1;  ///< the least and the most that this multiple can be, by the ranges of both
  std::size_t others = 0;    ///< so many amounts in the same unit
};

/// What recipes elsewhere on the shelf, of any dish, have of a stuff: per kilogram of all that can be weighed.
struct Elsewhere {
  Amount middle;               ///< the median; low and high are the quartiles of the likely values
  double least = 0, most = 0;  ///< the lowest low and the highest high of any
  std::size_t recipes = 0;     ///< looked at that have the stuff and tell how much
};

struct Row {
  std::string name;              ///< canonical ingredient
  std::vector<Sort> sorts;       ///< other names merged into this row
  std::vector<Cell> cells;       ///< one a witness, in their order
  std::size_t witnesses = 0;     ///< how many have it
  std::size_t measured = 0;      ///< how many of them the median is of
  std::optional<Amount> median;  ///< of per_basis over those with an amount: low and high are the quartiles
  double least = 0, most = 0;    ///< of the likely values
  double spread = 0;  ///< a factor: about two thirds lie within the median over and times this (exp of 1.4826
                      ///< times the median absolute deviation of the logarithms); 0 of fewer than three
  std::vector<OutOfLine> out_of_line;
  std::optional<Elsewhere> elsewhere;  ///< none where the shelf was not asked or tells too little
  std::string note;                    ///< what is out of line, in words; may be empty
};

struct StepCell {
  std::string op;  ///< empty: this witness lacks the step
  std::optional<Range> minutes;
  std::string printed;
  std::vector<std::string> stuffs;  ///< named in the same breath
};

/// A stuff and how many witnesses name it with a step.
struct Named {
  std::string name;
  std::size_t witnesses = 0;
};

struct StepRow {
  std::string op;  ///< the commonest in the row
  std::vector<StepCell> cells;
  std::size_t witnesses = 0;
  bool consensus = false;  ///< half or more of the witnesses that tell a method have it
  std::vector<Named>
      stuffs;  ///< that a third or more of its witnesses, and two at least, name with it; commonest first
  std::optional<Range> minutes;  ///< the shortest and the longest told; none where no one says
  double middle = 0;             ///< minutes: the median of what is told
  std::size_t timed = 0;         ///< how many say how long
};

/// One step for which two witnesses tell times that cannot both be meant.
struct Conflict {
  std::size_t step = 0;                 ///< place in Comparison::steps
  std::size_t shorter = 0, longer = 0;  ///< witnesses
};

/// A thing that splits the witnesses as something else does, more nearly than chance explains.
struct Contrast {
  std::string thing, circumstance;  ///< "vinegar", "before 1840"
  std::size_t with_here = 0, with_there = 0, without_here = 0, without_there = 0;
  double p = 1;           ///< of Fisher's exact test, two-sided
  double among = 1;       ///< p counting all the tests that could have told (Tarone 1990)
  std::size_t tried = 0;  ///< those tests
  std::string sentence;
};

/// An ingredient that rises or falls with the years.
struct Trend {
  std::string stuff;
  double decade = 1;         ///< the factor in ten years (Theil-Sen on logarithms)
  double low = 1, high = 1;  ///< within these with 95 in 100
  double tau = 0, p = 1;     ///< Kendall's
  double among = 1;          ///< p counting all ingredients tried
  std::size_t amounts = 0, tried = 0;
  int from = 0, to = 0;  ///< years
  std::string sentence;
};

struct Comparison {
  std::string dish;
  std::vector<Witness> witnesses;
  std::string basis;      ///< canonical ingredient, "batch" or "as printed"
  std::string basis_why;  ///< why that basis, as a clause
  double per = 1000;      ///< amounts are per this much of the basis; 0 for "as printed", where per_basis is amount
  Amount::Unit per_unit = Amount::Unit::gram;
  std::vector<Row> rows;       ///< by share of witnesses, then by amount
  std::vector<StepRow> steps;  ///< in order of doing
  std::size_t methods = 0;     ///< witnesses that tell any step
  std::vector<Conflict> conflicts;
  std::vector<Contrast> contrasts;  ///< surest first, at most five
  std::vector<Trend> trends;        ///< surest first
  std::vector<std::string> chosen;  ///< how the recipes were chosen, and what was left out; empty where they were named
  std::vector<std::string> notes;  ///< findings in sentences, the weightiest first, then what could not be done and why
};

/// Lays recipes side by side. `basis`: empty to choose, or an ingredient, "batch" (the weight of all that can be
/// weighed), "as printed" (no scaling).
/// Faults: an id that does not exist, fewer than one recipe, an id twice, a basis that no recipe has.
Outcome<Comparison> compare(const Shelf& shelf, const std::vector<std::string>& ids, const Yardstick& yardstick,
                            const std::string& basis = {});

/// What other recipes have of a stuff, per kilogram of batch: asked for the rows that have amounts.
using Surroundings = std::function<std::optional<Elsewhere>(const std::string& stuff, Amount::Unit unit)>;

/// The same of recipes in hand; `books[i]` is that of `recipes[i]`. Without surroundings nothing is said of the shelf.
Outcome<Comparison> compare(std::vector<ComparableRecipe> recipes, const std::vector<Book>& books,
                            const Yardstick& yardstick, const std::string& basis = {},
                            const Surroundings& surroundings = {});

}  // namespace gallipot
