// The confusion table, ready to be read backwards.
#include "indexer/mending/confusions.h"

#include <fmt/format.h>

#include <charconv>
#include <map>
#include <optional>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

std::optional<Damage> damage_of(std::string_view name) {
  if (name == "scan") return Damage::scan;
  if (name == "long s") return Damage::long_s;
  if (name == "early") return Damage::early;
  if (name == "spelling") return Damage::spelling;
  return std::nullopt;
}

/// Takes the marks of a word's beginning and end off a pattern.
void take_ends(std::string& pattern, bool& begin, bool& end) {
  if (pattern.starts_with('^')) begin = true, pattern.erase(0, 1);
  if (pattern.ends_with('$')) end = true, pattern.pop_back();
}

}  // namespace

Outcome<Confusions> Confusions::load() {
  const auto table = load_table("confusions");
  if (!table) return tl::unexpected(table.error());
  std::vector<Confusion> all;
  std::map<std::pair<Damage, char>, double> sums;
  const auto place = [](const Confusion& c) { return std::pair(c.kind, c.printed.empty() ? '$' : c.printed[0]); };
  for (const auto& row : table->rows) {
    const auto kind = damage_of(table->cell(row, "kind"));
    if (!kind)
      return fault(fmt::format("\"{}\" is no kind of damage", table->cell(row, "kind")),
                   "write scan, long s, early or spelling", table->file_of(row), row.line);
    Confusion c;
    c.kind = *kind;
    c.misread = table->cell(row, "misread");
    c.printed = table->cell(row, "printed");
    bool begin = false;
    take_ends(c.misread, c.at_begin, c.at_end);
    take_ends(c.printed, begin, c.at_end);
    const auto weight = table->cell(row, "weight");
    if (std::from_chars(weight.data(), weight.data() + weight.size(), c.share).ec != std::errc() || c.share <= 0)
      return fault("the weight is no number above nought", "give one, beside the other rows of its kind",
                   table->file_of(row), row.line);
    if (c.misread.empty())
      return fault("nothing is misread in this row", "say what stands in the copy", table->file_of(row), row.line);
    sums[place(c)] += c.share;
    all.push_back(std::move(c));
  }
  Confusions out;
  for (Confusion& c : all) {
    // Every s may be a long one, every u a v: those kinds befall a place whole, not in parts.
    c.share = c.kind == Damage::scan ? c.share / sums[place(c)] : c.share / 100;
    out.by_first_[static_cast<unsigned char>(c.misread[0])].push_back(std::move(c));
  }
  return out;
}

}  // namespace gallipot
