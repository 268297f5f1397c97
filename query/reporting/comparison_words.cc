// Words for comparisons.
#include "query/reporting/comparison_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/sentences.h"
#include "query/reporting/amounts.h"

namespace gallipot {
namespace {

constexpr const char* dash = "\xE2\x80\x93";

}  // namespace

std::string basis_words(const Comparison& comparison) {
  const std::string of = comparison.basis == "batch" ? "the whole batch" : comparison.basis;
  if (comparison.per_unit == Amount::Unit::count) return fmt::format("{:g} {}", comparison.per, of);
  const char* unit = comparison.per_unit == Amount::Unit::gram ? "kg" : "l";
  return fmt::format("{:g} {} of {}", comparison.per / 1000, unit, of);
}

std::string axis_words(const Comparison& comparison) {
  const std::string what = "grams, or millilitres of what is measured as a liquid";
  return comparison.per > 0 ? what + ", per " + basis_words(comparison) : what + ", as printed";
}

std::string years_words(const Comparison& comparison) {
  int first = 0, last = 0;
  for (const Witness& witness : comparison.witnesses) {
    if (witness.recipe.year == 0) continue;
    first = first == 0 ? witness.recipe.year : std::min(first, witness.recipe.year);
    last = std::max(last, witness.recipe.year);
  }
  if (first == 0) return {};
  return first == last ? fmt::format(", {}", first) : fmt::format(", {}{}{}", first, dash, last);
}

std::string count_words(std::size_t recipes) { return fmt::format("{} recipe{}", recipes, recipes == 1 ? "" : "s"); }

std::string page_words(const Witness& witness) {
  return witness.citation.page.empty() ? "no page" : "p. " + witness.citation.page;
}

std::string witness_words(const Witness& witness) {
  std::string out = witness.siglum;
  if (witness.recipe.year > 0) out += fmt::format(" {}", witness.recipe.year);
  return out + ", " + page_words(witness);
}

std::string cell_words(const Cell& cell) {
  if (!cell.present) return "not in it";
  if (!cell.per_basis) return "as printed: " + cell.printed;
  return write_amount(*cell.per_basis).text() + ": " + cell.printed;
}

std::vector<std::string> remarks(const Cell& cell) {
  std::vector<std::string> out;
  if (cell.more && cell.per_basis) out.emplace_back("and more");
  if (!cell.alternative_of.empty()) out.push_back("or for " + cell.alternative_of);
  if (cell.optional) out.emplace_back("if liked");
  return out;
}

std::string times_words(double times) {
  const auto figure = [](double value) {
    return value < 10 ? fmt::format("{:.2g}", value) : fmt::format("{:.0f}", value);
  };
  return times >= 1 ? figure(times) + " \xC3\x97" : "1/" + figure(1 / times);
}

std::string sorts_words(const Comparison& comparison, const Row& row) {
  std::vector<std::string> out;
  for (const Sort& sort : row.sorts) {
    const std::string who = sigla_of(comparison, sort.witnesses);
    out.push_back(sort.name + " (" + (who.empty() ? std::to_string(sort.witnesses.size()) : who) + ")");
  }
  return out.empty() ? std::string() : "with " + sigla_list(out);
}

std::string end_figure(const Row& row, double value) {
  const int warranted = decimals_of(row.median->low, value, row.median->high);
  const int first_digit = value > 0 ? -static_cast<int>(std::floor(std::log10(value))) : 0;
  return write_figure(value, std::max(warranted, first_digit));
}

std::string spread_words(const Row& row) {
  if (row.spread <= 0) return dash;
  return row.spread < 1.05 ? "none" : fmt::format("{:.2g} \xC3\x97", row.spread);
}

std::vector<std::string> consensus_words(const Comparison& comparison) {
  std::vector<std::string> out;
  for (const StepRow& row : comparison.steps) {
    if (!row.consensus) continue;
    std::string line = fmt::format("{} ({} of {})", capitalized(row.op), row.witnesses, comparison.methods);
    std::vector<std::string> stuffs;
    for (std::size_t i = 0; i < row.stuffs.size() && i < 4; ++i) stuffs.push_back(row.stuffs[i].name);
    if (!stuffs.empty()) line += ", naming " + sigla_list(stuffs);
    if (row.minutes) {
      line += fmt::format("; {}", write_minutes(*row.minutes));
      if (row.timed >= 3 && row.minutes->high > row.minutes->low)
        line += fmt::format(", median {} of {}", write_minutes({row.middle, row.middle}), row.timed);
      else
        line += fmt::format(" in {}", row.timed == 1 ? "the one that says" : fmt::format("the {} that say", row.timed));
    }
    out.push_back(line + ".");
  }
  return out;
}

bool in_one_only(const Row& row, const Comparison& comparison) {
  return row.witnesses == 1 && comparison.witnesses.size() > 4;
}

std::string ones_words(const Comparison& comparison) {
  std::string out;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w) {
    std::string has;
    for (const Row& row : comparison.rows)
      if (in_one_only(row, comparison) && row.cells[w].present)
        has += (has.empty() ? "" : "; ") + row.name + ", " + cell_words(row.cells[w]);
    if (!has.empty()) out += fmt::format("{}{}: {}.", out.empty() ? "" : " ", comparison.witnesses[w].siglum, has);
  }
  return out;
}

std::vector<std::string> apart_words(const Witness& witness) {
  std::vector<std::string> out;
  const Apart& apart = witness.apart;
  if (!apart.lacks_stuffs.empty()) out.push_back("Without " + sigla_list(apart.lacks_stuffs) + ", which most have.");
  if (!apart.lacks_steps.empty()) out.push_back("Does not say to " + sigla_list(apart.lacks_steps) + ", as most do.");
  if (!apart.alone_stuffs.empty()) out.push_back("Alone has " + sigla_list(apart.alone_stuffs) + ".");
  if (!apart.alone_steps.empty()) out.push_back("Alone says to " + sigla_list(apart.alone_steps) + ".");
  return out;
}

// Each sentence runs over lines; the commas stand where they are meant.  NOLINTBEGIN(bugprone-suspicious-missing-comma)
std::vector<std::string> method_notes() {
  return {
      "Every amount is an interval: the least, the likely and the most it may be, by the register of measures for the "
      "book's year and country. What cannot be told in figures stands as printed and enters no median.",
      "The median and its quartiles are of the likely values. The spread is a factor: about two thirds of the amounts "
      "lie between the median divided by it and times it (1.4826 times the median absolute deviation of the "
      "logarithms).",
      "An amount is called out of line only where five or more are known, its modified z-score on logarithms is beyond "
      "3.5 (Iglewicz and Hoaglin 1993), its interval meets none of the others, and it is at least twice or at most "
      "half their median.",
      "Contrasts are tested by Fisher's exact test, two-sided; all that were tried and could have told anything are "
      "allowed for (Tarone 1990), so that in twenty comparisons with nothing to find one at most would show any.",
      "Trends are slopes of Theil and Sen on logarithms with Kendall's tau, claimed of ten or more dated amounts, and "
      "allowing for every ingredient tried.",
      "Methods are laid side by side by multiple alignment of their operations (Needleman and Wunsch 1970; Feng and "
      "Doolittle 1987); two operations may share a row where the trade takes one for the other.",
  };
}
// NOLINTEND(bugprone-suspicious-missing-comma)

}  // namespace gallipot
