// What most do to it and some do not, and how long they say.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "query/comparing/duration.h"
#include "query/comparing/findings.h"
#include "query/comparing/methods.h"
#include "query/comparing/sentences.h"

namespace gallipot {
namespace {

constexpr std::size_t most_on_methods = 6;  // sentences
constexpr double comes_to_the_same = 0.7;   // likeness from which "all but two boil it" counts those that simmer it

/// What the witnesses do where the most of them do `op`.
struct Doing {
  std::string op;
  Places same, near, without;   // do it; do what comes to the same; the rest
  std::set<std::string> words;  // what the near ones do
};

Doing doing(const Comparison& comparison, const Yardstick& yardstick, const std::string& op) {
  Doing out;
  out.op = op;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    if (comparison.witnesses[w].recipe.steps.empty()) continue;  // a bare list says nothing of the method
    const std::string* nearest = nullptr;
    double best = 0;
    for (const Step& step : comparison.witnesses[w].recipe.steps) {
      const double like = yardstick.likeness(op, step.op);
      if (like <= best) continue;
      best = like;
      nearest = &step.op;
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

/// "boil or simmer it", "let it stand or soak it".
std::string phrase(const Doing& found) {
  std::vector<std::string> to_it, by_itself;
  const auto add = [&](const std::string& op) {
    const bool rests = op == "stand" || op == "ferment" || op == "cool";
    (rests ? by_itself : to_it).push_back(op);
  };
  add(found.op);
  for (const std::string& op : found.words) add(op);
  const auto either = [](const std::vector<std::string>& ops) {
    std::string out;
    for (const std::string& op : ops) out += (out.empty() ? "" : " or ") + op;
    return out;
  };
  std::string out = by_itself.empty() ? std::string() : "let it " + either(by_itself);
  if (!to_it.empty()) out += (out.empty() ? "" : " or ") + either(to_it) + " it";
  return out;
}

std::string said(const Comparison& comparison, const Doing& found) {
  const bool some_tell_none = comparison.methods < comparison.witnesses.size();
  const std::string that_tell = some_tell_none ? " that tell a method" : "";
  const bool one = comparison.methods == 1;
  if (found.without.empty())
    return fmt::format("{}{} {}.", all_of(comparison.methods),
                       one && some_tell_none ? " that tells a method" : that_tell, phrase(found));
  std::string out = some_tell_none ? fmt::format("All but {} of the {}{} {}", number_word(found.without.size()),
                                                 number_word(comparison.methods), that_tell, phrase(found))
                                   : fmt::format("All but {} {}", number_word(found.without.size()), phrase(found));
  if (const std::string sigla = sigla_of(comparison, found.without); !sigla.empty())
    out += fmt::format(" (not {})", sigla);
  if (const std::string time = place_in_time(comparison, found.without); !time.empty())
    out += fmt::format("; {}{}", found.without.size() == 1 ? "the one that does not" : "those that do not", time);
  return out + ".";
}

/// "Six of them say how long: from 20 minutes (A) to 4 hours (F)": by the longest stretch that each names. Nothing
/// where fewer than three say, or all say much the same.
std::string how_long(const Comparison& comparison, const std::string& op) {
  struct Told {
    Range minutes;
    std::size_t witness;
    double middle() const { return (minutes.low + minutes.high) / 2; }
  };
  std::vector<Told> told;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    std::optional<Told> longest;
    for (const Step& step : comparison.witnesses[w].recipe.steps) {
      if (step.op != op || !step.minutes || step.minutes->high <= 0) continue;
      const Told one{*step.minutes, w};
      if (!longest || one.middle() > longest->middle()) longest = one;
    }
    if (longest) told.push_back(*longest);
  }
  if (told.size() < 3) return {};
  std::stable_sort(told.begin(), told.end(), [](const Told& a, const Told& b) { return a.middle() < b.middle(); });
  const Told &least = told.front(), &most = told.back();
  if (most.middle() < 1.5 * least.middle()) return {};
  const auto siglum = [&](const Told& one) { return comparison.witnesses[one.witness].siglum; };
  return fmt::format(" {} say how long: from {} ({}) to {} ({}).", capitalized(number_word(told.size())),
                     duration_words(least.minutes), siglum(least), duration_words(most.minutes), siglum(most));
}

/// "They cannot agree on the time to stand: 5 to 6 days (H), 180 days (G)."
std::string conflict_words(const Comparison& comparison, const Conflict& conflict) {
  const StepRow& row = comparison.steps[conflict.step];
  return fmt::format("They do not agree how long to {}: {} ({}) or {} ({}).", row.op,
                     duration_words(*row.cells[conflict.shorter].minutes),
                     comparison.witnesses[conflict.shorter].siglum, duration_words(*row.cells[conflict.longer].minutes),
                     comparison.witnesses[conflict.longer].siglum);
}

bool in_most(std::size_t some, std::size_t all) { return some * 3 >= all * 2; }

}  // namespace

std::vector<std::string> findings_on_methods(const Comparison& comparison, const Yardstick& yardstick) {
  // Operations that make the dish what it is; "add" and "mix" say nothing.
  static constexpr const char* telling[] = {"boil",   "simmer", "stew",   "bake",  "roast", "broil",   "fry",   "steam",
                                            "strain", "sieve",  "salt",   "stand", "soak",  "ferment", "scald", "skim",
                                            "bottle", "pot",    "freeze", "smoke", "dry",   "knead"};
  const std::size_t all = comparison.methods;
  std::vector<Doing> found;
  for (const char* op : telling) {
    const bool told = std::any_of(found.begin(), found.end(), [&](const Doing& one) {
      return yardstick.likeness(one.op, op) >= comes_to_the_same;
    });
    if (told) continue;
    Doing one = doing(comparison, yardstick, op);
    const std::size_t with = all - one.without.size();
    if (with < 2 || with * 3 < all * 2 || one.same.size() < one.near.size()) continue;
    if (all < 3 && !one.without.empty()) continue;
    found.push_back(std::move(one));
  }
  // First where the exceptions stand together in time, then the commonest.
  std::stable_sort(found.begin(), found.end(), [&](const Doing& a, const Doing& b) {
    const bool timed_a = !place_in_time(comparison, a.without).empty();
    const bool timed_b = !place_in_time(comparison, b.without).empty();
    return timed_a != timed_b ? timed_a : a.without.size() < b.without.size();
  });
  if (found.size() > sentences_a_matter) found.resize(sentences_a_matter);
  std::vector<std::string> out;
  std::set<std::string> timed;  // operations whose length has been told
  for (const Doing& one : found) {
    const std::string length = how_long(comparison, one.op);
    if (!length.empty()) timed.insert(one.op);
    out.push_back(said(comparison, one) + length);
  }
  for (const Conflict& conflict : comparison.conflicts)
    if (out.size() < most_on_methods && !timed.contains(comparison.steps[conflict.step].op))
      out.push_back(conflict_words(comparison, conflict));
  return out;
}

std::vector<Apart> apart_of(const Comparison& comparison, const Yardstick& yardstick) {
  const std::size_t all = comparison.witnesses.size();
  std::vector<Apart> out(all);
  if (all < fewest_for_apart) return out;
  for (const Row& row : comparison.rows)
    for (std::size_t w = 0; w < all; ++w) {
      if (row.cells[w].present && row.witnesses == 1) out[w].alone_stuffs.push_back(row.name);
      if (!row.cells[w].present && in_most(row.witnesses, all)) out[w].lacks_stuffs.push_back(row.name);
    }
  std::set<std::string> ops;
  for (const Witness& witness : comparison.witnesses)
    for (const Step& step : witness.recipe.steps)
      if (!says_little(step.op)) ops.insert(step.op);
  for (const std::string& op : ops) {
    const Doing done = doing(comparison, yardstick, op);
    if (done.same.size() == 1 && done.near.empty()) out[done.same.front()].alone_steps.push_back(op);
    if (!in_most(done.same.size(), comparison.methods)) continue;
    for (const std::size_t w : done.without) out[w].lacks_steps.push_back(op);
  }
  return out;
}

}  // namespace gallipot
