// Amounts by the basis on a logarithmic axis, an ingredient a band.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/reporting/amounts.h"
#include "query/reporting/comparison_words.h"
#include "query/reporting/plots.h"
#include "query/reporting/svg.h"

namespace gallipot {
namespace {

constexpr std::size_t most_bands = 28;
constexpr double width = 900, left = 190, right = 90, letter = 11, head = 24;
constexpr std::size_t most_labelled = 12;  // amounts in a band, each with its siglum

struct Shown {
  const Row* row;
  Places at;  // witnesses whose amount is in the row's unit
};

std::vector<Shown> bands_of(const Comparison& comparison) {
  std::vector<Shown> out;
  for (const Row& row : comparison.rows) {
    if (!row.median || row.name == comparison.basis || row.measured < 2) continue;
    Shown shown{&row, {}};
    for (std::size_t w = 0; w < row.cells.size(); ++w) {
      const auto& amount = row.cells[w].per_basis;
      if (amount && amount->unit == row.median->unit && amount->likely > 0) shown.at.push_back(w);
    }
    if (shown.at.size() >= 2 && out.size() < most_bands) out.push_back(std::move(shown));
  }
  return out;
}

double spacing(std::size_t amounts) { return amounts <= most_labelled ? 9 : amounts <= 24 ? 6 : 4; }

double height_of(const Shown& band) {
  return std::max(24.0, static_cast<double>(band.at.size()) * spacing(band.at.size()) + 12);
}

/// The least and the most of all that is drawn; ends of nought are left out, since a logarithm has none.
std::pair<double, double> ends(const std::vector<Shown>& bands) {
  double low = 0, high = 0;
  for (const Shown& band : bands)
    for (const std::size_t w : band.at) {
      const Amount& amount = *band.row->cells[w].per_basis;
      const double least = amount.low > 0 ? amount.low : amount.likely;
      low = low > 0 ? std::min(low, least) : least;
      high = std::max(high, amount.high);
    }
  return {low, high};
}

const OutOfLine* out_of_line(const Row& row, std::size_t witness) {
  for (const OutOfLine& one : row.out_of_line)
    if (one.witness == witness) return &one;
  return nullptr;
}

std::string unit_words(const Row& row) {
  return row.median->unit == Amount::Unit::count ? std::string("pieces") : unit_name(row.median->unit);
}

void draw_band(Drawing& drawing, const Comparison& comparison, const Shown& band, const LogScale& x, double top) {
  const double height = height_of(band), step = spacing(band.at.size());
  const Row& row = *band.row;
  drawing.line(left, top, width - right, top, "grid");
  drawing.text(left - 12, top + height / 2 + 1, fitted(row.name, letter, left - 20), {}, Drawing::Anchor::end);
  drawing.text(left - 12, top + height / 2 + 13,
               fmt::format("{}, {} of {}", unit_words(row), row.measured, row.witnesses), "soft tiny",
               Drawing::Anchor::end);
  drawing.open(fmt::format("{}: median {}", row.name, write_amount(*row.median).text()));
  drawing.line(x(row.median->likely), top + 3, x(row.median->likely), top + height - 3, "median");
  drawing.close();
  for (std::size_t i = 0; i < band.at.size(); ++i) {
    const std::size_t w = band.at[i];
    const Amount& amount = *row.cells[w].per_basis;
    const double y = top + 9 + static_cast<double>(i) * step;
    const OutOfLine* out = out_of_line(row, w);
    drawing.open(fmt::format("{}: {} {}; {}", witness_words(comparison.witnesses[w]), row.name,
                             write_amount(amount).text(), row.cells[w].printed));
    drawing.amount(x(amount.low), x(amount.likely), x(amount.high), y, std::min(3.5, step / 2), out ? "odd" : "amount");
    if (out != nullptr)
      drawing.text(x(amount.high) + 5, y + 4,
                   fmt::format("{} {}", comparison.witnesses[w].siglum, times_words(out->times)), "odd-word tiny");
    else if (band.at.size() <= most_labelled)
      drawing.text(x(amount.high) + 4, y + 3, comparison.witnesses[w].siglum, "soft micro");
    drawing.close();
  }
}

}  // namespace

std::string strip_plot(const Comparison& comparison) {
  const std::vector<Shown> bands = bands_of(comparison);
  if (bands.empty()) return {};
  const auto [low, high] = ends(bands);
  if (!(low > 0)) return {};
  const LogScale x(low / 1.1, high * 1.1, left, width - right);
  double bottom = head;
  std::size_t odd = 0;
  for (const Shown& band : bands) {
    bottom += height_of(band);
    odd += band.row->out_of_line.size();
  }
  Drawing drawing(width, bottom + 44);
  x.ticks([&](double value) {
    drawing.line(x(value), head, x(value), bottom, "grid");
    drawing.text(x(value), head - 8, fmt::format("{:g}", value), "soft", Drawing::Anchor::middle);
    drawing.text(x(value), bottom + 16, fmt::format("{:g}", value), "soft", Drawing::Anchor::middle);
  });
  drawing.text((left + width - right) / 2, bottom + 36, axis_words(comparison), "soft", Drawing::Anchor::middle);
  double top = head;
  for (const Shown& band : bands) {
    draw_band(drawing, comparison, band, x, top);
    top += height_of(band);
  }
  return drawing.svg(
      "proportions", "How much of each ingredient, " + axis_words(comparison),
      fmt::format("{} ingredients with two amounts or more, a line from the least to the most each amount "
                  "may be, a tick at the likely value, the median as a tall bar. {} of the amounts {} out "
                  "of line. The tables beneath hold the same figures.",
                  bands.size(), odd == 0 ? std::string("None") : std::to_string(odd), odd == 1 ? "is" : "are"));
}

}  // namespace gallipot
