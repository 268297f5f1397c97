// The kitchen sheet, at the batch that the address asks for.
#include <fmt/format.h>

#include <chrono>

#include "query/cooking/calendar.h"
#include "query/cooking/cook.h"
#include "query/reporting/kitchen.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

Outcome<Sheet> sheet_asked(const Visit& visit) {
  const Request& request = visit.request;
  Wanted wanted;
  if (const std::string said = request.asked("scale"); !said.empty()) {
    const auto scale = cooks_number(said);
    if (!scale) return fault(fmt::format("\"{}\" is no batch", said.substr(0, 40)), "write a number, such as 1/2 or 2");
    if (auto fits = checked_scale(*scale); !fits) return tl::unexpected(fits.error());
    wanted.scale = *scale;
  }
  wanted.yield = request.asked("yield");
  wanted.have = request.asked("have");
  wanted.start = request.asked("start");
  return cook(visit.shelf(), visit.lexicon(), visit.reading->yardstick, visit.room.readers().kitchen(),
              request.asked("id"), wanted);
}

}  // namespace

Outcome<Answer> sheet_page(const Visit& visit) {
  const Request& request = visit.request;
  if (const auto recipe = visit.shelf().recipe(request.asked("id")); !recipe)
    return nothing_here(visit, recipe.error());
  const auto sheet = sheet_asked(visit);
  if (!sheet) return tl::unexpected(sheet.error());
  Fields fields = fields_of(visit);
  fields.set("sheet", sheet_as_html_body(*sheet));
  Pairs query = {{"id", request.asked("id")}};
  for (const char* name : {"scale", "yield", "have", "start"}) {
    set(fields, name, request.asked(name));
    query.emplace_back(name, request.asked(name));
  }
  fields.set("id", request.asked("id"));
  fields.set("recipe", address("/recipe", {{"id", request.asked("id")}}));
  set(fields, "calendar", !request.asked("start").empty() ? address("/sheet.ics", query) : "");
  return page(visit, sheet->title + ": kitchen sheet", "search", "room_sheet", std::move(fields), "kitchen.css");
}

Outcome<Answer> sheet_calendar(const Visit& visit) {
  const auto sheet = sheet_asked(visit);
  if (!sheet) return tl::unexpected(sheet.error());
  const auto calendar = calendar_of(*sheet, std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()));
  if (!calendar) return tl::unexpected(calendar.error());
  return file_answer("text/calendar; charset=utf-8", *calendar, "plan.ics");
}

Outcome<Answer> api_sheet(const Visit& visit) {
  if (const auto recipe = visit.shelf().recipe(visit.request.asked("id")); !recipe)
    return nothing_here(visit, recipe.error());
  const auto sheet = sheet_asked(visit);
  if (!sheet) return tl::unexpected(sheet.error());
  return json_answer(sheet_as_json(*sheet));
}

}  // namespace gallipot::room
