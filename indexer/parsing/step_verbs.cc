// Makes the forms of each verb by the rules of English spelling and looks printed words up among them.
#include "indexer/parsing/step_verbs.h"

#include <algorithm>

#include "indexer/lexicon/tables.h"

namespace gallipot::steps {

int operation_number(std::string_view name) {
  const auto it = std::find(operation_names.begin(), operation_names.end(), name);
  return it == operation_names.end() ? -1 : static_cast<int>(it - operation_names.begin());
}

std::string_view operation_name(std::size_t number) { return operation_names[number]; }

std::string_view form_name(VerbForm form) {
  switch (form) {
    case VerbForm::plain:
      return "plain";
    case VerbForm::third:
      return "third";
    case VerbForm::past:
      return "past";
    case VerbForm::gerund:
      return "gerund";
  }
  return "plain";
}

namespace {

bool vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u'; }

// The endings as printed: "-ed", the old "-'d" and bare "-d"; with the last consonant doubled or not, for printers
// differ.
struct Stems {
  std::string plain, doubled;
};

Stems stems(const std::string& base) {
  Stems s{base, {}};
  if (base.back() == 'e' && base.size() > 2 && base[base.size() - 2] != 'e') s.plain.pop_back();
  const std::size_t n = base.size();
  if (n >= 3 && !vowel(base[n - 1]) && vowel(base[n - 2]) && !vowel(base[n - 3])) s.doubled = base + base.back();
  return s;
}

}  // namespace

void StepVerbs::add_form(std::string form, std::uint32_t verb, VerbForm kind) {
  forms_.try_emplace(std::move(form), Form{verb, kind});
}

Outcome<StepVerbs> StepVerbs::load(std::string_view verbs_bytes, std::string_view places_bytes) {
  const auto table = parse_table(verbs_bytes, "step-verbs", "step-verbs.tsv");
  if (!table) return tl::unexpected(table.error());
  const int verb = table->column("verb"), spellings = table->column("spellings"), past = table->column("past"),
            also = table->column("or"), means = table->column("operations");
  if (std::min({verb, spellings, past, also, means}) < 0)
    return fault("the table of verbs lacks a column", "give it verb, spellings, past, or, operations and source",
                 table->file, 1);
  auto cell = [](const Table::Row& row, int column) { return row.cells[static_cast<std::size_t>(column)]; };
  StepVerbs out;
  for (const auto& row : table->rows) {
    StepVerb v;
    v.base = cell(row, verb);
    v.ambiguous = !cell(row, also).empty();
    for (const auto op : parts_of(cell(row, means))) {
      const int number = operation_number(op);
      if (number < 0)
        return fault("\"" + std::string(op) + "\" is not an operation",
                     "use one of the operations of the export schema", table->file, row.line);
      v.operations.push_back(static_cast<std::uint8_t>(number));
    }
    if (v.base.size() < 2 || v.operations.empty())
      return fault("a verb without a meaning", "fill in its row", table->file, row.line);
    out.verbs_.push_back(std::move(v));
  }
  // every verb's own name first, so that no made form of one hides another ("pot" and "pots", "ground" and "grounds")
  for (std::uint32_t i = 0; i < out.verbs_.size(); ++i) out.add_form(out.verbs_[i].base, i, VerbForm::plain);
  for (std::uint32_t i = 0; i < out.verbs_.size(); ++i) {
    for (const auto form : parts_of(cell(table->rows[i], spellings)))
      if (!form.empty()) out.add_form(std::string(form), i, VerbForm::plain);
    for (const auto form : parts_of(cell(table->rows[i], past)))
      if (!form.empty()) out.add_form(std::string(form), i, VerbForm::past);
  }
  for (std::uint32_t i = 0; i < out.verbs_.size(); ++i) {
    out.add_regular_forms(out.verbs_[i].base, i);
    for (const auto form : parts_of(cell(table->rows[i], spellings)))
      if (!form.empty()) out.add_regular_forms(std::string(form), i);
  }
  const auto places = parse_table(places_bytes, "step-places", "step-places.tsv");
  if (!places) return tl::unexpected(places.error());
  const int place = places->column("place"), sort = places->column("sort");
  if (place < 0 || sort < 0)
    return fault("the table of places lacks a column", "give it place, sort and source", places->file, 1);
  for (const auto& row : places->rows) out.places_.emplace(cell(row, place), cell(row, sort));
  return out;
}

std::string_view StepVerbs::place(std::string_view key) const {
  const auto it = places_.find(key);
  return it == places_.end() ? std::string_view{} : std::string_view{it->second};
}

void StepVerbs::add_regular_forms(const std::string& base, std::uint32_t verb) {
  add_form(base + "s", verb, VerbForm::third);
  add_form(base + "es", verb, VerbForm::third);
  const Stems s = stems(base);
  for (const std::string& stem : {s.plain, s.doubled}) {
    if (stem.empty()) continue;
    add_form(stem + "ed", verb, VerbForm::past);
    add_form(stem + "'d", verb, VerbForm::past);
    add_form(stem + "ing", verb, VerbForm::gerund);
  }
  if (base.back() == 'e') add_form(base + "ing", verb, VerbForm::gerund);
  if (base.back() == 'y') {
    add_form(base.substr(0, base.size() - 1) + "ied", verb, VerbForm::past);
    add_form(base.substr(0, base.size() - 1) + "ies", verb, VerbForm::third);
  }
}

VerbReading StepVerbs::find(std::string_view key) const {
  const auto it = forms_.find(key);
  if (it == forms_.end()) return {};
  return {&verbs_[it->second.verb], it->second.form};
}

}  // namespace gallipot::steps
