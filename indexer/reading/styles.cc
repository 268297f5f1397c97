// Reads as much of CSS as tells italics, bold, small capitals and placing.
#include "indexer/reading/styles.h"

#include <algorithm>
#include <array>

#include "indexer/reading/block.h"

namespace gallipot {
namespace {

std::string lower_trimmed(std::string_view s) {
  while (!s.empty() && static_cast<unsigned char>(s.front()) <= ' ') s.remove_prefix(1);
  while (!s.empty() && static_cast<unsigned char>(s.back()) <= ' ') s.remove_suffix(1);
  std::string out(s);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
  return out;
}

void declare(Look& look, const std::string& property, const std::string& value) {
  const auto has = [&](const char* word) { return value.find(word) != std::string::npos; };
  const auto set = [&](std::uint16_t bit, bool yes) {
    (yes ? look.on : look.off) |= bit;
    (yes ? look.off : look.on) &= static_cast<std::uint16_t>(~bit);
  };
  const bool whole_font = property == "font";
  if (property == "font-style" || (whole_font && has("italic"))) set(Run::italic, has("italic") || has("oblique"));
  if (property == "font-weight" || (whole_font && has("bold")))
    set(Run::bold, has("bold") || (value.size() >= 3 && value[0] >= '6' && value[0] <= '9' && value[1] == '0'));
  if (property == "font-variant" || property == "font-variant-caps" || (whole_font && has("small-caps")))
    set(Run::small_caps, has("small-caps"));
  if (property == "text-decoration" || property == "text-decoration-line") set(Run::underline, has("underline"));
  if (property == "vertical-align" && has("super")) set(Run::superscript, true);
  if (property == "font-size" && (has("x-large") || value == "large" || value == "larger")) set(Run::large, true);
  if (property == "text-align")
    look.align = has("center") ? Look::Align::centre : has("right") ? Look::Align::right : Look::Align::left;
  if (property == "display") look.hidden = value.starts_with("none");
  if (property == "visibility") look.hidden = value.starts_with("hidden");
}

/// A copy without comments and without the marks that hide a sheet from old browsers.
std::string without_comments(std::string_view css) {
  std::string out;
  out.reserve(css.size());
  for (std::size_t i = 0; i < css.size();) {
    if (css.substr(i, 2) == "/*") {
      const auto close = css.find("*/", i + 2);
      i = close == std::string_view::npos ? css.size() : close + 2;
      out += ' ';
    } else if (css.substr(i, 4) == "<!--") {
      i += 4;
    } else if (css.substr(i, 3) == "-->") {
      i += 3;
    } else {
      out += css[i++];
    }
  }
  return out;
}

std::size_t end_of_block(std::string_view css, std::size_t open) {
  std::size_t depth = 0;
  for (std::size_t i = open; i < css.size(); ++i) {
    if (css[i] == '{') ++depth;
    if (css[i] == '}' && --depth == 0) return i + 1;
  }
  return css.size();
}

}  // namespace

void Look::lay_over(const Look& later) {
  on = static_cast<std::uint16_t>((on & ~later.off) | later.on);
  off = static_cast<std::uint16_t>((off & ~later.on) | later.off);
  if (later.align != Align::inherit) align = later.align;
  hidden = hidden || later.hidden;
}

Look look_of(std::string_view declarations) {
  Look look;
  while (!declarations.empty()) {
    const auto end = std::min(declarations.find(';'), declarations.size());
    const auto one = declarations.substr(0, end);
    if (const auto colon = one.find(':'); colon != std::string_view::npos)
      declare(look, lower_trimmed(one.substr(0, colon)), lower_trimmed(one.substr(colon + 1)));
    declarations.remove_prefix(std::min(end + 1, declarations.size()));
  }
  return look;
}

void StyleSheet::read(std::string_view written) {
  const std::string css = without_comments(written);
  for (std::size_t i = 0; i < css.size();) {
    const auto open = css.find_first_of("{;", i);
    if (open == std::string::npos) return;
    if (css[open] == ';') {
      i = open + 1;
      continue;
    }
    const std::string_view selectors = std::string_view(css).substr(i, open - i);
    const auto close = end_of_block(css, open);
    if (selectors.find('@') == std::string_view::npos) {
      const Look look = look_of(std::string_view(css).substr(open + 1, close - open - 2));
      for (std::size_t s = 0; s <= selectors.size();) {
        const auto comma = std::min(selectors.find(',', s), selectors.size());
        add(selectors.substr(s, comma - s), look);
        s = comma + 1;
      }
    }
    i = close;
  }
}

void StyleSheet::add(std::string_view selector, const Look& look) {
  const std::string plain = lower_trimmed(selector);
  if (plain.empty() || plain.find_first_of(" >+~#[:*\t\n\r") != std::string::npos) return;
  rules_[plain].lay_over(look);
}

Look StyleSheet::look(std::string_view name, std::string_view classes) const {
  Look out;
  if (rules_.empty()) return out;
  const auto lay = [&](const std::string& selector) {
    if (const auto found = rules_.find(selector); found != rules_.end()) out.lay_over(found->second);
  };
  lay(std::string(name));
  each_class(classes, [&](std::string_view c) { lay("." + lower_trimmed(c)); });
  each_class(classes, [&](std::string_view c) { lay(std::string(name) + "." + lower_trimmed(c)); });
  return out;
}

std::uint16_t style_of_class(std::string_view written) {
  struct Named {
    std::string_view name;
    std::uint16_t style;
  };
  static constexpr std::array<Named, 24> named = {{{"smcap", Run::small_caps},
                                                   {"smcaps", Run::small_caps},
                                                   {"smallcap", Run::small_caps},
                                                   {"smallcaps", Run::small_caps},
                                                   {"smcapl", Run::small_caps},
                                                   {"allsmcap", Run::small_caps},
                                                   {"allsc", Run::small_caps},
                                                   {"sc", Run::small_caps},
                                                   {"scap", Run::small_caps},
                                                   {"scaps", Run::small_caps},
                                                   {"small-caps", Run::small_caps},
                                                   {"smc", Run::small_caps},
                                                   {"bold", Run::bold},
                                                   {"bld", Run::bold},
                                                   {"b", Run::bold},
                                                   {"strong", Run::bold},
                                                   {"i", Run::italic},
                                                   {"it", Run::italic},
                                                   {"ital", Run::italic},
                                                   {"italic", Run::italic},
                                                   {"italics", Run::italic},
                                                   {"em", Run::italic},
                                                   {"u", Run::underline},
                                                   {"underline", Run::underline}}};
  const std::string name = lower_trimmed(written);
  for (const auto& n : named)
    if (n.name == name) return n.style;
  return 0;
}

}  // namespace gallipot
