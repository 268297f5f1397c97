// Methods side by side: steps down, recipes across.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/comparison_words.h"
#include "query/reporting/plots.h"
#include "query/reporting/svg.h"

namespace gallipot {
namespace {

constexpr double left = 190, top = 46, row_height = 22, letter = 11;
constexpr std::size_t roomy = 12;  // so many witnesses have room for words in their columns

std::vector<const StepRow*> shown(const Comparison& comparison) {
  std::vector<const StepRow*> out;
  const bool many = comparison.witnesses.size() > 2;
  for (const StepRow& row : comparison.steps)
    if (!many || row.witnesses > 1) out.push_back(&row);
  return out;
}

}  // namespace

std::string methods_plot(const Comparison& comparison) {
  const std::vector<const StepRow*> rows = shown(comparison);
  if (rows.empty()) return {};
  const std::size_t all = comparison.witnesses.size();
  const double column = all <= roomy ? 58 : all <= 30 ? 26 : 20;
  const double width = left + static_cast<double>(all) * column + 20;
  const double bottom = top + static_cast<double>(rows.size()) * row_height;
  Drawing drawing(width, bottom + 8);
  for (std::size_t w = 0; w < all; ++w) {
    const Witness& witness = comparison.witnesses[w];
    const double x = left + (static_cast<double>(w) + 0.5) * column;
    drawing.text(x, top - 24, witness.siglum, "mark-siglum", Drawing::Anchor::middle);
    if (witness.recipe.year > 0 && column > 30)
      drawing.text(x, top - 10, std::to_string(witness.recipe.year), "soft micro", Drawing::Anchor::middle);
    // A thread from a witness's first step to its last.
    double first = 0, last = 0;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (rows[r]->cells[w].op.empty()) continue;
      const double y = top + (static_cast<double>(r) + 0.5) * row_height;
      if (first == 0) first = y;
      last = y;
    }
    if (last > first) drawing.line(x, first, x, last, "thread");
  }
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const StepRow& row = *rows[r];
    const double y = top + (static_cast<double>(r) + 0.5) * row_height;
    drawing.line(left - 4, y + row_height / 2, width - 16, y + row_height / 2, "grid");
    drawing.text(left - 12, y + 4, fitted(fmt::format("{}, {} of {}", row.op, row.witnesses, all), letter, left - 20),
                 row.consensus ? "strong" : "", Drawing::Anchor::end);
    for (std::size_t w = 0; w < all; ++w) {
      const StepCell& cell = row.cells[w];
      if (cell.op.empty()) continue;
      const double x = left + (static_cast<double>(w) + 0.5) * column;
      drawing.open(fmt::format("{}: {}", witness_words(comparison.witnesses[w]), cell.printed));
      const bool same = cell.op == row.op;
      if (column > 30 && (cell.minutes || !same)) {
        std::string words = same ? "" : cell.op;
        if (cell.minutes) words += (words.empty() ? "" : " ") + write_minutes(*cell.minutes);
        words = fitted(words, 9, column - 6);
        const double half = std::max(7.0, text_width(words, 9) / 2 + 3);
        drawing.rectangle(x - half, y - 8, 2 * half, 16, same ? "done" : "like");
        drawing.text(x, y + 3.5, words, "in-mark micro", Drawing::Anchor::middle);
      } else {
        drawing.rectangle(x - 6, y - 6, 12, 12, same ? "done" : "like");
        if (cell.minutes) drawing.circle(x, y, 2.5, "timed");
      }
      drawing.close();
    }
  }
  return drawing.svg(
      "methods", "Methods in order of doing",
      fmt::format("{} steps that two or more recipes share, by {} recipes in order of year; {} tell a "
                  "method. Solid: the step of that row; hollow: one that comes to the same. Steps in bold "
                  "are done by half or more. The table beneath holds the same.",
                  rows.size(), all, comparison.methods));
}

}  // namespace gallipot
