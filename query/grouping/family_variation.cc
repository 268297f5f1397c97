// In what do the recipes of a family differ most?
#include <algorithm>
#include <cmath>
#include <map>

#include "query/grouping/family_parts.h"

namespace gallipot::families {

std::uint32_t StuffNames::number_of(const std::string& name) {
  const auto [at, is_new] = numbers_.try_emplace(name, static_cast<std::uint32_t>(names_.size()));
  if (is_new) names_.push_back(name);
  return at->second;
}

namespace {

constexpr std::size_t fewest_members = 4, fewest_amounts = 4;

struct Uses {
  std::size_t have = 0;
  std::vector<double> shares;  ///< of the batch, where both are told
};

std::map<std::uint32_t, Uses> uses_of(const std::vector<Member>& members) {
  std::map<std::uint32_t, Uses> out;
  for (const Member& member : members) {
    double batch = 0;
    std::size_t told = 0;
    for (const Called& called : member.calls)
      if (called.amount > 0) {
        batch += static_cast<double>(called.amount);
        ++told;
      }
    for (const Called& called : member.calls) {
      Uses& uses = out[called.stuff];
      ++uses.have;
      if (called.amount > 0 && told > 1) uses.shares.push_back(static_cast<double>(called.amount) / batch);
    }
  }
  return out;
}

/// The value at `part` of the way through sorted values (Hyndman and Fan 1996, definition 7).
double quantile_of(const std::vector<double>& sorted, double part) {
  const double at = part * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (at - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

}  // namespace

std::optional<MostVariable> most_variable(const std::vector<Member>& members, const StuffNames& names) {
  if (members.size() < fewest_members) return std::nullopt;
  std::optional<MostVariable> by_amount, by_presence;
  double widest = 0, evenest = 0;
  const auto all = static_cast<double>(members.size());
  for (auto& [stuff, uses] : uses_of(members)) {
    const std::string& name = names.name(stuff);
    if (uses.shares.size() >= std::max(fewest_amounts, members.size() / 3)) {
      std::sort(uses.shares.begin(), uses.shares.end());
      const double lower = quantile_of(uses.shares, 0.25), upper = quantile_of(uses.shares, 0.75);
      const double width = std::log(upper / lower);
      if (width > widest) {
        widest = width;
        by_amount = MostVariable{name, uses.have, true, lower, upper};
      }
    }
    const double part = static_cast<double>(uses.have) / all, even = part * (1 - part);
    if (even > evenest) {
      evenest = even;
      by_presence = MostVariable{name, uses.have, false, 0, 0};
    }
  }
  return by_amount ? by_amount : by_presence;
}

}  // namespace gallipot::families
