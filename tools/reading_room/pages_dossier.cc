// Dossiers: what the cook keeps.
#include <fmt/format.h>

#include <algorithm>

#include "query/dossier/entries.h"
#include "query/dossier/keep.h"
#include "query/dossier/trials.h"
#include "query/reporting/dossier_report.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

using Standing = DossierRecipe::Standing;

Outcome<Dossier> change(const Visit& visit, const std::function<Outcome<bool>(Dossier&)>& what) {
  return change_dossier(visit.dossiers(), visit.request.field("dossier"), [&](Dossier& dossier) {
    auto done = what(dossier);
    if (done && visit.reading != nullptr) bring_up_to_date(dossier, visit.shelf());
    return done;
  });
}

Answer back_to(const Dossier& dossier, const std::string& place = {}) {
  return go_to(address("/dossier", {{"name", dossier.name}}) + (place.empty() ? "" : "#" + place));
}

/// The dossier that a form names; begun where it names none.
Outcome<std::string> dossier_meant(const Visit& visit) {
  std::string name = visit.request.field("dossier");
  if (!name.empty()) return name;
  const std::string title = visit.request.field("title");
  if (title.empty()) return fault("the new dossier has no name", "write what it is to be called");
  name = dossier_name_of(title);
  const auto listed = list_dossiers(visit.dossiers());
  const auto taken = [&](const std::string& one) {
    return std::any_of(listed.begin(), listed.end(), [&](const ListedDossier& d) { return d.name == one; });
  };
  const std::string stem = name.substr(0, 56);
  for (int i = 2; taken(name); ++i) name = fmt::format("{}-{}", stem, i);
  const auto begun = begin_dossier(visit.dossiers(), name, title, visit.request.field("question"));
  if (!begun) return tl::unexpected(begun.error());
  return begun->name;
}

std::vector<std::string> parted(const std::string& text) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of(" ,;\n\r\t", at), text.size());
    if (end > at) out.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

Fields recipe_told(const DossierRecipe& one) {
  Fields item;
  item.set("id", one.id);
  item.set("recipe_title", one.title.empty() ? one.id : one.title);
  set(item, "citation", one.citation);
  set(item, "reason", one.reason);
  set(item, "note", one.note);
  set(item, "caption", one.caption);
  item.set("by_hand", one.by_hand);
  item.set("chosen", one.standing == Standing::chosen);
  item.set("struck", one.standing == Standing::struck);
  item.set("standing", standing_name(one.standing));
  item.set("address", address("/recipe", {{"id", one.id}}));
  item.set("sheet", address("/sheet", {{"id", one.id}}));
  return item;
}

Fields trial_told(const Trial& trial, const Dossier& dossier) {
  Fields item;
  item.set("number", std::to_string(trial.number));
  item.set("date", trial.date);
  const DossierRecipe* of = dossier.recipe(trial.of);
  item.set("of_title", of != nullptr && !of->title.empty() ? of->title : trial.of);
  set(item, "batch", trial.batch);
  set(item, "changes", trial.changes);
  set(item, "tasting", trial.tasting);
  set(item, "verdict", trial.verdict);
  std::vector<Fields> amounts;
  for (const TrialAmount& one : trial.amounts) {
    Fields amount;
    amount.set("stuff", one.stuff);
    set(amount, "figure", one.amount ? fmt::format("{:.4g}", *one.amount) : "");
    set(amount, "unit", one.unit == "count" ? "" : one.unit);
    amounts.push_back(std::move(amount));
  }
  set_list(item, "amounts", amounts);
  return item;
}

}  // namespace

Outcome<Answer> dossiers_page(const Visit& visit) {
  Fields fields = fields_of(visit);
  std::vector<Fields> items;
  for (const ListedDossier& one : list_dossiers(visit.dossiers())) {
    Fields item;
    item.set("address", address("/dossier", {{"name", one.name}}));
    item.set("title", one.title);
    set(item, "question", one.question);
    set(item, "changed", one.changed.substr(0, 10));
    item.set("count", std::to_string(one.recipes));
    item.set("trial_count", std::to_string(one.trials));
    set(item, "fault",
        one.fault.empty() ? "" : "It cannot be opened: its file is damaged. An earlier version lies beside it.");
    items.push_back(std::move(item));
  }
  fields.set("any", !items.empty());
  set_list(fields, "items", items);
  return page(visit, "Dossiers", "dossiers", "room_dossiers", std::move(fields));
}

Outcome<Answer> dossier_page(const Visit& visit) {
  const auto dossier = open_dossier(visit.dossiers(), visit.request.asked("name"));
  if (!dossier) return nothing_here(visit, dossier.error());
  Fields fields = fields_of(visit);
  fields.set("name", dossier->name);
  fields.set("title", dossier->title);
  set(fields, "question", dossier->question);
  fields.set("begun", dossier->begun);
  fields.set("changed", dossier->changed.substr(0, 10));
  fields.set("revision", std::to_string(dossier->revision));
  std::vector<Fields> recipes, trials, decisions, corrections, cookable;
  Pairs compared;
  for (const DossierRecipe& one : dossier->recipes) {
    recipes.push_back(recipe_told(one));
    if (one.standing == Standing::struck) continue;
    cookable.push_back(recipe_told(one));
    compared.emplace_back("id", one.id);
  }
  for (auto at = dossier->trials.rbegin(); at != dossier->trials.rend(); ++at)
    trials.push_back(trial_told(*at, *dossier));
  for (const DossierDecision& one : dossier->decisions) {
    Fields item;
    set(item, "date", one.date);
    set(item, "about", one.about);
    set(item, "words", one.words);
    set(item, "why", one.why);
    decisions.push_back(std::move(item));
  }
  for (const std::string& one : dossier->corrections) {
    Fields item;
    item.set("words", one);
    corrections.push_back(std::move(item));
  }
  fields.set("any", !recipes.empty());
  fields.set("cooks", !cookable.empty());
  fields.set("tried", !trials.empty());
  fields.set("corrected", !corrections.empty());
  set(fields, "comparison", compared.empty() ? "" : address("/comparison", compared));
  set_list(fields, "recipes", recipes);
  set_list(fields, "cookable", cookable);
  set_list(fields, "trials", trials);
  set_list(fields, "decisions", decisions);
  set_list(fields, "corrections", corrections);
  for (const char* form : {"html", "markdown", "csl", "bibtex", "ris", "csv", "json"})
    fields.set(std::string("as_") + form, address("/dossier/export", {{"name", dossier->name}, {"as", form}}));
  return page(visit, dossier->title, "dossiers", "room_dossier", std::move(fields));
}

Outcome<Answer> dossier_export(const Visit& visit) {
  const auto dossier = open_dossier(visit.dossiers(), visit.request.asked("name"));
  if (!dossier) return nothing_here(visit, dossier.error());
  const auto exported = export_dossier(*dossier, visit.shelf(), visit.reading->yardstick, visit.request.asked("as"));
  if (!exported) return tl::unexpected(exported.error());
  Answer out = file_answer(exported->type, exported->bytes, dossier->name + exported->ending);
  return out;
}

Outcome<Answer> take_new_dossier(const Visit& visit) {
  if (visit.request.field("title").empty())
    return fault("the new dossier has no name", "write what it is to be called");
  const auto name = dossier_meant(visit);
  if (!name) return tl::unexpected(name.error());
  return go_to(address("/dossier", {{"name", *name}}));
}

Outcome<Answer> take_set(const Visit& visit) {
  const Request& request = visit.request;
  std::vector<std::string> ids = request.fields("id");
  const auto by_hand = parted(request.field("by_hand"));
  for (const std::string& id : by_hand) {
    if (const auto recipe = visit.shelf().recipe(id); !recipe) return tl::unexpected(recipe.error());
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  }
  if (request.field("do") == "compare") {
    if (ids.empty()) return fault("nothing is ticked", "go back and tick the recipes to be compared");
    Pairs query;
    for (const std::string& id : ids) query.emplace_back("id", id);
    return go_to(address("/comparison", query));
  }
  const auto name = dossier_meant(visit);
  if (!name) return tl::unexpected(name.error());
  const Standing standing = standing_named(request.field("standing")).value_or(Standing::kept);
  const auto done = change_dossier(visit.dossiers(), *name, [&](Dossier& dossier) -> Outcome<bool> {
    for (const std::string& id : ids) {
      if (const auto recipe = visit.shelf().recipe(id); !recipe) return tl::unexpected(recipe.error());
      const bool hand = std::find(by_hand.begin(), by_hand.end(), id) != by_hand.end();
      put_in(dossier, id, standing, hand, hand ? "added by hand" : request.field("reason " + id));
    }
    for (const auto& [field, reason] : request.form) {  // what was found and not ticked is struck out
      if (!field.starts_with("reason ")) continue;
      const std::string id = field.substr(7);
      if (std::find(ids.begin(), ids.end(), id) == ids.end() && visit.shelf().recipe(id))
        put_in(dossier, id, Standing::struck, false, reason);
    }
    bring_up_to_date(dossier, visit.shelf());
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done, "recipes");
}

Outcome<Answer> take_dossier_words(const Visit& visit) {
  const auto done = change(visit, [&](Dossier& dossier) -> Outcome<bool> {
    if (!visit.request.field("title").empty()) dossier.title = visit.request.field("title");
    dossier.question = visit.request.field("question");
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done);
}

Outcome<Answer> take_dossier_recipe(const Visit& visit) {
  const Request& request = visit.request;
  const auto done = change(visit, [&](Dossier& dossier) -> Outcome<bool> {
    DossierRecipe* one = dossier.recipe(request.field("id"));
    if (one == nullptr) return fault("the dossier has no such recipe", "open it again");
    if (const auto standing = standing_named(request.field("standing"))) one->standing = *standing;
    one->note = request.field("note");
    one->caption = request.field("caption");
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done, "recipes");
}

Outcome<Answer> take_trial(const Visit& visit) {
  const Request& request = visit.request;
  const auto recipe = visit.shelf().recipe(request.field("of"));
  if (!recipe) return tl::unexpected(recipe.error());
  const std::string said = request.field("batch");
  const auto batch = said.empty() ? std::optional<double>(1) : cooks_number(said);
  if (!batch) return fault(fmt::format("\"{}\" is no batch", said.substr(0, 40)), "write a number, such as 1/2 or 2");
  const auto done = change(visit, [&](Dossier& dossier) -> Outcome<bool> {
    auto trial = next_trial(dossier, *recipe, *batch, request.field("changes"), visit.lexicon());
    if (!trial) return tl::unexpected(trial.error());
    dossier.trials.push_back(std::move(*trial));
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done, "trials");
}

Outcome<Answer> take_trial_words(const Visit& visit) {
  const Request& request = visit.request;
  const auto number = whole_number(request.field("number"));
  const auto done = change(visit, [&](Dossier& dossier) -> Outcome<bool> {
    const auto at = std::find_if(dossier.trials.begin(), dossier.trials.end(), [&](const Trial& one) {
      return number && one.number == static_cast<unsigned long>(*number);
    });
    if (at == dossier.trials.end()) return fault("the dossier has no such trial", "open it again");
    at->tasting = request.field("tasting");
    at->verdict = request.field("verdict");
    if (const std::string date = request.field("date"); !date.empty()) at->date = date.substr(0, 10);
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done, "trials");
}

Outcome<Answer> take_dossier_decision(const Visit& visit) {
  const Request& request = visit.request;
  if (request.field("words").empty()) return fault("the decision is empty", "write what was decided");
  const auto done = change(visit, [&](Dossier& dossier) -> Outcome<bool> {
    dossier.decisions.push_back({today(), request.field("about"), request.field("words"), request.field("why")});
    return true;
  });
  if (!done) return tl::unexpected(done.error());
  return back_to(*done, "decisions");
}

}  // namespace gallipot::room
