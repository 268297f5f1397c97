// The register of measures: what a measure held, on what evidence, and the cook's decisions.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/catalogue/country.h"
#include "indexer/measures/decisions.h"
#include "indexer/measures/heats.h"
#include "query/dossier/keep.h"
#include "query/measuring/measure.h"
#include "query/reporting/amounts.h"
#include "query/reporting/measuring.h"
#include "tools/reading_room/pages.h"
#include "tools/reading_room/recipe_text.h"

namespace gallipot::room {
namespace {

std::string given(const Request& request, const char* name) {
  return request.method == "POST" ? request.field(name) : request.asked(name);
}

Outcome<MeasureQuestion> question_of(const Visit& visit) {
  const Request& request = visit.request;
  MeasureQuestion out;
  out.words = given(request, "words");
  out.of = given(request, "of");
  if (const std::string said = given(request, "year"); !said.empty()) {
    const auto year = whole_number(said);
    if (!year || *year < 1500 || *year > 1950)
      return fault(fmt::format("\"{}\" is no year from 1500 to 1950", said.substr(0, 40)),
                   "write it in four figures, such as 1850");
    out.year = static_cast<int>(*year);
  }
  if (const std::string said = given(request, "country"); !said.empty()) {
    auto country = country_named(said);
    if (!country) return tl::unexpected(country.error());
    out.country = *country;
  }
  out.book = given(request, "book");
  if (out.book.empty()) return out;
  const Book* book = visit.shelf().book(out.book);
  if (book == nullptr) return fault("the shelf has no such book", "choose one from the list");
  if (out.year == 0) out.year = book->year();
  if (out.country.empty()) out.country = book->country;
  return out;
}

void set_amount(Fields& fields, const std::string& name, const std::optional<Amount>& amount) {
  set(fields, name, amount ? write_amount(*amount).text() : "");
}

/// Who was heard and what the answer rests on.
void tell_evidence(Fields& out, const Reading& reading) {
  std::vector<Fields> heard, sources;
  for (const auto& one : reading.witnesses) {
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
  set_list(out, "heard", heard);
  out.set("any_sources", !sources.empty());
  set_list(out, "sources", sources);
}

void tell_amount(Fields& out, const MeasureAnswer& answer) {
  static constexpr const char* rules[] = {"your own decision", "what the book says of its own measures",
                                          "what books and tables of its time and country say",
                                          "the law or custom of the time"};
  const Reading& reading = answer.reading;
  const WrittenAmount written = write_amount(reading.amount);
  out.set("figure", written.figure);
  set(out, "unit", written.unit);
  set(out, "range", written.range);
  set(out, "drawn", amount_drawn(reading.amount));
  set(out, "amount_why", reading.amount.why);
  out.set("rule", rules[static_cast<std::size_t>(reading.rule)]);
  set_amount(out, "ml", reading.millilitres);
  set_amount(out, "g", reading.grams);
  set(out, "us", answer.us);
  set(out, "metric", answer.metric);
  tell_evidence(out, reading);
}

}  // namespace

Outcome<MeasureAnswer> measure_asked(const Visit& visit) {
  const auto question = question_of(visit);
  if (!question) return tl::unexpected(question.error());
  return measure(*question, *visit.shelf().measures(), visit.room.readers().heats(), visit.lexicon());
}

Outcome<Answer> measures_page(const Visit& visit) {
  Fields fields = fields_of(visit);
  for (const char* name : {"words", "of", "year", "country"}) set(fields, name, visit.request.asked(name));
  const bool asked = !visit.request.asked("words").empty();
  fields.set("asked", asked);
  fields.set("amount", false);
  fields.set("heat", false);
  set(fields, "why", "");
  if (asked) {
    const auto answer = measure_asked(visit);
    if (!answer) return tl::unexpected(answer.error());
    if (answer->kind == MeasureAnswer::Kind::amount) {
      fields.set("amount", true);
      tell_amount(fields, *answer);
    } else {
      // A heat is told as the text report tells it: both scales, the sign a cook goes by, who says so.
      set(fields, answer->kind == MeasureAnswer::Kind::heat ? "heat" : "why",
          answer->kind == MeasureAnswer::Kind::heat ? measure_as_text(*answer, {90}) : answer->why);
    }
  }
  const auto kept = read_decisions(decisions_beside(visit.room.readers().index()));
  set(fields, "damaged", kept ? "" : kept.error().what);
  std::vector<Fields> decisions;
  for (const Decision& one : kept ? *kept : std::vector<Decision>{}) {
    Fields item;
    item.set("decision", decision_in_words(one));
    set(item, "decision_note", one.note);
    item.set("date", one.decided);
    decisions.push_back(std::move(item));
  }
  fields.set("any_decisions", !decisions.empty());
  set_list(fields, "decisions", decisions);
  return page(visit, "Measures", "measures", "room_measures", std::move(fields));
}

Outcome<Answer> take_decision(const Visit& visit) {
  const Request& request = visit.request;
  const auto answer = measure_asked(visit);
  if (!answer) return tl::unexpected(answer.error());
  auto decision = decision_of(request.field("value"), *answer, *visit.shelf().measures(), visit.lexicon());
  if (!decision) return tl::unexpected(decision.error());
  decision->note = request.field("note");
  decision->decided = today();
  const auto done = record_decision(decisions_beside(visit.room.readers().index()), *decision);
  if (!done) return tl::unexpected(done.error());
  return go_to(address("/measures", {{"words", request.field("words")},
                                     {"of", request.field("of")},
                                     {"year", request.field("year")},
                                     {"country", request.field("country")}}));
}

}  // namespace gallipot::room
