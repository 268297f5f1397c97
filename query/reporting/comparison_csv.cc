// A comparison as one RFC 4180 table for a spreadsheet: ingredients, then steps; five columns a witness.
#include <fmt/format.h>

#include "query/reporting/comparison_words.h"
#include "query/reporting/csv.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

std::string figure(double value) { return fmt::format("{:.6g}", value); }

std::vector<std::string> heading(const Comparison& comparison) {
  std::vector<std::string> out{"part",           "name",           "merged", "witnesses", "of",     "amounts", "median",
                               "lower quartile", "upper quartile", "least",  "most",      "spread", "unit",    "note"};
  for (const Witness& witness : comparison.witnesses) {
    std::string who = witness.siglum;
    if (witness.recipe.year > 0) who += fmt::format(" {}", witness.recipe.year);
    if (!witness.citation.page.empty()) who += " p. " + witness.citation.page;
    for (const char* column : {"likely", "low", "high", "unit", "printed"}) out.push_back(who + " " + column);
  }
  return out;
}

void append_cell(std::vector<std::string>& out, const Cell& cell) {
  if (!cell.present) {
    out.insert(out.end(), 5, {});
  } else if (!cell.per_basis) {
    out.insert(out.end(), {"as printed", "", "", "", cell.printed});
  } else {
    const Amount& amount = *cell.per_basis;
    out.insert(out.end(),
               {figure(amount.likely), figure(amount.low), figure(amount.high), unit_name(amount.unit), cell.printed});
  }
}

void append_cell(std::vector<std::string>& out, const StepCell& cell) {
  if (cell.op.empty()) {
    out.insert(out.end(), 5, {});
  } else if (!cell.minutes) {
    out.insert(out.end(), {cell.op, "", "", "", cell.printed});
  } else {
    const Range& minutes = *cell.minutes;
    out.insert(out.end(), {figure((minutes.low + minutes.high) / 2), figure(minutes.low), figure(minutes.high), "min",
                           cell.printed});
  }
}

}  // namespace

std::string comparison_as_csv(const Comparison& comparison) {
  std::string out = csv_record(heading(comparison));
  const std::string all = std::to_string(comparison.witnesses.size());
  for (const Row& row : comparison.rows) {
    std::vector<std::string> record{"ingredient",
                                    row.name,
                                    sorts_words(comparison, row),
                                    std::to_string(row.witnesses),
                                    all,
                                    std::to_string(row.measured)};
    if (row.median)
      record.insert(record.end(),
                    {figure(row.median->likely), figure(row.median->low), figure(row.median->high), figure(row.least),
                     figure(row.most), row.spread > 0 ? figure(row.spread) : "", unit_name(row.median->unit)});
    else
      record.insert(record.end(), 7, {});
    record.push_back(row.note);
    for (const Cell& cell : row.cells) append_cell(record, cell);
    out += csv_record(record);
  }
  for (const StepRow& row : comparison.steps) {
    std::vector<std::string> record{"step", row.op, "", std::to_string(row.witnesses), all, std::to_string(row.timed)};
    if (row.minutes)
      record.insert(record.end(),
                    {figure(row.middle), "", "", figure(row.minutes->low), figure(row.minutes->high), "", "min", ""});
    else
      record.insert(record.end(), 8, {});
    for (const StepCell& cell : row.cells) append_cell(record, cell);
    out += csv_record(record);
  }
  return out;
}

}  // namespace gallipot
