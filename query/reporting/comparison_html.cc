// A comparison as one page: what was found first, then the plots with their tables, then the witnesses.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "query/comparing/sentences.h"
#include "query/reporting/amounts.h"
#include "query/reporting/comparison_page.h"
#include "query/reporting/comparison_words.h"
#include "query/reporting/html.h"
#include "query/reporting/plots.h"
#include "query/reporting/report.h"
#include "query/reporting/svg.h"

namespace gallipot {
namespace {

using html::Fields;

constexpr double bar_width = 96, bar_height = 9;  // of the line that draws an amount in a cell
constexpr std::size_t most_in_print = 7;  // columns that a sheet of paper takes; beyond it cards stand for the table
constexpr const char* dash = "\xE2\x80\x93";

Fields list_of(const std::vector<std::string>& lines) {
  Fields out{Fields::type::list};
  for (const std::string& line : lines) out.push_back(line);
  return out;
}

/// The ends of the scale along a row: of all amounts in its unit.
std::pair<double, double> ends(const Row& row) {
  double low = 0, high = 0;
  for (const Cell& cell : row.cells) {
    if (!cell.per_basis || !row.median || cell.per_basis->unit != row.median->unit || cell.per_basis->likely <= 0)
      continue;
    const double least = cell.per_basis->low > 0 ? cell.per_basis->low : cell.per_basis->likely;
    low = low > 0 ? std::min(low, least) : least;
    high = std::max(high, cell.per_basis->high);
  }
  return {low, high};
}

/// The thin line with its tick; empty where the row has no scale of more than one value.
std::string drawn(const Amount& amount, const Row& row) {
  const auto [low, high] = ends(row);
  if (!row.median || amount.unit != row.median->unit || !(low > 0) || high <= low || amount.likely <= 0) return {};
  const LogScale x(low, high, 2, bar_width - 2);
  const auto line = [](double x1, double y1, double x2, double y2, const char* kind) {
    return fmt::format("<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\"{}/>", x1, y1, x2, y2, kind);
  };
  const double middle = bar_height / 2;
  return fmt::format("<svg class=\"amount\" aria-hidden=\"true\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" height=\"{1}\">",
                     bar_width, bar_height) +
         line(x(amount.low), middle, x(amount.high), middle, "") +
         line(x(amount.likely), 0.5, x(amount.likely), bar_height - 0.5, " class=\"likely\"") + "</svg>";
}

std::string printed_words(const std::string& printed) {
  return printed.empty() ? std::string() : "<span class=\"print-words\">" + html::escape(printed) + "</span>";
}

std::string cell_markup(const Row& row, const Cell& cell) {
  if (!cell.present) return "<span class=\"not-in\">" + std::string(dash) + "</span>";
  std::string out;
  if (cell.per_basis) {
    const WrittenAmount written = write_amount(*cell.per_basis);
    out += "<span class=\"figure\">" + html::escape(written.figure);
    if (!written.unit.empty()) out += " <span class=\"unit\">" + html::escape(written.unit) + "</span>";
    if (!written.range.empty()) out += " <span class=\"soft\">(" + html::escape(written.range) + ")</span>";
    if (cell.out_of_line) out += " <span class=\"odd-mark\" title=\"out of line\">!</span>";
    const std::string line = drawn(*cell.per_basis, row);
    out += "</span>" + (line.empty() ? "<br>" : line);
  } else {
    out += "<span class=\"soft\">as printed</span><br>";
  }
  for (const std::string& remark : remarks(cell)) out += "<small>" + html::escape(remark) + "</small><br>";
  if (cell.per_basis && !cell.how.empty()) out += "<small>" + html::escape(cell.how) + "</small><br>";
  return out + printed_words(cell.printed);
}

std::string cell_markup(const StepRow& row, const StepCell& cell) {
  if (cell.op.empty()) return "<span class=\"not-in\">" + std::string(dash) + "</span>";
  std::string head = cell.op == row.op ? std::string() : cell.op;
  if (cell.minutes) head += (head.empty() ? "" : ", ") + write_minutes(*cell.minutes);
  if (head.empty()) head = "\xE2\x9C\x93";
  return "<span class=\"figure\">" + html::escape(head) + "</span><br>" + printed_words(cell.printed);
}

using Addresses = std::function<std::string(const std::string&)>;

/// The words of a cell as the way to the recipe that they came from.
std::string linked(std::string cell, const Witness& witness, bool present, const Addresses& address_of) {
  if (!present || !address_of) return cell;
  return fmt::format("{}<br><a class=\"to-print\" href=\"{}\" aria-label=\"Read {} in print\">in print</a>", cell,
                     html::escape(address_of(witness.recipe.id)), html::escape(witness.siglum));
}

Fields row_fields(const Comparison& comparison, const Row& row, const Addresses& address_of) {
  Fields out{Fields::type::object};
  out["name"] = row.name;
  const std::string sorts = sorts_words(comparison, row);
  out["sorts"] = sorts.empty() ? Fields{false} : Fields{sorts};
  out["in"] = fmt::format("{} of {}", row.witnesses, comparison.witnesses.size());
  out["measured"] = row.measured == 0 ? std::string(dash) : std::to_string(row.measured);
  const bool enough = row.median && row.measured >= 3;
  const std::string missing = row.measured == 0 ? "as printed" : "too few";
  const WrittenAmount median = enough ? write_amount(*row.median) : WrittenAmount{missing, {}, {}};
  out["median"] = median.figure;
  out["unit"] = median.unit;
  out["quartiles"] = !enough ? std::string(dash) : median.range.empty() ? median.figure : median.range;
  out["least"] = row.median ? end_figure(row, row.least) : std::string(dash);
  out["most"] = row.median ? end_figure(row, row.most) : std::string(dash);
  out["spread"] = row.name == comparison.basis ? "basis" : spread_words(row);
  out["note"] = row.note.empty() ? std::string(dash) : row.note;
  Fields cells{Fields::type::list};
  for (std::size_t w = 0; w < row.cells.size(); ++w)
    cells.push_back(linked(cell_markup(row, row.cells[w]), comparison.witnesses[w], row.cells[w].present, address_of));
  out["cells"] = std::move(cells);
  return out;
}

Fields step_fields(const Comparison& comparison, const StepRow& row, const Addresses& address_of) {
  Fields out{Fields::type::object};
  out["op"] = row.op;
  out["in"] = fmt::format("{} of {}", row.witnesses, comparison.witnesses.size());
  Fields cells{Fields::type::list};
  for (std::size_t w = 0; w < row.cells.size(); ++w)
    cells.push_back(
        linked(cell_markup(row, row.cells[w]), comparison.witnesses[w], !row.cells[w].op.empty(), address_of));
  out["cells"] = std::move(cells);
  return out;
}

std::string year_words(const Witness& witness) {
  return witness.recipe.year > 0 ? std::to_string(witness.recipe.year) : "undated";
}

Fields witness_fields(const Comparison& comparison, std::size_t w, const Addresses& address_of) {
  const Witness& witness = comparison.witnesses[w];
  Fields out{Fields::type::object};
  out["siglum"] = witness.siglum;
  out["year"] = year_words(witness);
  out["page"] = page_words(witness);
  out["title"] = witness.recipe.recipe.title;
  out["note"] = witness.citation.note();
  out["id"] = witness.recipe.id;
  out["address"] = address_of ? Fields{address_of(witness.recipe.id)} : Fields{false};
  const bool told = witness.basis && comparison.basis != "batch";
  out["basis"] = told ? Fields{fmt::format("{} of {}", write_large_amount(*witness.basis).text(), comparison.basis)}
                      : Fields{false};
  out["apart"] = list_of(apart_words(witness));
  Fields amounts{Fields::type::list};
  for (const Row& row : comparison.rows) {
    if (!row.cells[w].present) continue;
    Fields one{Fields::type::object};
    one["name"] = row.name;
    one["cell"] = cell_markup(row, row.cells[w]);
    amounts.push_back(one);
  }
  out["amounts"] = std::move(amounts);
  out["text"] = witness.recipe.recipe.text;
  return out;
}

/// "Walnut catsup: A, B and D. Walnut ketchup: C."
std::string names_words(const Comparison& comparison) {
  std::string out;
  for (const NameBorne& used : names_used(comparison)) {
    std::vector<std::string> who;
    for (const std::size_t w : used.witnesses)
      who.push_back(comparison.witnesses[w].siglum + " " + year_words(comparison.witnesses[w]));
    out += (out.empty() ? "" : " ") + capitalized(used.name) + ": " + sigla_list(who) + ".";
  }
  return out;
}

Fields plot(const std::string& svg) { return svg.empty() ? Fields{false} : Fields{svg}; }

void fill_head(Fields& out, const Comparison& comparison) {
  out["dish"] = capitalized(comparison.dish);
  out["count"] = count_words(comparison.witnesses.size());
  out["years"] = years_words(comparison);
  out["basis"] = comparison.per > 0 ? fmt::format("Amounts per {}: {}.", basis_words(comparison), comparison.basis_why)
                                    : "Amounts as printed: " + comparison.basis_why + ".";
  std::vector<std::string> findings = comparison.notes;
  out["lead"] = findings.empty() ? Fields{false} : Fields{findings.front()};
  if (!findings.empty()) findings.erase(findings.begin());
  out["has_findings"] = !findings.empty();
  out["findings"] = list_of(findings);
  out["has_chosen"] = !comparison.chosen.empty();
  out["chosen"] = list_of(comparison.chosen);
  out["timeline"] = plot(timeline_plot(comparison));
  out["names"] = names_words(comparison);
  out["notes"] = list_of(method_notes());
}

void fill_tables(Fields& out, const Comparison& comparison, const Addresses& address_of) {
  out["axis"] = capitalized(axis_words(comparison));
  out["has_rows"] = !comparison.rows.empty();
  out["strip"] = plot(strip_plot(comparison));
  out["matrix"] = plot(matrix_plot(comparison));
  Fields rows{Fields::type::list}, heads{Fields::type::list}, steps{Fields::type::list}, witnesses{Fields::type::list};
  for (const Row& row : comparison.rows)
    if (!in_one_only(row, comparison)) rows.push_back(row_fields(comparison, row, address_of));
  const std::string rest = ones_words(comparison);
  out["only_in_one"] = rest.empty() ? Fields{false} : Fields{rest};
  for (const StepRow& row : comparison.steps)
    if (row.witnesses > 1 || comparison.witnesses.size() <= 2)
      steps.push_back(step_fields(comparison, row, address_of));
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    Fields head{Fields::type::object};
    head["siglum"] = comparison.witnesses[w].siglum;
    head["year"] = year_words(comparison.witnesses[w]);
    head["page"] = page_words(comparison.witnesses[w]);
    heads.push_back(head);
    witnesses.push_back(witness_fields(comparison, w, address_of));
  }
  out["rows"] = std::move(rows);
  out["heads"] = std::move(heads);
  out["steps"] = std::move(steps);
  out["witnesses"] = std::move(witnesses);
  const std::vector<std::string> consensus = consensus_words(comparison);
  out["has_steps"] = !comparison.steps.empty();
  out["has_consensus"] = !consensus.empty();
  out["consensus"] = list_of(consensus);
  out["methods"] = std::to_string(comparison.methods);
  out["alignment"] = plot(methods_plot(comparison));
  out["dots"] = comparison.witnesses.size() > 12;
  out["many"] = comparison.witnesses.size() > most_in_print ? " many" : "";
}

}  // namespace

std::string comparison_body(const Comparison& comparison, const Addresses& address_of) {
  Fields fields{Fields::type::object};
  fill_head(fields, comparison);
  fill_tables(fields, comparison, address_of);
  return html::render("comparison", fields);
}

std::string comparison_as_html(const Comparison& comparison) {
  html::Page page;
  page.title = capitalized(comparison.dish) + ": " + count_words(comparison.witnesses.size()) + years_words(comparison);
  page.body = comparison_body(comparison, {});
  page.head = "<style>\n" + std::string(html::page_file("comparison.css")) + "</style>";
  return html::whole_page(page);
}

}  // namespace gallipot
