// Makes changes of amounts.
#include <fmt/format.h>

#include <algorithm>

#include "query/dossier/change.h"

namespace gallipot {
namespace {

Outcome<bool> apply(TrialAmount& amount, const Change& change) {
  if (change.kind == Change::Kind::times) {
    if (amount.amount) *amount.amount *= change.figure;
    if (!amount.amount && change.figure != 0)
      return fault(fmt::format("there is no amount of {} to change", amount.stuff),
                   "set it first, as in \"set it to 12 g\"");
    return true;
  }
  if (change.kind == Change::Kind::set) {
    amount.amount = change.figure;
    amount.unit = change.unit;
    return true;
  }
  if (amount.amount && amount.unit != change.unit)
    return fault(fmt::format("the {} is told in {}, not in {}", amount.stuff, amount.unit, change.unit),
                 "say it in the same, or as a share");
  const double sum = amount.amount.value_or(0) + change.figure;
  if (sum < 0)
    return fault(fmt::format("there is not so much {} to take away", amount.stuff), "take away less, or leave it out");
  amount.amount = sum;
  amount.unit = change.unit;
  return true;
}

}  // namespace

Outcome<std::vector<TrialAmount>> changed(std::vector<TrialAmount> amounts, const std::vector<Change>& changes) {
  for (const Change& change : changes) {
    if (change.stuff.empty()) {
      for (TrialAmount& one : amounts) {
        if (!one.amount) continue;
        if (auto done = apply(one, change); !done) return tl::unexpected(done.error());
      }
      continue;
    }
    auto at =
        std::find_if(amounts.begin(), amounts.end(), [&](const TrialAmount& one) { return one.stuff == change.stuff; });
    if (change.kind == Change::Kind::times && change.figure == 0) {
      if (at != amounts.end()) amounts.erase(at);
      continue;
    }
    if (at == amounts.end()) at = amounts.insert(amounts.end(), {change.stuff, std::nullopt, change.unit});
    if (auto done = apply(*at, change); !done) return tl::unexpected(done.error());
  }
  return amounts;
}

}  // namespace gallipot
