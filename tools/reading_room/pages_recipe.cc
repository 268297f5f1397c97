// A recipe as it was printed, with what was read from it, and the corrections of that.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/correcting/readings.h"
#include "query/citing/cite.h"
#include "query/reporting/amounts.h"
#include "tools/reading_room/pages.h"
#include "tools/reading_room/recipe_text.h"

namespace gallipot::room {
namespace {

std::string number(double value) { return fmt::format("{:.6g}", value); }

std::string quantity_words(const Ingredient& one) {
  if (!one.quantity) return {};
  std::string out = number(one.quantity->low);
  if (one.quantity->high != one.quantity->low) out += "\xE2\x80\x93" + number(one.quantity->high);
  if (!one.measure_note.empty()) out += " " + one.measure_note;
  if (!one.measure.empty()) out += " " + one.measure;
  return out;
}

Fields reading_told(const ComparableRecipe& recipe, std::size_t i, const std::vector<PlacedCorrection>& placed) {
  const ComparableIngredient& one = recipe.ingredients[i];
  Fields item;
  item.set("n", std::to_string(i + 1));
  item.set("name", one.printed.name);
  item.set("printed", std::string(one.printed.span.in(recipe.recipe.text)));
  item.set("line", std::to_string(line_of_text(recipe.recipe, one.printed.span.begin)));
  set(item, "reads", quantity_words(one.printed));
  if (one.metric) {
    const WrittenAmount written = write_amount(*one.metric);
    item.set("figure", written.figure);
    set(item, "unit", written.unit);
    set(item, "range", written.range);
    set(item, "why", one.metric->why);
    set(item, "drawn", amount_drawn(*one.metric));
  } else {
    for (const char* name : {"figure", "unit", "range", "why", "drawn"}) item.set(name, false);
  }
  set(item, "low", one.printed.quantity ? number(one.printed.quantity->low) : "");
  set(item, "high",
      one.printed.quantity && one.printed.quantity->high != one.printed.quantity->low
          ? number(one.printed.quantity->high)
          : "");
  set(item, "measure", one.printed.measure);
  set(item, "relation", relation_words(one.printed));
  std::string corrected;
  for (const PlacedCorrection& correction : placed)
    if (correction.ingredient == i)
      corrected += (corrected.empty() ? "" : " ") + correction_sentence(*correction.correction);
  set(item, "corrected", corrected);
  return item;
}

std::vector<Fields> steps_told(const ComparableRecipe& recipe) {
  std::vector<Fields> out;
  for (const Step& step : recipe.steps) {
    Fields item;
    item.set("op", step.op);
    set(item, "minutes", step.minutes ? write_minutes(*step.minutes) : "");
    item.set("step_words", std::string(step.span.in(recipe.recipe.text)));
    out.push_back(std::move(item));
  }
  return out;
}

std::vector<Fields> corrections_told(const std::vector<PlacedCorrection>& placed) {
  std::vector<Fields> out;
  for (const PlacedCorrection& one : placed) {
    Fields item;
    item.set("number", std::to_string(one.correction->number));
    item.set("sentence", correction_sentence(*one.correction));
    set(item, "correction_note", one.correction->note);
    item.set("date", one.correction->corrected);
    out.push_back(std::move(item));
  }
  return out;
}

/// Words of a form, white space folded as it is in a recipe's text.
std::string folded(const std::string& text) {
  std::string out;
  for (const char c : trimmed(text)) {
    const bool white = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!white)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

Outcome<Correction> amount_asked(const Request& request, Correction out, const Lexicon& lexicon) {
  out.kind = Correction::Kind::amount;
  const std::string low = request.field("low"), high = request.field("high");
  if (!low.empty()) {
    const auto from = cooks_number(low), to = high.empty() ? from : cooks_number(high);
    if (!from || !to)
      return fault(fmt::format("\"{}\" is no amount", (from ? high : low).substr(0, 40)),
                   "write it as 3, 0.5 or 1 1/2");
    out.quantity = Range{std::min(*from, *to), std::max(*from, *to)};
  }
  const std::string said = request.field("measure");
  if (!said.empty()) {
    std::uint32_t at = 0;
    if (!lexicon.measure_phrases().find(said, at))
      return fault(fmt::format("no measure is known as \"{}\"", said.substr(0, 60)),
                   "write it in the singular, such as ounce, teacup or pint");
    out.measure = lexicon.measures()[at].name;
  }
  return out;
}

Outcome<Correction> ingredient_asked(const Request& request, Correction out, const Lexicon& lexicon) {
  out.kind = Correction::Kind::ingredient;
  const std::string said = request.field("name");
  if (said.empty()) return out;
  auto named = stuff_named(said, lexicon);
  if (!named) return tl::unexpected(named.error());
  out.name = *named;
  if (const Foodstuff* stuff = lexicon.foodstuff(out.name)) out.stuff = stuff->kind;
  return out;
}

/// What the form says is to be put right, in a recipe that is there.
Outcome<Correction> correction_asked(const Visit& visit, const ComparableRecipe& recipe) {
  const Request& request = visit.request;
  const auto kind = kind_named(request.field("kind"));
  if (!kind) return fault("the form does not say what is wrong", "open the recipe again and send it from there");
  Correction out;
  out.kind = *kind;
  out.book = recipe.book;
  out.printed = folded(request.field("printed"));
  out.note = request.field("note");
  out.was = request.field("was");
  out.title = folded(request.field("title"));
  if (*kind == Correction::Kind::title || *kind == Correction::Kind::no_recipe || *kind == Correction::Kind::joined) {
    out.printed = recipe.recipe.title_printed.empty() ? recipe.recipe.title : recipe.recipe.title_printed;
    out.line = recipe.recipe.line_start;
    if (*kind == Correction::Kind::title && out.title.empty())
      return fault("the new title is empty", "write it as it should stand");
    return out;
  }
  const auto line = whole_number(request.field("line"));
  const auto place = gallipot::place_of(
      recipe.recipe, out.printed, line && *line > 0 ? static_cast<std::uint32_t>(*line) : recipe.recipe.line_start);
  if (!place)
    return fault(fmt::format("the words \"{}\" do not stand in this recipe", out.printed.substr(0, 80)),
                 "copy them letter by letter from the print");
  out.line = line_of_text(recipe.recipe, place->begin);
  if (*kind == Correction::Kind::amount) return amount_asked(request, std::move(out), visit.lexicon());
  if (*kind == Correction::Kind::ingredient) return ingredient_asked(request, std::move(out), visit.lexicon());
  if (*kind == Correction::Kind::begins && out.title.empty()) out.title = out.printed;
  return out;
}

}  // namespace

Outcome<Answer> recipe_page(const Visit& visit) {
  const auto recipe = visit.shelf().recipe(visit.request.asked("id"));
  if (!recipe) return nothing_here(visit, recipe.error());
  const Book* book = visit.shelf().book(recipe->book);
  if (book == nullptr) return fault("the index has the recipe but not its book", "index the shelf again");
  const Citation citation = cite(*recipe, *book);
  const auto placed = corrections_in(*recipe, visit.shelf().corrections());
  const Recipe& print = recipe->recipe;
  Fields fields = fields_of(visit);
  fields.set("id", recipe->id);
  fields.set("title", print.title.empty() ? recipe->id : print.title);
  set(fields, "chapter", print.chapter);
  fields.set("book_title", book->title);
  fields.set("book_address", address("/book", {{"id", book->id}}));
  fields.set("year", year_of(*book));
  fields.set("place", citation.place_in_book());
  set(fields, "contributor", print.contributor);
  fields.set("note", citation.note());
  set(fields, "doubt", print.doubt);
  fields.set("text", marked_text(*recipe, placed));
  std::vector<Fields> readings;
  for (std::size_t i = 0; i < recipe->ingredients.size(); ++i) readings.push_back(reading_told(*recipe, i, placed));
  fields.set("has_readings", !readings.empty());
  set_list(fields, "readings", readings);
  auto steps = steps_told(*recipe);
  fields.set("has_steps", !steps.empty());
  set_list(fields, "steps", steps);
  auto corrections = corrections_told(placed);
  fields.set("has_corrections", !corrections.empty());
  set_list(fields, "corrections", corrections);
  std::vector<Fields> cautions;
  for (const std::string& caution : recipe->cautions) {
    Fields item;
    item.set("words", caution);
    cautions.push_back(std::move(item));
  }
  set_list(fields, "cautions", cautions);
  fields.set("sheet", address("/sheet", {{"id", recipe->id}}));
  fields.set("lineage", address("/lineage", {{"of", recipe->id}}));
  fields.set("variants", address("/variants", {{"of", recipe->id}}));
  fields.set("kept_told", visit.request.asked("told") == "later");
  return page(visit, print.title.empty() ? recipe->id : print.title, "search", "room_recipe", std::move(fields));
}

Outcome<Answer> take_correction(const Visit& visit) {
  const std::string id = visit.request.field("id");
  const auto recipe = visit.shelf().recipe(id);
  if (!recipe) return nothing_here(visit, recipe.error());
  auto asked = correction_asked(visit, *recipe);
  if (!asked) return tl::unexpected(asked.error());
  const auto recorded = record_correction(corrections_beside(visit.room.readers().index()), std::move(*asked));
  if (!recorded) return tl::unexpected(recorded.error());
  const bool at_once = visit.room.indexing().renew(recipe->book, recorded->of_cut());
  if (recorded->of_cut()) return go_to(at_once ? "/corrections" : "/corrections?told=later");
  return go_to(address("/recipe", {{"id", id}}) + "#readings");
}

Outcome<Answer> take_withdrawal(const Visit& visit) {
  const auto asked = whole_number(visit.request.field("number"));
  if (!asked || *asked < 1)
    return fault("the form does not say which correction", "open the page again and send it from there");
  const auto gone =
      withdraw_correction(corrections_beside(visit.room.readers().index()), static_cast<unsigned>(*asked));
  if (!gone) return tl::unexpected(gone.error());
  visit.room.indexing().renew(gone->book, gone->of_cut());
  const std::string back = visit.request.field("id");
  return go_to(back.empty() ? "/corrections" : address("/recipe", {{"id", back}}) + "#readings");
}

Outcome<Answer> corrections_page(const Visit& visit) {
  Fields fields = fields_of(visit);
  std::vector<Fields> items;
  for (const Correction& one : visit.shelf().corrections().all()) {
    Fields item;
    item.set("number", std::to_string(one.number));
    item.set("sentence", correction_sentence(one));
    item.set("kind", kind_name(one.kind));
    item.set("book_id", one.book);
    item.set("line", std::to_string(one.line));
    set(item, "correction_note", one.note);
    item.set("date", one.corrected);
    items.push_back(std::move(item));
  }
  fields.set("any", !items.empty());
  set_list(fields, "corrections", items);
  std::vector<Fields> doubts;
  for (const Fault& doubt : visit.shelf().doubts()) {
    Fields item;
    item.set("words", doubt.what + "; " + doubt.mend);
    doubts.push_back(std::move(item));
  }
  set_list(fields, "doubts", doubts);
  fields.set("later", visit.request.asked("told") == "later");
  fields.set("busy", visit.room.indexing().busy());
  return page(visit, "Corrections", "", "room_corrections", std::move(fields));
}

}  // namespace gallipot::room
