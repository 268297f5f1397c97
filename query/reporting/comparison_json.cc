// A comparison as JSON: the whole model with all its figures.
#include "query/reporting/json.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

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
  json.Key("citation");
  write_citation(json, witness.citation);
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
  write_field_or_null(json, "note", row.note);
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
    json.EndObject();
  }
  json.EndArray();
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
    write_list(json, "witnesses", comparison.witnesses, write_witness);
    write_list(json, "ingredients", comparison.rows, write_row);
    write_list(json, "steps", comparison.steps, write_step_row);
    json.EndObject();
  });
}

}  // namespace gallipot
