// The calendar is read again: by libical, and by a strict reader of our own, line by line as RFC 5545 lays them down.
#include "query/cooking/calendar.h"

#include <gtest/gtest.h>
#include <libical/ical.h>

#include <map>
#include <set>

#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

Sheet sheet() {
  Wanted wanted;
  wanted.start = "2027-03-06T09:00";
  return cooked(
             receipt("Walnut Pickle; with \"spice\", and more",
                     "Prick the walnuts, and let them stand nine days in salt and water, stirring them every day. Boil "
                     "a quart of vinegar with an ounce of mace, an ounce of ginger, an ounce of whole pepper and a "
                     "handful of horseradish half an hour, and pour it on. Let it stand a fortnight. Bottle it."),
             wanted)
      .value();
}

constexpr std::chrono::sys_seconds stamp{std::chrono::seconds{1767225600}};  // 2026-01-01 00:00 UTC

struct Line {
  std::string name, parameters, value;
};

/// Unfolds and splits content lines; every breach of RFC 5545, 3.1, is a failure.
std::vector<Line> content_lines(const std::string& text) {
  std::vector<std::string> physical;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = text.find("\r\n", at);
    EXPECT_NE(end, std::string::npos) << "a line without CRLF";
    if (end == std::string::npos) break;
    physical.push_back(text.substr(at, end - at));
    at = end + 2;
  }
  std::vector<std::string> unfolded;
  for (const std::string& line : physical) {
    EXPECT_LE(line.size(), 75U) << "longer than 75 octets: " << line;
    EXPECT_EQ(line.find('\n'), std::string::npos);
    if (!line.empty() && (line.front() == ' ' || line.front() == '\t') && !unfolded.empty())
      unfolded.back() += line.substr(1);
    else
      unfolded.push_back(line);
  }
  std::vector<Line> out;
  for (const std::string& line : unfolded) {
    const auto colon = line.find(':');
    EXPECT_NE(colon, std::string::npos) << line;
    if (colon == std::string::npos) continue;
    const std::string head = line.substr(0, colon);
    const auto semicolon = head.find(';');
    Line one{head.substr(0, semicolon), semicolon == std::string::npos ? "" : head.substr(semicolon + 1),
             line.substr(colon + 1)};
    for (const char c : one.name) EXPECT_TRUE((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-') << line;
    out.push_back(std::move(one));
  }
  return out;
}

struct Component {
  std::string name;
  std::multimap<std::string, std::string> properties;
  std::vector<Component> inside;
  std::string one(const std::string& property) const {
    EXPECT_EQ(properties.count(property), 1U) << name << " " << property;
    const auto at = properties.find(property);
    return at == properties.end() ? std::string() : at->second;
  }
};

Component read_component(const std::vector<Line>& lines, std::size_t& at) {
  Component out;
  out.name = lines[at++].value;
  while (at < lines.size() && lines[at].name != "END") {
    if (lines[at].name == "BEGIN") {
      out.inside.push_back(read_component(lines, at));
    } else {
      out.properties.emplace(lines[at].name, lines[at].value);
      ++at;
    }
  }
  EXPECT_LT(at, lines.size()) << out.name << " is not ended";
  if (at < lines.size()) {
    EXPECT_EQ(lines[at++].value, out.name);
  }
  return out;
}

bool is_local_time(const std::string& value) {
  return value.size() == 15 && value[8] == 'T' && value.find_first_not_of("0123456789T") == std::string::npos;
}

TEST(Calendar, AStrictReaderFindsNothingAmiss) {
  const auto text = calendar_of(sheet(), stamp);
  ASSERT_TRUE(text) << text.error().sentence();
  const auto lines = content_lines(*text);
  std::size_t at = 0;
  ASSERT_EQ(lines.front().name, "BEGIN");
  const Component calendar = read_component(lines, at);
  EXPECT_EQ(at, lines.size()) << "nothing follows the calendar";
  EXPECT_EQ(calendar.name, "VCALENDAR");
  EXPECT_EQ(calendar.one("VERSION"), "2.0");
  EXPECT_FALSE(calendar.one("PRODID").empty());
  ASSERT_GE(calendar.inside.size(), 3U);
  std::set<std::string> uids;
  std::size_t repeated = 0;
  for (const Component& event : calendar.inside) {
    ASSERT_EQ(event.name, "VEVENT");
    EXPECT_TRUE(uids.insert(event.one("UID")).second);
    EXPECT_EQ(event.one("DTSTAMP"), "20260101T000000Z");
    const std::string start = event.one("DTSTART"), end = event.one("DTEND");
    EXPECT_TRUE(is_local_time(start)) << start;
    EXPECT_TRUE(is_local_time(end)) << end;
    EXPECT_LT(start, end);
    EXPECT_FALSE(event.one("SUMMARY").empty());
    if (event.properties.contains("RRULE")) {
      ++repeated;
      EXPECT_EQ(event.one("RRULE"), "FREQ=DAILY;COUNT=9");
    }
    ASSERT_EQ(event.inside.size(), 1U);
    const Component& alarm = event.inside.front();
    EXPECT_EQ(alarm.name, "VALARM");
    EXPECT_EQ(alarm.one("ACTION"), "DISPLAY");
    EXPECT_EQ(alarm.one("TRIGGER"), "-PT15M");
    EXPECT_FALSE(alarm.one("DESCRIPTION").empty());
  }
  EXPECT_EQ(repeated, 1U);
}

TEST(Calendar, LibicalReadsItAgain) {
  const Sheet made = sheet();
  const auto text = calendar_of(made, stamp);
  ASSERT_TRUE(text);
  icalcomponent* calendar = icalparser_parse_string(text->c_str());
  ASSERT_NE(calendar, nullptr);
  EXPECT_EQ(icalcomponent_count_errors(calendar), 0);
  EXPECT_NE(icalrestriction_check(calendar), 0);
  std::size_t events = 0;
  for (icalcomponent* event = icalcomponent_get_first_component(calendar, ICAL_VEVENT_COMPONENT); event != nullptr;
       event = icalcomponent_get_next_component(calendar, ICAL_VEVENT_COMPONENT)) {
    ++events;
    const std::string summary = icalcomponent_get_summary(event);
    EXPECT_EQ(summary.find(made.title), 0U) << "text comes back unescaped as it was: " << summary;
    EXPECT_EQ(icalcomponent_get_dtstart(event).year, 2027);
  }
  std::size_t chores = 0;
  for (const Task& task : made.plan.tasks) chores += task.repeat ? 1 : 0;
  EXPECT_EQ(events, made.plan.sessions.size() + chores);
  icalcomponent_free(calendar);
}

TEST(Calendar, WantsAStart) {
  const auto undated = cooked(receipt("A receipt", "Boil it one hour."));
  ASSERT_TRUE(undated);
  const auto text = calendar_of(*undated, stamp);
  ASSERT_FALSE(text);
  EXPECT_NE(text.error().mend.find("--start"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
