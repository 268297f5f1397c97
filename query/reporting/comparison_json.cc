// A comparison as JSON: the whole model with all its figures.
#include "query/reporting/json.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

void write_names(JsonWriter& json, const char* name, const std::vector<std::string>& values) {
  json.Key(name);
  json.StartArray();
  for (const std::string& value : values) json.String(value);
  json.EndArray();
}

void write_witness(JsonWriter& json, const Witness& witness) {
  json.StartObject();
  write_field(json, "siglum", witness.siglum);
  write_field(json, "id", witness.recipe.id);
  json.Key("year");
  if (witness.recipe.year > 0)
    json.Int(witness.recipe.year);
  else
    json.Null();
  json.Key("basis");
  write_amount(json, witness.basis);
  write_names(json, "lacks_ingredients", witness.apart.lacks_stuffs);
  write_names(json, "lacks_steps", witness.apart.lacks_steps);
  write_names(json, "alone_has", witness.apart.alone_stuffs);
  write_names(json, "alone_does", witness.apart.alone_steps);
  json.Key("citation");
  write_citation(json, witness.citation);
  json.EndObject();
}

void write_number(JsonWriter& json, const char* name, double value) {
  json.Key(name);
  json.Double(value);
}

void write_count(JsonWriter& json, const char* name, std::size_t value) {
  json.Key(name);
  json.Uint64(value);
}

/// Places of witnesses, from nought in their order.
void write_places(JsonWriter& json, const char* name, const Places& places) {
  json.Key(name);
  json.StartArray();
  for (const std::size_t place : places) json.Uint64(place);
  json.EndArray();
}

void write_elsewhere(JsonWriter& json, const std::optional<Elsewhere>& elsewhere) {
  if (!elsewhere) {
    json.Null();
    return;
  }
  json.StartObject();
  json.Key("middle");
  write_amount(json, elsewhere->middle);
  write_number(json, "least", elsewhere->least);
  write_number(json, "most", elsewhere->most);
  write_count(json, "recipes", elsewhere->recipes);
  json.EndObject();
}

void write_cell(JsonWriter& json, const Cell& cell) {
  if (!cell.present) {
    json.Null();
    return;
  }
  json.StartObject();
  write_field(json, "printed", cell.printed);
  json.Key("amount");
  write_amount(json, cell.amount);
  json.Key("per_basis");
  write_amount(json, cell.per_basis);
  json.Key("of_batch");
  write_amount(json, cell.of_batch);
  write_field_or_null(json, "how", cell.how);
  json.Key("more");
  json.Bool(cell.more);
  json.Key("optional");
  json.Bool(cell.optional);
  write_field_or_null(json, "alternative_of", cell.alternative_of);
  json.Key("out_of_line");
  json.Bool(cell.out_of_line);
  json.EndObject();
}

void write_row(JsonWriter& json, const Row& row) {
  json.StartObject();
  write_field(json, "name", row.name);
  json.Key("witnesses");
  json.Uint64(row.witnesses);
  json.Key("measured");
  json.Uint64(row.measured);
  json.Key("median");
  write_amount(json, row.median);
  json.Key("least");
  row.median ? json.Double(row.least) : json.Null();
  json.Key("most");
  row.median ? json.Double(row.most) : json.Null();
  json.Key("spread");
  row.spread > 0 ? json.Double(row.spread) : json.Null();
  write_field_or_null(json, "note", row.note);
  json.Key("sorts");
  json.StartArray();
  for (const Sort& sort : row.sorts) {
    json.StartObject();
    write_field(json, "name", sort.name);
    write_places(json, "witnesses", sort.witnesses);
    json.EndObject();
  }
  json.EndArray();
  json.Key("out_of_line");
  json.StartArray();
  for (const OutOfLine& out : row.out_of_line) {
    json.StartObject();
    write_count(json, "witness", out.witness);
    write_number(json, "times", out.times);
    write_number(json, "low", out.low);
    write_number(json, "high", out.high);
    write_count(json, "others", out.others);
    json.EndObject();
  }
  json.EndArray();
  json.Key("elsewhere");
  write_elsewhere(json, row.elsewhere);
  json.Key("cells");
  json.StartArray();
  for (const Cell& cell : row.cells) write_cell(json, cell);
  json.EndArray();
  json.EndObject();
}

void write_step_row(JsonWriter& json, const StepRow& row) {
  json.StartObject();
  write_field(json, "op", row.op);
  json.Key("witnesses");
  json.Uint64(row.witnesses);
  json.Key("consensus");
  json.Bool(row.consensus);
  json.Key("minutes");
  write_range(json, row.minutes);
  json.Key("median_minutes");
  row.minutes ? json.Double(row.middle) : json.Null();
  json.Key("timed");
  json.Uint64(row.timed);
  json.Key("ingredients");
  json.StartArray();
  for (const Named& named : row.stuffs) {
    json.StartObject();
    write_field(json, "name", named.name);
    write_count(json, "witnesses", named.witnesses);
    json.EndObject();
  }
  json.EndArray();
  json.Key("cells");
  json.StartArray();
  for (const StepCell& cell : row.cells) {
    if (cell.op.empty()) {
      json.Null();
      continue;
    }
    json.StartObject();
    write_field(json, "op", cell.op);
    json.Key("minutes");
    write_range(json, cell.minutes);
    write_field(json, "printed", cell.printed);
    write_names(json, "ingredients", cell.stuffs);
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
}

void write_contrast(JsonWriter& json, const Contrast& contrast) {
  json.StartObject();
  write_field(json, "thing", contrast.thing);
  write_field(json, "circumstance", contrast.circumstance);
  json.Key("table");
  json.StartArray();
  for (const std::size_t count :
       {contrast.with_here, contrast.with_there, contrast.without_here, contrast.without_there})
    json.Uint64(count);
  json.EndArray();
  write_number(json, "p", contrast.p);
  write_number(json, "p_among_all", contrast.among);
  write_count(json, "tried", contrast.tried);
  write_field(json, "sentence", contrast.sentence);
  json.EndObject();
}

void write_trend(JsonWriter& json, const Trend& trend) {
  json.StartObject();
  write_field(json, "ingredient", trend.stuff);
  write_number(json, "factor_in_ten_years", trend.decade);
  write_number(json, "low", trend.low);
  write_number(json, "high", trend.high);
  write_number(json, "tau", trend.tau);
  write_number(json, "p", trend.p);
  write_number(json, "p_among_all", trend.among);
  write_count(json, "amounts", trend.amounts);
  write_count(json, "tried", trend.tried);
  json.Key("years");
  json.StartArray();
  json.Int(trend.from);
  json.Int(trend.to);
  json.EndArray();
  write_field(json, "sentence", trend.sentence);
  json.EndObject();
}

void write_conflict(JsonWriter& json, const Conflict& conflict) {
  json.StartObject();
  write_count(json, "step", conflict.step);
  write_count(json, "shorter", conflict.shorter);
  write_count(json, "longer", conflict.longer);
  json.EndObject();
}

template <typename List, typename Write>
void write_list(JsonWriter& json, const char* name, const List& list, Write write) {
  json.Key(name);
  json.StartArray();
  for (const auto& item : list) write(json, item);
  json.EndArray();
}

}  // namespace

std::string comparison_as_json(const Comparison& comparison) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    write_field(json, "dish", comparison.dish);
    json.Key("basis");
    json.StartObject();
    write_field(json, "name", comparison.basis);
    write_field(json, "why", comparison.basis_why);
    json.Key("per");
    if (comparison.per > 0)
      json.Double(comparison.per);
    else
      json.Null();
    write_field(json, "unit", unit_name(comparison.per_unit));
    json.EndObject();
    write_list(json, "notes", comparison.notes, [](JsonWriter& out, const std::string& note) { out.String(note); });
    write_names(json, "chosen", comparison.chosen);
    write_list(json, "witnesses", comparison.witnesses, write_witness);
    write_list(json, "ingredients", comparison.rows, write_row);
    write_list(json, "steps", comparison.steps, write_step_row);
    json.Key("methods_told");
    json.Uint64(comparison.methods);
    write_list(json, "contrasts", comparison.contrasts, write_contrast);
    write_list(json, "trends", comparison.trends, write_trend);
    write_list(json, "conflicts", comparison.conflicts, write_conflict);
    json.EndObject();
  });
}

}  // namespace gallipot
