// The cells of a row of the kitchen's tables, read with the fault kept. Internal to cooking.
#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "indexer/lexicon/tables.h"
#include "query/cooking/kitchen.h"

namespace gallipot::kitchen_tables {

class CellReader {
 public:
  CellReader(const Table& table, const Table::Row& row) : table_(table), row_(row) {}

  std::string_view text(std::string_view column) {
    if (table_.column(column) < 0) wrong(column, "a column of that name");
    return table_.cell(row_, column);
  }

  /// A figure; 0 where the cell is empty.
  double number(std::string_view column) { return figure(column, text(column)); }

  /// The columns low, likely and high.
  Figures figures() { return ordered("likely", {number("low"), number("likely"), number("high")}); }

  /// A cell of three figures, "4|5|6", or one; empty is nought.
  Figures three(std::string_view column) {
    const auto cell = text(column);
    if (cell.empty()) return {};
    const auto parts = parts_of(cell);
    if (parts.size() == 1) {
      const double one = figure(column, parts[0]);
      return {one, one, one};
    }
    if (parts.size() != 3) {
      wrong(column, "one figure or three: low|likely|high");
      return {};
    }
    return ordered(column, {figure(column, parts[0]), figure(column, parts[1]), figure(column, parts[2])});
  }

  void wrong(std::string_view column, std::string_view wants) {
    if (fault_) return;
    fault_ = Fault{
        "the cell \"" + std::string(table_.cell(row_, column)) + "\" under " + std::string(column) + " cannot be read",
        table_.file_of(row_), row_.line, "write " + std::string(wants)};
  }

  const std::optional<Fault>& fault() const { return fault_; }

 private:
  double figure(std::string_view column, std::string_view cell) {
    if (cell.empty()) return 0;
    double value = 0;
    const auto read = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (read.ec != std::errc{} || read.ptr != cell.data() + cell.size() || !std::isfinite(value) || value < 0)
      wrong(column, "a figure of nought or more");
    return value;
  }

  Figures ordered(std::string_view column, Figures figures) {
    if (figures.low > figures.likely || figures.likely > figures.high)
      wrong(column, "figures in order: low, likely, high");
    return figures;
  }

  const Table& table_;
  const Table::Row& row_;
  std::optional<Fault> fault_;
};

}  // namespace gallipot::kitchen_tables
