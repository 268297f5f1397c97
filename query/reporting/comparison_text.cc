// A comparison for a terminal: what was found first, the table of ingredients under it, the methods, then the witnesses
// with their citations.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/comparison_words.h"
#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

constexpr const char* absent = "\xE2\x80\x93";  // en dash
constexpr const char* done = "\xE2\x9C\x93";    // check mark
constexpr std::size_t cell_width = 24;          // words in a cell are broken at this
constexpr std::size_t name_width = 26;
constexpr std::size_t most_columns = 12;  // witnesses whose columns are shown unasked

std::string lines(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) {
    if (!out.empty()) out += '\n';
    out += part;
  }
  return out;
}

std::string heading(const Witness& witness) {
  std::string out = witness.siglum;
  if (witness.recipe.year > 0) out += fmt::format(" {}", witness.recipe.year);
  out += '\n';
  out += page_words(witness);
  return out;
}

std::size_t whole_of(const std::string& figure) { return std::min(figure.find('.'), figure.size()); }

std::string cell_text(const Cell& cell, std::size_t whole_width, const TextStyle& style) {
  if (!cell.present) return absent;
  std::vector<std::string> out;
  if (cell.per_basis) {
    WrittenAmount written = write_amount(*cell.per_basis);
    written.figure.insert(0, whole_width - whole_of(written.figure), ' ');
    out.push_back(written.text() + (cell.out_of_line ? " !" : ""));
  } else {
    out.emplace_back("as printed");
  }
  for (const std::string& remark : remarks(cell))
    for (std::string& line : wrapped(remark, cell_width)) out.push_back(std::move(line));
  if (style.printed)
    for (std::string& line : wrapped("\xE2\x80\x9C" + cell.printed + "\xE2\x80\x9D", cell_width))
      out.push_back(std::move(line));
  return lines(out);
}

/// How wide the figures of a column are before the point, so that their points stand under one another.
std::size_t whole_width(const Comparison& comparison, std::size_t witness) {
  std::size_t out = 0;
  for (const Row& row : comparison.rows) {
    const auto& amount = row.cells[witness].per_basis;
    if (amount && !in_one_only(row, comparison)) out = std::max(out, whole_of(write_amount(*amount).figure));
  }
  return out;
}

/// The figures of a row over all witnesses: median, quartiles, least to most, spread.
std::vector<std::string> summary_cells(const Row& row) {
  if (!row.median) return {"as printed", absent, absent, absent};
  const std::string ends = row.least == row.most
                               ? end_figure(row, row.least)
                               : end_figure(row, row.least) + "\xE2\x80\x93" + end_figure(row, row.most);
  // Of one or two amounts a median says nothing that their ends do not.
  if (row.measured < 3) return {"too few", absent, ends, absent};
  WrittenAmount median = write_amount(*row.median);
  const std::string quartiles = median.range.empty() ? median.figure : median.range;
  median.range.clear();
  return {median.text(), quartiles, ends, spread_words(row)};
}

std::string summary_table(const Comparison& comparison, const TextStyle& style) {
  Grid grid;
  grid.rows.push_back({"", "in", "amounts", "median", "quartiles", "least\xE2\x80\x93most", "spread"});
  grid.right = {false, true, true, true, true, true, true};
  for (const Row& row : comparison.rows) {
    if (in_one_only(row, comparison)) continue;
    std::vector<std::string> name = wrapped(row.name, name_width);
    if (const std::string sorts = sorts_words(comparison, row); !sorts.empty())
      for (std::string& line : wrapped(sorts, name_width)) name.push_back("  " + line);
    std::vector<std::string> line{lines(name), fmt::format("{} of {}", row.witnesses, comparison.witnesses.size()),
                                  row.measured == 0 ? absent : std::to_string(row.measured)};
    for (std::string& cell : summary_cells(row)) line.push_back(std::move(cell));
    grid.rows.push_back(std::move(line));
  }
  return grid.text(style.width);
}

/// "B alone: red pepper 1.5 (1.3-1.6), horseradish as printed".
std::string ingredients_of_one(const Comparison& comparison, const TextStyle& style) {
  const std::size_t all = comparison.witnesses.size();
  std::string out;
  for (std::size_t w = 0; w < all; ++w) {
    std::string has;
    for (const Row& row : comparison.rows) {
      const Cell& cell = row.cells[w];
      if (!in_one_only(row, comparison) || !cell.present) continue;
      if (!has.empty()) has += "; ";
      has += row.name + " " + (cell.per_basis ? write_amount(*cell.per_basis).text() : "as printed");
      for (const std::string& remark : remarks(cell)) has += ", " + remark;
      if (style.printed) has += fmt::format(" \xE2\x80\x9C{}\xE2\x80\x9D", cell.printed);
    }
    if (!has.empty()) out += paragraph(has, style.width, fmt::format("  {} alone: ", comparison.witnesses[w].siglum));
  }
  return out.empty() ? out : "\n" + out;
}

std::string ingredients_table(const Comparison& comparison, const TextStyle& style) {
  Grid grid;
  grid.kept = 1;
  const std::size_t all = comparison.witnesses.size();
  std::vector<std::string> head{""};
  std::vector<std::size_t> wholes;
  for (std::size_t w = 0; w < all; ++w) {
    head.push_back(heading(comparison.witnesses[w]));
    wholes.push_back(whole_width(comparison, w));
  }
  grid.rows.push_back(std::move(head));
  for (const Row& row : comparison.rows) {
    if (in_one_only(row, comparison)) continue;
    std::vector<std::string> line{lines(wrapped(row.name, name_width))};
    for (std::size_t w = 0; w < all; ++w) line.push_back(cell_text(row.cells[w], wholes[w], style));
    grid.rows.push_back(std::move(line));
  }
  return grid.text(style.width);
}

std::string step_text(const StepRow& row, const StepCell& cell, const TextStyle& style) {
  if (cell.op.empty()) return absent;
  std::string out = cell.op == row.op ? std::string() : cell.op;
  if (cell.minutes) out += (out.empty() ? "" : " ") + write_minutes(*cell.minutes);
  if (out.empty()) out = done;
  if (style.printed && !cell.printed.empty())
    out += "\n" + lines(wrapped("\xE2\x80\x9C" + cell.printed + "\xE2\x80\x9D", cell_width));
  return out;
}

/// Steps that two or more have, or that last; what one alone does is told in a sentence beneath.
std::string methods_table(const Comparison& comparison, const TextStyle& style) {
  const std::size_t all = comparison.witnesses.size();
  Grid grid;
  std::vector<std::string> head{""};
  if (all > 2) head.emplace_back("in");
  for (const Witness& witness : comparison.witnesses) head.push_back(heading(witness));
  grid.rows.push_back(std::move(head));
  std::vector<std::string> alone(all);
  for (const StepRow& row : comparison.steps) {
    if (row.witnesses == 1 && all > 2) {
      for (std::size_t w = 0; w < all; ++w) {
        const StepCell& cell = row.cells[w];
        if (cell.op.empty()) continue;
        alone[w] += (alone[w].empty() ? "" : ", ") + cell.op;
        if (cell.minutes) alone[w] += " " + write_minutes(*cell.minutes);
      }
      continue;
    }
    std::vector<std::string> line{row.op};
    if (all > 2) line.push_back(fmt::format("{} of {}", row.witnesses, all));
    for (const StepCell& cell : row.cells) line.push_back(step_text(row, cell, style));
    grid.rows.push_back(std::move(line));
  }
  std::string out = grid.rows.size() > 1 ? grid.text(style.width) : std::string();
  std::string further;
  for (std::size_t w = 0; w < all; ++w)
    if (!alone[w].empty())
      further += paragraph(alone[w], style.width, fmt::format("  {} alone: ", comparison.witnesses[w].siglum));
  if (!further.empty()) out += (out.empty() ? "" : "\n") + further;
  return out;
}

std::string key(const Comparison& comparison) {
  bool untold = false, odd = false, more = false;
  for (const Row& row : comparison.rows)
    for (const Cell& cell : row.cells) {
      untold = untold || (cell.present && !cell.per_basis);
      odd = odd || cell.out_of_line;
      more = more || (cell.more && cell.per_basis);
    }
  std::string out = fmt::format(
      "Figures are the likely amount, in brackets the least and the most it may be. {}: not in "
      "that recipe.",
      absent);
  if (untold) out += " As printed: named, with no amount that can be brought to the basis.";
  if (more) out += " And more: it is named again with no amount.";
  if (odd) out += " !: out of line with the others.";
  return out;
}

std::string witness_list(const Comparison& comparison, const TextStyle& style) {
  std::size_t widest = 1;
  for (const Witness& witness : comparison.witnesses) widest = std::max(widest, witness.siglum.size());
  std::string out;
  for (const Witness& witness : comparison.witnesses) {
    const std::string first = "  " + padded(witness.siglum, widest) + "  ";
    out += paragraph(witness.citation.note(), style.width, first);
    std::string more = witness.recipe.id;
    if (witness.basis && comparison.basis != "batch")
      more += fmt::format("; {} of {}", write_large_amount(*witness.basis).text(), comparison.basis);
    out += paragraph(more, style.width, std::string(first.size(), ' '));
    for (const std::string& sentence : apart_words(witness))
      out += paragraph(sentence, style.width, std::string(first.size(), ' '));
  }
  return out;
}

std::string methods(const Comparison& comparison, const TextStyle& style, bool columns) {
  std::string out;
  const std::vector<std::string> consensus = consensus_words(comparison);
  if (!consensus.empty()) {
    out += paragraph(fmt::format("What half or more of the {} that tell a method do, in order", comparison.methods),
                     style.width);
    std::size_t number = 0;
    for (const std::string& step : consensus) out += paragraph(step, style.width, fmt::format("  {:>2}. ", ++number));
    out += '\n';
  }
  const std::string table = columns ? methods_table(comparison, style) : std::string();
  if (!table.empty()) out += "Methods, in order of doing\n" + table + '\n';
  return out;
}

}  // namespace

std::string comparison_as_text(const Comparison& comparison, const TextStyle& style) {
  const std::size_t all = comparison.witnesses.size();
  std::string title = fmt::format("{}: {}{}", comparison.dish, count_words(all), years_words(comparison));
  if (comparison.per > 0) title += ", per " + basis_words(comparison);
  std::string out = paragraph(title, style.width);
  if (comparison.per > 0) out += paragraph(fmt::format("(that basis: {})", comparison.basis_why), style.width);
  out += '\n';
  for (const std::string& note : comparison.notes) out += paragraph(note, style.width, "  ");
  if (!comparison.notes.empty()) out += '\n';
  for (const std::string& sentence : comparison.chosen) out += paragraph(sentence, style.width);
  if (!comparison.chosen.empty()) out += '\n';
  const bool columns = all <= most_columns || style.full;
  if (all > 2 && !comparison.rows.empty()) out += summary_table(comparison, style) + '\n';
  if (columns) {
    out += ingredients_table(comparison, style) + ingredients_of_one(comparison, style) + '\n';
    out += paragraph(key(comparison), style.width) + '\n';
  } else {
    out += ingredients_of_one(comparison, style) + '\n';
    out += paragraph("With --full, each recipe's own column; with --html FILE, all of it as a page with plots.",
                     style.width) +
           '\n';
  }
  out += methods(comparison, style, columns);
  out += "Witnesses\n" + witness_list(comparison, style);
  return out;
}

}  // namespace gallipot
