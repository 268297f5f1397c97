// The plan: times of the print, waits and work apart, chores that come round, nights slept through.
#include "query/cooking/plan.h"

#include <gtest/gtest.h>

#include <set>

#include "indexer/parsing/step_verbs.h"
#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

Plan planned(const std::string& text, const std::string& start = "2027-03-06T09:00") {
  PlanAsked asked;
  asked.start = read_start(start).value();
  return plan_of(receipt("A receipt", text), kitchen(), asked);
}

const Task* task(const Plan& plan, const std::string& op) {
  for (const Task& one : plan.tasks)
    if (one.op == op) return &one;
  return nullptr;
}

TEST(Plan, EveryOperationHasARow) {
  for (const auto op : steps::operation_names) EXPECT_TRUE(kitchen().doing.contains(op)) << op;
}

TEST(Plan, TakesTimesFromThePrintAndMarksTheRestUsual) {
  const Plan plan = planned("Chop the onions fine. Boil them two hours. Strain it.");
  ASSERT_NE(task(plan, "boil"), nullptr);
  EXPECT_EQ(task(plan, "boil")->from, Task::From::print);
  EXPECT_DOUBLE_EQ(task(plan, "boil")->likely, 120);
  EXPECT_EQ(task(plan, "boil")->attention, Task::Attention::watch);
  ASSERT_NE(task(plan, "strain"), nullptr);
  EXPECT_EQ(task(plan, "strain")->from, Task::From::usual);
  EXPECT_DOUBLE_EQ(plan.watch, 120);
  EXPECT_DOUBLE_EQ(plan.wait, 0);
  EXPECT_EQ(plan.days, 1U);
}

TEST(Plan, AChoreOfDaysComesRoundEachDay) {
  const Plan plan =
      planned("Put the walnuts in salt and water, and let them stand nine days, stirring them every day.");
  const Task* stand = task(plan, "stand");
  ASSERT_NE(stand, nullptr);
  EXPECT_DOUBLE_EQ(stand->likely, 9 * 1440);
  const Task* stir = task(plan, "stir");
  ASSERT_NE(stir, nullptr);
  ASSERT_TRUE(stir->repeat);
  EXPECT_DOUBLE_EQ(stir->repeat->every, 1440);
  EXPECT_EQ(stir->repeat->times, 9U);
  EXPECT_EQ(stir->repeat->words, "every day");
  EXPECT_GE(plan.days, 9U);
}

TEST(Plan, AnHourOfNightIsLeftForTheMorning) {
  const Plan plan = planned("Let the fruit stand twelve hours. Boil it one hour.", "2027-03-06T15:00");
  const Task* boil = task(plan, "boil");
  ASSERT_NE(boil, nullptr);
  EXPECT_EQ(write_local(boil->start), "2027-03-07T08:00");
  ASSERT_FALSE(plan.notes.empty());
  EXPECT_NE(plan.notes.front().find("goes on at 08:00"), std::string::npos) << plan.notes.front();
}

TEST(Plan, LongWaitsPartTheSessions) {
  const Plan plan = planned("Boil the fruit one hour. Let it stand three days. Boil it again one hour.");
  EXPECT_EQ(plan.sessions.size(), 2U);
  EXPECT_EQ(write_day(plan.sessions.front().start), "Saturday 6 March 2027");
  EXPECT_EQ(write_day(plan.sessions.back().start), "Tuesday 9 March 2027");
}

TEST(Plan, WithoutAStartItCountsFromTheFirstDay) {
  const Plan plan = plan_of(receipt("A receipt", "Boil it one hour."), kitchen(), {});
  EXPECT_FALSE(plan.dated);
  EXPECT_EQ(write_time(plan.start), "09:00");
}

TEST(Clock, ReadsWhatItWrites) {
  for (const char* text : {"2027-03-06T09:00", "1999-12-31T23:59", "2028-02-29T00:00"})
    EXPECT_EQ(write_local(read_start(text).value()), text);
  EXPECT_EQ(write_local(read_start("2027-03-06").value()), "2027-03-06T09:00");
  EXPECT_EQ(write_local(read_start("2027-3-6 7:05").value()), "2027-03-06T07:05");
  for (const char* text :
       {"", "2027", "06.03.2027", "2027-13-01", "2027-03-06T", "2027-03-06T9", "2027-03-06T09:00Zed"})
    EXPECT_FALSE(read_start(text).has_value()) << text;
}

TEST(Clock, SaysHowLong) {
  EXPECT_EQ(write_span(20), "20 min");
  EXPECT_EQ(write_span(150), "2 h 30 min");
  EXPECT_EQ(write_span(9 * 1440), "9 days");
  EXPECT_EQ(write_span(20, 30), "20 to 30 min");
  EXPECT_EQ(write_span(2880, 4320), "2 to 3 days");
}

}  // namespace
}  // namespace gallipot
