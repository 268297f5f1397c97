// What splits the witnesses as something else does.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "query/comparing/chance.h"
#include "query/comparing/findings.h"
#include "query/comparing/methods.h"
#include "query/comparing/sentences.h"

namespace gallipot {
namespace {

constexpr std::size_t fewest_on_a_side = 2;
constexpr std::size_t most_years = 5;
constexpr std::size_t most_things_in_pairs = 12;

/// Something that a witness has or has not; unknown for some (a year, a country).
struct Mark {
  enum class Sort : unsigned char { stuff, step, year, country, kind };
  Sort sort = Sort::stuff;
  std::string name;         ///< "vinegar", "boil", "1840", "GB", "catsup"
  std::vector<char> here;   ///< one a witness
  std::vector<char> known;  ///< likewise
};

FourFold counted(const Mark& thing, const Mark& circumstance) {
  FourFold out;
  for (std::size_t w = 0; w < thing.here.size(); ++w) {
    if (thing.known[w] == 0 || circumstance.known[w] == 0) continue;
    const bool here = circumstance.here[w] != 0;
    if (thing.here[w] != 0)
      ++(here ? out.with_here : out.with_there);
    else
      ++(here ? out.without_here : out.without_there);
  }
  return out;
}

std::size_t lesser_side(const Mark& mark) {
  std::size_t here = 0, known = 0;
  for (std::size_t w = 0; w < mark.here.size(); ++w) {
    if (mark.known[w] == 0) continue;
    ++known;
    if (mark.here[w] != 0) ++here;
  }
  return std::min(here, known - here);
}

template <typename Here, typename Known>
Mark mark(const Comparison& comparison, Mark::Sort sort, std::string name, Here here, Known known) {
  Mark out{sort, std::move(name), {}, {}};
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    out.here.push_back(here(w) ? 1 : 0);
    out.known.push_back(known(w) ? 1 : 0);
  }
  return out;
}

/// Ingredients and operations.
std::vector<Mark> things(const Comparison& comparison) {
  std::vector<Mark> out;
  const auto all = [](std::size_t) { return true; };
  for (const Row& row : comparison.rows)
    out.push_back(
        mark(comparison, Mark::Sort::stuff, row.name, [&](std::size_t w) { return row.cells[w].present; }, all));
  std::set<std::string> ops;
  for (const Witness& witness : comparison.witnesses)
    for (const Step& step : witness.recipe.steps)
      if (!says_little(step.op)) ops.insert(step.op);
  const auto steps = [&](std::size_t w) -> const std::vector<Step>& { return comparison.witnesses[w].recipe.steps; };
  for (const std::string& op : ops) {
    const auto does = [&](std::size_t w) {
      return std::any_of(steps(w).begin(), steps(w).end(), [&](const Step& step) { return step.op == op; });
    };
    out.push_back(mark(comparison, Mark::Sort::step, op, does, [&](std::size_t w) { return !steps(w).empty(); }));
  }
  std::erase_if(out, [](const Mark& one) { return lesser_side(one) < fewest_on_a_side; });
  return out;
}

/// Years that part the dated witnesses: at most five, spread evenly, on the first year of a decade where one lies
/// between the two that it parts.
std::vector<int> parting_years(const Comparison& comparison) {
  std::vector<int> years;
  for (const Witness& witness : comparison.witnesses)
    if (witness.recipe.year > 0) years.push_back(witness.recipe.year);
  std::set<int> out;
  for (std::size_t i = 1; i <= most_years && years.size() >= 4; ++i) {
    const std::size_t at = years.size() * i / (most_years + 1);
    if (at == 0 || years[at] == years[at - 1]) continue;
    const int decade = years[at] / 10 * 10;
    out.insert(decade > years[at - 1] ? decade : years[at]);
  }
  return {out.begin(), out.end()};
}

std::vector<Mark> circumstances(const Comparison& comparison) {
  const auto recipe = [&](std::size_t w) -> const ComparableRecipe& { return comparison.witnesses[w].recipe; };
  std::vector<Mark> out;
  for (const int year : parting_years(comparison))
    out.push_back(mark(
        comparison, Mark::Sort::year, std::to_string(year), [&](std::size_t w) { return recipe(w).year < year; },
        [&](std::size_t w) { return recipe(w).year > 0; }));
  std::set<std::string> countries, kinds;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    if (!recipe(w).country.empty()) countries.insert(recipe(w).country);
    if (!recipe(w).dish.kind.empty()) kinds.insert(recipe(w).dish.kind);
  }
  for (const std::string& country : countries)
    out.push_back(mark(
        comparison, Mark::Sort::country, country, [&](std::size_t w) { return recipe(w).country == country; },
        [&](std::size_t w) { return !recipe(w).country.empty(); }));
  for (const std::string& kind : kinds)
    out.push_back(mark(
        comparison, Mark::Sort::kind, kind, [&](std::size_t w) { return recipe(w).dish.kind == kind; },
        [&](std::size_t w) { return !recipe(w).dish.kind.empty(); }));
  // Of two countries or kinds the second only says the first again.
  for (const auto sort : {Mark::Sort::country, Mark::Sort::kind}) {
    const auto of_sort = [&](const Mark& one) { return one.sort == sort; };
    if (std::count_if(out.begin(), out.end(), of_sort) == 2)
      out.erase(std::find_if(out.rbegin(), out.rend(), of_sort).base() - 1);
  }
  std::erase_if(out, [](const Mark& one) { return lesser_side(one) < fewest_on_a_side; });
  return out;
}

struct Tried {
  const Mark* thing;
  const Mark* circumstance;
  FourFold table;
  double p;
};

/// "egg" and "egg white": one stands for a part of the other, which is no news.
bool share_a_word(const std::string& a, const std::string& b) {
  const auto words = [](const std::string& text) {
    std::set<std::string> out;
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = std::min(text.find(' ', begin), text.size());
      out.insert(text.substr(begin, end - begin));
      begin = end + 1;
    }
    return out;
  };
  const auto of_a = words(a), of_b = words(b);
  return std::any_of(of_a.begin(), of_a.end(), [&](const std::string& word) { return of_b.contains(word); });
}

/// All that are tried: each thing by each circumstance, and the things that divide most evenly by one another.
std::vector<Tried> all_tried(const std::vector<Mark>& marks, const std::vector<Mark>& circumstances) {
  std::vector<Tried> out;
  const auto attempt = [&](const Mark& thing, const Mark& circumstance) {
    const FourFold table = counted(thing, circumstance);
    out.push_back({&thing, &circumstance, table, fisher_exact(table)});
  };
  for (const Mark& thing : marks)
    for (const Mark& circumstance : circumstances) attempt(thing, circumstance);
  std::vector<const Mark*> even;
  for (const Mark& thing : marks) even.push_back(&thing);
  std::stable_sort(even.begin(), even.end(),
                   [](const Mark* a, const Mark* b) { return lesser_side(*a) > lesser_side(*b); });
  if (even.size() > most_things_in_pairs) even.resize(most_things_in_pairs);
  for (std::size_t i = 0; i < even.size(); ++i)
    for (std::size_t j = i + 1; j < even.size(); ++j)
      if (!share_a_word(even[i]->name, even[j]->name)) attempt(*even[i], *even[j]);
  return out;
}

std::string country_words(const std::string& code) {
  static const std::map<std::string, std::string> names{{"GB", "Britain"},   {"US", "the United States"},
                                                        {"CA", "Canada"},    {"IE", "Ireland"},
                                                        {"AU", "Australia"}, {"IN", "India"}};
  const auto found = names.find(code);
  return found == names.end() ? code : found->second;
}

/// Of many: "are before 1840", "are printed in Britain", "have sugar", "boil it". `here` or its contrary.
std::string predicate(const Mark& circumstance, bool here) {
  const std::string& name = circumstance.name;
  switch (circumstance.sort) {
    case Mark::Sort::year:
      return here ? "are from before " + name : "are of " + name + " or later";
    case Mark::Sort::country:
      return (here ? "were printed in " : "were printed elsewhere than in ") + country_words(name);
    case Mark::Sort::kind:
      return here ? "are called " + name : "are not called " + name;
    case Mark::Sort::stuff:
      return (here ? "have " : "have no ") + name;
    case Mark::Sort::step:
      return (here ? "say to " : "do not say to ") + name;
  }
  return {};
}

std::string of_those(std::size_t some, std::size_t all) {
  if (some == 0) return "none of the " + number_word(all);
  return some == all ? "all " + number_word(all) : fmt::format("{} of the {}", some, all);
}

/// Which witnesses are counted where not all are.
std::string told_apart(const Mark& thing, const Mark& circumstance) {
  const bool method = thing.sort == Mark::Sort::step || circumstance.sort == Mark::Sort::step;
  std::string out;
  switch (circumstance.sort) {
    case Mark::Sort::year:
      out = "that are dated";
      break;
    case Mark::Sort::country:
      out = "whose country is known";
      break;
    case Mark::Sort::kind:
      out = "whose title names a kind of dish";
      break;
    default:
      break;
  }
  if (!method) return out;
  return (out.empty() ? "" : out + " and ") + "that tell a method";
}

std::string chance_words(double p) { return p < 0.0001 ? "below 0.0001" : fmt::format("= {:.2g}", p); }

std::string said(const Mark& thing, const Mark& circumstance, const Contrast& found, std::size_t witnesses) {
  const std::size_t with = found.with_here + found.with_there, without = found.without_here + found.without_there;
  const bool step = thing.sort == Mark::Sort::step;
  std::string out =
      with + without < witnesses ? fmt::format("Of the {} {}, ", with + without, told_apart(thing, circumstance)) : "";
  const std::string name = out.empty() ? capitalized(thing.name) : thing.name;
  out += step ? fmt::format("{}: {} do, {} do not; ", name, with, without)
              : fmt::format("{}: {} with, {} without; ", name, with, without);
  // Of a year, said by the side on which those with are the commoner; of anything else by who has or does it.
  const bool here = circumstance.sort != Mark::Sort::year || found.with_here * without >= found.without_here * with;
  out += fmt::format("{} {} {}, but ", of_those(here ? found.with_here : found.with_there, with),
                     step ? "that do" : "with", predicate(circumstance, here));
  out += fmt::format("{} {}", of_those(here ? found.without_here : found.without_there, without),
                     step ? "that do not" : "without");
  out += fmt::format(" (exact test: p {}; {} when all {} contrasts that could tell are allowed for).",
                     chance_words(found.p), chance_words(found.among).substr(found.among < 0.0001 ? 0 : 2),
                     found.tried);
  return out;
}

}  // namespace

std::vector<Contrast> contrasts_of(const Comparison& comparison) {
  const std::vector<Mark> marks = things(comparison), around = circumstances(comparison);
  std::vector<Tried> tried = all_tried(marks, around);
  std::vector<double> least;
  for (const Tried& one : tried) least.push_back(least_fisher(one.table));
  const std::size_t count = tests_that_count(std::move(least), level_of_chance);
  std::stable_sort(tried.begin(), tried.end(), [](const Tried& a, const Tried& b) { return a.p < b.p; });
  std::vector<Contrast> out;
  std::set<std::pair<const Mark*, Mark::Sort>> told;
  for (const Tried& one : tried) {
    const double among = one.p * static_cast<double>(count);
    if (among > level_of_chance || out.size() == most_contrasts) break;
    if (!told.insert({one.thing, one.circumstance->sort}).second) continue;
    Contrast found;
    found.thing = one.thing->name;
    found.circumstance = predicate(*one.circumstance, true);
    found.with_here = one.table.with_here;
    found.with_there = one.table.with_there;
    found.without_here = one.table.without_here;
    found.without_there = one.table.without_there;
    found.p = one.p;
    found.among = among;
    found.tried = count;
    found.sentence = said(*one.thing, *one.circumstance, found, comparison.witnesses.size());
    out.push_back(std::move(found));
  }
  return out;
}

}  // namespace gallipot
