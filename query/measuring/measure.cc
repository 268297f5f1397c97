// Reads the words, finds out what they are, asks.
#include "query/measuring/measure.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "indexer/parsing/amounts.h"
#include "indexer/text/unicode.h"
#include "indexer/text/words.h"
#include "query/measuring/nearest.h"

namespace gallipot {
namespace {

constexpr double absurd = 10'000;  // of any measure: no receipt asks that
constexpr int first_year = 1500, last_year = 1950;

/// The words tagged as the words of a recipe are. Holds what the row looks into, so it stays where it is.
class Print {
 public:
  Print(std::string_view text, const Lexicon& lexicon) {
    recipe_.text = text;
    recipe_.parts = {{Part::Kind::paragraph, {0, static_cast<std::uint32_t>(recipe_.text.size())}}};
    words_ = Words(recipe_.text);
    row_ = parsing::tag(recipe_, words_, lexicon);
  }
  Print(const Print&) = delete;
  Print& operator=(const Print&) = delete;
  const parsing::Row& row() const { return row_; }

 private:
  Recipe recipe_;
  Words words_;
  parsing::Row row_;
};

bool says_any(std::string_view words, std::initializer_list<const char*> phrases) {
  return std::any_of(phrases.begin(), phrases.end(),
                     [&](const char* p) { return words.find(p) != std::string_view::npos; });
}

/// Words that leave the amount to the cook.
bool leaves_it_to_the_cook(std::string_view plain) {
  return says_any(plain, {"as much as", "as many as", "enough", "sufficient", "to taste", "to your taste", "to your mind",
                          "to your liking", "quantum suff", "q.s.", "at pleasure", "at discretion"});
}

/// Whether the words begin with a minus and a figure.
bool is_negative(std::string_view words) {
  const auto at = words.find_first_not_of(' ');
  if (at == std::string_view::npos || at + 1 >= words.size()) return false;
  const bool minus = words[at] == '-' || words.substr(at, 3) == "\u2212";
  return (minus && words.find_first_of("0123456789") <= at + 3) || words.substr(at, 6) == "minus ";
}

/// The first stuff that the words name from word `from` on; nullptr where they name none.
const Foodstuff* stuff_from(const parsing::Row& row, std::uint32_t from) {
  for (std::uint32_t i = from; i < row.size(); ++i)
    if (const Foodstuff* food = row.food(i)) return food;
  return nullptr;
}

Outcome<std::string> stuff_called(const std::string& said, const Lexicon& lexicon) {
  const std::string plain = to_plain(said);
  std::uint32_t at = 0;
  for (const std::string& form : {plain, singular(plain)})
    if (lexicon.foodstuff_phrases().find(form, at)) return lexicon.foodstuffs()[at].name;
  const Print print(said, lexicon);  // "grated ginger": the stuff with a word before it
  if (const Foodstuff* food = stuff_from(print.row(), 0)) return food->name;
  std::vector<std::string> known;
  for (const Foodstuff& f : lexicon.foodstuffs()) known.push_back(f.name);
  return fault(fmt::format("no stuff is called \"{}\"", said), perhaps(nearest_words(plain, known, 3)));
}

Fault unknown_measure(const std::string& said, const Register& measures) {
  return {fmt::format("no measure is called \"{}\"", said), {}, 0, perhaps(nearest_words(said, measures.measures(), 3))};
}

MeasureAnswer no_figure(MeasureAnswer answer, std::string why) {
  answer.kind = MeasureAnswer::Kind::no_figure;
  answer.why = std::move(why);
  return answer;
}

/// The words after the number that no table knows; empty where there are none.
std::string unknown_word(const parsing::Row& row, const parsing::PrintedAmount& amount) {
  for (std::uint32_t i = amount.quantity_at.end; i < row.size(); ++i) {
    if (row.point(i) || row.key(i) == "of" || row.key(i) == "a" || row.key(i) == "an") continue;
    if (row.food(i) != nullptr || row.tags[i].measure != parsing::kNone || row.tags[i].food_words > 0) return {};
    if (row.tags[i].roles != 0) continue;
    return std::string(row.key(i));
  }
  return {};
}

/// The amount of the words that is most wanted: the first with a number, else the first at all.
const parsing::PrintedAmount* chief(const std::vector<parsing::PrintedAmount>& amounts) {
  for (const auto& a : amounts)
    if (a.quantity && !a.measure.empty()) return &a;
  for (const auto& a : amounts)
    if (a.quantity) return &a;
  return amounts.empty() ? nullptr : &amounts.front();
}

std::string no_figure_reason(const MeasureAnswer& answer, const Lexicon& lexicon) {
  const MeasureWord* known = lexicon.measure(answer.measure);
  if (known != nullptr && known->kind == "price")
    return fmt::format("a {} is as much as the price of the day gave; none is known, so no figure is given",
                       answer.measure);
  return fmt::format("a {} is of no known size, and none is made up", answer.measure);
}

/// "the weight of four eggs": whole ones, as they lie in the scale.
void in_the_shell(MeasureAnswer& answer) {
  if (answer.of != "egg" || !answer.measure.empty() || !answer.reading.grams) return;
  constexpr Extent eaten{0.87, 0.89, 0.91};  // USDA Agriculture Handbook 8: refuse of eggs 11 percent; see eaten.tsv
  Amount whole = *answer.reading.grams;
  const Extent e = quotient(whole.extent(), eaten);
  whole = {whole.unit, e.low, e.likely, e.high, whole.why + "; weighed in the shell"};
  answer.reading.amount = whole;
  answer.reading.grams = whole;
  answer.reading.millilitres.reset();
}

void by_the_kitchen(MeasureAnswer& answer) {
  if (!answer.reading.millilitres) return;
  // NIST Handbook 44, Appendix C: a cup is 8 US fluid ounces; 15 and 5 ml: FDA, 21 CFR 101.9(b)(5)(viii), and common
  // practice for the metric cup of 250 ml
  constexpr double us_cup = 236.5882365;
  answer.us = by_cup_and_spoon(answer.reading.millilitres->likely, us_cup, us_cup / 16, us_cup / 48);
  answer.metric = by_cup_and_spoon(answer.reading.millilitres->likely, 250, 15, 5);
}

std::optional<MeasureAnswer> as_heat(const std::string& plain, MeasureAnswer answer, const Heats& heats) {
  const Heat* heat = heats.named_in(plain);
  if (heat == nullptr) return std::nullopt;
  answer.kind = MeasureAnswer::Kind::heat;
  answer.heat = heat;
  answer.range = heat->extent(answer.asked.country, answer.asked.year);
  return answer;
}

/// "3 degrees over proof", "20 under proof", "90 proof".
std::optional<MeasureAnswer> as_degrees_of_proof(const parsing::Row& row, const std::string& plain,
                                                 MeasureAnswer answer, const Heats& heats) {
  const auto at = plain.find("proof");
  if (at == std::string::npos || plain.find("fourth") != std::string::npos) return std::nullopt;
  const auto amounts = parsing::find_amounts(row);
  const auto* number = chief(amounts);
  if (number == nullptr || !number->quantity || number->article) return std::nullopt;
  const Heat* proof = heats.named_in("proof spirit");
  if (proof == nullptr) return std::nullopt;
  const bool over = says_any(plain, {"over proof", "above proof", "overproof"});
  const bool under = says_any(plain, {"under proof", "below proof", "underproof"});
  const auto standard = proof->extent(answer.asked.country, answer.asked.year);
  if (!standard) return std::nullopt;
  const auto degrees = [&](double d) { return over ? d : under ? -d : d - 100; };
  answer.kind = MeasureAnswer::Kind::heat;
  answer.heat = proof;
  const double low = degrees(under ? number->quantity->high : number->quantity->low);
  const double high = degrees(under ? number->quantity->low : number->quantity->high);
  answer.range = Extent{over_proof(low, standard->low), over_proof((low + high) / 2, standard->likely),
                        over_proof(high, standard->high)};
  answer.why = fmt::format("{:.4g} degrees {} proof", number->quantity->low, over ? "over" : under ? "under" : "of");
  return answer;
}

Outcome<bool> in_bounds(const MeasureQuestion& q) {
  if (q.words.find_first_not_of(" \t\n") == std::string::npos)
    return fault("no amount is given", "say it as a recipe would: \"half a gill\"");
  if (is_negative(q.words)) return fault(fmt::format("\"{}\" is less than nothing", q.words), "give an amount over nought");
  if (q.year != 0 && (q.year < first_year || q.year > last_year))
    return fault(fmt::format("{} is outside the years that the register knows", q.year),
                 fmt::format("give a year of printing from {} to {}", first_year, last_year));
  return true;
}

Outcome<MeasureAnswer> as_amount(const parsing::Row& row, const std::string& plain, MeasureAnswer answer,
                                 const Register& measures, const Lexicon& lexicon) {
  const auto amounts = parsing::find_amounts(row);
  const auto* amount = chief(amounts);
  if (amount == nullptr || !amount->quantity) {
    if (leaves_it_to_the_cook(plain) || (amount != nullptr && amount->vague))
      return no_figure(std::move(answer), "the print leaves the amount to the cook; no figure is made up");
    return tl::unexpected(unknown_measure(plain, measures));
  }
  answer.quantity = *amount->quantity;
  answer.measure = amount->measure;
  answer.size = amount->note;
  if (!(answer.quantity.high > 0) || answer.quantity.high > absurd)
    return fault(fmt::format("{:.6g} is no amount that a kitchen knows", answer.quantity.high),
                 fmt::format("give an amount over nought and up to {:.0f}", absurd));
  if (answer.of.empty())
    if (const Foodstuff* food = stuff_from(row, amount->next)) answer.of = food->name;
  if (answer.measure.empty()) {
    const std::string unknown = unknown_word(row, *amount);
    if (!unknown.empty() && answer.of.empty()) return tl::unexpected(unknown_measure(unknown, measures));
    if (answer.of.empty())
      return fault(fmt::format("\"{}\" names neither a measure nor a thing", answer.asked.words),
                   "say a measure, as in \"two gills\", or a stuff, as in \"two onions\"");
  }
  auto reading = measures.read(answer.measured());
  if (!reading) {
    auto why = no_figure_reason(answer, lexicon);
    return no_figure(std::move(answer), std::move(why));
  }
  answer.reading = std::move(*reading);
  if (plain.find("weight of") != std::string::npos) in_the_shell(answer);
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
  const Print print(question.words, lexicon);
  if (auto proof = as_degrees_of_proof(print.row(), plain, answer, heats)) return *proof;
  if (leaves_it_to_the_cook(plain) && !says_any(plain, {"will lie"}))
    return no_figure(std::move(answer), "the print leaves the amount to the cook; no figure is made up");
  if (auto heat = as_heat(plain, answer, heats)) return *heat;
  return as_amount(print.row(), plain, std::move(answer), measures, lexicon);
}

}  // namespace gallipot
