// Fills the lexicon from its tables.
#include "indexer/lexicon/lexicon.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

// FNV-1a, 64 bits (Fowler, Noll and Vo): enough to tell that a table changed.
class Digest {
 public:
  void take(const Table& table) {
    for (const auto& row : table.rows)
      for (const auto cell : row.cells) {
        for (const char c : cell) mix(static_cast<unsigned char>(c));
        mix(0);
      }
  }
  std::string text() const { return fmt::format("{:016x}", state_); }

 private:
  void mix(unsigned char c) { state_ = (state_ ^ c) * 0x100000001B3ULL; }
  std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

// Rows in the order in which they may claim a form: the user's own come first.
std::vector<const Table::Row*> by_claim(const Table& table) {
  std::vector<const Table::Row*> out;
  for (const auto& row : table.rows)
    if (row.own) out.push_back(&row);
  for (const auto& row : table.rows)
    if (!row.own) out.push_back(&row);
  return out;
}

Outcome<Table> load_with(const std::string& name, const std::string& overlay, std::initializer_list<std::string_view> need,
                         Digest& digest) {
  auto table = load_table(name, overlay);
  if (!table) return table;
  for (const auto wanted : need)
    if (table->column(wanted) < 0)
      return fault(fmt::format("the table has no column \"{}\"", wanted), "add it to the heading line and to every row",
                   table->file);
  for (const auto& row : table->rows)
    if (row.cells[0].empty())
      return fault("this row has an empty first cell", "name the thing that the row is about", table->file_of(row), row.line);
  digest.take(*table);
  return table;
}

// Reads one table whose rows are things with a name and other forms: `make` turns a row into the thing; its name (the
// first cell, where `names` asks for it) and forms then lead to its place in `things`.
template <typename Thing, typename Make>
void fill(const Table& table, std::vector<Thing>& things, Phrases& phrases, Phrases* names, Make make) {
  const auto rows = by_claim(table);
  for (const auto* row : rows) {
    things.push_back(make(*row));
    const auto value = static_cast<std::uint32_t>(things.size() - 1);
    if (names) {
      names->add(row->cells[0], value);
      phrases.add(row->cells[0], value);
    }
  }
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (const auto form : parts_of(table.cell(*rows[i], "forms"))) phrases.add(form, static_cast<std::uint32_t>(i));
}

}  // namespace

Outcome<std::shared_ptr<const Lexicon>> Lexicon::load(const std::string& overlay_folder) {
  auto out = std::make_shared<Lexicon>();
  Digest digest;
  const auto text = [](std::string_view s) { return std::string(s); };

  const auto foods = load_with("foodstuffs", overlay_folder, {"name", "kind", "base", "weak", "forms"}, digest);
  if (!foods) return tl::unexpected(foods.error());
  fill(*foods, out->foodstuffs_, out->foodstuff_phrases_, &out->foodstuff_names_, [&](const Table::Row& r) {
    return Foodstuff{text(foods->cell(r, "name")), text(foods->cell(r, "kind")), text(foods->cell(r, "base")),
                     foods->cell(r, "weak") == "1"};
  });

  const auto measures = load_with("measure-words", overlay_folder, {"name", "kind", "forms"}, digest);
  if (!measures) return tl::unexpected(measures.error());
  fill(*measures, out->measures_, out->measure_phrases_, &out->measure_names_, [&](const Table::Row& r) {
    return MeasureWord{text(measures->cell(r, "name")), text(measures->cell(r, "kind"))};
  });

  const auto operations = load_with("operations", overlay_folder, {"op", "form", "forms"}, digest);
  if (!operations) return tl::unexpected(operations.error());
  fill(*operations, out->operations_, out->operation_phrases_, nullptr, [&](const Table::Row& r) {
    return OperationWord{text(operations->cell(r, "op")), text(operations->cell(r, "form"))};
  });

  const auto kinds = load_with("dish-kinds", overlay_folder, {"name", "family", "forms"}, digest);
  if (!kinds) return tl::unexpected(kinds.error());
  Phrases kind_names;
  fill(*kinds, out->dish_kinds_, out->dish_kind_phrases_, &kind_names, [&](const Table::Row& r) {
    return DishKind{text(kinds->cell(r, "name")), text(kinds->cell(r, "family"))};
  });

  out->fingerprint_ = digest.text();
  return std::shared_ptr<const Lexicon>(std::move(out));
}

const Foodstuff* Lexicon::foodstuff(std::string_view name) const {
  std::uint32_t i = 0;
  return foodstuff_names_.find(name, i) ? &foodstuffs_[i] : nullptr;
}

const MeasureWord* Lexicon::measure(std::string_view name) const {
  std::uint32_t i = 0;
  return measure_names_.find(name, i) ? &measures_[i] : nullptr;
}

}  // namespace gallipot
