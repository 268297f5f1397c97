// A measure as JSON.
#include <set>

#include "query/reporting/json.h"
#include "query/reporting/measuring.h"

namespace gallipot {
namespace {

void write_year(JsonWriter& json, const char* name, int year) {
  json.Key(name);
  if (year == 0)
    json.Null();
  else
    json.Int(year);
}

void write_three(JsonWriter& json, const char* name, double low, double likely, double high) {
  json.Key(name);
  json.StartArray();
  for (const double v : {low, likely, high}) json.Double(v);
  json.EndArray();
}

const char* rule_name(Reading::Rule rule) {
  switch (rule) {
    case Reading::Rule::decision:
      return "decision";
    case Reading::Rule::book:
      return "book";
    case Reading::Rule::period:
      return "period";
    case Reading::Rule::table:
      break;
  }
  return "table";
}

const char* kind_name(Heat::Kind kind) {
  switch (kind) {
    case Heat::Kind::oven:
      return "oven";
    case Heat::Kind::water:
      return "water";
    case Heat::Kind::fat:
      return "fat";
    case Heat::Kind::sugar:
      return "sugar";
    case Heat::Kind::spirit:
      return "spirit";
    case Heat::Kind::vinegar:
      break;
  }
  return "vinegar";
}

bool is_temperature(Heat::Kind kind) { return kind != Heat::Kind::spirit && kind != Heat::Kind::vinegar; }

void write_asked(JsonWriter& json, const MeasureQuestion& q) {
  json.Key("asked");
  json.StartObject();
  write_field(json, "words", q.words);
  write_field_or_null(json, "of", q.of);
  write_year(json, "year", q.year);
  write_field_or_null(json, "country", q.country);
  write_field_or_null(json, "book", q.book);
  json.EndObject();
}

void write_agreement(JsonWriter& json, const Reading& reading) {
  json.Key("agreement");
  std::set<std::string> heard;
  unsigned aside = 0;
  double least = 1e300, most = 0;
  for (const Attestation& a : reading.witnesses) {
    if (a.set_aside) {
      ++aside;
      continue;
    }
    heard.insert(a.book.empty() ? a.who.substr(0, a.who.find_first_of(",:;")) : a.book);
    least = std::min(least, a.one.likely);
    most = std::max(most, a.one.likely);
  }
  if (heard.empty()) {
    json.Null();
    return;
  }
  json.StartObject();
  json.Key("witnesses");
  json.Uint64(heard.size());
  json.Key("set_aside");
  json.Uint(aside);
  json.Key("least");
  json.Double(least);
  json.Key("most");
  json.Double(most);
  write_field(json, "unit", unit_name(reading.witnesses.front().one.unit));
  json.EndObject();
}

void write_witnesses(JsonWriter& json, const Reading& reading) {
  json.Key("witnesses");
  json.StartArray();
  for (const Attestation& a : reading.witnesses) {
    json.StartObject();
    write_field(json, "who", a.who);
    write_field_or_null(json, "book", a.book);
    write_field_or_null(json, "page", a.page);
    write_year(json, "line", static_cast<int>(a.line));
    write_field_or_null(json, "of", a.of);
    write_field_or_null(json, "country", a.country);
    write_year(json, "year", a.year);
    write_field(json, "said", a.said);
    json.Key("one");
    write_amount(json, a.one);
    json.Key("set_aside");
    json.Bool(a.set_aside);
    write_field_or_null(json, "quote", a.quote);
    json.EndObject();
  }
  json.EndArray();
  json.Key("sources");
  json.StartArray();
  for (const std::string& source : reading.sources) json.String(source);
  json.EndArray();
}

void write_decision(JsonWriter& json, const std::optional<Decision>& decision) {
  json.Key("decision");
  if (!decision) {
    json.Null();
    return;
  }
  json.StartObject();
  write_field_or_null(json, "measure", decision->measure);
  write_field_or_null(json, "size", decision->size);
  write_field_or_null(json, "of", decision->of);
  write_field_or_null(json, "book", decision->book);
  write_field_or_null(json, "country", decision->country);
  write_year(json, "from", decision->from);
  write_year(json, "to", decision->to);
  write_field_or_null(json, "note", decision->note);
  write_field_or_null(json, "decided", decision->decided);
  json.EndObject();
}

void write_reading(JsonWriter& json, const MeasureAnswer& answer) {
  const Reading& r = answer.reading;
  json.Key("quantity");
  write_range(json, answer.quantity);
  write_field_or_null(json, "measure", answer.measure);
  write_field_or_null(json, "size", answer.size);
  write_field_or_null(json, "of", answer.of);
  json.Key("amount");
  write_amount(json, std::optional<Amount>(r.amount));
  json.Key("volume");
  write_amount(json, r.millilitres);
  json.Key("weight");
  write_amount(json, r.grams);
  json.Key("kitchen");
  if (answer.us.empty()) {
    json.Null();
  } else {
    json.StartObject();
    write_field(json, "us", answer.us);
    write_field(json, "metric", answer.metric);
    json.EndObject();
  }
  write_field(json, "rule", rule_name(r.rule));
  write_agreement(json, r);
  write_witnesses(json, r);
  write_decision(json, r.decision);
  write_field(json, "why", r.amount.why);
}

void write_heat(JsonWriter& json, const MeasureAnswer& answer) {
  const Heat& heat = *answer.heat;
  json.Key("heat");
  json.StartObject();
  write_field(json, "name", heat.name);
  write_field(json, "kind", kind_name(heat.kind));
  write_field_or_null(json, "sign", heat.sign);
  write_field(json, "unit", is_temperature(heat.kind) ? "degree Fahrenheit" : "part in a hundred");
  if (answer.range) {
    const Extent& e = *answer.range;
    write_three(json, "range", e.low, e.likely, e.high);
    if (is_temperature(heat.kind)) write_three(json, "celsius", celsius(e.low), celsius(e.likely), celsius(e.high));
  } else {
    json.Key("range");
    json.Null();
  }
  json.Key("witnesses");
  json.StartArray();
  for (const HeatWitness& w : heat.witnesses) {
    json.StartObject();
    write_field(json, "source", w.source);
    json.Key("figures");
    write_range(json, Range{w.low, w.high});
    write_field_or_null(json, "country", w.country);
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
  write_field_or_null(json, "why", answer.why);
}

}  // namespace

std::string measure_as_json(const MeasureAnswer& answer) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    write_asked(json, answer.asked);
    switch (answer.kind) {
      case MeasureAnswer::Kind::amount:
        write_field(json, "kind", "amount");
        write_reading(json, answer);
        break;
      case MeasureAnswer::Kind::heat:
        write_field(json, "kind", "heat");
        write_heat(json, answer);
        break;
      case MeasureAnswer::Kind::no_figure:
        write_field(json, "kind", "none");
        json.Key("amount");
        json.Null();
        write_field(json, "why", answer.why);
        break;
    }
    json.EndObject();
  });
}

}  // namespace gallipot
