// A volume by the spoons and cups of today, and a decision from what the cook says.
#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "query/measuring/measure.h"

namespace gallipot {
namespace {

constexpr const char* quarters[] = {"", "1/4", "1/2", "3/4"};

std::string quarters_of(int n) {
  if (n % 4 == 0) return std::to_string(n / 4);
  if (n < 4) return quarters[n];
  return fmt::format("{} {}", n / 4, quarters[n % 4]);
}

void add(std::string& out, int quarter_count, const char* unit, bool plural_from_one = false) {
  if (quarter_count <= 0) return;
  if (!out.empty()) out += " + ";
  out += quarters_of(quarter_count) + " " + unit;
  if (plural_from_one && quarter_count > 4) out += "s";
}

/// "90ml", "85-95 ml", "0.5 l": a figure or two and a metric unit.
struct Metric {
  Range value;
  Amount::Unit unit = Amount::Unit::millilitre;
};

std::optional<double> take_number(std::string_view& text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  double v = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), v);
  if (error != std::errc{}) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  while (text.starts_with(' ')) text.remove_prefix(1);
  return v;
}

std::optional<Metric> metric_in(std::string_view text) {
  Metric out;
  const auto low = take_number(text);
  if (!low) return std::nullopt;
  out.value = {*low, *low};
  for (const std::string_view to : {"-", "\u2013", "to "}) {
    if (!text.starts_with(to)) continue;
    text.remove_prefix(to.size());
    const auto high = take_number(text);
    if (!high) return std::nullopt;
    out.value.high = *high;
    break;
  }
  while (text.ends_with(' ') || text.ends_with('.')) text.remove_suffix(1);
  double factor = 1;
  if (text == "l" || text == "litre" || text == "litres" || text == "kg") factor = 1000;
  if (text == "cl") factor = 10;
  if (text == "g" || text == "kg" || text == "gram" || text == "grams")
    out.unit = Amount::Unit::gram;
  else if (text != "ml" && text != "cl" && factor == 1)
    return std::nullopt;
  out.value.low *= factor;
  out.value.high *= factor;
  return out;
}

Outcome<Amount> given_amount(const std::string& given, const MeasureAnswer& answer, const Register& measures,
                             const Lexicon& lexicon) {
  if (const auto metric = metric_in(given)) {
    const Range& v = metric->value;
    return Amount{metric->unit, v.low, (v.low + v.high) / 2, v.high, {}};
  }
  MeasureQuestion question = answer.asked;
  question.words = given;
  question.of = answer.of;
  const Heats no_heats;
  auto read = measure(question, measures, no_heats, lexicon);
  if (!read) return tl::unexpected(read.error());
  if (read->kind != MeasureAnswer::Kind::amount || read->measure.empty())
    return fault(fmt::format("\"{}\" is no amount to decide on", given),
                 "say it as \"90 ml\", \"25 g\" or \"3 ounces\"");
  return read->reading.amount;
}

}  // namespace

std::string by_cup_and_spoon(double ml, double cup, double tablespoon, double teaspoon) {
  // in quarters of a teaspoon, so that what is rounded up is carried on
  const auto quarters_in = [&](double volume) { return static_cast<int>(std::lround(4 * volume / teaspoon)); };
  int all = quarters_in(ml);
  if (all == 0) return "less than 1/8 tsp";
  const int spoon = quarters_in(tablespoon), quarter_cup = quarters_in(cup / 4);
  std::string out;
  if (all >= quarter_cup) {  // beside cups a spoon is told whole, and beside many cups not at all
    all = (all + spoon / 2) / spoon * spoon;
    const int cups = all / quarter_cup;
    add(out, cups, "cup", true);
    if (cups < 16) add(out, 4 * ((all - cups * quarter_cup + spoon / 2) / spoon), "tbsp");
    return out;
  }
  if (all >= spoon) all = (all + 2) / 4 * 4;
  add(out, 4 * (all / spoon), "tbsp");
  add(out, all % spoon, "tsp");
  return out;
}

Outcome<Decision> decision_of(const std::string& given, const MeasureAnswer& answer, const Register& measures,
                              const Lexicon& lexicon) {
  if (answer.kind != MeasureAnswer::Kind::amount)
    return fault(fmt::format("\"{}\" is no measure on which to decide", answer.asked.words),
                 "decide on an amount, as in \"a teacup\"");
  const auto amount = given_amount(given, answer, measures, lexicon);
  if (!amount) return tl::unexpected(amount.error());
  if (!(amount->low > 0) || amount->high < amount->low || amount->high > 1e6)
    return fault(fmt::format("\"{}\" is no amount to decide on", given),
                 "give an amount over nought, the lesser first");
  Decision d;
  d.measure = answer.measure;
  d.size = answer.measure.empty() ? std::string() : answer.size;
  if (!answer.asked.of.empty() || answer.measure.empty()) d.of = answer.of;
  d.unit = amount->unit;
  d.low = amount->low / answer.quantity.high;
  d.likely = amount->likely / ((answer.quantity.low + answer.quantity.high) / 2);
  d.high = amount->high / answer.quantity.low;
  return d;
}

}  // namespace gallipot
