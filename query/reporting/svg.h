// Drawing for pages: a few marks put together into one inline SVG that carries its own title and description.
#pragma once

#include <string>
#include <string_view>

namespace gallipot {

/// A drawing of so many pixels. Coordinates grow right and down; all text given is plain and is escaped here. Colours
/// come from the house style sheet by class: "plot-1" .. "plot-8" (Okabe and Ito 2008), "line", "soft".
class Drawing {
 public:
  Drawing(double width, double height) : width_(width), height_(height) {}

  void line(double x1, double y1, double x2, double y2, std::string_view kind);
  void circle(double x, double y, double radius, std::string_view kind);
  void rectangle(double x, double y, double width, double height, std::string_view kind);
  /// A triangle of half-width `size` that points up or down.
  void triangle(double x, double y, double size, bool up, std::string_view kind);
  enum class Anchor : unsigned char { start, middle, end };
  void text(double x, double y, std::string_view words, std::string_view kind = {}, Anchor anchor = Anchor::start);
  /// An amount as the house draws it: a thin line from low to high with a tick at the likely value.
  void amount(double low, double likely, double high, double y, double tick, std::string_view kind);
  /// What is drawn until close() is one thing, told by these words where it is pointed at.
  void open(std::string_view words);
  void close();

  /// The whole, with what it shows (`title`) and what is to be seen in it (`description`). `id` must be unique on the
  /// page.
  std::string svg(std::string_view id, std::string_view title, std::string_view description) const;

 private:
  double width_, height_;
  std::string marks_;
};

/// A scale by logarithms from low..high (both over nought) to from..to in pixels.
class LogScale {
 public:
  LogScale(double low, double high, double from, double to);
  double operator()(double value) const;
  /// 1, 10, 100 ... and, where fewer than three of these lie within, 2 and 5 of each too: calls `mark` for each.
  template <typename Mark>
  void ticks(Mark mark) const {
    for (double power = first_power_; power <= high_ * 10; power *= 10)
      for (const double leading : {1.0, 2.0, 5.0}) {
        const double value = power * leading;
        if ((leading == 1 || fine_) && value >= low_ * 0.999 && value <= high_ * 1.001) mark(value);
      }
  }

 private:
  double low_, high_, from_, to_, first_power_;
  bool fine_;
};

/// How wide text of that many characters runs at a size, roughly.
double text_width(std::string_view words, double size);

/// The words cut, with an ellipsis, to what fits.
std::string fitted(std::string_view words, double size, double width);

}  // namespace gallipot
