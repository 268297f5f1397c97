// Rows to numbers. A number that is none, or an interval out of order, is a fault of its file and line.
#include "indexer/measures/measure_tables.h"

#include <charconv>

#include "indexer/lexicon/tables.h"

namespace gallipot::measuring {
namespace {

// Reads the cells of one table by column name; remembers the first thing wrong.
class Cells {
 public:
  explicit Cells(const Table& table) : table_(table) {}

  void at(const Table::Row& row) { row_ = &row; }
  std::string_view text(std::string_view column) {
    const int c = table_.column(column);
    if (c < 0) {
      wrong("the table lacks the column \"" + std::string(column) + "\"",
            "add it to the heading line and to every row");
      return {};
    }
    return row_->cells[static_cast<std::size_t>(c)];
  }
  double number(std::string_view column) {
    const std::string_view cell = text(column);
    double v = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), v);
    if (error != std::errc{} || end != cell.data() + cell.size())
      wrong("\"" + std::string(cell) + "\" in the column " + std::string(column) + " is not a number",
            "write a plain number");
    return v;
  }
  int year(std::string_view column) { return text(column).empty() ? 0 : static_cast<int>(number(column)); }
  Extent extent() {
    const Extent e{number("low"), number("likely"), number("high")};
    if (!(0 < e.low && e.low <= e.likely && e.likely <= e.high))
      wrong("low, likely and high are not positive and in order", "write them from the least to the greatest");
    return e;
  }
  std::vector<std::string> list(std::string_view column, char by = '|') {
    std::vector<std::string> out;
    for (const auto part : parts_of(text(column), by)) out.emplace_back(part);
    return out;
  }
  void wrong(std::string what, std::string mend) {
    if (!fault_) fault_ = Fault{std::move(what), table_.file, row_ ? row_->line : 1, std::move(mend)};
  }
  const std::optional<Fault>& fault() const { return fault_; }

 private:
  const Table& table_;
  const Table::Row* row_ = nullptr;
  std::optional<Fault> fault_;
};

// Goes through a table row by row; `take` reads one row.
template <typename Take>
Outcome<bool> each_row(const std::string& name, const std::string& overlay_folder, Take take) {
  const auto table = load_table(name, overlay_folder);
  if (!table) return tl::unexpected(table.error());
  Cells cells(*table);
  for (const auto& row : table->rows) {
    cells.at(row);
    take(cells);
    if (cells.fault()) return tl::unexpected(*cells.fault());
  }
  return true;
}

Unit read_unit(Cells& c) {
  Unit u;
  for (auto& of : c.list("for")) {
    if (of.empty())
      u.any_stuff = true;
    else
      u.of.push_back(std::move(of));
  }
  if (u.of.empty()) u.any_stuff = true;
  if (c.text("country") != "*") u.country = c.list("country");
  u.period = {c.year("from"), c.year("to")};
  const auto unit = c.text("unit");
  if (unit == "g")
    u.unit = Amount::Unit::gram;
  else if (unit == "ml")
    u.unit = Amount::Unit::millilitre;
  else if (unit == "count")
    u.unit = Amount::Unit::count;
  else
    c.wrong("\"" + std::string(unit) + "\" is not a unit", "write g, ml or count");
  u.extent = c.extent();
  u.why = c.text("why");
  return u;
}

StuffClass read_class(Cells& c) {
  const auto name = c.text("class");
  if (name == "dry") return StuffClass::dry;
  if (name == "thick") return StuffClass::thick;
  if (name == "liquid") return StuffClass::liquid;
  if (name == "ale") return StuffClass::ale;
  c.wrong("\"" + std::string(name) + "\" is not a class of stuff", "write dry, thick, liquid or ale");
  return StuffClass::unknown;
}

}  // namespace

Outcome<MeasureTables> load_measure_tables(const std::string& overlay_folder) {
  MeasureTables t;
  auto read = each_row("units", overlay_folder,
                       [&](Cells& c) { t.units[std::string(c.text("measure"))].push_back(read_unit(c)); });
  if (read)
    read = each_row("densities", overlay_folder, [&](Cells& c) {
      t.densities[std::string(c.text("stuff"))] = {read_class(c), c.extent()};
    });
  if (read)
    read = each_row("counted", overlay_folder, [&](Cells& c) {
      std::string key = std::string(c.text("stuff")) + "/" + std::string(c.text("measure"));
      t.counted[std::move(key)].push_back({{c.year("from"), c.year("to")}, c.extent(), std::string(c.text("why"))});
    });
  if (read)
    read = each_row("bends", overlay_folder, [&](Cells& c) {
      t.bends[std::string(c.text("note")) + "/" + std::string(c.text("measure"))] = c.extent();
    });
  if (!read) return tl::unexpected(read.error());
  return t;
}

}  // namespace gallipot::measuring
