// Turns a comparison into sentences that a presenter can say aloud.
#include "query/comparing/findings.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include "query/comparing/interval.h"
#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr std::size_t fewest_for_outliers = 5;
constexpr double comes_to_the_same = 0.7;  // likeness of operations, from which "all but two boil it" counts simmering
constexpr std::size_t sentences_a_matter = 4;  // of ingredients that divide, of operations, of what is out of line

std::string number(std::size_t n) {
  static constexpr const char* words[] = {"none",  "one",   "two",  "three", "four",   "five",  "six",
                                          "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  return n < std::size(words) ? words[n] : std::to_string(n);
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

using Places = std::vector<std::size_t>;  // of witnesses

std::string sigla_of(const Comparison& comparison, const Places& places) {
  std::vector<std::string> sigla;
  for (const std::size_t w : places) sigla.push_back(comparison.witnesses[w].siglum);
  return sigla_list(sigla);
}

/// Whether the few are the oldest or the newest of all, told by year; empty where they are neither.
std::string place_in_time(const Comparison& comparison, const Places& few, std::size_t all) {
  const auto year = [&](std::size_t w) { return comparison.witnesses[w].recipe.year; };
  if (few.empty() || few.size() == all) return {};
  const std::size_t n = few.size();
  const std::string is = n == 1 ? " is" : " are";
  if (few.back() == n - 1 && year(few.back()) > 0 && year(n - 1) < year(n)) return is + " the oldest";
  if (few.front() == all - n && year(few.back()) > 0 && year(all - n - 1) < year(all - n)) return is + " the newest";
  return {};
}

/// The places whose test holds and those for which it does not.
template <typename Test>
std::pair<Places, Places> divided(std::size_t count, Test test) {
  std::pair<Places, Places> out;
  for (std::size_t w = 0; w < count; ++w) (test(w) ? out.first : out.second).push_back(w);
  return out;
}

/// "vinegar: 6 with, 5 without (A, C and D are the oldest)."
std::string with_and_without(const Comparison& comparison, const Row& row) {
  const std::size_t all = comparison.witnesses.size();
  const auto [with, without] = divided(all, [&](std::size_t w) { return row.cells[w].present; });
  const bool name_without = without.size() <= with.size();
  const Places& few = name_without ? without : with;
  std::string out = fmt::format("{}: {} with, {} without", capital(row.name), with.size(), without.size());
  const std::string sigla = sigla_of(comparison, few);
  const std::string time = place_in_time(comparison, few, all);
  out += fmt::format(
      " ({} {}{})", name_without ? "without:" : "with:", sigla,
      time.empty() ? std::string() : ";" + (few.size() == 1 ? std::string(" it") : std::string(" they")) + time);
  return out + ".";
}

std::vector<std::string> on_stuffs(const Comparison& comparison) {
  std::vector<std::string> out;
  const std::size_t all = comparison.witnesses.size();
  std::vector<std::string> everywhere;
  std::vector<const Row*> divided_rows;
  for (const Row& row : comparison.rows) {
    if (row.witnesses == all) everywhere.push_back(row.name);
    const std::size_t fewer = std::min(row.witnesses, all - row.witnesses);
    if (fewer >= 2 || (fewer == 1 && all >= 3 && row.witnesses > 1)) divided_rows.push_back(&row);
  }
  if (all > 1 && !everywhere.empty()) {
    if (everywhere.size() > 8) everywhere.resize(8);
    out.push_back(
        fmt::format("{} have {}.", all == 2 ? std::string("Both") : "All " + number(all), sigla_list(everywhere)));
  } else if (all > 1) {
    out.push_back("No ingredient is in all " + number(all) + ".");
  }
  // The nearer to an even split, the more it tells two sorts of the dish apart.
  std::stable_sort(divided_rows.begin(), divided_rows.end(), [&](const Row* a, const Row* b) {
    const auto evenness = [&](const Row* row) { return std::min(row->witnesses, all - row->witnesses); };
    return evenness(a) > evenness(b);
  });
  for (std::size_t i = 0; i < divided_rows.size() && i < sentences_a_matter; ++i)
    out.push_back(with_and_without(comparison, *divided_rows[i]));
  return out;
}

/// How long a step takes over the witnesses that say so: "20 minutes (A) to 4 hours (F)".
std::string duration(double minutes) {
  const auto in = [](double value, const char* unit) {
    return fmt::format("{:.3g} {}{}", value, unit, value == 1 ? "" : "s");
  };
  if (minutes < 90 && minutes != 60) return in(minutes, "minute");
  if (minutes < 48 * 60) return in(minutes / 60, "hour");
  if (minutes < 21 * 24 * 60) return in(minutes / (24 * 60), "day");
  return in(minutes / (7 * 24 * 60), "week");
}

std::string on_time(const Comparison& comparison, const std::string& op) {
  // The longest stretch of this operation that a witness names.
  std::vector<std::pair<double, std::size_t>> longest;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    double most = 0;
    for (const Step& step : comparison.witnesses[w].recipe.steps)
      if (step.op == op && step.minutes) most = std::max(most, (step.minutes->low + step.minutes->high) / 2);
    if (most > 0) longest.emplace_back(most, w);
  }
  if (longest.size() < 3) return {};
  std::sort(longest.begin(), longest.end());
  if (longest.back().first < 1.5 * longest.front().first) return {};
  return fmt::format(" {} of them say how long: from {} ({}) to {} ({}).", capital(number(longest.size())),
                     duration(longest.front().first), comparison.witnesses[longest.front().second].siglum,
                     duration(longest.back().first), comparison.witnesses[longest.back().second].siglum);
}

/// What the witnesses do where the most of them do `op`: those that do it, those that do what comes to the same, the
/// rest.
struct Doing {
  Places same, near, without;
  std::set<std::string> words;  // what the near ones do
};

Doing doing(const Comparison& comparison, const Yardstick& yardstick, const std::string& op) {
  Doing out;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    const std::string* nearest = nullptr;
    double best = 0;
    for (const Step& step : comparison.witnesses[w].recipe.steps) {
      const double like = yardstick.likeness(op, step.op);
      if (like > best) {
        best = like;
        nearest = &step.op;
      }
    }
    if (best >= 1) {
      out.same.push_back(w);
    } else if (best >= comes_to_the_same) {
      out.near.push_back(w);
      out.words.insert(*nearest);
    } else {
      out.without.push_back(w);
    }
  }
  return out;
}

/// "All but two boil it (A and B; C simmers instead); those that do not are the oldest."
std::string doing_text(const Comparison& comparison, const Doing& found, const std::string& op) {
  const std::size_t all = comparison.witnesses.size();
  std::string verbs = op;
  if (!found.near.empty()) verbs += fmt::format(" or {}", fmt::join(found.words, " or "));
  if (found.without.empty())
    return fmt::format("{} {} it.", all == 2 ? std::string("Both") : "All " + number(all), verbs);
  std::string out = fmt::format("All but {} {} it (not {})", number(found.without.size()), verbs,
                                sigla_of(comparison, found.without));
  const std::string time = place_in_time(comparison, found.without, all);
  if (!time.empty())
    out += fmt::format("; {}{}", found.without.size() == 1 ? "the one that does not" : "those that do not", time);
  return out + ".";
}

std::vector<std::string> on_operations(const Comparison& comparison, const Yardstick& yardstick) {
  // Operations that make the dish what it is; "add" and "mix" say nothing.
  static constexpr const char* telling[] = {"boil",  "simmer", "stew",   "bake",   "roast",   "broil", "fry",
                                            "steam", "strain", "sieve",  "salt",   "ferment", "soak",  "stand",
                                            "scald", "skim",   "bottle", "freeze", "smoke",   "dry",   "knead"};
  const std::size_t all = comparison.witnesses.size();
  struct Finding {
    bool timed;  // the exceptions stand together in time
    std::size_t with;
    std::string text;
  };
  std::vector<Finding> found;
  std::set<std::string> told;
  for (const char* op : telling) {
    if (told.contains(op)) continue;
    const Doing one = doing(comparison, yardstick, op);
    const std::size_t with = all - one.without.size();
    if (with < 2 || with * 3 < all * 2 || one.same.size() < one.near.size()) continue;
    if (all < 3 && !one.without.empty()) continue;
    told.insert(one.words.begin(), one.words.end());
    found.push_back({!place_in_time(comparison, one.without, all).empty(), with,
                     doing_text(comparison, one, op) + on_time(comparison, op)});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Finding& a, const Finding& b) { return a.timed != b.timed ? a.timed : a.with > b.with; });
  std::vector<std::string> out;
  for (std::size_t i = 0; i < found.size() && i < sentences_a_matter; ++i) out.push_back(std::move(found[i].text));
  return out;
}

std::vector<std::string> what_could_not_be_done(const Comparison& comparison) {
  std::vector<std::string> out;
  if (comparison.basis == "as printed") {
    out.push_back("Amounts stand as printed, not brought to one size of batch: " + comparison.basis_why + ".");
    return out;
  }
  Places untold;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    const bool any = std::any_of(comparison.rows.begin(), comparison.rows.end(), [&](const Row& row) {
      return row.name != comparison.basis && row.cells[w].per_basis.has_value();
    });
    if (!any) untold.push_back(w);
  }
  if (!untold.empty())
    out.push_back(fmt::format("{} {} as printed: {} no amounts that can be brought to the {}.",
                              sigla_of(comparison, untold), untold.size() == 1 ? "stands" : "stand",
                              untold.size() == 1 ? "it gives" : "they give", comparison.basis));
  return out;
}

}  // namespace

std::string sigla_list(const std::vector<std::string>& sigla) {
  std::string out;
  for (std::size_t i = 0; i < sigla.size(); ++i) {
    if (i > 0) out += i + 1 == sigla.size() ? " and " : ", ";
    out += sigla[i];
  }
  return out;
}

void mark_out_of_line(const Comparison& comparison, Row& row) {
  if (!row.median) return;
  std::vector<std::size_t> at;
  std::vector<double> logs;
  for (std::size_t w = 0; w < row.cells.size(); ++w) {
    const Cell& cell = row.cells[w];
    if (!cell.per_basis || cell.per_basis->unit != row.median->unit || cell.per_basis->likely <= 0) continue;
    at.push_back(w);
    logs.push_back(std::log(cell.per_basis->likely));
  }
  if (logs.size() < fewest_for_outliers) return;
  const auto scores = modified_z_scores(logs);
  if (!scores) return;
  std::vector<std::string> said;
  for (std::size_t i = 0; i < at.size(); ++i) {
    if (std::abs((*scores)[i]) <= stands_out) continue;
    const Amount& own = *row.cells[at[i]].per_basis;
    std::vector<double> others;
    bool meets = false;
    for (std::size_t j = 0; j < at.size(); ++j) {
      if (j == i) continue;
      others.push_back(row.cells[at[j]].per_basis->likely);
      meets = meets || overlap(own, *row.cells[at[j]].per_basis);
    }
    const double middle = quartiles(others).median;
    const double times = own.likely / middle;
    if (meets || (times < 2 && times > 0.5)) continue;
    row.cells[at[i]].out_of_line = true;
    const std::string how = times >= 1 ? fmt::format("{:.2g} x", times) : fmt::format("1/{:.2g} of", 1 / times);
    said.push_back(
        fmt::format("{} has {} the median of {} others", comparison.witnesses[at[i]].siglum, how, others.size()));
  }
  for (std::size_t i = 0; i < said.size(); ++i) row.note += (i > 0 ? "; " : "") + said[i];
}

std::vector<std::string> findings(const Comparison& comparison, const Yardstick& yardstick) {
  std::vector<std::string> out;
  const auto append = [&](std::vector<std::string> more) {
    out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  if (comparison.witnesses.size() > 1) {
    std::vector<std::string> odd;
    for (const Row& row : comparison.rows)
      if (!row.note.empty() && odd.size() < sentences_a_matter)
        odd.push_back(fmt::format("Out of line: {}: {}.", row.name, row.note));
    append(on_operations(comparison, yardstick));
    append(std::move(odd));
    append(on_stuffs(comparison));
  }
  append(what_could_not_be_done(comparison));
  return out;
}

}  // namespace gallipot
