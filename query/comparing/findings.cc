// What is out of line, what could not be done, and all findings in their order.
#include "query/comparing/findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include "indexer/measures/amount.h"
#include "query/comparing/basis.h"
#include "query/comparing/sentences.h"
#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr std::size_t fewest_for_outliers = 5;
constexpr std::size_t most_beyond = 3;  // sentences on what no other recipe of the shelf has

std::string multiple_figure(double value) {
  return value < 10 ? fmt::format("{:.2g}", value) : fmt::format("{:.0f}", value);
}

/// "6.3 x", "1/28 of".
std::string multiple(double times) {
  return times >= 1 ? multiple_figure(times) + " x" : "1/" + multiple_figure(1 / times) + " of";
}

/// "K has 6.1 x the median of 8 others (4.2 to 8.8)", "K has 1/5 of the median of 8 others (1/8 to 1/4)".
std::string out_of_line_words(const Comparison& comparison, const Row& row, const OutOfLine& found) {
  const auto end = [&](double value) {
    if (value <= 0) return std::string("0");
    return found.times >= 1 ? multiple_figure(value) : "1/" + multiple_figure(1 / value);
  };
  std::string out = fmt::format("{} has {} the median of {} others ({} to {})",
                                comparison.witnesses[found.witness].siglum, multiple(found.times), found.others,
                                end(found.low), end(found.high));
  const auto& share = row.cells[found.witness].of_batch;
  if (row.elsewhere && share && share->unit == row.elsewhere->middle.unit) {
    const bool beyond = found.times >= 1 ? share->low > row.elsewhere->most : share->high < row.elsewhere->least;
    out += beyond ? fmt::format(", and {} than any of {} other recipes with it that were looked at on the shelf",
                                found.times >= 1 ? "more" : "less", row.elsewhere->recipes)
                  : fmt::format("; of {} other recipes with it looked at on the shelf some go as far",
                                row.elsewhere->recipes);
  }
  return out;
}

/// "Mace: H has 2.1 g per kg of all that can be weighed, more than any of 47 other recipes with it on the shelf": for
/// those that are in line with their siblings or have too few of them.
std::vector<std::string> beyond_the_shelf(const Comparison& comparison) {
  std::vector<std::pair<double, std::string>> found;
  for (const Row& row : comparison.rows) {
    if (!row.elsewhere || row.name == comparison.basis) continue;
    std::pair<double, std::string> furthest;
    std::size_t further = 0;
    for (std::size_t w = 0; w < row.cells.size(); ++w) {
      const Cell& cell = row.cells[w];
      if (cell.out_of_line || !cell.of_batch || cell.of_batch->unit != row.elsewhere->middle.unit) continue;
      if (cell.of_batch->low <= row.elsewhere->most || row.elsewhere->middle.likely <= 0) continue;
      const double times = cell.of_batch->likely / row.elsewhere->middle.likely;
      ++further;
      if (times <= furthest.first) continue;
      furthest = {times, fmt::format("{}: {} has more in a kilogram of the whole than any of {} other recipes with it "
                                     "that were looked at on the shelf, whatever the dish ({} their median).",
                                     capitalized(row.name), comparison.witnesses[w].siglum, row.elsewhere->recipes,
                                     multiple(times))};
    }
    // Where siblings go as far the dish does, not the recipe.
    if (further == 1) found.push_back(std::move(furthest));
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::string> out;
  for (std::size_t i = 0; i < found.size() && i < most_beyond; ++i) out.push_back(std::move(found[i].second));
  return out;
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
    if (comparison.basis == whole_batch) continue;  // shares of one whole: what one has more of, it has others less of
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
  if (comparison.rows.empty()) return {"No ingredient was read in any of them; the methods can be compared."};
  if (comparison.basis == as_printed) {
    const bool any = std::any_of(comparison.rows.begin(), comparison.rows.end(),
                                 [](const Row& row) { return row.measured > 0; });
    if (!any) return {"No recipe here gives an amount that can be told in figures; who has what can still be seen."};
    return {"Amounts stand as printed, not brought to one size of batch: " + comparison.basis_why + "."};
  }
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
  if (!row.median || comparison.per <= 0) return;  // amounts as printed grow with the batch
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
    std::vector<double> others, lows, highs;
    bool meets = false;
    for (std::size_t j = 0; j < at.size(); ++j) {
      if (j == i) continue;
      others.push_back(row.cells[at[j]].per_basis->likely);
      lows.push_back(row.cells[at[j]].per_basis->low);
      highs.push_back(row.cells[at[j]].per_basis->high);
      meets = meets || overlap(own, *row.cells[at[j]].per_basis);
    }
    const double times = own.likely / quartiles(others).median;
    if (meets || (times < 2 && times > 0.5)) continue;
    row.cells[at[i]].out_of_line = true;
    // The least that the multiple can be: own least by the others' most.
    const double low = own.low / quartiles(highs).median, high = own.high / quartiles(lows).median;
    row.out_of_line.push_back({at[i], times, low, high, others.size()});
    if (!row.note.empty()) row.note += "; ";
    row.note += out_of_line_words(comparison, row, row.out_of_line.back());
  }
}

std::vector<std::string> findings(const Comparison& comparison, const Yardstick& yardstick) {
  std::vector<std::string> out;
  const auto append = [&](std::vector<std::string> more) {
    out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  if (comparison.witnesses.size() > 1) {
    append(findings_on_methods(comparison, yardstick));
    for (const Contrast& contrast : comparison.contrasts) out.push_back(contrast.sentence);
    for (const Trend& trend : comparison.trends) out.push_back(trend.sentence);
    append(out_of_line(comparison));
    append(beyond_the_shelf(comparison));
    append(findings_on_stuffs(comparison));
  }
  if (comparison.witnesses.size() == 1)
    out.emplace_back("One recipe alone: its amounts are brought to the basis, and there is nothing to set beside them.");
  append(what_could_not_be_done(comparison));
  return out;
}

}  // namespace gallipot
