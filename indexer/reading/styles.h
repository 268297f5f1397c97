// What a document's own style sheet, inline styles and class names say of how print looked. Internal to the room.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace gallipot {

/// How an element is set. `on` are the Run::Style bits it adds, `off` those it takes away ("font-style: normal").
struct Look {
  enum class Align : unsigned char { inherit, left, centre, right };
  std::uint16_t on = 0;
  std::uint16_t off = 0;
  Align align = Align::inherit;
  bool hidden = false;

  /// `later` laid over this, as a later declaration is over an earlier one.
  void lay_over(const Look& later);
};

/// The look that a list of declarations gives: "font-variant: small-caps; text-align: right".
Look look_of(std::string_view declarations);

/// The simple selectors of a style sheet ("p", ".sig", "p.sig", and lists of them). Selectors with combinators, ids,
/// attributes or pseudo-classes, and everything inside an at-rule, are passed over.
class StyleSheet {
 public:
  void read(std::string_view css);
  /// The look of an element: of its name, then of its classes, then of its name with its classes.
  Look look(std::string_view name, std::string_view classes) const;

 private:
  void add(std::string_view selector, const Look& look);
  std::map<std::string, Look, std::less<>> rules_;
};

/// The style bits that a class name speaks for by itself where no sheet does: "smcap", "sc", "bold", "ital".
std::uint16_t style_of_class(std::string_view name);

/// Calls `use(word)` for each white-space separated word of `list`.
template <typename Use>
void each_class(std::string_view list, Use use) {
  for (std::size_t i = 0; i < list.size();) {
    while (i < list.size() && static_cast<unsigned char>(list[i]) <= ' ') ++i;
    std::size_t j = i;
    while (j < list.size() && static_cast<unsigned char>(list[j]) > ' ') ++j;
    if (j > i) use(list.substr(i, j - i));
    i = j;
  }
}

}  // namespace gallipot
