// Who has what, at a glance.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/comparison_words.h"
#include "query/reporting/plots.h"
#include "query/reporting/svg.h"

namespace gallipot {
namespace {

constexpr double left = 190, top = 46, row_height = 20, letter = 11;
constexpr std::size_t most_rows = 40;
constexpr double about = 1.5;  // within so many times of the median either way

double column_width(std::size_t witnesses) { return witnesses <= 16 ? 40 : witnesses <= 30 ? 26 : 20; }

void draw_cell(Drawing& drawing, const Row& row, const Cell& cell, double x, double y) {
  if (!cell.present) {
    drawing.line(x - 2.5, y, x + 2.5, y, "absent");
    return;
  }
  const bool comparable = cell.per_basis && row.median && row.measured >= 3 && row.median->likely > 0 &&
                          cell.per_basis->unit == row.median->unit;
  if (!cell.per_basis) {
    drawing.circle(x, y, 4.5, "untold");
  } else if (!comparable) {
    drawing.circle(x, y, 4.5, "told");
  } else {
    const double times = cell.per_basis->likely / row.median->likely;
    if (times > about)
      drawing.triangle(x, y, 5.5, true, "more");
    else if (times * about < 1)
      drawing.triangle(x, y, 5.5, false, "less");
    else
      drawing.circle(x, y, 4.5, "told");
  }
  if (cell.out_of_line) drawing.circle(x, y, 9, "ring");
}

}  // namespace

std::string matrix_plot(const Comparison& comparison) {
  const std::size_t all = comparison.witnesses.size();
  std::vector<const Row*> shown;
  for (const Row& row : comparison.rows)
    if (!in_one_only(row, comparison) && shown.size() < most_rows) shown.push_back(&row);
  const std::size_t rows = shown.size();
  if (rows == 0) return {};
  const double column = column_width(all);
  const double width = left + static_cast<double>(all) * column + 20;
  Drawing drawing(width, top + static_cast<double>(rows) * row_height + 8);
  for (std::size_t w = 0; w < all; ++w) {
    const Witness& witness = comparison.witnesses[w];
    const double x = left + (static_cast<double>(w) + 0.5) * column;
    drawing.open(witness_words(witness));
    drawing.text(x, top - 24, witness.siglum, "mark-siglum", Drawing::Anchor::middle);
    if (witness.recipe.year > 0) {
      const bool whole = column >= 30;
      drawing.text(
          x, top - 10,
          whole ? std::to_string(witness.recipe.year) : fmt::format("\xE2\x80\x99{:02}", witness.recipe.year % 100),
          "soft micro", Drawing::Anchor::middle);
    }
    drawing.close();
  }
  for (std::size_t r = 0; r < rows; ++r) {
    const Row& row = *shown[r];
    const double y = top + (static_cast<double>(r) + 0.5) * row_height;
    drawing.line(left - 4, y + row_height / 2, width - 16, y + row_height / 2, "grid");
    drawing.text(left - 12, y + 4, fitted(row.name, letter, left - 20), {}, Drawing::Anchor::end);
    for (std::size_t w = 0; w < all; ++w) {
      const Cell& cell = row.cells[w];
      drawing.open(fmt::format("{}, {}: {}", row.name, witness_words(comparison.witnesses[w]), cell_words(cell)));
      draw_cell(drawing, row, cell, left + (static_cast<double>(w) + 0.5) * column, y);
      drawing.close();
    }
  }
  return drawing.svg("matrix", "Which recipe has which ingredient",
                     fmt::format("{} ingredients by {} recipes in order of year. Triangle up: more than {:g} times the "
                                 "median; disc: about the median, or too few to say; triangle down: less; open circle: "
                                 "named without an amount that can be brought to the basis; dash: not in the recipe; "
                                 "ringed: out of line. The table by recipe holds the same.",
                                 rows, all, about));
}

}  // namespace gallipot
