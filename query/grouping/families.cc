// One pass over the shelf, groups by name, groups put together, each described.
#include "query/grouping/families.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "query/grouping/dish_name.h"
#include "query/grouping/earlier.h"
#include "query/grouping/family_parts.h"

namespace gallipot {
namespace {

using families::Group;
using families::Member;

int text_year(const Shelf& shelf, const std::string& book) {
  const Book* found = shelf.book(book);
  const auto years = found == nullptr ? std::nullopt : years_of_text(*found);
  return years ? years->first : 0;
}

/// What a recipe calls for, each stuff once with its amounts summed; counts are no amounts here.
std::vector<families::Called> calls_of(const ComparableRecipe& recipe, families::StuffNames& names) {
  std::map<std::uint32_t, float> amounts;
  for (const auto& item : recipe.ingredients) {
    if (item.printed.name.empty()) continue;
    float& amount = amounts.try_emplace(names.number_of(item.printed.name), -1.0F).first->second;
    if (item.metric && item.metric->unit != Amount::Unit::count)
      amount = std::max(amount, 0.0F) + static_cast<float>(item.metric->likely);
  }
  std::vector<families::Called> out;
  for (const auto& [stuff, amount] : amounts) out.push_back({stuff, amount});
  return out;
}

std::string family_of_kind(const std::string& kind, const Lexicon& lexicon) {
  std::uint32_t value = 0;
  return lexicon.dish_kind_phrases().find(kind, value) ? lexicon.dish_kinds()[value].family : std::string();
}

void add(std::map<std::string, Group>& groups, const ComparableRecipe& recipe, const std::string& key, int year,
         const Lexicon& lexicon, families::StuffNames& names) {
  Group& group = groups[key];
  if (group.members.empty()) {
    group.key = key;
    group.kind = recipe.dish.kind;
    group.family = family_of_kind(group.kind, lexicon);
    if (!key.starts_with('|')) group.base = recipe.dish.base;
  }
  Member member{recipe.id, plain_title(recipe.recipe), recipe.book_order, year, calls_of(recipe, names)};
  for (const auto& called : member.calls)
    if (names.name(called.stuff) != group.base) group.stuff[names.name(called.stuff)] += 1;
  std::set<std::string_view> operations;
  for (const auto& step : recipe.steps) operations.insert(step.op);
  for (const auto operation : operations) group.method[std::string(operation)] += 1;
  group.members.push_back(std::move(member));
}

std::vector<NameUsed> names_of(const std::vector<Member>& members) {
  std::map<std::string, std::size_t> counts;
  for (const Member& member : members)
    if (!member.title.empty()) ++counts[member.title];
  std::vector<NameUsed> out;
  for (const auto& [name, count] : counts) out.push_back({name, count});
  std::stable_sort(out.begin(), out.end(), [](const NameUsed& a, const NameUsed& b) {
    return std::tuple(b.recipes, a.name.size()) < std::tuple(a.recipes, b.name.size());
  });
  return out;
}

/// The commonest name that is no instruction ("to preserve quinces"), else the commonest.
std::string name_of(const std::vector<NameUsed>& names, const std::string& key) {
  const auto noun =
      std::find_if(names.begin(), names.end(), [](const NameUsed& n) { return !n.name.starts_with("to "); });
  return noun != names.end() ? noun->name : names.empty() ? key : names.front().name;
}

Family described(Group& group, const families::StuffNames& names) {
  const auto key = [](const Member& m) {
    constexpr int undated = 10'000;
    return std::tuple(m.year == 0 ? undated : m.year, m.book, std::string_view(m.id));
  };
  std::sort(group.members.begin(), group.members.end(),
            [&](const Member& a, const Member& b) { return key(a) < key(b); });
  Family out;
  out.names = names_of(group.members);
  out.name = name_of(out.names, group.key);
  std::set<std::uint32_t> books;
  for (const Member& member : group.members) {
    out.recipes.push_back(member.id);
    books.insert(member.book);
    if (member.year == 0) continue;
    out.first = std::min(out.first.value_or(member.year), member.year);
    out.last = std::max(out.last.value_or(member.year), member.year);
  }
  out.books = books.size();
  out.most_variable = families::most_variable(group.members, names);
  return out;
}

/// Whether one of the family's names has all these stems.
bool is_named(const Family& family, const std::vector<std::string>& stems, Telling& telling) {
  return std::any_of(family.names.begin(), family.names.end(), [&](const NameUsed& used) {
    const auto has = telling.stems_of(used.name);
    return std::all_of(stems.begin(), stems.end(),
                       [&](const std::string& stem) { return std::find(has.begin(), has.end(), stem) != has.end(); });
  });
}

void in_order(std::vector<Family>& all) {
  std::sort(all.begin(), all.end(), [](const Family& a, const Family& b) {
    return std::tuple(b.books, b.recipes.size(), std::string_view(a.name)) <
           std::tuple(a.books, a.recipes.size(), std::string_view(b.name));
  });
}

}  // namespace

Outcome<Families> families_of(const Shelf& shelf, const Lexicon& lexicon, const std::string& dish) {
  Telling telling(shelf, lexicon);
  families::StuffNames names;
  std::map<std::string, Group> groups;
  std::map<std::string, int> years;
  for (const Book& book : shelf.books()) years[book.id] = text_year(shelf, book.id);
  Families out;
  const auto read = shelf.each([&](const ComparableRecipe& recipe) {
    ++out.recipes;
    const std::string key = dish_key(recipe, lexicon, telling);
    if (key.empty())
      ++out.alone;
    else
      add(groups, recipe, key, years[recipe.book], lexicon, names);
    return true;
  });
  if (!read) return tl::unexpected(read.error());
  families::merge_alike(groups, telling);
  const auto stems = telling.stems_of(dish);
  for (auto& [key, group] : groups) {
    if (group.members.size() < 2) ++out.alone;
    if (group.members.size() < 2 && dish.empty()) continue;
    Family family = described(group, names);
    if (stems.empty() ? dish.empty() : is_named(family, stems, telling)) out.families.push_back(std::move(family));
  }
  in_order(out.families);
  return out;
}

}  // namespace gallipot
