// Trials, each computed from the last.
#include "query/dossier/trials.h"

#include <fmt/format.h>

#include <algorithm>

#include "query/dossier/keep.h"

namespace gallipot {

std::vector<TrialAmount> amounts_of(const ComparableRecipe& recipe, double batch) {
  std::vector<TrialAmount> out;
  for (const ComparableIngredient& one : recipe.ingredients) {
    const Ingredient& printed = one.printed;
    if (printed.optional || !printed.alternative_of.empty() || printed.name.empty()) continue;
    const std::string unit = one.metric ? unit_name(one.metric->unit) : "";
    auto at = std::find_if(out.begin(), out.end(), [&](const TrialAmount& a) {
      return a.stuff == printed.name && (!a.amount || !one.metric || a.unit == unit);
    });
    if (at == out.end()) at = out.insert(out.end(), {printed.name, std::nullopt, unit});
    if (!one.metric) continue;
    at->amount = at->amount.value_or(0) + one.metric->likely * batch;
    at->unit = unit;
  }
  return out;
}

Outcome<Trial> next_trial(const Dossier& dossier, const ComparableRecipe& of, double batch, const std::string& changes,
                          const Lexicon& lexicon) {
  if (!(batch > 0) || batch > 1000) return fault("that is no batch", "give a number such as 0.25 or 2");
  Trial out;
  out.date = today();
  out.of = of.id;
  out.changes = changes;
  for (const Trial& trial : dossier.trials) out.number = std::max(out.number, trial.number);
  ++out.number;
  const auto last = std::find_if(dossier.trials.rbegin(), dossier.trials.rend(),
                                 [&](const Trial& trial) { return trial.of == of.id; });
  if (last == dossier.trials.rend()) {
    out.amounts = amounts_of(of, batch);
    out.batch = batch == 1 ? "the recipe as printed" : fmt::format("{:.4g} of the recipe", batch);
  } else {
    out.amounts = last->amounts;
    for (TrialAmount& one : out.amounts)
      if (one.amount) *one.amount *= batch;
    out.batch =
        batch == 1 ? fmt::format("as trial {}", last->number) : fmt::format("{:.4g} of trial {}", batch, last->number);
  }
  if (changes.find_first_not_of(" \t\r\n") == std::string::npos) return out;
  const auto read = read_changes(changes, out.amounts, lexicon);
  if (!read) return tl::unexpected(read.error());
  auto after = changed(std::move(out.amounts), *read);
  if (!after) return tl::unexpected(after.error());
  out.amounts = std::move(*after);
  return out;
}

}  // namespace gallipot
