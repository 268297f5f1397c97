// Writes marks.
#include "query/reporting/svg.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/reporting/html.h"
#include "query/reporting/layout.h"

namespace gallipot {
namespace {

constexpr double advance = 0.54;  // of the size: the mean width of a letter in a plain face

std::string kind_of(std::string_view kind) {
  return kind.empty() ? std::string() : fmt::format(" class=\"{}\"", html::escape(kind));
}

/// A coordinate to a tenth, without trailing noughts.
std::string at(double value) {
  std::string out = fmt::format("{:.1f}", value);
  if (out.ends_with(".0")) out.resize(out.size() - 2);
  return out == "-0" ? "0" : out;
}

}  // namespace

void Drawing::line(double x1, double y1, double x2, double y2, std::string_view kind) {
  marks_ +=
      fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>", at(x1), at(y1), at(x2), at(y2), kind_of(kind));
}

void Drawing::circle(double x, double y, double radius, std::string_view kind) {
  marks_ += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>", at(x), at(y), at(radius), kind_of(kind));
}

void Drawing::rectangle(double x, double y, double width, double height, std::string_view kind) {
  marks_ += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}/>", at(x), at(y), at(width), at(height),
                        kind_of(kind));
}

void Drawing::triangle(double x, double y, double size, bool up, std::string_view kind) {
  const double tip = up ? y - size : y + size, base = up ? y + size : y - size;
  marks_ += fmt::format("<path d=\"M{} {}L{} {}L{} {}Z\"{}/>", at(x), at(tip), at(x - size), at(base), at(x + size),
                        at(base), kind_of(kind));
}

void Drawing::text(double x, double y, std::string_view words, std::string_view kind, Anchor anchor) {
  static constexpr const char* anchors[] = {"", " text-anchor=\"middle\"", " text-anchor=\"end\""};
  marks_ += fmt::format("<text x=\"{}\" y=\"{}\"{}{}>{}</text>", at(x), at(y), kind_of(kind),
                        anchors[static_cast<std::size_t>(anchor)], html::escape(words));
}

void Drawing::amount(double low, double likely, double high, double y, double tick, std::string_view kind) {
  line(low, y, high, y, kind);
  line(likely, y - tick, likely, y + tick, std::string(kind) + " likely");
}

void Drawing::open(std::string_view words) { marks_ += fmt::format("<g><title>{}</title>", html::escape(words)); }

void Drawing::close() { marks_ += "</g>\n"; }

std::string Drawing::svg(std::string_view id, std::string_view title, std::string_view description) const {
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" role=\"img\" aria-labelledby=\"{0}-title {0}-desc\" "
      "viewBox=\"0 0 {1} {2}\" width=\"{1}\" height=\"{2}\"><title id=\"{0}-title\">{3}</title><desc "
      "id=\"{0}-desc\">{4}</desc>\n{5}</svg>\n",
      html::escape(id), at(width_), at(height_), html::escape(title), html::escape(description), marks_);
}

LogScale::LogScale(double low, double high, double from, double to)
    : low_(low), high_(std::max(high, low * 1.01)), from_(from), to_(to) {
  first_power_ = std::pow(10.0, std::floor(std::log10(low_)));
  fine_ = std::log10(high_ / low_) < 3;
}

double LogScale::operator()(double value) const {
  const double part = std::log(std::clamp(value, low_, high_) / low_) / std::log(high_ / low_);
  return from_ + part * (to_ - from_);
}

double text_width(std::string_view words, double size) {
  return static_cast<double>(columns_of(words)) * size * advance;
}

std::string fitted(std::string_view words, double size, double width) {
  std::string out(words);
  if (text_width(out, size) <= width) return out;
  const auto most = static_cast<std::size_t>(std::max(1.0, width / (size * advance) - 1));
  while (columns_of(out) > most || (static_cast<unsigned char>(out.back()) & 0xC0U) == 0x80U) {
    do {
      out.pop_back();
    } while (!out.empty() && (static_cast<unsigned char>(out.back()) & 0xC0U) == 0x80U);
    if (!out.empty() && (static_cast<unsigned char>(out.back()) & 0x80U) != 0) out.pop_back();
    if (out.empty()) break;
  }
  return out + "\xE2\x80\xA6";
}

}  // namespace gallipot
