// Rows to numbers. A number that is none, or an interval out of order, is a fault of its file and line.
#include "indexer/measures/measure_tables.h"

#include <algorithm>
#include <charconv>
#include <unordered_set>

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
    if (!fault_)
      fault_ =
          Fault{std::move(what), row_ ? table_.file_of(*row_) : table_.file, row_ ? row_->line : 1, std::move(mend)};
  }
  /// Whether the row stands in the user's own table.
  bool own() const { return row_->own; }
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

/// What household and legal measures have in common: of which stuffs, where and when.
Held read_place(Cells& c) {
  Held h;
  for (auto& of : c.list("for"))
    if (!of.empty()) h.of.push_back(std::move(of));
  if (c.text("country") != "*") h.country = c.list("country");
  h.period = {c.year("from"), c.year("to")};
  h.why = c.text("why");
  h.source = c.text("source");
  return h;
}

Held read_unit(Cells& c) {
  Held h = read_place(c);
  const auto unit = c.text("unit");
  if (unit == "g")
    h.unit = Amount::Unit::gram;
  else if (unit == "ml")
    h.unit = Amount::Unit::millilitre;
  else if (unit == "count")
    h.unit = Amount::Unit::count;
  else
    c.wrong("\"" + std::string(unit) + "\" is not a unit", "write g, ml or count");
  h.extent = c.extent();
  return h;
}

Held read_household(Cells& c) {
  Held h = read_place(c);
  h.household = true;
  return h;
}

Witnessed read_witness(Cells& c) {
  Witnessed w;
  w.measure = c.text("measure");
  w.of = c.text("of");
  w.country = c.text("country");
  w.year = c.year("year");
  w.low = c.number("low");
  w.high = c.number("high");
  w.unit = c.text("unit");
  w.source = c.text("source");
  if (!(0 < w.low && w.low <= w.high)) c.wrong("low and high are not positive and in order", "write the lesser first");
  return w;
}

StuffClass read_class(Cells& c) {
  const auto name = c.text("class");
  if (name == "dry") return StuffClass::dry;
  if (name == "heap") return StuffClass::heap;
  if (name == "thick") return StuffClass::thick;
  if (name == "liquid") return StuffClass::liquid;
  if (name == "ale") return StuffClass::ale;
  c.wrong("\"" + std::string(name) + "\" is not a class of stuff", "write dry, heap, thick, liquid or ale");
  return StuffClass::unknown;
}

std::string under(Cells& c, const char* one, const char* other) {
  return std::string(c.text(one)) + "/" + std::string(c.text(other));
}

}  // namespace

bool Held::names(std::string_view word) const { return std::find(of.begin(), of.end(), word) != of.end(); }

bool Held::may_be_in(std::string_view a_country) const {
  return country.empty() || a_country.empty() || std::find(country.begin(), country.end(), a_country) != country.end();
}

const Stuff& MeasureTables::stuff(std::string_view name) const {
  static const Stuff unknown;
  const auto at = stuffs.find(name);
  return at == stuffs.end() ? unknown : at->second;
}

Outcome<MeasureTables> load_measure_tables(const std::string& overlay_folder) {
  MeasureTables t;
  std::unordered_set<std::string> own;  // what the user's own table lays down needs no witnesses
  auto read = each_row("units", overlay_folder, [&](Cells& c) {
    t.held[std::string(c.text("measure"))].push_back(read_unit(c));
    if (c.own()) own.emplace(c.text("measure"));
  });
  if (read)
    read = each_row("households", overlay_folder, [&](Cells& c) {
      std::string measure(c.text("measure"));
      if (!own.contains(measure)) t.held[std::move(measure)].push_back(read_household(c));
    });
  if (read) read = each_row("witnesses", overlay_folder, [&](Cells& c) { t.witnesses.push_back(read_witness(c)); });
  if (read)
    read = each_row("densities", overlay_folder, [&](Cells& c) {
      t.stuffs[std::string(c.text("stuff"))] = {read_class(c), c.extent(), std::string(c.text("source"))};
    });
  if (read)
    read = each_row("counted", overlay_folder, [&](Cells& c) {
      t.counted[under(c, "stuff", "measure")].push_back(
          {{c.year("from"), c.year("to")}, c.extent(), std::string(c.text("why")), std::string(c.text("source"))});
    });
  if (read)
    read = each_row("eaten", overlay_folder, [&](Cells& c) { t.eaten[std::string(c.text("stuff"))] = c.extent(); });
  if (read)
    read = each_row("bends", overlay_folder, [&](Cells& c) {
      t.bends[under(c, "note", "measure")] = {c.extent(), std::string(c.text("source"))};
    });
  if (!read) return tl::unexpected(read.error());
  return t;
}

}  // namespace gallipot::measuring
