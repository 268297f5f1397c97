// What all have, and what divides them.
#include <fmt/format.h>

#include <algorithm>

#include "query/comparing/findings.h"
#include "query/comparing/sentences.h"

namespace gallipot {
namespace {

constexpr std::size_t names_a_sentence = 8;

/// "Vinegar: 6 with, 5 without (without: A, C and D; they are the oldest)."
std::string with_and_without(const Comparison& comparison, const Row& row) {
  const std::size_t all = comparison.witnesses.size();
  const auto [with, without] = divided(all, [&](std::size_t w) { return row.cells[w].present; });
  const bool name_without = without.size() <= with.size();
  const Places& few = name_without ? without : with;
  const std::string sigla = sigla_of(comparison, few), time = place_in_time(comparison, few);
  std::string out = fmt::format("{}: {} with, {} without", capitalized(row.name), with.size(), without.size());
  if (sigla.empty() && time.empty()) return out + ".";
  out += name_without ? " (without: " : " (with: ";
  out += sigla.empty() ? number_word(few.size()) : sigla;
  if (!time.empty()) out += (few.size() == 1 ? "; it" : "; they") + time;
  return out + ").";
}

/// What all have; where nothing is in all, what is in most.
std::string common_stock(const Comparison& comparison) {
  const std::size_t all = comparison.witnesses.size();
  std::vector<std::string> everywhere, nearly;
  const Row* commonest = nullptr;
  for (const Row& row : comparison.rows) {
    if (row.witnesses == all && everywhere.size() < names_a_sentence) everywhere.push_back(row.name);
    if (row.witnesses * 5 >= all * 4 && nearly.size() < names_a_sentence)
      nearly.push_back(fmt::format("{} ({})", row.name, row.witnesses));
    if (commonest == nullptr || row.witnesses > commonest->witnesses) commonest = &row;
  }
  if (commonest == nullptr) return {};
  if (all > 1 && commonest->witnesses == 1) return "They have no ingredient in common.";
  if (!everywhere.empty()) return fmt::format("{} have {}.", all_of(all), sigla_list(everywhere));
  if (!nearly.empty())
    return fmt::format("No ingredient is in all {}; most have {}.", number_word(all), sigla_list(nearly));
  return fmt::format("No ingredient is in all {}; the commonest, {}, is in {}.", number_word(all), commonest->name,
                     number_word(commonest->witnesses));
}

}  // namespace

std::vector<std::string> findings_on_stuffs(const Comparison& comparison) {
  std::vector<std::string> out;
  if (std::string stock = common_stock(comparison); !stock.empty()) out.push_back(std::move(stock));
  const std::size_t all = comparison.witnesses.size();
  std::vector<const Row*> dividing;
  const auto told = [&](const Row& row) {
    return std::any_of(comparison.contrasts.begin(), comparison.contrasts.end(),
                       [&](const Contrast& contrast) { return contrast.thing == row.name; });
  };
  for (const Row& row : comparison.rows) {
    if (told(row)) continue;
    const std::size_t fewer = std::min(row.witnesses, all - row.witnesses);
    if (fewer >= 2 || (fewer == 1 && all >= 3 && row.witnesses > 1)) dividing.push_back(&row);
  }
  // The nearer to an even split, the more it tells two sorts of the dish apart.
  std::stable_sort(dividing.begin(), dividing.end(), [&](const Row* a, const Row* b) {
    const auto evenness = [&](const Row* row) { return std::min(row->witnesses, all - row->witnesses); };
    return evenness(a) > evenness(b);
  });
  for (std::size_t i = 0; i < dividing.size() && i < sentences_a_matter; ++i)
    out.push_back(with_and_without(comparison, *dividing[i]));
  return out;
}

}  // namespace gallipot
