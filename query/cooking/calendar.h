// The plan as an iCalendar (RFC 5545), for any calendar program: a session an event, a chore a repeating event, each
// with a reminder.
#pragma once

#include <string>

#include "query/cooking/sheet.h"

namespace gallipot {

/// Minutes before an event at which the calendar is to remind.
inline constexpr int reminder_before = 15;

/// The calendar object, with CRLF line ends. Local times without a zone (RFC 5545, 3.3.5, form 1). `stamp` is when it
/// is written, in UTC. Faults: a plan without dates.
Outcome<std::string> calendar_of(const Sheet& sheet, std::chrono::sys_time<std::chrono::seconds> stamp);

}  // namespace gallipot
