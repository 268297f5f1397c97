// Columns: a white gutter down the page that hardly any line crosses.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "indexer/reading/scan.h"

namespace gallipot {
namespace {

constexpr double least_in_columns = 0.6;  // of a page's lines, for its gutter to be one
constexpr int steps = 64;                 // places across the page where a gutter is looked for

Box print_of(const ScanPage& page) {
  Box box = page.lines.front().box;
  for (const ScanLine& line : page.lines) box.take_in(line.box);
  return box;
}

/// The gap between the words of a line that lies over `x`; empty where a word does.
Box gap_over(const ScanLine& line, double x) {
  Box gap{line.box.left, line.box.top, line.box.right, line.box.bottom};
  for (const ScanWord& word : line.words) {
    if (word.box.left <= x && x <= word.box.right) return {};
    if (word.box.right < x) gap.left = std::max(gap.left, word.box.right);
    if (word.box.left > x) gap.right = std::min(gap.right, word.box.left);
  }
  return gap;
}

/// True where `x` lies beside the line or in a gap of it far wider than one between words.
bool leaves_free(const ScanLine& line, double x) {
  if (x < line.box.left || x > line.box.right) return true;
  const Box gap = gap_over(line, x);
  return !gap.empty() && gap.width() > 1.2 * line.box.height();
}

/// Where the gutter is; 0 where the page has one column.
double gutter_of(const ScanPage& page, const Box& print) {
  double best = 0, best_free = 0;
  for (int s = steps / 4; s <= 3 * steps / 4; ++s) {
    const double x = print.left + print.width() * s / steps;
    double free = 0, left = 0, right = 0;
    for (const ScanLine& line : page.lines) {
      if (!leaves_free(line, x)) continue;
      ++free;
      left += line.box.left < x;
      right += line.box.right > x;
    }
    const double all = static_cast<double>(page.lines.size());
    if (free < least_in_columns * all || left < 0.25 * all || right < 0.25 * all) continue;
    // Among places as good the one nearest the middle.
    const double score = free - std::abs(x - print.middle()) / print.width();
    if (score > best_free) best_free = score, best = x;
  }
  return best;
}

/// Parts the lines that were read across the gutter.
void part_at(ScanPage& page, double x) {
  std::vector<ScanLine> out;
  for (ScanLine& line : page.lines) {
    if (line.box.left >= x || line.box.right <= x || !leaves_free(line, x)) {
      out.push_back(std::move(line));
      continue;
    }
    ScanLine right = line;
    std::erase_if(line.words, [&](const ScanWord& w) { return w.box.left >= x; });
    std::erase_if(right.words, [&](const ScanWord& w) { return w.box.left < x; });
    for (ScanLine* half : {&line, &right}) {
      if (half->words.empty()) continue;
      half->box = half->words.front().box;
      for (const ScanWord& word : half->words) half->box.take_in(word.box);
      out.push_back(std::move(*half));
    }
  }
  page.lines = std::move(out);
}

}  // namespace

void Box::take_in(const Box& other) {
  left = std::min(left, other.left);
  top = std::min(top, other.top);
  right = std::max(right, other.right);
  bottom = std::max(bottom, other.bottom);
}

std::string ScanLine::text() const {
  std::string out;
  for (const ScanWord& word : words) {
    if (!out.empty()) out += ' ';
    out += word.text;
  }
  return out;
}

void order_lines(ScanPage& page) {
  if (page.lines.size() < 8) return;
  const double x = gutter_of(page, print_of(page));
  if (x <= 0) return;
  part_at(page, x);
  // Lines that run across part the page into bands; in each the left column is read before the right.
  std::vector<double> crossings;
  for (const ScanLine& line : page.lines)
    if (line.box.left < x && line.box.right > x) crossings.push_back(line.box.top);
  std::sort(crossings.begin(), crossings.end());
  struct Place {
    std::size_t band;
    int column;
    double top;
  };
  std::vector<Place> places;
  for (const ScanLine& line : page.lines) {
    const bool across = line.box.left < x && line.box.right > x;
    const double middle = (line.box.top + line.box.bottom) / 2;
    const auto above = static_cast<std::size_t>(
        std::upper_bound(crossings.begin(), crossings.end(), across ? line.box.top : middle) - crossings.begin());
    places.push_back({2 * above + (across ? 0 : 1), across || line.box.middle() < x ? 0 : 1, line.box.top});
  }
  std::vector<std::size_t> order(page.lines.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (places[a].band != places[b].band) return places[a].band < places[b].band;
    if (places[a].column != places[b].column) return places[a].column < places[b].column;
    return places[a].top < places[b].top;
  });
  std::vector<ScanLine> out;
  int area = 1'000'000, column = -1;
  for (const std::size_t i : order) {
    const int now = static_cast<int>(2 * places[i].band) + places[i].column;
    if (now != column) ++area, column = now;
    const bool across = places[i].band % 2 == 0;
    out.push_back(std::move(page.lines[i]));
    out.back().column = across ? 0 : 1 + places[i].column;
    out.back().area += area;  // blocks do not run from column to column unseen
  }
  page.lines = std::move(out);
}

}  // namespace gallipot
