// When? Local dates and times without a zone, as a cook's calendar has them.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include "indexer/fault/fault.h"

namespace gallipot {

using LocalMinutes = std::chrono::local_time<std::chrono::minutes>;

/// "2027-03-06T09:00", "2027-03-06 9:00" or "2027-03-06" (09:00 then). Faults: anything else, a day that is not in the
/// calendar, a year outside 1970..2999.
Outcome<LocalMinutes> read_start(std::string_view text);

/// "2027-03-06T09:00" (ISO 8601, extended, local).
std::string write_local(LocalMinutes at);
/// "Saturday 6 March 2027".
std::string write_day(LocalMinutes at);
/// "09:00".
std::string write_time(LocalMinutes at);

/// Minutes after midnight.
int minute_of_day(LocalMinutes at);
LocalMinutes later(LocalMinutes at, double minutes);

/// How long, for a sentence or a table: "35 min", "2 h 30 min", "3 days", "5 weeks"; rounded to what such a time is
/// known to.
std::string write_span(double minutes);
/// The same for a range; one figure where both ends read alike.
std::string write_span(double low, double high);

}  // namespace gallipot
