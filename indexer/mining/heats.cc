// Degrees and counts, each told of the nearest named heat that they can be meant for.
#include "indexer/mining/heats.h"

#include <algorithm>
#include <cmath>

#include "indexer/mining/cues.h"
#include "indexer/mining/gauged.h"
#include "indexer/mining/heat_names.h"
#include "indexer/parsing/numbers.h"

namespace gallipot::mining {
namespace {

using parsing::Extent;
using parsing::Row;

bool sweet_context(const Passage& passage, Extent around) {
  const Row& row = passage.row();
  const auto from = around.begin > 25 ? around.begin - 25 : 0;
  for (std::uint32_t i = from; i < row.size() && i < around.end + 25; ++i) {
    const auto key = row.key(i);
    if (key == "sugar" || key == "syrup" || key == "sirup" || key == "degree" || key == "stage" || key == "thermometer")
      return true;
  }
  return false;
}

/// What boils is told close by: "at 212° water boils".
bool same_clause(const Row& row, Extent a, Extent b) {
  const bool after = a.begin > b.begin;
  const auto from = std::min(a.end, b.end), to = std::max(a.begin, b.begin);
  if (to > from + (after ? 6U : 20U)) return false;
  for (auto i = from; i < to; ++i)
    if (row.key(i) == "." || (after && row.key(i) == ";")) return false;
  return true;
}

/// Whether a reading can be of that heat.
bool possible(const Passage& passage, const Gauged& reading, const NamedHeat& named) {
  const Heat& heat = *named.heat;
  if (reading.unit == "count") return heat.kind == "oven" || heat.kind == "fat";
  if (reading.unit == "degree Reaumur" || reading.unit == "degree Celsius") {
    const double factor = reading.unit == "degree Celsius" ? 1.8 : 2.25;
    return reading.value.low * factor + 32 >= heat.low && reading.value.high * factor + 32 <= heat.high;
  }
  if (reading.value.low < heat.low || reading.value.high > heat.high) return false;
  if (heat.kind == "point" && !same_clause(passage.row(), named.at, reading.at)) return false;
  return heat.lone || heat.kind != "stage" || reading.at.begin - named.at.end < 4 || sweet_context(passage, named.at);
}

std::uint32_t distance(Extent a, Extent b) {
  return a.begin >= b.end ? a.begin - b.end : b.begin - std::min(b.begin, a.end);
}

constexpr std::uint32_t farthest = 24;  // words

/// The heat that a reading is told of: the nearest, a little rather before it than after.
const NamedHeat* subject_of(const Passage& passage, const Gauged& reading, const std::vector<NamedHeat>& all) {
  const NamedHeat* best = nullptr;
  std::uint32_t best_distance = reading.unit == "count" ? 60 : farthest;
  for (const auto& named : all) {
    const auto far = distance(named.at, reading.at) + (named.at.begin > reading.at.begin ? 3U : 0U);
    if (far >= best_distance || !possible(passage, reading, named)) continue;
    best = &named;
    best_distance = far;
  }
  return best;
}

Told told(const NamedHeat& named, Extent words) {
  Told out;
  out.measure = named.heat->name;
  out.of = named.heat->of;
  out.words = {std::min(named.at.begin, words.begin), std::max(named.at.end, words.end)};
  return out;
}

/// "brown a teaspoonful of flour in five minutes": a test of an oven by time.
void browning(const Passage& passage, const std::vector<NamedHeat>& all, std::vector<Told>& out) {
  const Row& row = passage.row();
  for (std::uint32_t i = 0; i + 2 < row.size(); ++i) {
    if (row.key(i) != "in") continue;
    const auto n = parsing::number_at(row, i + 1);
    const auto unit = i + 1 + n.words;
    if (!n.words || n.article ||
        (row.key(unit) != "minutes" && row.key(unit) != "minute" && row.key(unit) != "seconds"))
      continue;
    const auto from = i > 12 ? i - 12 : 0;
    bool browns = false;
    std::string_view tried;  // the kind of heat that is tried with it
    for (auto k = from; k < i; ++k) {
      const auto key = row.key(k);
      if (key == "bake") browns = false;
      browns = browns || key.starts_with("brown") || key.starts_with("colo") || key.starts_with("scorch");
      if (key == "flour" || key == "paper") tried = "oven";
      if (key == "bread" && tried.empty()) tried = "fat";
    }
    if (!browns || tried.empty()) continue;
    const NamedHeat* heat = nullptr;
    for (const auto& named : all)
      if (named.heat->kind == tried && (!heat || distance(named.at, {i, i}) < distance(heat->at, {i, i})))
        heat = &named;
    if (!heat || distance(heat->at, {i, i}) > 36) continue;
    auto one = told(*heat, {i, unit + 1});
    one.equals = n.value;
    one.unit = row.key(unit) == "seconds" ? "second" : "minute";
    out.push_back(std::move(one));
  }
}

/// What a stage is known by, without a figure.
void stage_tests(const Passage& passage, const std::vector<NamedHeat>& all, std::vector<Told>& out) {
  const Row& row = passage.row();
  for (const auto& named : all) {
    if (named.heat->kind != "stage" || (!named.heat->lone && !sweet_context(passage, named.at))) continue;
    const bool told_already = std::any_of(out.begin(), out.end(), [&](const Told& t) {
      return t.measure == named.heat->name && distance(t.words, named.at) < 30;
    });
    if (told_already) continue;
    const auto from = named.at.begin > 18 ? named.at.begin - 18 : 0;
    const auto to = std::min(row.size(), named.at.end + 18);
    std::uint32_t last = named.at.end;
    int signs = 0;
    for (auto k = from; k < to; ++k) {
      if (row.tags[k].sentence != row.tags[named.at.begin].sentence) continue;
      const auto key = row.key(k);
      if (!(passage.cues(k) & sign) || (key == "cold" && row.key(k + 1) != "water")) continue;
      ++signs;
      last = std::max(last, k + 1);
    }
    if (signs < (named.heat->lone ? 1 : 2)) continue;
    out.push_back(told(named, {named.at.begin, last}));
  }
}

/// "fourth proof brandy", "90 proof", "sixty degrees above proof".
void proofs(const Passage& passage, std::vector<Told>& out) {
  const Row& row = passage.row();
  for (std::uint32_t i = 1; i < row.size(); ++i) {
    if (!(passage.cues(i) & proof)) continue;
    Told one;
    one.measure = "proof";
    one.unit = "proof";
    const auto before = row.hyphen(i - 1) && i >= 2 ? i - 2 : i - 1;
    if (row.is(before, parsing::fraction) && row.tags[before].value < 0.4) {
      const double ordinal = std::round(1 / row.tags[before].value);
      one.equals = {ordinal, ordinal};
      one.words = {before, i + 1};
    } else if (row.word(before).kind == Word::Kind::number) {
      const auto n = parsing::number_at(row, before);
      one.equals = n.value;
      one.words = {before, i + 1};
    } else {
      continue;
    }
    if (one.equals.low <= 0) continue;
    one.of = passage.stuff_between(i + 1, i + 4);
    out.push_back(std::move(one));
  }
}

}  // namespace

std::vector<Told> heats(const Passage& passage) {
  std::vector<Told> out;
  const auto all = named_heats(passage.row());
  for (const auto& reading : gauged(passage.row(), all)) {
    if (reading.unit == "degree above proof") {
      Told one;
      one.measure = "proof";
      one.unit = reading.unit;
      one.equals = reading.value;
      one.words = {reading.at.begin, std::min(passage.row().size(), reading.at.end + 2)};
      out.push_back(std::move(one));
      continue;
    }
    const NamedHeat* subject = subject_of(passage, reading, all);
    if (!subject) continue;
    auto one = told(*subject, reading.at);
    one.equals = reading.value;
    one.unit = reading.unit;
    out.push_back(std::move(one));
  }
  browning(passage, all, out);
  stage_tests(passage, all, out);
  proofs(passage, out);
  return out;
}

}  // namespace gallipot::mining
