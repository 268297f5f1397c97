// gallipot cook: a recipe made ready for the bench.
#include "query/cooking/cook.h"

#include <fmt/format.h>

#include <charconv>
#include <chrono>

#include "query/cooking/calendar.h"
#include "query/reporting/kitchen.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string id;
  std::string scale;
  Wanted wanted;
  long siblings = 12;
  bool html = false, calendar = false, linked = false;
};

Outcome<double> figure(const std::string& text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (read.ec != std::errc{} || read.ptr != end)
    return fault("\"" + text + "\" after --scale is not a number", "write a number over 0, like 0.5 or 2");
  return value;
}

Outcome<Exit> cook_recipe(Asked asked) {
  if (int{asked.json} + int{asked.html} + int{asked.calendar} + int{asked.linked} > 1)
    return fault("an answer has one form only", "say one of --json, --html, --calendar and --linked");
  if (asked.siblings < 0) return fault("--siblings cannot be under 0", "say how many siblings to ask, or 0 for none");
  if (!asked.scale.empty()) {
    const auto scale = figure(asked.scale);
    if (!scale) return tl::unexpected(scale.error());
    asked.wanted.scale = *scale;
  }
  if (asked.calendar && asked.wanted.start.empty())
    return fault("a calendar needs a day to begin on", "say --start and a date, like 2027-03-06T09:00");
  asked.wanted.siblings = static_cast<std::size_t>(asked.siblings);
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto yardstick = Yardstick::load(opened->shelf.measures(), asked.tables);
  if (!yardstick) return tl::unexpected(yardstick.error());
  const auto kitchen = Kitchen::load(asked.tables);
  if (!kitchen) return tl::unexpected(kitchen.error());
  const auto sheet = cook(opened->shelf, *opened->lexicon, *yardstick, **kitchen, asked.id, asked.wanted);
  if (!sheet) return tl::unexpected(sheet.error());
  if (asked.calendar) {
    const auto calendar =
        calendar_of(*sheet, std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()));
    if (!calendar) return tl::unexpected(calendar.error());
    say(*calendar);
  } else if (asked.json) {
    say(sheet_as_json(*sheet));
  } else if (asked.html) {
    say(sheet_as_html(*sheet));
  } else if (asked.linked) {
    say(sheet_as_linked_data(*sheet));
  } else {
    say(sheet_as_text(*sheet, text_style()));
  }
  return Exit::answered;
}

}  // namespace

void add_cook(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("cook", "Make a kitchen sheet: amounts, plan, vessels, words, cautions");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("id", asked->id, "The recipe, by its id")->type_name("ID")->required();
  add_index_option(*verb, *asked);
  verb->add_option("--scale", asked->scale, "So many times the printed amounts")->type_name("N");
  verb->add_option("--yield", asked->wanted.yield, "Or to make about so much: 1l, \"500 g\"")->type_name("AMOUNT");
  verb->add_option("--have", asked->wanted.have, "Or for what is in the basket: \"6 lemons\"")->type_name("STUFF");
  verb->add_option("--start", asked->wanted.start, "Date and time at which to begin: 2027-03-06T09:00")
      ->type_name("TIME");
  verb->add_option("--siblings", asked->siblings, "How many siblings are asked for what the print leaves out")
      ->type_name("N")
      ->capture_default_str();
  verb->add_flag("--html", asked->html, "Answer as a page for A4 or Letter");
  verb->add_flag("--calendar", asked->calendar, "Answer as an iCalendar with reminders (RFC 5545); wants --start");
  verb->add_flag("--linked", asked->linked, "Answer as a schema.org Recipe (JSON-LD)");
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot cook --index shelf oldacre-1838/0019 --yield 1l\n"
      "  gallipot cook --index shelf oldacre-1838/0019 --have \"3 pounds of damsons\" --start 2027-09-04T09:00\n"
      "  gallipot cook --index shelf oldacre-1838/0019 --html > damson.html");
  verb->callback([&work, asked] { work = [asked] { return cook_recipe(*asked); }; });
}

}  // namespace gallipot::program
