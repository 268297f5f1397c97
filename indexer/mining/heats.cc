// Degrees and counts, each told of the nearest named heat that they can be meant for.
#include "indexer/mining/heats.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include "indexer/lexicon/phrases.h"
#include "indexer/lexicon/tables.h"
#include "indexer/mining/cues.h"
#include "indexer/parsing/numbers.h"

namespace gallipot::mining {
namespace {

using parsing::Extent;
using parsing::Row;

struct Heat {
  std::string name, kind, of;
  double low = 0, high = 0;
  bool lone = false;
};

struct Heats {
  std::vector<Heat> all;
  Phrases phrases;  ///< value: index in all
  std::vector<std::string> stage_words;
};

double number_in(std::string_view cell) {
  double value = 0;
  std::from_chars(cell.data(), cell.data() + cell.size(), value);
  return value;
}

Heats load() {
  Heats heats;
  const auto table = parse_table(built_in_table("heat-words"), "heat-words", "heat-words.tsv");
  if (!table) return heats;
  for (const auto& row : table->rows) {
    const auto cell = [&](std::string_view column) { return std::string(table->cell(row, column)); };
    heats.all.push_back(
        {cell("name"), cell("kind"), cell("of"), number_in(cell("low")), number_in(cell("high")), cell("lone") == "1"});
    const auto index = static_cast<std::uint32_t>(heats.all.size() - 1);
    heats.phrases.add(heats.all.back().name, index);
    const std::string forms = cell("forms");
    for (const auto form : parts_of(forms))
      if (!form.empty()) heats.phrases.add(form, index);
    if (heats.all.back().kind != "stage") continue;
    for (const auto& names : {cell("name"), forms})
      for (const auto name : parts_of(names)) heats.stage_words.emplace_back(name.substr(name.find_last_of(' ') + 1));
  }
  return heats;
}

const Heats& known() {
  static const Heats heats = load();
  return heats;
}

struct Named {
  Extent at;
  const Heat* heat;
};

std::vector<Named> named_heats(const Row& row) {
  std::vector<Named> out;
  for (std::uint32_t i = 0; i < row.size();) {
    const auto match = row.point(i) ? Phrases::Match{} : known().phrases.longest(*row.words, i);
    if (match.words > 0) out.push_back({{i, i + match.words}, &known().all[match.value]});
    i += std::max(1U, match.words);
  }
  return out;
}

/// So many degrees, or a count, as printed.
struct Reading {
  Extent at;
  Range value;
  std::string unit;
};

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
std::optional<Reading> degrees_at(const Row& row, std::uint32_t i) {
  const auto first = parsing::number_at(row, i);
  if (!first.words || first.article) return std::nullopt;
  std::uint32_t end = i + first.words;
  if (!degree_sign(row, end)) return std::nullopt;
  Reading out{{i, end + 1}, first.value, {}};
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
std::optional<Reading> bare_degrees_after(const Row& row, const Named& named) {
  if (named.heat->kind != "stage" && named.heat->kind != "oven") return std::nullopt;
  std::uint32_t at = named.at.end;
  while (at < row.size() && at < named.at.end + 3 && (row.point(at) || row.key(at) == "at")) ++at;
  const auto n = parsing::number_at(row, at);
  if (at == named.at.end || !n.words || n.article || n.value.low < 200 || row.word(at).kind != Word::Kind::number)
    return std::nullopt;
  return Reading{{at, at + n.words}, n.value, "degree"};
}

std::vector<Reading> readings(const Passage& passage) {
  std::vector<Reading> out;
  const Row& row = passage.row();
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
bool possible(const Passage& passage, const Reading& reading, const Named& named) {
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
const Named* subject_of(const Passage& passage, const Reading& reading, const std::vector<Named>& all) {
  const Named* best = nullptr;
  std::uint32_t best_distance = reading.unit == "count" ? 60 : farthest;
  for (const auto& named : all) {
    const auto far = distance(named.at, reading.at) + (named.at.begin > reading.at.begin ? 3U : 0U);
    if (far >= best_distance || !possible(passage, reading, named)) continue;
    best = &named;
    best_distance = far;
  }
  return best;
}

Told told(const Named& named, Extent words) {
  Told out;
  out.measure = named.heat->name;
  out.of = named.heat->of;
  out.words = {std::min(named.at.begin, words.begin), std::max(named.at.end, words.end)};
  return out;
}

/// "brown a teaspoonful of flour in five minutes": a test of an oven by time.
void browning(const Passage& passage, const std::vector<Named>& all, std::vector<Told>& out) {
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
    const Named* heat = nullptr;
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
void stage_tests(const Passage& passage, const std::vector<Named>& all, std::vector<Told>& out) {
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
    int proofs = 0;
    for (auto k = from; k < to; ++k) {
      if (row.tags[k].sentence != row.tags[named.at.begin].sentence) continue;
      const auto key = row.key(k);
      const bool proof = key == "known" || key == "ascertained" || key == "called" || key == "dropped" ||
                         key == "dipped" || key == "dipping" || (key == "cold" && row.key(k + 1) == "water") ||
                         key == "fly" || key == "flies" || key == "snap" || key == "snaps" || key == "strings" ||
                         key == "ropes" || key == "fingers" || key == "finger" || key == "flakes" || key == "bubbles";
      if (!proof) continue;
      ++proofs;
      last = std::max(last, k + 1);
    }
    if (proofs < (named.heat->lone ? 1 : 2)) continue;
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
      const double n = 1 / row.tags[before].value;
      one.equals = {static_cast<double>(static_cast<int>(n + 0.5)), static_cast<double>(static_cast<int>(n + 0.5))};
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

std::vector<std::string> stage_words() { return known().stage_words; }

std::vector<Told> heats(const Passage& passage) {
  std::vector<Told> out;
  const auto all = named_heats(passage.row());
  auto told_degrees = readings(passage);
  for (const auto& named : all)
    if (auto bare = told_degrees.empty() ? bare_degrees_after(passage.row(), named) : std::nullopt)
      told_degrees.push_back(std::move(*bare));
  for (const auto& reading : told_degrees) {
    if (reading.unit == "degree above proof") {
      Told one;
      one.measure = "proof";
      one.unit = reading.unit;
      one.equals = reading.value;
      one.words = {reading.at.begin, std::min(passage.row().size(), reading.at.end + 2)};
      out.push_back(std::move(one));
      continue;
    }
    const Named* subject = subject_of(passage, reading, all);
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
