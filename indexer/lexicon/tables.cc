// Reads tab-separated tables: those compiled in, and the user's own laid over them.
#include "indexer/lexicon/tables.h"

#include <fmt/format.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <unordered_set>

// What CMake wrote beside tables.S: the symbols of each table's bytes, and their list by name.
extern "C" {
#include "tables_declared.inc"
}

namespace gallipot {
namespace {

struct BuiltIn {
  std::string_view name;
  const char* begin;
  const char* end;
};
const std::vector<BuiltIn>& built_ins() {
  static const std::vector<BuiltIn> all = {
#include "tables_index.inc"
  };
  return all;
}

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> out;
  for (;;) {
    const auto tab = line.find('\t');
    out.push_back(line.substr(0, tab));
    if (tab == std::string_view::npos) return out;
    line.remove_prefix(tab + 1);
  }
}

bool blank(std::string_view s) { return s.find_first_not_of(" \t\r") == std::string_view::npos; }

// Heading and rows of one stretch of bytes that `bytes` views; the views stay good as long as what it views.
struct Parsed {
  std::vector<std::string_view> columns;
  std::vector<Table::Row> rows;
};

Outcome<Parsed> parse_bytes(std::string_view bytes, const std::string& file) {
  Parsed out;
  std::size_t source = 0;
  long number = 0;
  while (!bytes.empty()) {
    const auto end = bytes.find('\n');
    auto line = bytes.substr(0, end);
    bytes.remove_prefix(end == std::string_view::npos ? bytes.size() : end + 1);
    ++number;
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (blank(line) || line[0] == '#') continue;
    auto cells = cells_of(line);
    if (out.columns.empty()) {
      out.columns = std::move(cells);
      while (source < out.columns.size() && out.columns[source] != "source") ++source;
      if (source == out.columns.size())
        return fault("the heading line has no column \"source\"",
                     "add a last column named source and fill it in every row", file, number);
      continue;
    }
    if (cells.size() != out.columns.size())
      return fault(fmt::format("this row has {} cells where the heading has {}", cells.size(), out.columns.size()),
                   "separate the cells by single tabs and leave none out", file, number);
    if (blank(cells[source]))
      return fault("this row does not say where it comes from", "fill in its source", file, number);
    out.rows.push_back({std::move(cells), number, false});
  }
  if (out.columns.empty()) return fault("the table is empty", "begin it with a heading line of column names", file);
  return out;
}

// Rows of the user's own table, put into the order of the built-in columns.
Outcome<std::vector<Table::Row>> arranged(Parsed own, const std::vector<std::string_view>& columns,
                                          const std::string& file) {
  std::vector<std::size_t> to;
  for (const auto& name : own.columns) {
    std::size_t k = 0;
    while (k < columns.size() && columns[k] != name) ++k;
    if (k == columns.size())
      return fault(fmt::format("there is no column \"{}\" in this table", name),
                   fmt::format("use some of these: {}", fmt::join(columns, ", ")), file, 1);
    to.push_back(k);
  }
  for (auto& row : own.rows) {
    std::vector<std::string_view> cells(columns.size());
    for (std::size_t k = 0; k < to.size(); ++k) cells[to[k]] = row.cells[k];
    row.cells = std::move(cells);
    row.own = true;
  }
  return std::move(own.rows);
}

// Bytes that a move leaves where they are: a short string would carry its letters, and the views, with it.
std::string unmoving(std::string_view a, std::string_view b = {}) {
  std::string out;
  out.reserve(a.size() + b.size() + 64);
  out.append(a).append(b);
  return out;
}

}  // namespace

int Table::column(std::string_view wanted) const {
  for (std::size_t i = 0; i < columns.size(); ++i)
    if (columns[i] == wanted) return static_cast<int>(i);
  return -1;
}

std::string_view Table::cell(const Row& row, std::string_view wanted) const {
  const int at = column(wanted);
  return at < 0 ? std::string_view{} : row.cells[static_cast<std::size_t>(at)];
}

std::string_view built_in_table(std::string_view name) {
  for (const auto& t : built_ins())
    if (t.name == name) return {t.begin, static_cast<std::size_t>(t.end - t.begin)};
  return {};
}

std::vector<std::string_view> built_in_table_names() {
  std::vector<std::string_view> out;
  for (const auto& t : built_ins()) out.push_back(t.name);
  return out;
}

Outcome<Table> parse_table(std::string_view bytes, const std::string& name, const std::string& file) {
  Table out;
  out.name = name;
  out.file = file;
  out.bytes = unmoving(bytes);
  auto parsed = parse_bytes(out.bytes, file);
  if (!parsed) return tl::unexpected(parsed.error());
  out.columns = std::move(parsed->columns);
  out.rows = std::move(parsed->rows);
  return out;
}

Outcome<Table> load_table(const std::string& name, const std::string& overlay_folder) {
  const auto built_in = built_in_table(name);
  const std::string own_file =
      overlay_folder.empty() ? std::string{} : (std::filesystem::path(overlay_folder) / (name + ".tsv")).string();
  std::error_code ignored;
  if (own_file.empty() || !std::filesystem::exists(own_file, ignored)) {
    if (built_in.empty()) return fault(fmt::format("there is no table \"{}\"", name), "", name + ".tsv");
    return parse_table(built_in, name, name + ".tsv");
  }
  std::ifstream in(own_file, std::ios::binary);
  const std::string own_bytes{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in && !in.eof()) return fault("the table cannot be read", "see that you may open the file", own_file);

  Table out;
  out.name = name;
  out.file = name + ".tsv";
  out.own_file = own_file;
  out.bytes = unmoving(built_in, own_bytes);
  auto own = parse_bytes(std::string_view(out.bytes).substr(built_in.size()), own_file);
  if (!own) return tl::unexpected(own.error());
  if (built_in.empty()) {
    out.columns = own->columns;
  } else {
    auto base = parse_bytes(std::string_view(out.bytes).substr(0, built_in.size()), out.file);
    if (!base) return tl::unexpected(base.error());
    out.columns = std::move(base->columns);
    out.rows = std::move(base->rows);
  }
  auto rows = arranged(std::move(*own), out.columns, own_file);
  if (!rows) return tl::unexpected(rows.error());
  std::unordered_set<std::string_view> replaced;
  for (const auto& row : *rows) replaced.insert(row.cells[0]);
  std::erase_if(out.rows, [&](const Table::Row& row) { return replaced.contains(row.cells[0]); });
  for (auto& row : *rows) out.rows.push_back(std::move(row));
  return out;
}

std::vector<std::string_view> parts_of(std::string_view cell, char by) {
  std::vector<std::string_view> out;
  while (!cell.empty()) {
    const auto end = cell.find(by);
    auto part = cell.substr(0, end);
    cell.remove_prefix(end == std::string_view::npos ? cell.size() : end + 1);
    while (!part.empty() && part.front() == ' ') part.remove_prefix(1);
    while (!part.empty() && part.back() == ' ') part.remove_suffix(1);
    if (!part.empty()) out.push_back(part);
  }
  return out;
}

}  // namespace gallipot
