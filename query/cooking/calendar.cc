// Writes the calendar with libical.
#include "query/cooking/calendar.h"

#include <fmt/format.h>
#include <libical/ical.h>

#include <memory>

namespace gallipot {
namespace {

struct Free {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, Free>;

icaltimetype ical_time(LocalMinutes at) {
  const auto midnight = std::chrono::floor<std::chrono::days>(at);
  const std::chrono::year_month_day date{midnight};
  icaltimetype out = icaltime_null_time();
  out.year = static_cast<int>(date.year());
  out.month = static_cast<int>(static_cast<unsigned>(date.month()));
  out.day = static_cast<int>(static_cast<unsigned>(date.day()));
  const int minute = minute_of_day(at);
  out.hour = minute / 60;
  out.minute = minute % 60;
  return out;
}

icaltimetype stamp_time(std::chrono::sys_time<std::chrono::seconds> stamp) {
  return icaltime_from_timet_with_zone(static_cast<time_t>(stamp.time_since_epoch().count()), 0,
                                       icaltimezone_get_utc_timezone());
}

struct Event {
  std::string key;  ///< tells it from the other events of the sheet
  LocalMinutes start{}, end{};
  std::string summary, description;
  const Task::Repeat* repeat = nullptr;
};

/// FREQ and INTERVAL that come to `minutes`, in the largest unit that does.
icalrecurrencetype rule_of(const Task::Repeat& repeat) {
  icalrecurrencetype rule;
  icalrecurrencetype_clear(&rule);
  const auto minutes = static_cast<int>(repeat.every);
  const auto set = [&](icalrecurrencetype_frequency frequency, int unit) {
    rule.freq = frequency;
    rule.interval = static_cast<short>(minutes / unit);
  };
  if (minutes % 10080 == 0)
    set(ICAL_WEEKLY_RECURRENCE, 10080);
  else if (minutes % 1440 == 0)
    set(ICAL_DAILY_RECURRENCE, 1440);
  else if (minutes % 60 == 0)
    set(ICAL_HOURLY_RECURRENCE, 60);
  else
    set(ICAL_MINUTELY_RECURRENCE, 1);
  rule.count = static_cast<int>(repeat.times);
  return rule;
}

icalcomponent* alarm_of(const std::string& summary) {
  icaltriggertype trigger{};
  trigger.time = icaltime_null_time();
  trigger.duration = icaldurationtype_from_int(-60 * reminder_before);
  return icalcomponent_vanew(ICAL_VALARM_COMPONENT, icalproperty_new_action(ICAL_ACTION_DISPLAY),
                             icalproperty_new_description(summary.c_str()), icalproperty_new_trigger(trigger),
                             static_cast<void*>(nullptr));
}

void add_event(icalcomponent* calendar, const Sheet& sheet, const Event& event, icaltimetype stamp) {
  const std::string uid =
      fmt::format("{}-{}-{}@gallipot.invalid", sheet.citation.id, write_local(sheet.plan.start), event.key);
  icalcomponent* out =
      icalcomponent_vanew(ICAL_VEVENT_COMPONENT, icalproperty_new_uid(uid.c_str()), icalproperty_new_dtstamp(stamp),
                          icalproperty_new_dtstart(ical_time(event.start)),
                          icalproperty_new_dtend(ical_time(event.end)), icalproperty_new_summary(event.summary.c_str()),
                          icalproperty_new_description(event.description.c_str()), static_cast<void*>(nullptr));
  if (event.repeat != nullptr) icalcomponent_add_property(out, icalproperty_new_rrule(rule_of(*event.repeat)));
  icalcomponent_add_component(out, alarm_of(event.summary));
  icalcomponent_add_component(calendar, out);
}

std::string steps_in_words(const Sheet& sheet, const Session& session) {
  std::string out;
  for (const std::size_t t : session.tasks) {
    const Task& task = sheet.plan.tasks[t];
    if (!out.empty()) out += '\n';
    out += fmt::format("{} {} ({}): {}", write_time(task.start), task.op,
                       write_span(task.minutes.low, task.minutes.high), task.print.words);
  }
  return out + "\n" + sheet.citation.note();
}

}  // namespace

Outcome<std::string> calendar_of(const Sheet& sheet, std::chrono::sys_time<std::chrono::seconds> stamp) {
  if (!sheet.plan.dated)
    return fault("a calendar needs a day to begin on", "say --start and a date, like 2027-03-06T09:00");
  const Component calendar{icalcomponent_vanew(
      ICAL_VCALENDAR_COMPONENT, icalproperty_new_version("2.0"),
      icalproperty_new_prodid("-//Gallipot//Kitchen sheet " GALLIPOT_VERSION "//EN"), static_cast<void*>(nullptr))};
  const icaltimetype written = stamp_time(stamp);
  for (std::size_t s = 0; s < sheet.plan.sessions.size(); ++s) {
    const Session& session = sheet.plan.sessions[s];
    Event event;
    event.key = fmt::format("session-{}", s + 1);
    event.start = session.start;
    event.end = std::max(session.end, later(session.start, 5));
    const std::size_t all = sheet.plan.sessions.size();
    event.summary = all == 1 ? sheet.title : fmt::format("{}, part {} of {}", sheet.title, s + 1, all);
    event.description = steps_in_words(sheet, session);
    add_event(calendar.get(), sheet, event, written);
  }
  for (std::size_t t = 0; t < sheet.plan.tasks.size(); ++t) {
    const Task& task = sheet.plan.tasks[t];
    if (!task.repeat) continue;
    Event event;
    event.key = fmt::format("chore-{}", t + 1);
    event.start = task.start;
    event.end = later(task.start, std::max(5.0, task.likely));
    event.summary = fmt::format("{}: {}", sheet.title, task.op);
    event.description = task.print.words + "\n" + sheet.citation.note();
    event.repeat = &*task.repeat;
    add_event(calendar.get(), sheet, event, written);
  }
  // The string belongs to us; libical's own buffer would be overwritten by its next call.
  char* text = icalcomponent_as_ical_string_r(calendar.get());
  std::string out(text);
  icalmemory_free_buffer(text);
  return out;
}

}  // namespace gallipot
