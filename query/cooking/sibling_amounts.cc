// What siblings use of what the recipe leaves to taste: their proportions, brought to this batch.
#include <algorithm>

#include "indexer/measures/amount.h"
#include "query/comparing/statistics.h"
#include "query/cooking/gaps.h"

namespace gallipot {
namespace {

constexpr double widest_use = 6;  // siblings that lie further apart tell a cook nothing

/// The place of a sibling by its id; the number of siblings where it is none.
std::size_t place_of_sibling(const std::vector<ComparableRecipe>& siblings, const std::string& id) {
  return static_cast<std::size_t>(
      std::find_if(siblings.begin(), siblings.end(), [&](const ComparableRecipe& s) { return s.id == id; }) -
      siblings.begin());
}

/// The middle of what the cells say per basis, in the commoner unit; nothing where fewer than three say.
std::optional<Consensus> middle_of(const Row& row, const Comparison& comparison,
                                   const std::vector<ComparableRecipe>& siblings) {
  if (!row.median) return std::nullopt;
  Consensus out;
  std::vector<double> figures;
  for (std::size_t w = 0; w < row.cells.size(); ++w) {
    const Cell& cell = row.cells[w];
    const std::size_t sibling = place_of_sibling(siblings, comparison.witnesses[w].recipe.id);
    if (sibling == siblings.size() || !cell.per_basis || cell.per_basis->unit != row.median->unit) continue;
    figures.push_back(cell.per_basis->likely);
    out.by.push_back({sibling, cell.printed});
  }
  if (figures.size() < fewest_speakers) return std::nullopt;
  const Quartiles q = quartiles(figures);
  const auto [least, most] = std::minmax_element(figures.begin(), figures.end());
  if (row.median->unit == Amount::Unit::count) return std::nullopt;
  const bool few = figures.size() < 4;
  out.amount = {row.median->unit, few ? *least : q.lower, q.median, few ? *most : q.upper, "as siblings use it"};
  if (out.amount.high > widest_use * out.amount.low) return std::nullopt;
  out.asked = siblings.size();
  return out;
}

}  // namespace

void ask_siblings_for_amounts(const ComparableRecipe& recipe, const Book& book,
                              const std::vector<ComparableRecipe>& siblings, const std::vector<Book>& sibling_books,
                              const Yardstick& yardstick, std::vector<SheetLine>& lines) {
  if (siblings.size() < fewest_speakers) return;
  std::vector<ComparableRecipe> all = siblings;
  std::vector<Book> books = sibling_books;
  all.push_back(recipe);
  books.push_back(book);
  const auto comparison = compare(std::move(all), books, yardstick);
  if (!comparison || comparison->per <= 0) return;
  const auto own = std::find_if(comparison->witnesses.begin(), comparison->witnesses.end(),
                                [&](const auto& w) { return w.recipe.id == recipe.id; });
  if (own == comparison->witnesses.end() || !own->basis || own->basis->unit != comparison->per_unit) return;
  for (SheetLine& line : lines) {
    if (line.amount || line.rate || line.quantified) continue;
    const std::string& name = yardstick.stuff(line.name);
    for (const Row& row : comparison->rows) {
      if (row.name != name) continue;
      line.siblings = middle_of(row, *comparison, siblings);
      if (line.siblings) {
        const std::string why = line.siblings->amount.why;
        line.siblings->amount = chained(line.siblings->amount, times(*own->basis, 1 / comparison->per));
        line.siblings->amount.why = why;
      }
    }
  }
}

}  // namespace gallipot
