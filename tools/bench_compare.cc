// How long do variants and comparisons take, in process? For each dish the recipes are chosen, laid side by side and
// rendered, so often; the middle time of each part is told in milliseconds.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <cstdio>

#include "query/grouping/choice.h"
#include "query/grouping/variants.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

struct Asked {
  std::string index;
  std::vector<std::string> dishes{"gingerbread", "plum pudding", "sponge cake", "tomato catsup"};
  unsigned times = 9;
};

/// The middle of so many runs, in milliseconds.
template <typename Work>
double middle_of(unsigned times, Work work) {
  std::vector<double> out;
  for (unsigned i = 0; i < times; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    out.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
  }
  std::nth_element(out.begin(), out.begin() + times / 2, out.end());
  return out[times / 2];
}

Outcome<bool> measure(const Asked& asked) {
  const auto shelf = Shelf::open(asked.index);
  if (!shelf) return tl::unexpected(shelf.error());
  const auto lexicon = Lexicon::load();
  if (!lexicon) return tl::unexpected(lexicon.error());
  auto measures = Register::load();
  if (!measures) return tl::unexpected(measures.error());
  const auto yardstick = Yardstick::load(std::move(*measures));
  if (!yardstick) return tl::unexpected(yardstick.error());
  fmt::print("{} recipes on the shelf; milliseconds, the middle of {}\n", shelf->recipe_count(), asked.times);
  fmt::print("{:<24} {:>8} {:>9} {:>8} {:>9} {:>8}\n", "dish", "recipes", "variants", "choice", "compare", "page");
  for (const std::string& dish : asked.dishes) {
    const auto choice = chosen_by_dish(*shelf, **lexicon, dish);
    if (!choice) return tl::unexpected(choice.error());
    if (choice->taken.empty()) continue;
    std::vector<std::string> ids;
    for (const Considered& one : choice->taken) ids.push_back(one.id);
    const auto compared = compare(*shelf, ids, *yardstick);
    if (!compared) return tl::unexpected(compared.error());
    std::size_t bytes = 0;
    const double variants = middle_of(
        asked.times, [&] { bytes += variants_of(*shelf, **lexicon, ids.front(), {}, 50)->variants.size(); });
    const double choosing =
        middle_of(asked.times, [&] { bytes += chosen_by_dish(*shelf, **lexicon, dish)->taken.size(); });
    const double comparing =
        middle_of(asked.times, [&] { bytes += compare(*shelf, ids, *yardstick)->rows.size(); });
    const double page = middle_of(asked.times, [&] { bytes += comparison_as_html(*compared).size(); });
    fmt::print("{:<24} {:>8} {:>9.1f} {:>8.1f} {:>9.1f} {:>8.1f}\n", dish, ids.size(), variants, choosing, comparing,
               page);
    if (bytes == 0) return fault("nothing was answered", "index the shelf again");
  }
  return true;
}

}  // namespace
}  // namespace gallipot

int main(int argc, char** argv) {
  CLI::App app{"How long variants and comparisons take, in process."};
  gallipot::Asked asked;
  app.add_option("--index", asked.index, "Folder of the index")->required()->type_name("DIR");
  app.add_option("--dish", asked.dishes, "Dishes to compare, each in quotes")->capture_default_str();
  app.add_option("--times", asked.times, "So many runs of each")->check(CLI::Range(1, 1000))->capture_default_str();
  CLI11_PARSE(app, argc, argv);
  const auto done = gallipot::measure(asked);
  if (done) return 0;
  std::fprintf(stderr, "bench_compare: %s\n", done.error().sentence().c_str());
  return 2;
}
