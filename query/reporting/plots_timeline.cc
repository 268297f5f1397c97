// Witnesses along the years by the name that they go by.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "indexer/text/unicode.h"
#include "indexer/text/words.h"
#include "query/comparing/sentences.h"
#include "query/reporting/plots.h"
#include "query/reporting/svg.h"

namespace gallipot {
namespace {

constexpr std::size_t most_lines = 18;
constexpr double width = 900, left = 250, right = 24, line_height = 22, letter = 12;

bool frames(std::string_view word) {
  static constexpr std::string_view framing[] = {"to",  "make", "another", "way",     "method", "mode", "a",  "an", "the",
                                                 "how", "no",   "number",  "receipt", "recipe", "for",  "of", "ii", "iii"};
  return std::find(std::begin(framing), std::end(framing), word) != std::end(framing);
}

/// "walnut ketchup" of "TO MAKE WALNUT KETCHUP. No. 2".
std::string name_of(const ComparableRecipe& recipe) {
  const auto plain_words = [](const std::string& title) {
    std::vector<std::string> out;
    const auto bracket = title.find_first_of("([");
    const std::string named = bracket == std::string::npos || bracket < 3 ? title : title.substr(0, bracket);
    const Words words(named);
    for (const Word& word : words.all())
      if (word.kind == Word::Kind::word) out.emplace_back(word.key);
    while (!out.empty() && frames(out.front())) out.erase(out.begin());
    while (!out.empty() && frames(out.back())) out.pop_back();
    return out;
  };
  auto words = plain_words(recipe.recipe.title);
  if (words.empty()) words = plain_words(recipe.recipe.dish_title);
  if (words.empty()) return "no name";
  return fmt::format("{}", fmt::join(words, " "));
}

/// Rows of a line in which sigla do not run into one another: for each witness the row, from nought.
std::vector<std::size_t> stacked(const std::vector<double>& places, const std::vector<std::string>& labels) {
  std::vector<double> ends;
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double half = text_width(labels[i], letter) / 2 + 4;
    std::size_t row = 0;
    while (row < ends.size() && places[i] - half < ends[row]) ++row;
    if (row == ends.size()) ends.push_back(0);
    ends[row] = places[i] + half;
    out.push_back(row);
  }
  return out;
}

struct Band {
  std::string name;
  std::vector<std::string> sigla, words;
  std::vector<double> x;
  std::vector<std::size_t> rows;
  std::size_t height = 1;
};

}  // namespace

std::vector<NameBorne> names_used(const Comparison& comparison) {
  std::map<std::string, Places> by_name;
  for (std::size_t w = 0; w < comparison.witnesses.size(); ++w)
    by_name[name_of(comparison.witnesses[w].recipe)].push_back(w);
  std::vector<NameBorne> out;
  for (auto& [name, places] : by_name) out.push_back({name, std::move(places)});
  std::stable_sort(out.begin(), out.end(),
                   [](const NameBorne& a, const NameBorne& b) { return a.witnesses.front() < b.witnesses.front(); });
  return out;
}

std::string timeline_plot(const Comparison& comparison) {
  int first = 0, last = 0;
  std::size_t dated = 0;
  for (const Witness& witness : comparison.witnesses) {
    if (witness.recipe.year == 0) continue;
    first = dated == 0 ? witness.recipe.year : std::min(first, witness.recipe.year);
    last = std::max(last, witness.recipe.year);
    ++dated;
  }
  if (dated < 2) return {};
  const double from = std::floor(first / 10.0) * 10, to = std::max(from + 10, std::ceil((last + 1) / 10.0) * 10);
  const auto x = [&](double year) { return left + (year - from) / (to - from) * (width - left - right); };

  std::vector<NameBorne> names = names_used(comparison);
  if (names.size() > most_lines) {  // the rest stand on one line together
    NameBorne rest{"other names", {}};
    for (std::size_t i = most_lines - 1; i < names.size(); ++i)
      rest.witnesses.insert(rest.witnesses.end(), names[i].witnesses.begin(), names[i].witnesses.end());
    std::sort(rest.witnesses.begin(), rest.witnesses.end());
    names.resize(most_lines - 1);
    names.push_back(std::move(rest));
  }
  std::vector<Band> bands;
  std::size_t lines = 0;
  for (const NameBorne& used : names) {
    Band band;
    band.name = used.name;
    for (const std::size_t w : used.witnesses) {
      const Witness& witness = comparison.witnesses[w];
      if (witness.recipe.year == 0) continue;
      band.sigla.push_back(witness.siglum);
      band.words.push_back(
          fmt::format("{}, {}, {}", witness.siglum, witness.recipe.year, witness.citation.place_in_book()));
      band.x.push_back(x(witness.recipe.year));
    }
    if (band.x.empty()) continue;
    band.rows = stacked(band.x, band.sigla);
    band.height = *std::max_element(band.rows.begin(), band.rows.end()) + 1;
    lines += band.height;
    bands.push_back(std::move(band));
  }
  const double bottom = static_cast<double>(lines) * line_height + 12;
  Drawing drawing(width, bottom + 30);
  const double step = to - from > 120 ? 20 : 10;
  for (double year = from; year <= to; year += step) {
    drawing.line(x(year), 4, x(year), bottom, "grid");
    drawing.text(x(year), bottom + 18, fmt::format("{:.0f}", year), "soft", Drawing::Anchor::middle);
  }
  double top = 8;
  for (const Band& band : bands) {
    drawing.text(left - 14, top + 15, fitted(band.name, letter, left - 24), {}, Drawing::Anchor::end);
    drawing.line(left, top + line_height / 2 + 0.5, width - right, top + line_height / 2 + 0.5, "thread");
    for (std::size_t i = 0; i < band.x.size(); ++i) {
      const double y = top + static_cast<double>(band.rows[i]) * line_height + line_height / 2;
      const double half = std::max(9.0, text_width(band.sigla[i], letter) / 2 + 3);
      drawing.open(band.words[i]);
      drawing.rectangle(band.x[i] - half, y - 9, 2 * half, 18, "chip");
      drawing.text(band.x[i], y + 4, band.sigla[i], "mark-siglum", Drawing::Anchor::middle);
      drawing.close();
    }
    top += static_cast<double>(band.height) * line_height;
  }
  return drawing.svg("timeline", "Witnesses by year and by the name they go by",
                     fmt::format("{} dated recipes from {} to {} under {} {}. The list beneath says the same.", dated,
                                 first, last, names.size(), names.size() == 1 ? "name" : "names"));
}

}  // namespace gallipot
