// Turns what witnesses say into figures, and figures into a verdict.
#include "indexer/measures/evidence.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace gallipot::measuring {
namespace {

constexpr double for_want = 0.15;    // for want of witnesses, over their number
constexpr double out_of_line = 2.0;  // times the median, or a part of it
constexpr double too_vague = 2.5;    // from low to high, to tell another measure by
constexpr std::size_t enough_to_judge = 3;
constexpr std::size_t enough_for_percentiles = 5;

/// Definition 7 of Hyndman and Fan 1996 (The American Statistician 50): linear between the order statistics.
double percentile(std::vector<double> values, double p) {
  std::sort(values.begin(), values.end());
  const double at = p * static_cast<double>(values.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, values.size() - 1);
  return values[below] + (at - std::floor(at)) * (values[above] - values[below]);
}

double median(std::vector<double> values) { return percentile(std::move(values), 0.5); }

/// What one author says, all of it together.
struct Author {
  std::vector<double> lows, likelies, highs;
};

std::map<std::string_view, Author> by_author(const std::vector<Testimony>& readings, const std::vector<bool>& aside) {
  std::map<std::string_view, Author> out;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (aside[i]) continue;
    Author& a = out[readings[i].author];
    a.lows.push_back(readings[i].held.low);
    a.likelies.push_back(readings[i].held.likely);
    a.highs.push_back(readings[i].held.high);
  }
  return out;
}

double middle_of(const std::map<std::string_view, Author>& authors) {
  std::vector<double> middles;
  for (const auto& [name, a] : authors) middles.push_back(median(a.likelies));
  return median(std::move(middles));
}

Extent range_of(const std::map<std::string_view, Author>& authors) {
  std::vector<double> lows, highs;
  for (const auto& [name, a] : authors) {
    lows.push_back(*std::min_element(a.lows.begin(), a.lows.end()));
    highs.push_back(*std::max_element(a.highs.begin(), a.highs.end()));
  }
  const bool enough = authors.size() >= enough_for_percentiles;
  const double likely = middle_of(authors);
  const double low = enough ? percentile(lows, 0.1) : percentile(lows, 0);
  const double high = enough ? percentile(highs, 0.9) : percentile(highs, 1);
  return {std::min(low, likely), likely, std::max(high, likely)};
}

/// Grams as millilitres of the stuff, where that can be told.
std::optional<Extent> bulk(const Extent& grams, const Stuff& stuff, std::string_view of) {
  if (of.empty() || of == "liquid" || of == "water") return grams;  // told of water
  if (stuff.density.low > 0) return quotient(grams, stuff.density);
  return std::nullopt;
}

Extent times(const Extent& e, const Witnessed& words) {
  return {e.low * words.low, e.likely * (words.low + words.high) / 2, e.high * words.high};
}

/// "ounce" told of a liquid may be the fluid ounce of the country.
std::optional<Extent> fluid(const MeasureTables& tables, const Witnessed& words, const Place& place) {
  const bool ounce = words.unit == "ounce", drachm = words.unit == "drachm";
  if (!ounce && !drachm) return std::nullopt;
  const auto rows = tables.held.find(ounce ? "fluid ounce" : "fluid drachm");
  if (rows == tables.held.end()) return std::nullopt;
  const auto one = one_of(rows->second, StuffClass::liquid, Stuff{}, place);
  if (!one) return std::nullopt;
  return times(one->extent, words);
}

}  // namespace

double tolerance_of(std::size_t authors) { return by_eye + for_want / static_cast<double>(authors); }

Verdict verdict_of(const std::vector<Testimony>& readings) {
  Verdict out;
  out.set_aside.assign(readings.size(), false);
  auto authors = by_author(readings, out.set_aside);
  const double middle = readings.size() >= enough_to_judge ? middle_of(authors) : 0;
  if (middle > 0) {
    for (std::size_t i = 0; i < readings.size(); ++i) {
      const double said = readings[i].held.likely;
      out.set_aside[i] = said > out_of_line * middle || said < middle / out_of_line;
    }
    authors = by_author(readings, out.set_aside);
    if (authors.empty()) {  // they are so far apart that the middling one stands between two camps: all are heard
      out.set_aside.assign(readings.size(), false);
      authors = by_author(readings, out.set_aside);
    }
  }
  out.authors = authors.size();
  out.least = 1e300;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (out.set_aside[i]) continue;
    out.least = std::min(out.least, readings[i].held.likely);
    out.most = std::max(out.most, readings[i].held.likely);
  }
  const double wider = tolerance_of(out.authors);
  out.said = range_of(authors);
  out.extent = product(out.said, {1 - wider, 1, 1 + wider});
  return out;
}

std::optional<Voice> voice_of(const MeasureTables& tables, const Witnessed& words) {
  Voice v;
  v.measure = words.measure;
  v.of = words.of;
  v.country = words.country == "*" ? std::string() : words.country;
  v.year = words.year;
  v.said = words.low == words.high ? fmt::format("{:.4g} {}", words.low, words.unit)
                                   : fmt::format("{:.4g} to {:.4g} {}", words.low, words.high, words.unit);
  v.who = words.source;
  v.author = words.source.substr(0, words.source.find_first_of(",:;"));
  const Stuff& stuff = tables.stuff(words.of);
  const Place place{words.of, v.country, words.year};
  One one{Amount::Unit::millilitre, {1, 1, 1}, {}, {}};
  if (words.unit == "g") {
    one.unit = Amount::Unit::gram;
  } else if (words.unit != "ml") {
    const auto rows = tables.held.find(words.unit);
    if (rows == tables.held.end()) return std::nullopt;
    const StuffClass as = stuff.stuff_class == StuffClass::unknown ? StuffClass::liquid : stuff.stuff_class;
    const auto found = one_of(rows->second, as, Stuff{}, place);
    if (!found || found->unit == Amount::Unit::count) return std::nullopt;
    one = *found;
    v.at_second_hand = rows->second.front().household;
    if (v.at_second_hand && one.extent.high > too_vague * one.extent.low) return std::nullopt;
  }
  const Extent held = times(one.extent, words);
  if (one.unit == Amount::Unit::millilitre) {
    v.millilitres = held;
    return v;
  }
  v.grams = held;
  if (const auto volume = bulk(held, stuff, words.of)) v.millilitres = *volume;
  const bool of_liquid = words.of.empty() || words.of == "liquid" || stuff.stuff_class == StuffClass::liquid;
  if (const auto by_fluid = fluid(tables, words, place); by_fluid && of_liquid)
    v.millilitres = hull(*by_fluid, v.millilitres.low > 0 ? v.millilitres : *by_fluid);
  return v;
}

}  // namespace gallipot::measuring
