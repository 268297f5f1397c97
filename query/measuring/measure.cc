// Finds out what the words are, and asks the register and the tables of heats.
#include "query/measuring/measure.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/text/unicode.h"
#include "query/measuring/nearest.h"
#include "query/measuring/phrase.h"

namespace gallipot {
namespace {

constexpr double absurd = 10'000;  // of any measure: no receipt asks that
constexpr int first_year = 1500, last_year = 1950;

/// Whether the words begin with a minus and a figure.
bool is_negative(std::string_view words) {
  const auto at = words.find_first_not_of(' ');
  if (at == std::string_view::npos) return false;
  words.remove_prefix(at);
  if (words.starts_with("minus ")) return true;
  const std::size_t sign = words.starts_with("-") ? 1 : words.starts_with("\u2212") ? 3 : 0;
  return sign > 0 && words.find_first_of("0123456789") <= sign + 1;
}

Outcome<bool> in_bounds(const MeasureQuestion& q) {
  if (q.words.find_first_not_of(" \t\n") == std::string::npos)
    return fault("no amount is given", "say it as a recipe would: \"half a gill\"");
  if (is_negative(q.words))
    return fault(fmt::format("\"{}\" is less than nothing", q.words), "give an amount over nought");
  if (q.year != 0 && (q.year < first_year || q.year > last_year))
    return fault(fmt::format("{} is outside the years that the register knows", q.year),
                 fmt::format("give a year of printing from {} to {}", first_year, last_year));
  return true;
}

Outcome<std::string> stuff_called(const std::string& said, const Lexicon& lexicon) {
  std::string name = stuff_in(said, lexicon);
  if (!name.empty()) return name;
  std::vector<std::string> known;
  for (const Foodstuff& f : lexicon.foodstuffs()) known.push_back(f.name);
  return fault(fmt::format("no stuff is called \"{}\"", said), perhaps(nearest_words(to_plain(said), known, 3)));
}

Fault unknown_measure(const std::string& said, const std::vector<std::string>& known) {
  return {fmt::format("no measure is called \"{}\"", said), {}, 0, perhaps(nearest_words(singular(said), known, 3))};
}

MeasureAnswer no_figure(MeasureAnswer answer, std::string why) {
  answer.kind = MeasureAnswer::Kind::no_figure;
  answer.why = std::move(why);
  return answer;
}

std::string no_figure_reason(const std::string& measure, const Lexicon& lexicon) {
  const MeasureWord* known = lexicon.measure(measure);
  if (known != nullptr && known->kind == "price")
    return fmt::format("a {} is as much as the price of the day gave; none is known, so no figure is given", measure);
  return fmt::format("a {} is of no known size, and none is made up", measure);
}

/// "the weight of four eggs": whole ones, as they lie in the scale.
void in_the_shell(MeasureAnswer& answer) {
  if (answer.of != "egg" || !answer.measure.empty() || !answer.reading.grams) return;
  constexpr Extent eaten{0.87, 0.89, 0.91};  // USDA Agriculture Handbook 8: refuse of eggs 11 percent; see eaten.tsv
  const Amount& cleaned = *answer.reading.grams;
  const Extent e = quotient(cleaned.extent(), eaten);
  const Amount whole{cleaned.unit, e.low, e.likely, e.high, cleaned.why + "; weighed in the shell"};
  answer.reading.amount = whole;
  answer.reading.grams = whole;
  answer.reading.millilitres.reset();
}

void by_the_kitchen(MeasureAnswer& answer) {
  if (!answer.reading.millilitres) return;
  constexpr double us_cup = 236.5882365;  // NIST Handbook 44, Appendix C: 8 US fluid ounces
  const double ml = answer.reading.millilitres->likely;
  answer.us = by_cup_and_spoon(ml, us_cup, us_cup / 16, us_cup / 48);
  answer.metric = by_cup_and_spoon(ml, 250, 15, 5);  // common practice: cup of 250 ml, spoons of 15 and 5
}

std::optional<MeasureAnswer> as_heat(const std::string& plain, MeasureAnswer answer, const Heats& heats) {
  const Heat* heat = heats.named_in(plain);
  if (heat == nullptr) return std::nullopt;
  answer.kind = MeasureAnswer::Kind::heat;
  answer.heat = heat;
  answer.range = heat->extent(answer.asked.country, answer.asked.year);
  return answer;
}

/// "20 degrees over proof", "20 under proof", "90 proof".
std::optional<MeasureAnswer> as_degrees_of_proof(const std::string& plain, MeasureAnswer answer, const Heats& heats,
                                                 const Lexicon& lexicon) {
  if (!says_any(plain, {"proof"}) || says_any(plain, {"fourth", "4th", "vinegar"})) return std::nullopt;
  const auto number = number_in(plain, lexicon);
  const Heat* proof = heats.named_in("proof spirit");
  if (!number || proof == nullptr) return std::nullopt;
  const auto standard = proof->extent(answer.asked.country, answer.asked.year);
  if (!standard) return std::nullopt;
  const bool over = says_any(plain, {"over proof", "above proof", "overproof"});
  const bool under = says_any(plain, {"under proof", "below proof", "underproof"});
  const auto degrees = [&](double d) { return over ? d : under ? -d : d - 100; };
  const double low = degrees(under ? number->high : number->low), high = degrees(under ? number->low : number->high);
  if (low < -100 || high > 100) return std::nullopt;
  answer.kind = MeasureAnswer::Kind::heat;
  answer.heat = proof;
  answer.range = Extent{over_proof(low, standard->low), over_proof((low + high) / 2, standard->likely),
                        over_proof(high, standard->high)};
  answer.why = fmt::format("{:.4g} degrees {} proof", number->low, over ? "over" : under ? "under" : "of");
  return answer;
}

/// Whether what was said can be asked of the register at all.
Outcome<bool> can_be_asked(const Phrase& said, const MeasureAnswer& answer, const std::vector<std::string>& known) {
  for (const SaidAmount& a : said.amounts)
    if (a.quantity && (!(a.quantity->high > 0) || a.quantity->high > absurd))
      return fault(fmt::format("{:.12g} is no amount that a kitchen knows", a.quantity->high),
                   fmt::format("give an amount over nought and up to {:.0f}", absurd));
  if (said.amounts.empty()) return tl::unexpected(unknown_measure(said.unknown, known));
  if (!said.amounts.front().measure.empty() || !answer.of.empty()) return true;
  if (!said.unknown.empty()) return tl::unexpected(unknown_measure(said.unknown, known));
  return fault(fmt::format("\"{}\" names neither a measure nor a thing", answer.asked.words),
               "say a measure, as in \"two gills\", or a stuff, as in \"two onions\"");
}

void add(Reading& to, const Reading& more) {
  to.amount = sum(to.amount, more.amount);
  if (to.grams && more.grams) to.grams = sum(*to.grams, *more.grams);
  if (to.millilitres && more.millilitres) to.millilitres = sum(*to.millilitres, *more.millilitres);
  to.witnesses.insert(to.witnesses.end(), more.witnesses.begin(), more.witnesses.end());
  for (const std::string& source : more.sources)
    if (std::find(to.sources.begin(), to.sources.end(), source) == to.sources.end()) to.sources.push_back(source);
}

Outcome<MeasureAnswer> as_amount(const Phrase& said, MeasureAnswer answer, const Register& measures,
                                 const Lexicon& lexicon) {
  if (answer.of.empty()) answer.of = said.of;
  if (auto good = can_be_asked(said, answer, measures.measures()); !good) return tl::unexpected(good.error());
  bool first = true;
  for (auto it = said.amounts.rbegin(); it != said.amounts.rend(); ++it) {  // the first said is the one that is shown
    answer.measure = it->measure;
    answer.size = it->size;
    answer.quantity = it->quantity.value_or(Range{1, 1});
    auto reading = it->quantity ? measures.read(answer.measured()) : std::nullopt;
    if (!reading || (!first && reading->amount.unit != answer.reading.amount.unit)) {
      auto why = no_figure_reason(it->measure, lexicon);
      return no_figure(std::move(answer), std::move(why));
    }
    if (!first) add(*reading, answer.reading);
    answer.reading = std::move(*reading);
    first = false;
  }
  if (said.scaled) in_the_shell(answer);
  by_the_kitchen(answer);
  return answer;
}

}  // namespace

Measured MeasureAnswer::measured() const {
  Measured m;
  m.low = quantity.low;
  m.high = quantity.high;
  m.measure = measure;
  m.note = size;
  m.of = of;
  m.year = asked.year;
  m.country = asked.country;
  m.book = asked.book;
  return m;
}

Outcome<MeasureAnswer> measure(const MeasureQuestion& question, const Register& measures, const Heats& heats,
                               const Lexicon& lexicon) {
  if (auto good = in_bounds(question); !good) return tl::unexpected(good.error());
  MeasureAnswer answer;
  answer.asked = question;
  if (!question.of.empty()) {
    auto of = stuff_called(question.of, lexicon);
    if (!of) return tl::unexpected(of.error());
    answer.of = std::move(*of);
  }
  std::string plain = to_plain(question.words);
  std::replace(plain.begin(), plain.end(), '-', ' ');
  if (auto proof = as_degrees_of_proof(plain, answer, heats, lexicon)) return *proof;
  const Phrase said = read_phrase(question.words, lexicon, measures.measures());
  if (said.left_to_the_cook)
    return no_figure(std::move(answer), "the print leaves the amount to the cook; no figure is made up");
  if (auto heat = as_heat(plain, answer, heats)) return *heat;
  return as_amount(said, std::move(answer), measures, lexicon);
}

}  // namespace gallipot
