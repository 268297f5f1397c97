// A kitchen sheet for a terminal.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/kitchen.h"
#include "query/reporting/kitchen_words.h"
#include "query/reporting/layout.h"

namespace gallipot {
namespace {

class Text {
 public:
  Text(const Sheet& sheet, const TextStyle& style) : sheet_(sheet), style_(style) {}

  std::string text() {
    head();
    cautions();
    lines();
    gaps();
    plan();
    vessels();
    made();
    words();
    keeping();
    siblings();
    return std::move(out_);
  }

 private:
  void say(std::string_view text, std::string_view first = {}) { out_ += paragraph(text, style_.width, first); }
  void heading(const char* title) { out_ += fmt::format("\n{}\n", title); }

  void head() {
    out_ += sheet_.title + "\n";
    say(sheet_.citation.note());
    if (!sheet_.batch.why.empty()) say("Batch: " + sheet_.batch.why);
    for (const std::string& note : sheet_.notes) say(note);
  }

  void cautions() {
    if (sheet_.cautions.empty()) return;
    heading("CAUTIONS");
    for (const std::string& caution : sheet_.cautions) say(caution, "! ");
  }

  void lines() {
    if (sheet_.lines.empty()) return;
    heading("WHAT GOES IN");
    Grid grid;
    grid.rows.push_back({"", "weigh or measure", "range", "about", ""});
    grid.right = {false, true, true, false, false};
    for (const SheetLine& line : sheet_.lines) {
      std::string amount = measured_words(line), range;
      if (line.amount) range = range_words(*line.amount);
      if (amount.empty()) amount = "as printed";
      std::string remarks;
      for (const std::string& remark : remarks_of(line)) remarks += (remarks.empty() ? "" : "; ") + remark;
      if (line.rate) remarks += (remarks.empty() ? "" : "; ") + rate_words(*line.rate);
      std::string printed;
      for (const Printed& print : line.print) printed += (printed.empty() ? "" : "; ") + print.words;
      std::string last = "\"" + printed + "\"";
      if (!remarks.empty()) last += "\n" + remarks;
      std::string wrapped_last;
      const std::size_t room = style_.width > 98 ? style_.width - 70 : 28;  // so that the table is not parted
      for (const std::string& one : wrapped(last, room)) wrapped_last += (wrapped_last.empty() ? "" : "\n") + one;
      grid.rows.push_back({line.name, amount, range, line.kitchen, wrapped_last});
    }
    out_ += grid.text(style_.width);
  }

  void gaps() {
    if (sheet_.gaps.empty()) return;
    heading("LEFT UNSAID (borrowed from siblings; not in this print)");
    for (const Gap& gap : sheet_.gaps) {
      std::string by;
      for (const Answer& answer : gap.answers) by += (by.empty() ? "" : " | ") + by_words(sheet_, answer.by);
      say(gap_sentence(gap) + " [" + by + "]", "- ");
    }
  }

  void plan() {
    const Plan& plan = sheet_.plan;
    if (plan.tasks.empty()) return;
    heading("PLAN");
    say(fmt::format("{}: {}, over {} {}; the whole takes {}.", moment_words(plan, plan.start), time_words(plan),
                    plan.days, plan.days == 1 ? "day" : "days", write_span(plan.total.low, plan.total.high)));
    std::string day;
    for (const Task& task : plan.tasks) {
      const std::string moment = moment_words(plan, task.start);
      const std::string on = moment.substr(0, moment.rfind(','));
      if (on != day) out_ += "  " + on + "\n";
      day = on;
      std::string length = write_span(task.minutes.low, task.minutes.high);
      if (task.from != Task::From::print) length += std::string(", ") + from_words(task.from);
      if (task.repeat) length += "; " + repeat_words(*task.repeat);
      say(fmt::format("{} ({}): {}", task.op, length, task.print.words),
          fmt::format("    {} {:<5} ", write_time(task.start), attention_words(task.attention)));
    }
    for (const std::string& note : plan.notes) say(note, "  ");
  }

  void vessels() {
    if (sheet_.vessels.empty()) return;
    heading("GET READY");
    for (const Vessel& vessel : sheet_.vessels) {
      std::string line = vessel.what;
      if (!vessel.size.empty()) line += ", " + vessel.size;
      if (!vessel.why.empty()) line += ": " + vessel.why;
      say(line, "- ");
    }
  }

  void made() {
    heading("MAKES");
    const std::string words = made_words(sheet_.made);
    if (words.empty()) {
      say("It cannot be told how much it makes: " + sheet_.made.why_not + ".");
      return;
    }
    say("About " + words + ".");
    for (const Made::Part& part : sheet_.made.parts)
      say(fmt::format("{}{} {}: {}", part.lost ? "less " : "", write_large_amount(part.amount).text(), part.what,
                      part.why),
          "  ");
  }

  void words() {
    if (sheet_.words.empty()) return;
    heading("WORDS OF THE TIME");
    for (const Gloss& gloss : sheet_.words)
      say(fmt::format("\"{}\": {} Now: {} ({})", gloss.print.words, gloss.then, gloss.now, gloss.source), "- ");
  }

  void keeping() {
    const Keeping& keeping = sheet_.keeping;
    if (!keeping.meant_to_keep) return;
    heading("KEEPING: information, no verdict");
    for (const std::string& says : keeping_sentences(keeping)) say(says, "- ");
  }

  void siblings() {
    const std::vector<bool> used = siblings_used(sheet_);
    if (std::find(used.begin(), used.end(), true) == used.end()) return;
    heading("SIBLINGS");
    for (std::size_t s = 0; s < used.size(); ++s)
      if (used[s])
        say(sheet_.siblings[s].note() + " " + sheet_.siblings[s].id, fmt::format("  {:<2} ", sheet_.sigla[s]));
  }

  const Sheet& sheet_;
  const TextStyle& style_;
  std::string out_;
};

}  // namespace

std::string sheet_as_text(const Sheet& sheet, const TextStyle& style) { return Text(sheet, style).text(); }

std::string shopping_as_text(const ShoppingList& list, const TextStyle& style) {
  std::string out = "SHOPPING LIST\n";
  for (std::size_t r = 0; r < list.recipes.size(); ++r)
    out += paragraph(fmt::format("{} ({}), {:.3g} times", list.titles[r], list.recipes[r].id, list.factors[r]),
                     style.width, fmt::format("  {}. ", r + 1));
  std::string shelf = "\n";
  for (const ShoppingLine& line : list.lines) {
    const std::string on = line.shelf.empty() ? "other" : line.shelf;
    if (on != shelf) out += "\n" + on + "\n";
    shelf = on;
    std::string said = line.buy.empty() ? "as much as you like" : line.buy;
    if (line.more && !line.buy.empty()) said += ", and more to taste";
    if (!line.instead_of.empty()) said += fmt::format(" (instead of {})", fmt::join(line.instead_of, ", "));
    if (line.optional && line.instead_of.empty()) said += " (if liked)";
    if (list.recipes.size() > 1) {
      said += "  [";
      for (std::size_t i = 0; i < line.wanted_by.size(); ++i)
        said += fmt::format("{}{}", i > 0 ? ", " : "", line.wanted_by[i] + 1);
      said += "]";
    }
    out += paragraph(said, style.width, "  " + padded(line.name, 24) + " ");
  }
  if (!list.cautions.empty()) out += "\ncautions\n";
  for (const std::string& caution : list.cautions) out += paragraph(caution, style.width, "  ! ");
  return out;
}

}  // namespace gallipot
