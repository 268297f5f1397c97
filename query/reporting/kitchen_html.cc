// The kitchen sheet and the shopping list as pages.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/reporting/amounts.h"
#include "query/reporting/html.h"
#include "query/reporting/kitchen.h"
#include "query/reporting/kitchen_words.h"

namespace gallipot {
namespace {

using html::Fields;

Fields list() { return Fields{Fields::type::list}; }

/// A text that a template may ask for: nothing at all where it is empty.
void set_text(Fields& fields, const char* name, const std::string& text) {
  if (text.empty())
    fields.set(name, false);
  else
    fields.set(name, text);
}

/// A section's list with the mark that says whether there is anything in it.
void set_list(Fields& page, const char* name, const char* any, Fields items, bool filled) {
  page.set(name, std::move(items));
  page.set(any, filled);
}

/// A thin line from low to high with a tick at the likely value, on a logarithmic scale of a fourth to four times.
std::string spread(const Amount& amount) {
  constexpr double width = 72, middle = 36, reach = 4;
  const auto x = [&](double value) {
    const double part = std::log(std::clamp(value / amount.likely, 1 / reach, reach)) / std::log(reach);
    return middle + part * (middle - 2);
  };
  if (amount.likely <= 0) return {};
  return fmt::format(
      "<svg class=\"amount spread\" viewBox=\"0 0 {0:g} 10\" role=\"img\" aria-label=\"from {1} to {2}\">"
      "<line x1=\"{3:.1f}\" y1=\"5\" x2=\"{4:.1f}\" y2=\"5\"/><line class=\"likely\" x1=\"{5:.1f}\" y1=\"1.5\" "
      "x2=\"{5:.1f}\" "
      "y2=\"8.5\"/></svg>",
      width, write_figure(amount.low, 1), write_figure(amount.high, 1), x(amount.low), x(amount.high),
      x(amount.likely));
}

Fields line_fields(const SheetLine& line) {
  Fields out;
  out.set("name", line.name);
  std::string printed;
  for (const Printed& print : line.print) printed += (printed.empty() ? "" : "; ") + print.words;
  set_text(out, "printed", printed);
  Fields remarks = list();
  for (const std::string& remark : remarks_of(line)) remarks.push_back(Fields{"remark", remark});
  if (line.rate) remarks.push_back(Fields{"remark", rate_words(*line.rate)});
  out.set("remarks", remarks);
  const std::string measured = measured_words(line);
  out.set("measured", !measured.empty());
  const auto space = measured.rfind(' ');
  out.set("figure", measured.substr(0, space));
  out.set("unit", space == std::string::npos ? std::string() : measured.substr(space + 1));
  const std::string range = line.amount ? range_words(*line.amount) : std::string();
  set_text(out, "range", range);
  out.set("spread", range.empty() ? std::string() : spread(*line.amount));
  set_text(out, "kitchen", line.kitchen);
  return out;
}

void set_plan(Fields& page, const Sheet& sheet) {
  const Plan& plan = sheet.plan;
  page.set("times", time_words(plan));
  page.set("days", fmt::format("{} {}", plan.days, plan.days == 1 ? "day" : "days"));
  Fields tasks = list();
  std::string day;
  for (const Task& task : plan.tasks) {
    Fields one;
    const std::string moment = moment_words(plan, task.start);
    const std::string on = moment.substr(0, moment.rfind(','));
    set_text(one, "new_day", on == day ? std::string() : on);
    day = on;
    one.set("at", write_time(task.start));
    one.set("op", task.op);
    one.set("attention", attention_words(task.attention));
    set_text(one, "printed", task.print.words);
    one.set("length", write_span(task.minutes.low, task.minutes.high));
    set_text(one, "from", task.from == Task::From::print ? std::string() : std::string(from_words(task.from)));
    set_text(one, "repeat", task.repeat ? repeat_words(*task.repeat) : std::string());
    tasks.push_back(one);
  }
  set_list(page, "tasks", "any_task", tasks, !plan.tasks.empty());
  Fields notes = list();
  for (const std::string& note : plan.notes) notes.push_back(Fields{"note", note});
  page.set("plan_notes", notes);
}

void set_made(Fields& page, const Sheet& sheet) {
  set_text(page, "makes", made_words(sheet.made));
  page.set("why_not", sheet.made.why_not);
  Fields parts = list();
  for (const Made::Part& part : sheet.made.parts)
    parts.push_back(Fields{"part", fmt::format("{}{} {}: {}", part.lost ? "less " : "",
                                               write_large_amount(part.amount).text(), part.what, part.why)});
  set_list(page, "parts", "any_part", parts, !sheet.made.parts.empty());
}

void set_ready(Fields& page, const Sheet& sheet) {
  Fields vessels = list();
  for (const Vessel& vessel : sheet.vessels) {
    Fields one;
    one.set("what", vessel.what);
    set_text(one, "size", vessel.size);
    set_text(one, "why", vessel.why);
    vessels.push_back(one);
  }
  set_list(page, "vessels", "any_vessel", vessels, !sheet.vessels.empty());
  Fields words = list();
  for (const Gloss& gloss : sheet.words) {
    Fields one;
    one.set("term", gloss.print.words);
    one.set("then", gloss.then);
    one.set("now", gloss.now);
    one.set("source", gloss.source);
    words.push_back(one);
  }
  set_list(page, "words", "any_word", words, !sheet.words.empty());
}

void set_gaps(Fields& page, const Sheet& sheet) {
  Fields gaps = list();
  for (const Gap& gap : sheet.gaps) {
    std::string by;
    for (const Answer& answer : gap.answers) by += (by.empty() ? "" : " | ") + by_words(sheet, answer.by);
    Fields one;
    one.set("says", gap_sentence(gap));
    one.set("by", by);
    gaps.push_back(one);
  }
  set_list(page, "gaps", "any_gap", gaps, !sheet.gaps.empty());
  Fields siblings = list();
  const std::vector<bool> used = siblings_used(sheet);
  for (std::size_t s = 0; s < used.size(); ++s) {
    if (!used[s]) continue;
    Fields one;
    one.set("siglum", sheet.sigla[s]);
    one.set("note", sheet.siblings[s].note());
    siblings.push_back(one);
  }
  set_list(page, "siblings", "any_sibling", siblings, std::find(used.begin(), used.end(), true) != used.end());
}

Fields sheet_fields(const Sheet& sheet) {
  Fields page;
  page.set("title", sheet.title);
  page.set("cited", sheet.citation.note());
  set_text(page, "batch", sheet.batch.why);
  Fields notes = list();
  for (const std::string& note : sheet.notes) notes.push_back(Fields{"note", note});
  page.set("notes", notes);
  Fields cautions = list();
  for (const std::string& caution : sheet.cautions) cautions.push_back(Fields{"says", caution});
  set_list(page, "cautions", "any_caution", cautions, !sheet.cautions.empty());
  Fields lines = list();
  for (const SheetLine& line : sheet.lines) lines.push_back(line_fields(line));
  page.set("lines", lines);
  set_plan(page, sheet);
  set_made(page, sheet);
  set_ready(page, sheet);
  set_gaps(page, sheet);
  Fields keeping = list();
  for (const std::string& says : keeping_sentences(sheet.keeping)) keeping.push_back(Fields{"says", says});
  set_list(page, "keeping", "keeps", keeping, sheet.keeping.meant_to_keep);
  return page;
}

std::string style() { return fmt::format("<style>\n{}</style>", html::page_file("kitchen.css")); }

/// JSON for a script element: no "</" may end it early.
std::string in_script(std::string json) {
  for (auto at = json.find("</"); at != std::string::npos; at = json.find("</", at + 3)) json.replace(at, 2, "<\\/");
  return "<script type=\"application/ld+json\">\n" + json + "</script>";
}

}  // namespace

std::string sheet_as_html_body(const Sheet& sheet) { return html::render("kitchen", sheet_fields(sheet)); }

std::string sheet_as_html(const Sheet& sheet) {
  html::Page page;
  page.title = sheet.title + ": kitchen sheet";
  page.body = sheet_as_html_body(sheet);
  page.head = style() + "\n" + in_script(sheet_as_linked_data(sheet));
  page.colophon = "Amounts are ranges with a likely value; what is borrowed or usual is marked. Sheet of " +
                  sheet.citation.id + ".";
  return html::whole_page(page);
}

std::string shopping_as_html(const ShoppingList& shopping) {
  Fields page;
  Fields recipes = list();
  for (std::size_t r = 0; r < shopping.recipes.size(); ++r) {
    Fields one;
    one.set("title", shopping.titles[r]);
    one.set("id", shopping.recipes[r].id);
    one.set("factor", fmt::format("{:.3g}", shopping.factors[r]));
    recipes.push_back(one);
  }
  page.set("recipes", recipes);
  Fields cautions = list();
  for (const std::string& caution : shopping.cautions) cautions.push_back(Fields{"says", caution});
  set_list(page, "cautions", "any_caution", cautions, !shopping.cautions.empty());
  Fields shelves = list();
  for (std::size_t at = 0; at < shopping.lines.size();) {
    const std::string& shelf = shopping.lines[at].shelf;
    Fields lines = list();
    for (; at < shopping.lines.size() && shopping.lines[at].shelf == shelf; ++at) {
      const ShoppingLine& line = shopping.lines[at];
      Fields one;
      one.set("name", line.name);
      one.set("buy", line.buy.empty() ? "as much as you like" : line.buy + (line.more ? ", and more to taste" : ""));
      set_text(one, "remark",
               line.instead_of.empty() ? std::string(line.optional ? "if liked" : "")
                                       : fmt::format("instead of {}", fmt::join(line.instead_of, ", ")));
      std::string wanted;
      for (const std::size_t r : line.wanted_by) wanted += fmt::format("{}{}", wanted.empty() ? "" : ", ", r + 1);
      one.set("for", wanted);
      lines.push_back(one);
    }
    Fields section;
    section.set("shelf", shelf.empty() ? "other" : shelf);
    section.set("lines", lines);
    shelves.push_back(section);
  }
  page.set("shelves", shelves);
  html::Page whole;
  whole.title = "Shopping list";
  whole.head = style();
  whole.body = html::render("shopping", std::move(page));
  return html::whole_page(whole);
}

}  // namespace gallipot
