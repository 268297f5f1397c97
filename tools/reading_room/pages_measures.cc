// The register of measures: what a measure held, on what evidence, and the cook's decisions.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/catalogue/country.h"
#include "indexer/measures/decisions.h"
#include "query/dossier/keep.h"
#include "query/reporting/amounts.h"
#include "tools/reading_room/pages.h"
#include "tools/reading_room/recipe_text.h"

namespace gallipot::room {
namespace {

/// What a form asks of the register, as texts that the register's views may point into.
struct Question {
  double low = 1, high = 1;
  std::string measure, note, of, country, book;
  int year = 0;
};

std::string first_given(const Request& request, const char* name) {
  return request.method == "POST" ? request.field(name) : request.asked(name);
}

Outcome<Question> question_of(const Visit& visit) {
  const Request& request = visit.request;
  Question out;
  if (const std::string said = first_given(request, "amount"); !said.empty()) {
    const auto amount = cooks_number(said);
    if (!amount || !(*amount > 0))
      return fault(fmt::format("\"{}\" is no amount", said.substr(0, 40)), "write it as 1, 0.5 or 1 1/2");
    out.low = out.high = *amount;
  }
  if (const std::string said = first_given(request, "measure"); !said.empty()) {
    std::uint32_t at = 0;
    if (!visit.lexicon().measure_phrases().find(said, at))
      return fault(fmt::format("no measure is known as \"{}\"", said.substr(0, 60)), "choose one from the list");
    out.measure = visit.lexicon().measures()[at].name;
  }
  if (const std::string said = first_given(request, "of"); !said.empty()) {
    auto named = stuff_named(said, visit.lexicon());
    if (!named) return tl::unexpected(named.error());
    out.of = *named;
  }
  if (const std::string said = first_given(request, "year"); !said.empty()) {
    const auto year = whole_number(said);
    if (!year || *year < 1500 || *year > 1950)
      return fault(fmt::format("\"{}\" is no year from 1500 to 1950", said.substr(0, 40)),
                   "write it in four figures, such as 1850");
    out.year = static_cast<int>(*year);
  }
  if (const std::string said = first_given(request, "country"); !said.empty()) {
    auto country = country_named(said);
    if (!country) return tl::unexpected(country.error());
    out.country = *country;
  }
  const std::string size = first_given(request, "size");
  for (const char* known : {"small", "large", "heaped", "scant"})
    if (size == known) out.note = size;
  out.book = first_given(request, "book");
  if (!out.book.empty() && visit.shelf().book(out.book) == nullptr)
    return fault("the shelf has no such book", "choose one from the list");
  return out;
}

void set_amount(Fields& fields, const std::string& name, const std::optional<Amount>& amount) {
  if (!amount) {
    fields.set(name, false);
    return;
  }
  fields.set(name, write_amount(*amount).text());
}

Fields answer_told(const Question& question, const gallipot::Reading& reading) {
  static constexpr const char* rules[] = {"your own decision", "what the book says of its own measures",
                                          "what books and tables of its time and country say",
                                          "the law or custom of the time"};
  Fields out;
  const WrittenAmount written = write_amount(reading.amount);
  out.set("figure", written.figure);
  set(out, "unit", written.unit);
  set(out, "range", written.range);
  out.set("drawn", amount_drawn(reading.amount));
  set(out, "why", reading.amount.why);
  out.set("rule", rules[static_cast<std::size_t>(reading.rule)]);
  set_amount(out, "ml", reading.millilitres);
  set_amount(out, "g", reading.grams);
  std::vector<Fields> heard, sources;
  for (const Attestation& one : reading.witnesses) {
    Fields item;
    item.set("who", one.who);
    item.set("said", one.said);
    set(item, "page", one.page);
    set(item, "quote", one.quote);
    set(item, "comes_to", write_amount(one.one).text());
    item.set("aside", one.set_aside);
    heard.push_back(std::move(item));
  }
  for (const std::string& source : reading.sources) {
    Fields item;
    item.set("words", source);
    sources.push_back(std::move(item));
  }
  out.set("any_heard", !heard.empty());
  set_list(out, "heard", std::move(heard));
  out.set("any_sources", !sources.empty());
  set_list(out, "sources", std::move(sources));
  out.set("asked_measure", question.measure);
  return out;
}

std::string decision_words(const Decision& one) {
  Amount amount{one.unit, one.low, one.likely, one.high, {}};
  std::string what = one.size.empty() ? one.measure : one.size + " " + one.measure;
  if (!one.of.empty()) what += (what.empty() ? "one " : " of ") + one.of;
  std::string where = "everywhere";
  if (!one.book.empty()) where = "in " + one.book;
  if (!one.country.empty()) where = "in " + one.country;
  if (one.from > 0 || one.to > 0) where += fmt::format(", {} to {}", one.from, one.to);
  return fmt::format("{}: {}, {}", what, write_amount(amount).text(), where);
}

}  // namespace

Outcome<Answer> measures_page(const Visit& visit) {
  const auto question = question_of(visit);
  if (!question) return tl::unexpected(question.error());
  Fields fields = fields_of(visit);
  for (const char* name : {"amount", "measure", "of", "year", "country", "size"})
    set(fields, name, visit.request.asked(name));
  std::vector<Fields> measures, decisions;
  for (const std::string& one : visit.shelf().measures()->measures()) {
    Fields item;
    item.set("measure_name", one);
    measures.push_back(std::move(item));
  }
  set_list(fields, "measures", std::move(measures));
  const bool asked = !question->measure.empty() || !question->of.empty();
  fields.set("asked", asked);
  if (asked) {
    Measured of;
    of.low = question->low;
    of.high = question->high;
    of.measure = question->measure;
    of.note = question->note;
    of.of = question->of;
    of.year = question->year;
    of.country = question->country;
    of.book = question->book;
    const auto reading = visit.shelf().measures()->read(of);
    if (reading)
      fields.set("answer", answer_told(*question, *reading));
    else
      fields.set("answer", false);
  }
  const auto kept = read_decisions(decisions_beside(visit.room.readers().index()));
  if (!kept) set(fields, "damaged", kept.error().what);
  for (const Decision& one : kept ? *kept : std::vector<Decision>{}) {
    Fields item;
    item.set("words", decision_words(one));
    set(item, "decision_note", one.note);
    item.set("date", one.decided);
    decisions.push_back(std::move(item));
  }
  fields.set("any_decisions", !decisions.empty());
  set_list(fields, "decisions", std::move(decisions));
  return page(visit, "Measures", "measures", "room_measures", std::move(fields));
}

Outcome<Answer> take_decision(const Visit& visit) {
  const auto question = question_of(visit);
  if (!question) return tl::unexpected(question.error());
  const auto value = cooks_number(visit.request.field("value"));
  if (!value || !(*value > 0))
    return fault("the decision has no amount", "write how much one of the measure is, such as 90");
  const std::string unit = visit.request.field("unit");
  Decision decision;
  decision.measure = question->measure;
  decision.size = question->note;
  decision.of = question->of;
  decision.unit = unit == "g" ? Amount::Unit::gram : Amount::Unit::millilitre;
  decision.low = decision.likely = decision.high = *value;
  decision.country = question->country;
  decision.note = visit.request.field("note");
  decision.decided = today();
  if (decision.measure.empty() && decision.of.empty())
    return fault("the decision names no measure", "choose one from the list");
  const auto done = record_decision(decisions_beside(visit.room.readers().index()), decision);
  if (!done) return tl::unexpected(done.error());
  return go_to(address("/measures", {{"measure", question->measure},
                                     {"size", question->note},
                                     {"of", question->of},
                                     {"country", question->country},
                                     {"year", question->year > 0 ? std::to_string(question->year) : ""}}));
}

}  // namespace gallipot::room
