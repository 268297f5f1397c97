// What is out of line, what could not be done, and all findings in their order.
#include "query/comparing/findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include "indexer/measures/amount.h"
#include "query/comparing/sentences.h"
#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr std::size_t fewest_for_outliers = 5;

/// "6.3 x", "1/28 of".
std::string multiple(double times) {
  const auto figure = [](double value) {
    return value < 10 ? fmt::format("{:.2g}", value) : fmt::format("{:.0f}", value);
  };
  return times >= 1 ? figure(times) + " x" : "1/" + figure(1 / times) + " of";
}

/// "A and C stand as printed: why."
std::string stands_as_printed(const Comparison& comparison, const Places& places, const std::string& one_why,
                              const std::string& many_why) {
  std::string who = sigla_of(comparison, places);
  if (who.empty()) who = capitalized(number_word(places.size())) + " of them";
  const bool one = places.size() == 1;
  return fmt::format("{} {} as printed: {}.", who, one ? "stands" : "stand", one ? one_why : many_why);
}

/// "sugar: Q has 21 x the median of 5 others", a row at a time; but a witness whose amounts are out of line together,
/// all high or all low, is told once: then it is rather its basis that is.
std::vector<std::string> out_of_line(const Comparison& comparison) {
  std::vector<std::string> out;
  std::set<std::size_t> together;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    std::vector<std::string> high, low;
    for (const Row& row : comparison.rows)
      if (row.cells[w].out_of_line)
        (row.cells[w].per_basis->likely > row.median->likely ? high : low).push_back(row.name);
    if (std::max(high.size(), low.size()) < 2 || std::min(high.size(), low.size()) > 0) continue;
    together.insert(w);
    out.push_back(fmt::format("Out of line: {} has far {} {} than the others; perhaps it is its {} that is out.",
                              comparison.witnesses[w].siglum, high.empty() ? "less" : "more",
                              sigla_list(high.empty() ? low : high), comparison.basis));
  }
  for (const Row& row : comparison.rows) {
    bool alone = false;
    for (std::size_t w = 0; w < row.cells.size(); ++w)
      alone = alone || (row.cells[w].out_of_line && !together.contains(w));
    if (alone) out.push_back(fmt::format("Out of line: {}: {}.", row.name, row.note));
  }
  if (out.size() > sentences_a_matter) out.resize(sentences_a_matter);
  return out;
}

std::vector<std::string> what_could_not_be_done(const Comparison& comparison) {
  if (comparison.basis == "as printed")
    return {"Amounts stand as printed, not brought to one size of batch: " + comparison.basis_why + "."};
  const auto basis = std::find_if(comparison.rows.begin(), comparison.rows.end(),
                                  [&](const Row& row) { return row.name == comparison.basis; });
  Places lacking, untold;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    const bool any = std::any_of(comparison.rows.begin(), comparison.rows.end(), [&](const Row& row) {
      return row.name != comparison.basis && row.cells[w].per_basis.has_value();
    });
    if (any) continue;
    const bool lacks = basis != comparison.rows.end() && !basis->cells[w].present;
    (lacks ? lacking : untold).push_back(w);
  }
  std::vector<std::string> out;
  const std::string& of = comparison.basis;
  if (!lacking.empty()) out.push_back(stands_as_printed(comparison, lacking, "it has no " + of, "they have no " + of));
  if (!untold.empty())
    out.push_back(stands_as_printed(comparison, untold, "it gives no amounts that can be brought to the " + of,
                                    "they give no amounts that can be brought to the " + of));
  return out;
}

}  // namespace

void mark_out_of_line(const Comparison& comparison, Row& row) {
  if (!row.median) return;
  Places at;
  std::vector<double> logs;
  for (std::size_t w = 0; w < row.cells.size(); ++w) {
    const Cell& cell = row.cells[w];
    if (!cell.per_basis || cell.per_basis->unit != row.median->unit || cell.per_basis->likely <= 0) continue;
    at.push_back(w);
    logs.push_back(std::log(cell.per_basis->likely));
  }
  if (logs.size() < fewest_for_outliers) return;
  const auto scores = modified_z_scores(logs);
  if (!scores) return;
  for (std::size_t i = 0; i < at.size(); ++i) {
    if (std::abs((*scores)[i]) <= stands_out) continue;
    const Amount& own = *row.cells[at[i]].per_basis;
    std::vector<double> others;
    bool meets = false;
    for (std::size_t j = 0; j < at.size(); ++j) {
      if (j == i) continue;
      others.push_back(row.cells[at[j]].per_basis->likely);
      meets = meets || overlap(own, *row.cells[at[j]].per_basis);
    }
    const double times = own.likely / quartiles(others).median;
    if (meets || (times < 2 && times > 0.5)) continue;
    row.cells[at[i]].out_of_line = true;
    if (!row.note.empty()) row.note += "; ";
    row.note += fmt::format("{} has {} the median of {} others", comparison.witnesses[at[i]].siglum, multiple(times),
                            others.size());
  }
}

std::vector<std::string> findings(const Comparison& comparison, const Yardstick& yardstick) {
  std::vector<std::string> out;
  const auto append = [&](std::vector<std::string> more) {
    out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  if (comparison.witnesses.size() > 1) {
    append(findings_on_methods(comparison, yardstick));
    append(out_of_line(comparison));
    append(findings_on_stuffs(comparison));
  }
  append(what_could_not_be_done(comparison));
  return out;
}

}  // namespace gallipot
