// Groups that are one dish under several names.
#include <algorithm>
#include <cmath>

#include "indexer/storing/schema.h"
#include "query/grouping/family_parts.h"

namespace gallipot::families {
namespace {

// A cook calls two names one dish where nearly all that matters is the same. By eye on the merges of a shelf of
// seventeen thousand recipes; lower puts jams to jellies and fried to boiled.
constexpr double least_stuff = 0.7, least_method = 0.7;
constexpr std::size_t least_shared = 2;  // stuffs beside the base

/// Cosine of the shares of members that have each, by rarity under `prefix`.
double likeness(const Weights& a, double of_a, const Weights& b, double of_b, std::string_view prefix, Telling& telling,
                std::size_t& shared) {
  double dot = 0, aa = 0, bb = 0;
  shared = 0;
  for (const auto& [name, count] : a) {
    const double rarity = telling.rarity(prefix, name), x = rarity * count / of_a;
    aa += x * x;
    if (const auto at = b.find(name); at != b.end()) {
      dot += x * rarity * at->second / of_b;
      ++shared;
    }
  }
  for (const auto& [name, count] : b) {
    const double y = telling.rarity(prefix, name) * count / of_b;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? dot / std::sqrt(aa * bb) : 0;
}

bool alike(const Group& a, const Group& b, Telling& telling) {
  const auto of_a = static_cast<double>(a.members.size()), of_b = static_cast<double>(b.members.size());
  std::size_t shared = 0, operations = 0;
  return likeness(a.stuff, of_a, b.stuff, of_b, schema::ingredient, telling, shared) >= least_stuff &&
         shared >= least_shared &&
         likeness(a.method, of_a, b.method, of_b, schema::operation, telling, operations) >= least_method;
}

void take_in(Group& into, Group& from) {
  std::move(from.members.begin(), from.members.end(), std::back_inserter(into.members));
  from.members.clear();
}

}  // namespace

void merge_alike(std::map<std::string, Group>& groups, Telling& telling) {
  std::map<std::pair<std::string, std::string>, std::vector<Group*>> by_base;
  for (auto& [key, group] : groups)
    if (!group.base.empty() && !group.family.empty()) by_base[{group.base, group.family}].push_back(&group);
  for (auto& [base, all] : by_base) {
    std::stable_sort(all.begin(), all.end(),
                     [](const Group* a, const Group* b) { return a->members.size() > b->members.size(); });
    // Judged by the groups as they were, so that what is put together does not hang on the order of putting.
    std::vector<Group*> heads;
    std::vector<std::pair<Group*, Group*>> merges;
    for (Group* group : all) {
      const auto head =
          std::find_if(heads.begin(), heads.end(), [&](const Group* h) { return alike(*h, *group, telling); });
      if (head == heads.end())
        heads.push_back(group);
      else
        merges.emplace_back(*head, group);
    }
    for (const auto& [head, group] : merges) take_in(*head, *group);
  }
  std::erase_if(groups, [](const auto& entry) { return entry.second.members.empty(); });
}

}  // namespace gallipot::families
