// Lays recipes side by side: witnesses in order, rows of stuffs brought to a basis, rows of steps aligned.
#include "query/comparing/compare.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <set>

#include "query/comparing/basis.h"
#include "query/comparing/batch.h"
#include "query/comparing/findings.h"
#include "query/comparing/holdings.h"
#include "query/comparing/methods.h"
#include "query/comparing/statistics.h"
#include "query/comparing/surroundings.h"

namespace gallipot {
namespace {

/// A, B ... Z, AA, AB ...
std::string siglum(std::size_t n) {
  std::string out;
  for (++n; n > 0; n = (n - 1) / 26) out.insert(out.begin(), static_cast<char>('A' + (n - 1) % 26));
  return out;
}

std::vector<Witness> ordered(std::vector<ComparableRecipe> recipes, const std::vector<Book>& books) {
  std::vector<std::size_t> order(recipes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const auto key = [&](std::size_t i) { return recipes[i].year > 0 ? recipes[i].year : 9999; };
    return key(a) != key(b) ? key(a) < key(b) : recipes[a].id < recipes[b].id;
  });
  std::vector<Witness> out;
  for (const std::size_t i : order) {
    Witness witness;
    witness.siglum = siglum(out.size());
    witness.citation = cite(recipes[i], books[i]);
    witness.recipe = std::move(recipes[i]);
    out.push_back(std::move(witness));
  }
  return out;
}

/// "walnut catsup": the base and the kind of dish that half of the witnesses share; the first one's title where they
/// share neither or it stands alone.
std::string common_dish(const std::vector<Witness>& witnesses) {
  if (witnesses.size() == 1) return witnesses.front().recipe.recipe.title;
  const auto commonest = [&](std::string Dish::*part) {
    std::map<std::string, std::size_t> counts;
    for (const Witness& witness : witnesses)
      if (!(witness.recipe.dish.*part).empty()) ++counts[witness.recipe.dish.*part];
    const auto best =
        std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    return best == counts.end() || best->second * 2 < witnesses.size() ? std::string() : best->first;
  };
  const std::string base = commonest(&Dish::base), kind = commonest(&Dish::kind);
  if (base.empty() && kind.empty()) return witnesses.front().recipe.recipe.title;
  return base + (base.empty() || kind.empty() ? "" : " ") + kind;
}

/// What half of the witnesses are named for, and its kind as any of them lists it.
Subject common_subject(const std::vector<Witness>& witnesses, const Yardstick& yardstick) {
  std::map<std::string, std::size_t> counts;
  for (const Witness& witness : witnesses)
    if (!witness.recipe.dish.base.empty()) ++counts[yardstick.stuff(witness.recipe.dish.base)];
  Subject out;
  for (const auto& [base, count] : counts)
    if (count * 2 >= witnesses.size()) out.stuff = base;
  for (const Witness& witness : witnesses)
    for (const ComparableIngredient& ingredient : witness.recipe.ingredients)
      if (ingredient.printed.name == out.stuff) out.kind = ingredient.kind;
  return out;
}

Cell cell_of(const ComparableRecipe& recipe, const std::vector<Holding>& holdings, std::size_t h, const Basis& basis) {
  const Holding& holding = holdings[h];
  Cell cell;
  cell.present = true;
  for (const std::size_t i : holding.mentions) {
    if (!cell.printed.empty()) cell.printed += "; ";
    cell.printed += recipe.ingredients[i].printed.span.in(recipe.recipe.text);
  }
  cell.amount = total_of(holdings, h);
  cell.per_basis = brought_to(holdings, h, basis);
  if (tells_its_batch(holdings)) cell.of_batch = share_of_batch(holdings, h, 1000);
  cell.how = holding.tie ? holding.tie->how : holding.how;
  cell.more = holding.more;
  cell.optional = holding.optional;
  cell.alternative_of = holding.alternative_of;
  return cell;
}

/// Quartiles over the unit in which most witnesses have the stuff; amounts in another unit are shown but not counted.
void summarize(Row& row) {
  std::array<std::vector<double>, 3> by_unit;
  for (const Cell& cell : row.cells)
    if (cell.per_basis) by_unit[static_cast<std::size_t>(cell.per_basis->unit)].push_back(cell.per_basis->likely);
  const auto most = std::max_element(by_unit.begin(), by_unit.end(),
                                     [](const auto& a, const auto& b) { return a.size() < b.size(); });
  row.measured = most->size();
  if (most->empty()) return;
  const Quartiles q = quartiles(*most);
  const auto [least, largest] = std::minmax_element(most->begin(), most->end());
  row.least = *least;
  row.most = *largest;
  row.spread = most->size() < 3 ? 0 : robust_factor(*most);
  row.median = Amount{static_cast<Amount::Unit>(most - by_unit.begin()), q.lower, q.median, q.upper,
                      fmt::format("median and quartiles of {}", most->size())};
}

/// Notes the names, other than the row's own, under which a witness has the stuff.
void add_sorts(Row& row, const ComparableRecipe& recipe, const Holding& holding, std::size_t witness) {
  for (const std::size_t i : holding.mentions) {
    const std::string& name = recipe.ingredients[i].printed.name;
    if (name == row.name) continue;
    auto at = std::find_if(row.sorts.begin(), row.sorts.end(), [&](const Sort& sort) { return sort.name == name; });
    if (at == row.sorts.end()) at = row.sorts.insert(row.sorts.end(), Sort{name, {}});
    if (at->witnesses.empty() || at->witnesses.back() != witness) at->witnesses.push_back(witness);
  }
}

/// The basis by itself is a figure for a witness only where it tells how much, or tells another stuff by it.
void only_where_told(Row& basis, const std::vector<Row>& rows, const std::vector<Witness>& witnesses) {
  for (std::size_t w = 0; w < basis.cells.size(); ++w) {
    const bool told = witnesses[w].basis || std::any_of(rows.begin(), rows.end(), [&](const Row& row) {
                        return &row != &basis && row.cells[w].per_basis.has_value();
                      });
    if (!told) basis.cells[w].per_basis.reset();
  }
}

/// "To each gallon of vinegar allow ...": a stuff by which others are told is in the recipe, though it is not listed.
/// Shown where another witness lists it.
void add_what_is_only_told_by(std::vector<Row>& rows, const std::map<std::string, std::size_t>& place,
                              const std::vector<Witness>& witnesses, const std::vector<std::vector<Holding>>& holdings,
                              const Basis& basis) {
  for (std::size_t w = 0; w < witnesses.size(); ++w)
    for (std::size_t h = 0; h < holdings[w].size(); ++h) {
      const auto at = place.find(holdings[w][h].name);
      if (!holdings[w][h].mentions.empty() || at == place.end() || rows[at->second].cells[w].present) continue;
      const auto by = std::find_if(holdings[w].begin(), holdings[w].end(),
                                   [&](const Holding& one) { return one.tie && one.tie->to == h; });
      if (by == holdings[w].end()) continue;
      Cell& cell = rows[at->second].cells[w];
      cell = cell_of(witnesses[w].recipe, holdings[w], h, basis);
      cell.printed = by->tie->how;
      ++rows[at->second].witnesses;
    }
}

std::vector<Row> rows_of(const std::vector<Witness>& witnesses, const std::vector<std::vector<Holding>>& holdings,
                         const Basis& basis) {
  std::map<std::string, std::size_t> place;
  std::vector<Row> rows;
  for (std::size_t w = 0; w < witnesses.size(); ++w) {
    for (std::size_t h = 0; h < holdings[w].size(); ++h) {
      const Holding& holding = holdings[w][h];
      if (holding.mentions.empty()) continue;
      const auto [at, added] = place.try_emplace(holding.name, rows.size());
      if (added) {
        rows.emplace_back();
        rows.back().name = holding.name;
        rows.back().cells.resize(witnesses.size());
      }
      Row& row = rows[at->second];
      row.cells[w] = cell_of(witnesses[w].recipe, holdings[w], h, basis);
      ++row.witnesses;
      add_sorts(row, witnesses[w].recipe, holding, w);
    }
  }
  add_what_is_only_told_by(rows, place, witnesses, holdings, basis);
  for (Row& row : rows)
    if (row.name == basis.name) only_where_told(row, rows, witnesses);
  for (Row& row : rows) summarize(row);
  std::stable_sort(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    if ((a.name == basis.name) != (b.name == basis.name)) return a.name == basis.name;
    if (a.witnesses != b.witnesses) return a.witnesses > b.witnesses;
    const double of_a = a.median ? a.median->likely : 0, of_b = b.median ? b.median->likely : 0;
    return of_a > of_b;
  });
  return rows;
}

/// Asks what the rest of the shelf has of each stuff of which a share of the batch is known here.
void look_around(Comparison& comparison, const Surroundings& surroundings) {
  for (Row& row : comparison.rows) {
    std::array<std::size_t, 3> by_unit{};
    for (const Cell& cell : row.cells)
      if (cell.of_batch) ++by_unit[static_cast<std::size_t>(cell.of_batch->unit)];
    const auto most = std::max_element(by_unit.begin(), by_unit.end());
    if (*most > 0) row.elsewhere = surroundings(row.name, static_cast<Amount::Unit>(most - by_unit.begin()));
  }
}

std::optional<Fault> doubled(const std::vector<std::string>& ids) {
  std::set<std::string_view> seen;
  for (const std::string& id : ids)
    if (!seen.insert(id).second) return Fault{"the recipe " + id + " is named twice", {}, 0, "name each recipe once"};
  return std::nullopt;
}

}  // namespace

Outcome<Comparison> compare(std::vector<ComparableRecipe> recipes, const std::vector<Book>& books,
                            const Yardstick& yardstick, const std::string& basis, const Surroundings& surroundings) {
  if (recipes.empty()) return fault("there is no recipe to compare", "name one recipe or more");
  std::vector<std::string> ids;
  for (const ComparableRecipe& recipe : recipes) ids.push_back(recipe.id);
  if (auto twice = doubled(ids)) return tl::unexpected(std::move(*twice));

  Comparison out;
  out.witnesses = ordered(std::move(recipes), books);
  out.dish = common_dish(out.witnesses);
  std::vector<std::vector<Holding>> holdings;
  const Subject subject = common_subject(out.witnesses, yardstick);
  for (Witness& witness : out.witnesses) {
    holdings.push_back(holdings_of(witness.recipe, yardstick, subject));
    for (Step& step : witness.recipe.steps)
      if (step.minutes && !yardstick.can_last(step.op, *step.minutes)) step.minutes.reset();
  }

  Basis chosen;
  if (basis.empty()) {
    chosen = choose_basis(out.witnesses, holdings, yardstick);
  } else {
    auto named = named_basis(basis, holdings, yardstick);
    if (!named) return tl::unexpected(named.error());
    chosen = std::move(*named);
  }
  out.basis = chosen.name;
  out.basis_why = chosen.why;
  out.per = chosen.per;
  out.per_unit = chosen.unit;
  for (std::size_t w = 0; w < out.witnesses.size(); ++w) out.witnesses[w].basis = basis_amount(holdings[w], chosen);
  out.rows = rows_of(out.witnesses, holdings, chosen);
  if (surroundings) look_around(out, surroundings);
  for (Row& row : out.rows) mark_out_of_line(out, row);
  out.methods = methods_told(out.witnesses);
  out.steps = align_methods(out.witnesses, yardstick);
  out.conflicts = conflicts_of(out.steps);
  out.contrasts = contrasts_of(out);
  out.trends = trends_of(out);
  for (std::size_t w = 0; w < out.witnesses.size(); ++w) out.witnesses[w].apart = apart_of(out, yardstick, w);
  out.notes = findings(out, yardstick);
  return out;
}

Outcome<Comparison> compare(const Shelf& shelf, const std::vector<std::string>& ids, const Yardstick& yardstick,
                            const std::string& basis) {
  if (auto twice = doubled(ids)) return tl::unexpected(std::move(*twice));
  std::vector<ComparableRecipe> recipes;
  std::vector<Book> books;
  for (const std::string& id : ids) {
    auto recipe = shelf.recipe(id);
    if (!recipe) return tl::unexpected(recipe.error());
    const Book* book = shelf.book(recipe->book);
    if (book == nullptr) return fault("the index has the recipe " + id + " but not its book", "index the shelf again");
    books.push_back(*book);
    recipes.push_back(std::move(*recipe));
  }
  return compare(std::move(recipes), books, yardstick, basis,
                 surroundings_on(shelf, yardstick, {ids.begin(), ids.end()}));
}

}  // namespace gallipot
