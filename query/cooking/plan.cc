// Lays the steps one after the other.
#include "query/cooking/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/text/words.h"
#include "query/comparing/duration.h"
#include "query/cooking/printed.h"

namespace gallipot {
namespace {

constexpr double half_hour = 30, day = 1440;
constexpr double brief_work = 10;       // minutes of covering, adding, pouring at most
constexpr double longest_work = 120;    // minutes of one chore without a rest
constexpr double long_wait = 360;       // after which a step may be put off until the morning
constexpr unsigned most_repeats = 400;  // a year of days, and some
constexpr std::size_t near = 60;        // letters between a chore and the words that say how often

using Attention = Task::Attention;

struct Often {
  double every = 0;
  std::string words;
};

/// How often, where words of the same sentence near the step say so.
std::optional<Often> how_often(const ComparableRecipe& recipe, const Kitchen& kitchen, Span step) {
  const std::string_view text = recipe.recipe.text;
  const Span sentence = sentence_round(text, step);
  const Words words(sentence.in(text));
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto match = kitchen.repeat_phrases.longest(words.all(), i);
    if (match.words == 0) continue;
    const std::size_t begin = sentence.begin + words[i].span.begin;
    const std::size_t end = sentence.begin + words[i + match.words - 1].span.end;
    if (begin > step.end + near || end + near < step.begin) continue;
    return Often{kitchen.repeats[match.value], std::string(text.substr(begin, end - begin))};
  }
  return std::nullopt;
}

/// "Bring it to a boil", "just boil up": the heat is reached and left.
bool only_brought_up(std::string_view words) {
  static constexpr std::string_view marks[] = {
      "to a boil", "to the boil", "boil up",        "boiling point", "begins to boil", "comes to a boil", "boils up",
      "just boil", "to boil",     "scalding point", "boiling hot",   "boils again",    "a moment"};
  return std::any_of(std::begin(marks), std::end(marks),
                     [&](std::string_view mark) { return words.find(mark) != std::string_view::npos; });
}

class Planner {
 public:
  Planner(const ComparableRecipe& recipe, const Kitchen& kitchen, const PlanAsked& asked)
      : recipe_(recipe), kitchen_(kitchen), asked_(asked) {
    plan_.dated = asked.start.has_value();
    plan_.start = asked.start.value_or(LocalMinutes{} + std::chrono::hours{9});
    now_ = plan_.start;
  }

  Plan plan() {
    for (std::size_t s = 0; s < recipe_.steps.size(); ++s) step(s);
    sessions();
    totals();
    return std::move(plan_);
  }

 private:
  void step(std::size_t s) {
    const Step& step = recipe_.steps[s];
    const auto known = kitchen_.doing.find(step.op);
    if (known == kitchen_.doing.end()) return;
    const Doing& doing = known->second;
    Task task;
    task.op = step.op;
    task.print = printed_at(recipe_, step.span);
    task.attention = doing.attention;
    const auto borrowed = std::find_if(asked_.borrowed.begin(), asked_.borrowed.end(),
                                       [&](const BorrowedTime& b) { return b.step == s; });
    const std::optional<Often> often = doing.repeats ? how_often(recipe_, kitchen_, step.span) : std::nullopt;
    if (often && !step.minutes && repeat_in_wait(task, doing, *often)) return;
    if (step.minutes && chore_for_days(task, doing, *step.minutes, often)) return;
    if (step.minutes && step.minutes->high >= half_hour && doing.attention == Attention::hands &&
        doing.when_long != Attention::hands) {
      usual(task, doing);  // "cover it, and let it be so two days": a moment's work, then a wait
      place(task);
      task.op = doing.when_long == Attention::wait ? "stand" : step.op;
      task.attention = doing.when_long;
      timed(task, *step.minutes, Task::From::print);
    } else if (step.minutes) {
      timed(task, *step.minutes, Task::From::print);
      // Nobody beats for four hours: what is done so long minds itself between turns ("beat well, and steam it").
      if (doing.attention == Attention::hands && task.likely >= longest_work) task.attention = Attention::watch;
      // "Add it when the juice has boiled twenty minutes": the time is not one of adding.
      if (doing.attention == Attention::hands && doing.when_long != Attention::hands && task.likely > brief_work)
        task.attention = Attention::watch;
    } else if (borrowed != asked_.borrowed.end()) {
      timed(task, borrowed->minutes, Task::From::siblings);
    } else if (doing.attention == Attention::watch && only_brought_up(task.print.words)) {
      timed(task, {3, 10}, Task::From::usual);
      task.brief = true;
    } else {
      usual(task, doing);
    }
    place(task);
  }

  static void timed(Task& task, const Range& minutes, Task::From from) {
    task.minutes = minutes;
    task.likely = (minutes.low + minutes.high) / 2;
    // A wait told as "five or six days" ends at the hour at which it began.
    if (task.likely >= 2 * day)
      task.likely = std::clamp(std::round(task.likely / day) * day, minutes.low, minutes.high);
    task.from = from;
  }

  void usual(Task& task, const Doing& doing) const {
    const double times = doing.per_kg ? std::clamp(asked_.kilograms, 0.25, 50.0) : 1;
    task.minutes = {doing.minutes.low * times, doing.minutes.high * times};
    task.likely = doing.minutes.likely * times;
    task.from = Task::From::usual;
  }

  /// "Let it stand nine days, stirring it every day": the chore runs beside the wait before it.
  bool repeat_in_wait(Task& task, const Doing& doing, const Often& often) {
    for (auto before = plan_.tasks.rbegin(); before != plan_.tasks.rend(); ++before) {
      if (before->attention != Attention::wait || before->likely < 2 * often.every || before->repeat) continue;
      if (task.print.span.begin > before->print.span.end + 400) return false;
      usual(task, doing);
      task.repeat = Task::Repeat{often.every, times_in(before->likely, often.every), false, often.words};
      task.start = later(before->start, std::min(often.every, day));
      plan_.tasks.push_back(task);
      return true;
    }
    return false;
  }

  /// "Stir it every day for a fortnight"; a chore of whole days whose frequency the print does not tell is done daily.
  bool chore_for_days(Task& task, const Doing& doing, const Range& minutes, const std::optional<Often>& often) {
    const bool days_long = minutes.high >= day && (doing.repeats || doing.attention == Attention::watch);
    const bool told = often && minutes.high >= 2 * often->every;
    if (!told && !(days_long && doing.attention != Attention::wait)) return false;
    usual(task, doing);
    const double likely = (minutes.low + minutes.high) / 2;
    const double every = told ? often->every : day;
    task.repeat = Task::Repeat{every, times_in(likely, every), !told, told ? often->words : std::string()};
    task.start = now_;
    plan_.tasks.push_back(task);
    Task wait = task;
    wait.repeat.reset();
    wait.op = "stand";
    wait.attention = Attention::wait;
    timed(wait, minutes, Task::From::print);
    place(wait);
    return true;
  }

  static unsigned times_in(double span, double every) {
    return static_cast<unsigned>(std::clamp(std::floor(span / every), 1.0, static_cast<double>(most_repeats)));
  }

  void place(Task& task) {
    task.start = now_;
    now_ = later(now_, task.likely);
    if (task.attention == Attention::wait && task.likely >= long_wait) until_morning(task);
    plan_.tasks.push_back(task);
  }

  /// Moves the clock on to the morning where the next step would fall into the night.
  void until_morning(const Task& task) {
    const int minute = minute_of_day(now_);
    if (minute >= kitchen_opens && minute < kitchen_closes) return;
    const auto midnight =
        std::chrono::floor<std::chrono::days>(now_) + std::chrono::days{minute >= kitchen_closes ? 1 : 0};
    const LocalMinutes resumed = midnight + std::chrono::minutes{morning};
    plan_.notes.push_back(fmt::format("The wait of {} would end at {}; the plan goes on at {} in the morning.",
                                      write_span(task.likely), write_time(now_), write_time(resumed)));
    shifted_ += static_cast<double>((resumed - now_).count());
    now_ = resumed;
  }

  void sessions() {
    bool open = false;
    for (std::size_t t = 0; t < plan_.tasks.size(); ++t) {
      const Task& task = plan_.tasks[t];
      if (task.repeat) continue;  // rounds have entries of their own
      const LocalMinutes end = later(task.start, task.likely);
      if (task.attention == Attention::wait && task.likely >= parting_wait) {
        open = false;
        continue;
      }
      if (!open) plan_.sessions.push_back({task.start, end, {}});
      open = true;
      plan_.sessions.back().tasks.push_back(t);
      plan_.sessions.back().end = end;
    }
  }

  void totals() {
    plan_.end = now_;
    for (const Task& task : plan_.tasks) {
      if (task.repeat) {
        plan_.hands += task.likely * task.repeat->times;
        if (task.repeat->usual)
          plan_.notes.push_back(fmt::format("How often to {} is not said; once a day is taken.", task.op));
        continue;
      }
      plan_.total.low += task.minutes.low;
      plan_.total.high += task.minutes.high;
      (task.attention == Attention::hands   ? plan_.hands
       : task.attention == Attention::watch ? plan_.watch
                                            : plan_.wait) += task.likely;
    }
    plan_.likely = static_cast<double>((plan_.end - plan_.start).count());
    plan_.total.high = std::max(plan_.total.high, plan_.likely);
    plan_.wait += shifted_;
    const auto first = std::chrono::floor<std::chrono::days>(plan_.start);
    const auto last = std::chrono::floor<std::chrono::days>(plan_.end);
    plan_.days = static_cast<unsigned>((last - first).count()) + 1;
    note_late_hours();
  }

  void note_late_hours() {
    for (const Session& session : plan_.sessions) {
      const int end = minute_of_day(session.end);
      if (end < kitchen_opens || end > kitchen_closes + 60) {
        plan_.notes.emplace_back("A part of the work falls into the night; an earlier start mends that.");
        return;
      }
    }
  }

  const ComparableRecipe& recipe_;
  const Kitchen& kitchen_;
  const PlanAsked& asked_;
  Plan plan_;
  LocalMinutes now_{};
  double shifted_ = 0;
};

}  // namespace

Plan plan_of(const ComparableRecipe& recipe, const Kitchen& kitchen, const PlanAsked& asked) {
  return Planner(recipe, kitchen, asked).plan();
}

}  // namespace gallipot
