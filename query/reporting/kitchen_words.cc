// Puts the parts of a sheet into words.
#include "query/reporting/kitchen_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/duration.h"
#include "query/reporting/amounts.h"

namespace gallipot {
namespace {

constexpr double as_weighed_width = 0.05;  // a range narrower than this share of the likely value is the scales' own
constexpr std::size_t told_by_name = 4;    // siblings named before "and n more"

std::string unit_after(const Amount& amount) {
  return amount.unit == Amount::Unit::count ? std::string() : std::string(" ") + unit_name(amount.unit);
}

/// A figure without trailing noughts.
std::string plain(double value) {
  if (value >= 100) return fmt::format("{:.0f}", value);
  return fmt::format("{:.3g}", value);
}

}  // namespace

std::string measured_words(const SheetLine& line) {
  if (!line.amount || !line.measure) return {};
  if (line.amount->unit != Amount::Unit::count && *line.measure >= 2000)
    return plain(*line.measure / 1000) + (line.amount->unit == Amount::Unit::gram ? " kg" : " l");
  return plain(*line.measure) + unit_after(*line.amount);
}

std::string range_words(const Amount& amount) {
  if (amount.likely <= 0 || (amount.high - amount.low) / amount.likely <= as_weighed_width) return {};
  return write_large_amount(amount).range + (write_large_amount(amount).unit.empty() ? "" : " ") +
         write_large_amount(amount).unit;
}

std::string sibling_words(const Sheet& sheet, std::size_t sibling) {
  const Citation& citation = sheet.siblings[sibling];
  std::string out = sheet.sigla[sibling];
  if (citation.book.year() > 0) out += fmt::format(" {}", citation.book.year());
  if (!citation.page.empty()) out += ", p. " + citation.page;
  return out;
}

std::string by_words(const Sheet& sheet, const std::vector<Witnessed>& by) {
  std::string out;
  const std::size_t named = by.size() > told_by_name + 1 ? told_by_name : by.size();
  for (std::size_t i = 0; i < named; ++i) out += (i > 0 ? "; " : "") + sibling_words(sheet, by[i].sibling);
  if (named < by.size()) out += fmt::format(" and {} more", by.size() - named);
  return out;
}

std::string rate_words(const Rate& rate) {
  return write_amount(rate.part).text() + " for each " + write_amount(rate.whole).text() + " of " + rate.of;
}

std::string consensus_words(const Consensus& consensus) {
  return fmt::format("siblings use {} ({} of {})", write_amount(consensus.amount).text(), consensus.by.size(),
                     consensus.asked);
}

std::vector<std::string> remarks_of(const SheetLine& line) {
  std::vector<std::string> out;
  if (!line.how.empty()) out.push_back(line.how);
  if (line.more) out.emplace_back("and more, as printed");
  if (!line.alternative_of.empty()) out.push_back("instead of " + line.alternative_of);
  if (line.optional && line.alternative_of.empty()) out.emplace_back("if liked");
  if (line.siblings) out.push_back(consensus_words(*line.siblings));
  return out;
}

std::string answer_words(const Gap& gap, const Answer& answer) {
  const std::string what = answer.minutes ? write_span(answer.minutes->low, answer.minutes->high) : answer.words;
  return fmt::format("{} ({} of {})", what, answer.by.size(), gap.asked);
}

std::string gap_sentence(const Gap& gap) {
  std::string out = gap.question + " The print does not say; ";
  if (gap.kind == Gap::Kind::step || gap.kind == Gap::Kind::stuff)
    return gap.question + " Not here, but by most siblings: " + answer_words(gap, gap.answers.front()) + ".";
  if (gap.borrowed()) return out + "siblings: " + answer_words(gap, gap.answers.front()) + ".";
  out += "siblings disagree: ";
  for (std::size_t a = 0; a < gap.answers.size(); ++a) out += (a > 0 ? ", " : "") + answer_words(gap, gap.answers[a]);
  return out + ".";
}

std::string moment_words(const Plan& plan, LocalMinutes at) {
  if (plan.dated) return write_day(at) + ", " + write_time(at);
  const auto first = std::chrono::floor<std::chrono::days>(plan.start);
  return fmt::format("Day {}, {}", (std::chrono::floor<std::chrono::days>(at) - first).count() + 1, write_time(at));
}

std::string time_words(const Plan& plan) {
  std::string out;
  const auto add = [&](double minutes, const char* what) {
    if (minutes >= 1) out += (out.empty() ? "" : ", ") + write_span(minutes) + what;
  };
  add(plan.hands, " of work");
  add(plan.watch, " on the fire or in the oven");
  add(plan.wait, " of waiting");
  return out;
}

std::string repeat_words(const Task::Repeat& repeat) {
  std::string out = "every " + write_span(repeat.every);
  if (repeat.every == 1440) out = "every day";
  if (repeat.every == 10080) out = "every week";
  if (repeat.every == 720) out = "morning and evening";
  return out + fmt::format(", {} times", repeat.times);
}

const char* from_words(Task::From from) {
  return from == Task::From::print ? "as printed" : from == Task::From::siblings ? "from siblings" : "usual";
}

const char* attention_words(Task::Attention attention) {
  return attention == Task::Attention::hands ? "work" : attention == Task::Attention::watch ? "watch" : "wait";
}

std::string made_words(const Made& made) {
  const auto& amount = made.liquid ? made.millilitres : made.grams;
  return amount ? write_large_amount(*amount).text() : std::string();
}

std::vector<std::string> keeping_sentences(const Keeping& keeping) {
  std::vector<std::string> out;
  if (!keeping.meant_to_keep) return out;
  out.push_back("It is meant to keep: " + keeping.why + ".");
  const auto percent = [&](const char* what, const std::optional<Amount>& amount) {
    if (amount) out.push_back(fmt::format("{} of what goes in, by weight: {}.", what, percent_words(*amount)));
  };
  percent("Salt", keeping.salt);
  percent("Sugar", keeping.sugar);
  percent("Acid (acetic, citric, malic)", keeping.acid);
  if (keeping.vinegar_then)
    out.push_back(fmt::format("Vinegar then held {}: {}. Now it is sold at 5 %, or as the label says.",
                              percent_words(*keeping.vinegar_then), keeping.vinegar_then->why));
  const auto list = [&](const char* what, const std::vector<std::string>& names) {
    if (!names.empty()) out.push_back(fmt::format("{}: {}.", what, fmt::join(names, ", ")));
  };
  list("No shares can be told, since there is no amount of", keeping.no_amount);
  list("Counted as holding none, since no table tells", keeping.left_out);
  for (const Keeping::Guidance& one : keeping.guidance) out.push_back(one.says + " (" + one.source + ")");
  return out;
}

std::vector<bool> siblings_used(const Sheet& sheet) {
  std::vector<bool> used(sheet.siblings.size());
  for (const Gap& gap : sheet.gaps)
    for (const Answer& answer : gap.answers)
      for (const Witnessed& who : answer.by) used[who.sibling] = true;
  for (const SheetLine& line : sheet.lines)
    if (line.siblings)
      for (const Witnessed& who : line.siblings->by) used[who.sibling] = true;
  return used;
}

std::string percent_words(const Amount& percent) {
  WrittenAmount written = write_amount({Amount::Unit::count, percent.low, percent.likely, percent.high, {}});
  written.unit = "%";
  return written.text();
}

}  // namespace gallipot
