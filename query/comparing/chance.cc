// Fisher's exact test by logarithms of factorials, and Tarone's count of tests.
#include "query/comparing/chance.h"

#include <algorithm>
#include <cmath>

namespace gallipot {
namespace {

/// Two chances that differ by less than this part of themselves are the same one, reckoned in another order.
constexpr double same = 1e-7;

double log_factorial(std::size_t n) { return std::lgamma(static_cast<double>(n) + 1); }

double log_choose(std::size_t n, std::size_t k) { return log_factorial(n) - log_factorial(k) - log_factorial(n - k); }

/// All tables with the sums of one: how many of `here` may be with, and each one's chance.
struct Tables {
  std::size_t first = 0;
  std::vector<double> chance;  ///< of first, first + 1, ...
};

Tables tables_like(const FourFold& table) {
  const std::size_t with = table.with_here + table.with_there, here = table.with_here + table.without_here;
  const std::size_t all = table.all();
  Tables out;
  out.first = with + here > all ? with + here - all : 0;
  for (std::size_t k = out.first; k <= std::min(with, here); ++k)
    out.chance.push_back(std::exp(log_choose(here, k) + log_choose(all - here, with - k) - log_choose(all, with)));
  return out;
}

double no_likelier_than(const Tables& tables, double chance) {
  double out = 0;
  for (const double one : tables.chance)
    if (one <= chance * (1 + same)) out += one;
  return std::min(1.0, out);
}

}  // namespace

double fisher_exact(const FourFold& table) {
  const Tables tables = tables_like(table);
  return no_likelier_than(tables, tables.chance[table.with_here - tables.first]);
}

double least_fisher(const FourFold& table) {
  const Tables tables = tables_like(table);
  return no_likelier_than(tables, *std::min_element(tables.chance.begin(), tables.chance.end()));
}

std::size_t tests_that_count(std::vector<double> least, double level) {
  std::sort(least.begin(), least.end());
  for (std::size_t k = 1; k <= least.size(); ++k) {
    const auto able = std::upper_bound(least.begin(), least.end(), level / static_cast<double>(k)) - least.begin();
    if (static_cast<std::size_t>(able) <= k) return k;
  }
  return least.size();
}

}  // namespace gallipot
