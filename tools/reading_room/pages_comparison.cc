// The comparison of a set that the address names.
#include <fmt/format.h>

#include <algorithm>

#include "query/comparing/compare.h"
#include "query/reporting/comparison_page.h"
#include "query/reporting/report.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

constexpr std::size_t most_compared = 100;

/// Ids as they stand in the address: several fields, or one with several parted by spaces.
std::vector<std::string> ids_asked(const Request& request) {
  std::vector<std::string> out;
  for (const std::string& value : request.all_asked("id"))
    for (std::size_t at = 0; at < value.size();) {
      const std::size_t end = std::min(value.find_first_of(" ,", at), value.size());
      const std::string id = value.substr(at, end - at);
      if (!id.empty() && std::find(out.begin(), out.end(), id) == out.end()) out.push_back(id);
      at = end + 1;
    }
  return out;
}

}  // namespace

Outcome<Comparison> comparison_asked(const Visit& visit) {
  const auto ids = ids_asked(visit.request);
  if (ids.empty()) return fault("no recipe is named", "gather the variants of a dish first");
  if (ids.size() > most_compared)
    return fault(fmt::format("{} recipes are too many for one table", ids.size()), "take a hundred or fewer");
  return compare(visit.shelf(), ids, visit.reading->yardstick, visit.request.asked("basis"));
}

Outcome<Answer> comparison_page(const Visit& visit) {
  const auto comparison = comparison_asked(visit);
  if (!comparison) return tl::unexpected(comparison.error());
  Fields fields = fields_of(visit);
  Pairs same;
  for (const Witness& witness : comparison->witnesses) same.emplace_back("id", witness.recipe.id);
  std::vector<Fields> bases, ids;
  const auto offer = [&](const std::string& name) {
    Fields item;
    item.set("basis_name", name);
    item.set("basis_chosen", name == comparison->basis);
    bases.push_back(std::move(item));
  };
  offer("batch");
  offer("as printed");
  for (const Row& row : comparison->rows) offer(row.name);
  for (const auto& [name, id] : same) {
    Fields item;
    item.set("id", id);
    ids.push_back(std::move(item));
  }
  set_list(fields, "bases", bases);
  set_list(fields, "ids", ids);
  fields.set("dish", comparison->dish);
  fields.set("body", comparison_body(*comparison, [](const std::string& id) {
               return address("/recipe", {{"id", id}});
             }));
  Pairs query = same;
  query.emplace_back("basis", visit.request.asked("basis"));
  fields.set("csv", address("/comparison.csv", query));
  return page(visit, comparison->dish + ": compared", "search", "room_comparison", std::move(fields), "comparison.css");
}

Outcome<Answer> comparison_csv(const Visit& visit) {
  const auto comparison = comparison_asked(visit);
  if (!comparison) return tl::unexpected(comparison.error());
  return file_answer("text/csv; charset=utf-8", comparison_as_csv(*comparison), "comparison.csv");
}

}  // namespace gallipot::room
