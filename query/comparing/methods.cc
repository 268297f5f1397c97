// Lays methods side by side.
#include "query/comparing/methods.h"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>

#include "query/comparing/alignment.h"
#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr double weight_of_little = 0.6;  // "add" beside "add" draws less than "boil" beside "boil"
constexpr double same_stuff = 0.3;        // what a stuff named by both adds to the likeness

/// A step as it is laid: what is done, to what, how long.
struct Laid {
  Step step;
  std::vector<std::string> stuffs;
  bool little = false;
};

std::vector<std::string> stuffs_in(const Span& span, const ComparableRecipe& recipe, const Yardstick& yardstick) {
  std::vector<std::string> out;
  for (const ComparableIngredient& ingredient : recipe.ingredients) {
    const Span& name = ingredient.printed.name_span;
    if (name.end <= name.begin || name.begin < span.begin || name.end > span.end) continue;
    const std::string& stuff = yardstick.stuff(ingredient.printed.name);
    if (std::find(out.begin(), out.end(), stuff) == out.end()) out.push_back(stuff);
  }
  return out;
}

/// Steps of one recipe for laying side by side: an operation named again at once, with no duration, is one step.
std::vector<Laid> told_once(const ComparableRecipe& recipe, const Yardstick& yardstick) {
  std::vector<Laid> out;
  for (const Step& step : recipe.steps) {
    if (!out.empty() && out.back().step.op == step.op && (!step.minutes || !out.back().step.minutes)) {
      if (step.minutes) out.back().step.minutes = step.minutes;
      out.back().step.span.end = std::max(out.back().step.span.end, step.span.end);
      continue;
    }
    out.push_back({step, {}, says_little(step.op)});
  }
  for (Laid& laid : out) laid.stuffs = stuffs_in(laid.step.span, recipe, yardstick);
  return out;
}

bool share_a_stuff(const Laid& a, const Laid& b) {
  return std::any_of(a.stuffs.begin(), a.stuffs.end(), [&](const std::string& stuff) {
    return std::find(b.stuffs.begin(), b.stuffs.end(), stuff) != b.stuffs.end();
  });
}

double likeness(const Laid& one, const Laid& other, const Yardstick& yardstick) {
  double like = yardstick.likeness(one.step.op, other.step.op);
  if (like <= 0) return 0;
  if (one.little && other.little) like *= weight_of_little;
  if (share_a_stuff(one, other)) like += same_stuff;
  // Two that both say how long, and mean the same by it, answer to one another the more surely.
  if (one.step.minutes && other.step.minutes) {
    const double ratio = (one.step.minutes->high + 1) / (other.step.minutes->high + 1);
    like += ratio < 2 && ratio > 0.5 ? 0.25 : -0.1 * like;
  }
  return like;
}

/// The commonest of some names; of equal ones the first by letter.
std::string commonest(const std::map<std::string, std::size_t>& counts) {
  return std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) {
           return a.second < b.second;
         })->first;
}

std::vector<Named> commonly_named(const StepRow& row) {
  std::map<std::string, std::size_t> counts;
  for (const StepCell& cell : row.cells)
    for (const std::string& stuff : cell.stuffs) ++counts[stuff];
  std::vector<Named> out;
  for (const auto& [name, count] : counts)
    if (count >= 2 && count * 3 >= row.witnesses) out.push_back({name, count});
  std::stable_sort(out.begin(), out.end(), [](const Named& a, const Named& b) { return a.witnesses > b.witnesses; });
  return out;
}

void summarize_times(StepRow& row) {
  std::vector<double> middles;
  for (const StepCell& cell : row.cells) {
    if (!cell.minutes || cell.minutes->high <= 0) continue;
    middles.push_back((cell.minutes->low + cell.minutes->high) / 2);
    if (!row.minutes) row.minutes = *cell.minutes;
    row.minutes->low = std::min(row.minutes->low, cell.minutes->low);
    row.minutes->high = std::max(row.minutes->high, cell.minutes->high);
  }
  row.timed = middles.size();
  if (!middles.empty()) row.middle = quartiles(std::move(middles)).median;
}

StepRow row_of(const std::vector<std::optional<std::size_t>>& column, const std::vector<std::vector<Laid>>& methods,
               const std::vector<Witness>& witnesses) {
  StepRow row;
  row.cells.resize(witnesses.size());
  std::map<std::string, std::size_t> ops;
  for (std::size_t w = 0; w < witnesses.size(); ++w) {
    if (!column[w]) continue;
    const Laid& laid = methods[w][*column[w]];
    row.cells[w] = {laid.step.op, laid.step.minutes,
                    std::string(laid.step.span.in(witnesses[w].recipe.recipe.text)), laid.stuffs};
    ++ops[laid.step.op];
    ++row.witnesses;
  }
  row.op = commonest(ops);
  row.stuffs = commonly_named(row);
  summarize_times(row);
  return row;
}

/// The two of a row that do the same and stand furthest apart in time.
std::optional<Conflict> widest(const std::vector<StepRow>& steps, std::size_t at) {
  const StepRow& row = steps[at];
  std::optional<Conflict> out;
  for (std::size_t w = 0; w < row.cells.size(); ++w) {
    const StepCell& cell = row.cells[w];
    if (cell.op != row.op || !cell.minutes || cell.minutes->low <= 0) continue;
    if (!out) out = Conflict{at, w, w};
    if (cell.minutes->high < row.cells[out->shorter].minutes->high) out->shorter = w;
    if (cell.minutes->low > row.cells[out->longer].minutes->low) out->longer = w;
  }
  return out;
}

double apart(const std::vector<StepRow>& steps, const Conflict& conflict) {
  const auto& cells = steps[conflict.step].cells;
  return cells[conflict.longer].minutes->low / cells[conflict.shorter].minutes->high;
}

}  // namespace

bool says_little(const std::string& op) {
  static constexpr std::array<const char*, 8> little{"add", "mix", "stir", "pour", "lay", "cover", "turn", "serve"};
  return std::find(little.begin(), little.end(), op) != little.end();
}

std::size_t methods_told(const std::vector<Witness>& witnesses) {
  return static_cast<std::size_t>(std::count_if(
      witnesses.begin(), witnesses.end(), [](const Witness& witness) { return !witness.recipe.steps.empty(); }));
}

std::vector<StepRow> align_methods(const std::vector<Witness>& witnesses, const Yardstick& yardstick) {
  std::vector<std::vector<Laid>> methods;
  std::vector<std::size_t> lengths;
  for (const Witness& witness : witnesses) {
    methods.push_back(told_once(witness.recipe, yardstick));
    lengths.push_back(methods.back().size());
  }
  const auto like = [&](std::size_t a, std::size_t i, std::size_t b, std::size_t j) {
    return likeness(methods[a][i], methods[b][j], yardstick);
  };
  const std::size_t told = methods_told(witnesses);
  std::vector<StepRow> rows;
  for (const auto& column : align_all(lengths, like)) {
    rows.push_back(row_of(column, methods, witnesses));
    rows.back().consensus = told >= 3 && rows.back().witnesses * 2 >= told;
  }
  return rows;
}

std::vector<Conflict> conflicts_of(const std::vector<StepRow>& steps) {
  std::map<std::string, Conflict> by_op;
  for (std::size_t at = 0; at < steps.size(); ++at) {
    // "Stir it every day": an interval between, not a length.
    const auto found = says_little(steps[at].op) ? std::nullopt : widest(steps, at);
    if (!found || apart(steps, *found) < far_apart) continue;
    const auto [kept, added] = by_op.try_emplace(steps[at].op, *found);
    if (!added && apart(steps, *found) > apart(steps, kept->second)) kept->second = *found;
  }
  std::vector<Conflict> out;
  for (const auto& [op, conflict] : by_op) out.push_back(conflict);
  std::stable_sort(out.begin(), out.end(),
                   [&](const Conflict& a, const Conflict& b) { return apart(steps, a) > apart(steps, b); });
  return out;
}

}  // namespace gallipot
