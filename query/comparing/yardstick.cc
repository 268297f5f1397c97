// Reads the four tables of a comparison and answers from them.
#include "query/comparing/yardstick.h"

#include <cstdlib>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

/// A figure of a table's cell. Faults name the file and line.
Outcome<double> figure(const Table& table, const Table::Row& row, std::string_view cell) {
  const std::string digits(cell);
  char* end = nullptr;
  const double value = std::strtod(digits.c_str(), &end);
  if (digits.empty() || *end != '\0' || !(value >= 0))
    return fault("\"" + digits + "\" is not a figure", "write a number of nought or more", table.file_of(row),
                 row.line);
  return value;
}

/// Positions of `wanted` in the table, in that order. Faults where a column is missing.
Outcome<std::vector<std::size_t>> columns(const Table& table, std::initializer_list<std::string_view> wanted) {
  std::vector<std::size_t> out;
  for (const std::string_view name : wanted) {
    const int at = table.column(name);
    if (at < 0)
      return fault("the heading has no column \"" + std::string(name) + "\"", "add it to the heading", table.file, 1);
    out.push_back(static_cast<std::size_t>(at));
  }
  return out;
}

}  // namespace

Outcome<Yardstick> Yardstick::load(std::shared_ptr<const Register> measures, const std::string& overlay_folder) {
  return load([measures = std::move(measures)](const Measured& asked) { return measures->amount(asked); },
              overlay_folder);
}

Outcome<Yardstick> Yardstick::load(Weigh weigh, const std::string& overlay_folder) {
  Yardstick out;
  out.weigh_ = std::move(weigh);

  const auto sorts = load_table("sorts", overlay_folder);
  if (!sorts) return tl::unexpected(sorts.error());
  const auto sort_at = columns(*sorts, {"sort", "stuff"});
  if (!sort_at) return tl::unexpected(sort_at.error());
  for (const auto& row : sorts->rows)
    out.sorts_.insert_or_assign(std::string(row.cells[(*sort_at)[0]]), std::string(row.cells[(*sort_at)[1]]));

  const auto yields = load_table("yields", overlay_folder);
  if (!yields) return tl::unexpected(yields.error());
  const auto yield_at = columns(*yields, {"product", "from", "low", "likely", "high", "density"});
  if (!yield_at) return tl::unexpected(yield_at.error());
  for (const auto& row : yields->rows) {
    const auto cell = [&](std::size_t i) { return row.cells[(*yield_at)[i]]; };
    std::optional<Yield> known;
    if (!cell(2).empty() || !cell(3).empty() || !cell(4).empty()) {
      double figures[4] = {};
      for (std::size_t i = 0; i < 4; ++i) {
        const auto value = figure(*yields, row, cell(i + 2));
        if (!value) return tl::unexpected(value.error());
        figures[i] = *value;
      }
      if (!(figures[0] > 0 && figures[0] <= figures[1] && figures[1] <= figures[2] && figures[3] > 0))
        return fault("the yield does not run from low over likely to high", "put the three figures in that order",
                     yields->file_of(row), row.line);
      known = Yield{figures[0], figures[1], figures[2], figures[3]};
    }
    out.yields_.insert_or_assign({std::string(cell(0)), std::string(cell(1))}, known);
  }

  const auto likeness = load_table("operation-likeness", overlay_folder);
  if (!likeness) return tl::unexpected(likeness.error());
  const auto like_at = columns(*likeness, {"op", "like", "likeness"});
  if (!like_at) return tl::unexpected(like_at.error());
  for (const auto& row : likeness->rows) {
    const auto value = figure(*likeness, row, row.cells[(*like_at)[2]]);
    if (!value) return tl::unexpected(value.error());
    if (*value > 1)
      return fault("a likeness is more than 1", "write a figure from 0 to 1", likeness->file_of(row), row.line);
    std::string a(row.cells[(*like_at)[0]]), b(row.cells[(*like_at)[1]]);
    if (b < a) std::swap(a, b);
    out.likeness_.insert_or_assign({std::move(a), std::move(b)}, *value);
  }
  const auto times = load_table("operation-times", overlay_folder);
  if (!times) return tl::unexpected(times.error());
  const auto time_at = columns(*times, {"op", "longest"});
  if (!time_at) return tl::unexpected(time_at.error());
  for (const auto& row : times->rows) {
    const auto value = figure(*times, row, row.cells[(*time_at)[1]]);
    if (!value) return tl::unexpected(value.error());
    out.longest_.insert_or_assign(std::string(row.cells[(*time_at)[0]]), *value);
  }
  return out;
}

bool Yardstick::can_last(const std::string& op, const Range& minutes) const {
  const auto found = longest_.find(op);
  return found == longest_.end() || minutes.low <= found->second;
}

const std::string& Yardstick::stuff(const std::string& name) const {
  const auto found = sorts_.find(name);
  return found == sorts_.end() ? name : found->second;
}

std::vector<std::string> Yardstick::sorts_of(const std::string& stuff) const {
  std::vector<std::string> out{stuff};
  for (const auto& [sort, of] : sorts_)
    if (of == stuff) out.push_back(sort);
  return out;
}

std::optional<Yield> Yardstick::yield(std::string_view product, const std::string& from) const {
  for (const std::string& source : {from, std::string()}) {
    const auto found = yields_.find({std::string(product), source});
    if (found != yields_.end()) return found->second;
  }
  return std::nullopt;
}

bool Yardstick::is_product(std::string_view word) const {
  const auto found = yields_.lower_bound({std::string(word), std::string()});
  return found != yields_.end() && found->first.first == word;
}

double Yardstick::likeness(const std::string& a, const std::string& b) const {
  if (a == b) return 1;
  const auto found = likeness_.find(a < b ? std::pair(a, b) : std::pair(b, a));
  return found == likeness_.end() ? 0 : found->second;
}

}  // namespace gallipot
