// The tables of the trade, as rows. Each is a tab-separated file with a heading line, `#` comment lines and, on every
// row, a `source`. They are compiled in; a user may lay a folder of tables over them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// One table: columns by name. Views point into `bytes`.
struct Table {
  Table() = default;
  Table(Table&&) = default;
  Table& operator=(Table&&) = default;
  Table(const Table&) = delete;  // cells are views into bytes
  Table& operator=(const Table&) = delete;

  std::string name;      ///< "foodstuffs"
  std::string file;      ///< for faults: "foodstuffs.tsv" or the path of the user's own
  std::string own_file;  ///< path of the user's own table laid over it; empty where there is none
  std::string bytes;
  std::vector<std::string_view> columns;
  struct Row {
    std::vector<std::string_view> cells;  ///< as many as there are columns
    long line = 0;                        ///< 1-based line in the file
    bool own = false;                     ///< stands in the user's own table, not in the built-in one
  };
  std::vector<Row> rows;

  /// Index of a column; -1 where the table has none of that name.
  int column(std::string_view wanted) const;
  /// The cell of a row in a column; empty where the table has no such column.
  std::string_view cell(const Row& row, std::string_view wanted) const;
  /// The file that a row stands in, for faults.
  const std::string& file_of(const Row& row) const { return row.own ? own_file : file; }
};

/// Bytes of the built-in table `name`; empty where there is none.
std::string_view built_in_table(std::string_view name);
/// Names of all built-in tables, for tests that walk every row.
std::vector<std::string_view> built_in_table_names();

/// Splits a table. Faults: no heading line, a row with too few or too many cells (file and line), no "source" column,
/// an empty source.
Outcome<Table> parse_table(std::string_view bytes, const std::string& name, const std::string& file);

/// The table of that name: the built-in rows, then those of `overlay_folder`/NAME.tsv where that file exists (its rows
/// replace built-in rows with the same first cell).
Outcome<Table> load_table(const std::string& name, const std::string& overlay_folder = {});

/// The parts of a cell that lists several values: "catchup|catsup" -> {"catchup", "catsup"}.
std::vector<std::string_view> parts_of(std::string_view cell, char by = '|');

}  // namespace gallipot
