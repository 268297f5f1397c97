// Figures of heat.
#include "indexer/mining/gauged.h"

#include <optional>
#include <utility>

#include "indexer/parsing/numbers.h"

namespace gallipot::mining {
namespace {

using parsing::Row;

bool degree_sign(const Row& row, std::uint32_t i) {
  const auto key = row.key(i);
  if (key == "f" && row.word(i).capital) return true;  // "242 F."
  if (key == "fahr" || key == "fahrenheit") return true;
  return key == "\u00B0" || key == "\u00BA" || key == "degree" || key == "degrees" || key == "deg";
}

/// Which scale the words after a figure name: "Fahr.", "F.", "of Fahrenheit's thermometer".
std::string scale_after(const Row& row, std::uint32_t from) {
  for (std::uint32_t i = from; i < row.size() && i < from + 5; ++i) {
    const auto key = row.key(i);
    if (key.starts_with("fahr") || (key == "f" && i <= from + 1)) return "degree Fahrenheit";
    if (key.starts_with("reaum")) return "degree Reaumur";
    if (key.starts_with("centig") || key == "celsius") return "degree Celsius";
    if (key == "above" && row.key(i + 1) == "proof") return "degree above proof";
    if (row.word(i).kind == Word::Kind::number) break;
  }
  return "degree";
}

/// "236°", "236° to 238°", "one hundred degrees".
std::optional<Gauged> degrees_at(const Row& row, std::uint32_t i) {
  const auto first = parsing::number_at(row, i);
  if (!first.words || first.article) return std::nullopt;
  std::uint32_t end = i + first.words;
  if (!degree_sign(row, end)) return std::nullopt;
  Gauged out{{i, end + 1}, first.value, {}};
  for (end = out.at.end; row.key(end) == "." && row.word(end).glued;) ++end;
  const bool joined = row.key(end) == "-" || row.key(end) == "--" || row.key(end) == "to" || row.key(end) == "or";
  if (joined) {
    const auto second = parsing::number_at(row, end + 1);
    if (second.words && !second.article && second.value.high > first.value.low) {
      out.value.high = second.value.high;
      out.at.end = end + 1 + second.words + (degree_sign(row, end + 1 + second.words) ? 1U : 0U);
    }
  }
  out.unit = scale_after(
      row, row.key(out.at.end - 1) == "f" || row.key(out.at.end - 1) == "fahr" ? out.at.end - 1 : out.at.end);
  return out;
}

/// "The Feather, 232": the figure follows the name at once, and the degree is understood.
std::optional<Gauged> bare_degrees_after(const Row& row, const NamedHeat& named) {
  if (named.heat->kind != "stage" && named.heat->kind != "oven") return std::nullopt;
  std::uint32_t at = named.at.end;
  while (at < row.size() && at < named.at.end + 3 && (row.point(at) || row.key(at) == "at")) ++at;
  const auto n = parsing::number_at(row, at);
  if (at == named.at.end || !n.words || n.article || n.value.low < 200 || row.word(at).kind != Word::Kind::number)
    return std::nullopt;
  return Gauged{{at, at + n.words}, n.value, "degree"};
}

std::vector<Gauged> gauged_in(const Row& row) {
  std::vector<Gauged> out;
  for (std::uint32_t i = 0; i < row.size(); ++i) {
    if (row.key(i) == "count" || row.key(i) == "counting") {
      const auto n = parsing::number_at(row, i + 1);
      if (n.words && !n.article) out.push_back({{i, i + 1 + n.words}, n.value, "count"});
      continue;
    }
    if (auto reading = degrees_at(row, i)) {
      i = reading->at.end - 1;
      out.push_back(std::move(*reading));
    }
  }
  return out;
}

}  // namespace

std::vector<Gauged> gauged(const Row& row, const std::vector<NamedHeat>& named) {
  auto out = gauged_in(row);
  if (!out.empty()) return out;
  for (const auto& heat : named)
    if (auto bare = bare_degrees_after(row, heat)) out.push_back(std::move(*bare));
  return out;
}

}  // namespace gallipot::mining
