// A comparison for a terminal: what was found first, the table of ingredients under it, the methods, then the witnesses
// with their citations.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

constexpr const char* absent = "\xE2\x80\x93";  // en dash
constexpr const char* done = "\xE2\x9C\x93";    // check mark
constexpr std::size_t cell_width = 24;          // words in a cell are broken at this
constexpr std::size_t name_width = 26;

std::string lines(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) {
    if (!out.empty()) out += '\n';
    out += part;
  }
  return out;
}

/// "1 kg of walnut", "1 l of juice", "one egg", "1 kg of the batch".
std::string basis_words(const Comparison& comparison) {
  const std::string of = comparison.basis == "batch" ? "the whole batch" : comparison.basis;
  if (comparison.per_unit == Amount::Unit::count) return fmt::format("{:g} {}", comparison.per, of);
  const char* unit = comparison.per_unit == Amount::Unit::gram ? "kg" : "l";
  return fmt::format("{:g} {} of {}", comparison.per / 1000, unit, of);
}

std::string years(const Comparison& comparison) {
  int first = 0, last = 0;
  for (const Witness& witness : comparison.witnesses) {
    if (witness.recipe.year == 0) continue;
    first = first == 0 ? witness.recipe.year : std::min(first, witness.recipe.year);
    last = std::max(last, witness.recipe.year);
  }
  if (first == 0) return {};
  return first == last ? fmt::format(", {}", first) : fmt::format(", {}\xE2\x80\x93{}", first, last);
}

std::string heading(const Witness& witness) {
  std::string out = witness.siglum;
  if (witness.recipe.year > 0) out += fmt::format(" {}", witness.recipe.year);
  out += '\n';
  out += witness.citation.page.empty() ? "no page" : "p. " + witness.citation.page;
  return out;
}

/// What stands beside or beneath an amount: that it is optional, an alternative, the least.
std::vector<std::string> remarks(const Cell& cell) {
  std::vector<std::string> out;
  if (cell.more && cell.per_basis) out.emplace_back("and more");
  if (!cell.alternative_of.empty()) out.push_back("or for " + cell.alternative_of);
  if (cell.optional) out.emplace_back("if liked");
  return out;
}

/// Where many are laid side by side, what a single one has is told beneath the table rather than in a row of dashes.
bool in_one_only(const Row& row, std::size_t all) { return row.witnesses == 1 && all > 4; }

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
    if (amount && !in_one_only(row, comparison.witnesses.size()))
      out = std::max(out, whole_of(write_amount(*amount).figure));
  }
  return out;
}

std::string median_text(const Row& row) {
  if (!row.median) return "as printed";
  const WrittenAmount written = write_amount(*row.median);
  // Of one or two amounts a median says nothing that the cells do not.
  if (row.measured < 3) return "too few";
  return written.text();
}

/// "B alone: red pepper 1.5 (1.3-1.6), horseradish as printed".
std::string ingredients_of_one(const Comparison& comparison, const TextStyle& style) {
  const std::size_t all = comparison.witnesses.size();
  std::string out;
  for (std::size_t w = 0; w < all; ++w) {
    std::string has;
    for (const Row& row : comparison.rows) {
      const Cell& cell = row.cells[w];
      if (!in_one_only(row, all) || !cell.present) continue;
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
  const bool several = all > 2;
  std::vector<std::string> head{""};
  if (several) head.insert(head.end(), {"in", "median\n(quartiles)"});
  std::vector<std::size_t> wholes;
  for (std::size_t w = 0; w < all; ++w) {
    head.push_back(heading(comparison.witnesses[w]));
    wholes.push_back(whole_width(comparison, w));
  }
  grid.rows.push_back(std::move(head));
  for (const Row& row : comparison.rows) {
    if (in_one_only(row, all)) continue;
    std::vector<std::string> line{lines(wrapped(row.name, name_width))};
    if (several) line.insert(line.end(), {fmt::format("{} of {}", row.witnesses, all), median_text(row)});
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
  }
  return out;
}

}  // namespace

std::string comparison_as_text(const Comparison& comparison, const TextStyle& style) {
  const std::size_t all = comparison.witnesses.size();
  std::string title = fmt::format("{}: {} recipe{}{}", comparison.dish, all, all == 1 ? "" : "s", years(comparison));
  if (comparison.per > 0) title += ", per " + basis_words(comparison);
  std::string out = paragraph(title, style.width);
  if (comparison.per > 0) out += paragraph(fmt::format("(that basis: {})", comparison.basis_why), style.width);
  out += '\n';
  for (const std::string& note : comparison.notes) out += paragraph(note, style.width, "  ");
  if (!comparison.notes.empty()) out += '\n';
  out += ingredients_table(comparison, style) + ingredients_of_one(comparison, style) + '\n';
  out += paragraph(key(comparison), style.width) + '\n';
  const std::string methods = methods_table(comparison, style);
  if (!methods.empty()) out += "Methods, in order of doing\n" + methods + '\n';
  out += "Witnesses\n" + witness_list(comparison, style);
  return out;
}

}  // namespace gallipot
