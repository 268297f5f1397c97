// The kitchen sheet and the shopping list as JSON: the whole model with all its figures.
#include "query/reporting/json.h"
#include "query/reporting/kitchen.h"
#include "query/reporting/kitchen_words.h"
#include "query/reporting/units.h"

namespace gallipot {
namespace {

class Json {
 public:
  Json(JsonWriter& json, const Sheet& sheet) : json_(json), sheet_(sheet) {}

  void write() {
    json_.StartObject();
    write_field(json_, "id", sheet_.citation.id);
    write_field(json_, "title", sheet_.title);
    write_field_or_null(json_, "dish", sheet_.dish);
    json_.Key("citation");
    write_citation(json_, sheet_.citation);
    write_field(json_, "text", sheet_.text);
    batch();
    list("ingredients", sheet_.lines, [&](const SheetLine& l) { line(l); });
    list("gaps", sheet_.gaps, [&](const Gap& g) { gap(g); });
    json_.Key("plan");
    plan();
    list("equipment", sheet_.vessels, [&](const Vessel& v) { vessel(v); });
    json_.Key("yield");
    made();
    list("words", sheet_.words, [&](const Gloss& g) { gloss(g); });
    json_.Key("keeping");
    keeping();
    texts("cautions", sheet_.cautions);
    texts("notes", sheet_.notes);
    siblings();
    json_.EndObject();
  }

 private:
  template <typename T, typename Write>
  void list(const char* name, const std::vector<T>& all, Write one) {
    json_.Key(name);
    json_.StartArray();
    for (const T& each : all) one(each);
    json_.EndArray();
  }

  void texts(const char* name, const std::vector<std::string>& all) {
    list(name, all, [&](const std::string& text) { json_.String(text); });
  }

  void number(const char* name, double value) {
    json_.Key(name);
    json_.Double(value);
  }

  void amount(const char* name, const std::optional<Amount>& value) {
    json_.Key(name);
    write_amount_with_code(json_, value);
  }

  void printed(const Printed& print) {
    if (print.words.empty()) {
      json_.Null();
      return;
    }
    json_.StartObject();
    write_field(json_, "words", print.words);
    json_.Key("span");
    json_.StartArray();
    json_.Uint64(code_points_to(print.span.begin));
    json_.Uint64(code_points_to(print.span.end));
    json_.EndArray();
    write_field_or_null(json_, "page", print.page);
    json_.EndObject();
  }

  std::size_t code_points_to(std::size_t byte) const {
    std::size_t n = 0;
    for (std::size_t i = 0; i < byte && i < sheet_.text.size(); ++i)
      n += (static_cast<unsigned char>(sheet_.text[i]) & 0xC0) != 0x80 ? 1 : 0;
    return n;
  }

  void batch() {
    json_.Key("batch");
    json_.StartObject();
    number("factor", sheet_.batch.factor);
    write_field_or_null(json_, "why", sheet_.batch.why);
    write_field_or_null(json_, "basis", sheet_.batch.basis);
    amount("basis_amount", sheet_.batch.basis_amount);
    json_.EndObject();
  }

  void line(const SheetLine& one) {
    json_.StartObject();
    write_field(json_, "name", one.name);
    write_field_or_null(json_, "kind", one.kind);
    amount("amount", one.amount);
    json_.Key("measure_out");
    one.measure ? json_.Double(*one.measure) : json_.Null();
    write_field_or_null(json_, "kitchen_measure", one.kitchen);
    write_field_or_null(json_, "how", one.how);
    json_.Key("rate");
    if (one.rate) {
      json_.StartObject();
      amount("part", one.rate->part);
      amount("whole", one.rate->whole);
      write_field(json_, "of", one.rate->of);
      json_.EndObject();
    } else {
      json_.Null();
    }
    json_.Key("more");
    json_.Bool(one.more);
    json_.Key("optional");
    json_.Bool(one.optional);
    write_field_or_null(json_, "alternative_of", one.alternative_of);
    json_.Key("siblings");
    if (one.siblings) {
      json_.StartObject();
      amount("amount", one.siblings->amount);
      json_.Key("asked");
      json_.Uint64(one.siblings->asked);
      by(one.siblings->by);
      json_.EndObject();
    } else {
      json_.Null();
    }
    list("print", one.print, [&](const Printed& p) { printed(p); });
    json_.EndObject();
  }

  void by(const std::vector<Witnessed>& all) {
    list("by", all, [&](const Witnessed& who) {
      json_.StartObject();
      write_field(json_, "id", sheet_.siblings[who.sibling].id);
      write_field(json_, "siglum", sheet_.sigla[who.sibling]);
      write_field_or_null(json_, "words", who.words);
      json_.EndObject();
    });
  }

  void gap(const Gap& one) {
    static constexpr const char* kinds[] = {"cover", "time", "fineness", "doneness", "keeping", "step", "stuff"};
    json_.StartObject();
    write_field(json_, "kind", kinds[static_cast<std::size_t>(one.kind)]);
    write_field(json_, "question", one.question);
    write_field_or_null(json_, "about", one.about);
    json_.Key("borrowed");
    json_.Bool(one.borrowed());
    json_.Key("asked");
    json_.Uint64(one.asked);
    json_.Key("spoke");
    json_.Uint64(one.spoke);
    json_.Key("print");
    printed(one.print);
    list("answers", one.answers, [&](const Answer& answer) {
      json_.StartObject();
      write_field_or_null(json_, "words", answer.words);
      json_.Key("minutes");
      write_range(json_, answer.minutes);
      by(answer.by);
      json_.EndObject();
    });
    json_.EndObject();
  }

  void plan() {
    const Plan& plan = sheet_.plan;
    json_.StartObject();
    json_.Key("dated");
    json_.Bool(plan.dated);
    write_field_or_null(json_, "start", plan.dated ? write_local(plan.start) : std::string());
    write_field_or_null(json_, "end", plan.dated ? write_local(plan.end) : std::string());
    number("work", plan.hands);
    number("watch", plan.watch);
    number("wait", plan.wait);
    number("likely", plan.likely);
    json_.Key("total");
    write_range(json_, plan.total);
    json_.Key("days");
    json_.Uint(plan.days);
    list("steps", plan.tasks, [&](const Task& t) { task(t); });
    list("sessions", plan.sessions, [&](const Session& session) {
      json_.StartObject();
      write_field(json_, "start", moment_words(plan, session.start));
      number("minutes", static_cast<double>((session.end - session.start).count()));
      list("steps", session.tasks, [&](std::size_t t) { json_.Uint64(t); });
      json_.EndObject();
    });
    texts("notes", plan.notes);
    json_.EndObject();
  }

  void task(const Task& one) {
    json_.StartObject();
    write_field(json_, "op", one.op);
    write_field(json_, "at", sheet_.plan.dated ? write_local(one.start) : moment_words(sheet_.plan, one.start));
    json_.Key("minutes");
    write_range(json_, one.minutes);
    number("likely", one.likely);
    write_field(json_, "minutes_from", from_words(one.from));
    write_field(json_, "attention", attention_words(one.attention));
    json_.Key("repeat");
    if (one.repeat) {
      json_.StartObject();
      number("every", one.repeat->every);
      json_.Key("times");
      json_.Uint(one.repeat->times);
      json_.Key("usual");
      json_.Bool(one.repeat->usual);
      write_field_or_null(json_, "words", one.repeat->words);
      json_.EndObject();
    } else {
      json_.Null();
    }
    json_.Key("print");
    printed(one.print);
    json_.EndObject();
  }

  void vessel(const Vessel& one) {
    json_.StartObject();
    write_field(json_, "what", one.what);
    write_field_or_null(json_, "size", one.size);
    amount("holding", one.holding);
    write_field_or_null(json_, "why", one.why);
    json_.Key("print");
    printed(one.print.value_or(Printed{}));
    json_.EndObject();
  }

  void made() {
    const Made& made = sheet_.made;
    json_.StartObject();
    amount("grams", made.grams);
    amount("millilitres", made.millilitres);
    json_.Key("liquid");
    json_.Bool(made.liquid);
    write_field_or_null(json_, "why_not", made.why_not);
    list("parts", made.parts, [&](const Made::Part& part) {
      json_.StartObject();
      write_field(json_, "what", part.what);
      json_.Key("lost");
      json_.Bool(part.lost);
      amount("amount", part.amount);
      write_field(json_, "why", part.why);
      json_.EndObject();
    });
    json_.EndObject();
  }

  void gloss(const Gloss& one) {
    json_.StartObject();
    write_field(json_, "term", one.term);
    write_field(json_, "then", one.then);
    write_field(json_, "now", one.now);
    write_field(json_, "source", one.source);
    json_.Key("print");
    printed(one.print);
    json_.EndObject();
  }

  void percent(const char* name, const std::optional<Amount>& value) {
    json_.Key(name);
    if (!value) {
      json_.Null();
      return;
    }
    json_.StartObject();
    write_field(json_, "unit", "%");
    number("low", value->low);
    number("likely", value->likely);
    number("high", value->high);
    json_.EndObject();
  }

  void keeping() {
    const Keeping& keeping = sheet_.keeping;
    json_.StartObject();
    json_.Key("meant_to_keep");
    json_.Bool(keeping.meant_to_keep);
    write_field_or_null(json_, "why", keeping.why);
    percent("salt", keeping.salt);
    percent("sugar", keeping.sugar);
    percent("acid", keeping.acid);
    percent("vinegar_then", keeping.vinegar_then);
    texts("no_amount", keeping.no_amount);
    texts("counted_as_none", keeping.left_out);
    list("parts", keeping.rows, [&](const Keeping::Row& row) {
      json_.StartObject();
      write_field(json_, "what", row.what);
      percent("percent", row.percent);
      write_field(json_, "source", row.why);
      json_.EndObject();
    });
    list("guidance", keeping.guidance, [&](const Keeping::Guidance& one) {
      json_.StartObject();
      write_field(json_, "says", one.says);
      write_field(json_, "source", one.source);
      json_.EndObject();
    });
    json_.EndObject();
  }

  void siblings() {
    json_.Key("siblings");
    json_.StartArray();
    for (std::size_t s = 0; s < sheet_.siblings.size(); ++s) {
      json_.StartObject();
      write_field(json_, "siglum", sheet_.sigla[s]);
      json_.Key("citation");
      write_citation(json_, sheet_.siblings[s]);
      json_.EndObject();
    }
    json_.EndArray();
  }

  JsonWriter& json_;
  const Sheet& sheet_;
};

}  // namespace

std::string sheet_as_json(const Sheet& sheet) {
  return json_answer([&](JsonWriter& json) { Json(json, sheet).write(); });
}

std::string shopping_as_json(const ShoppingList& list) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("recipes");
    json.StartArray();
    for (std::size_t r = 0; r < list.recipes.size(); ++r) {
      json.StartObject();
      write_field(json, "id", list.recipes[r].id);
      write_field(json, "title", list.titles[r]);
      json.Key("factor");
      json.Double(list.factors[r]);
      json.EndObject();
    }
    json.EndArray();
    json.Key("lines");
    json.StartArray();
    for (const ShoppingLine& line : list.lines) {
      json.StartObject();
      write_field(json, "name", line.name);
      write_field_or_null(json, "shelf", line.shelf);
      write_field_or_null(json, "buy", line.buy);
      json.Key("amount");
      write_amount_with_code(json, line.amount);
      json.Key("more");
      json.Bool(line.more);
      json.Key("optional");
      json.Bool(line.optional);
      json.Key("instead_of");
      json.StartArray();
      for (const std::string& name : line.instead_of) json.String(name);
      json.EndArray();
      json.Key("wanted_by");
      json.StartArray();
      for (const std::size_t r : line.wanted_by) json.String(list.recipes[r].id);
      json.EndArray();
      json.EndObject();
    }
    json.EndArray();
    json.Key("cautions");
    json.StartArray();
    for (const std::string& caution : list.cautions) json.String(caution);
    json.EndArray();
    json.EndObject();
  });
}

}  // namespace gallipot
