// Marks readings in print. Where the words of two readings overlap ("the rind and juice of three lemons") they share
// one mark.
#include "tools/reading_room/recipe_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/amounts.h"
#include "query/reporting/html.h"

namespace gallipot::room {
namespace {

struct Mark {
  Span span;
  std::vector<std::size_t> readings;
  std::vector<const Correction*> corrections;
};

std::vector<Mark> marks_of(const ComparableRecipe& recipe, const std::vector<PlacedCorrection>& placed) {
  std::vector<Mark> all;
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i)
    if (const Span span = recipe.ingredients[i].printed.span; !span.empty() && span.end <= recipe.recipe.text.size())
      all.push_back({span, {i}, {}});
  for (const PlacedCorrection& one : placed)
    if (!one.span.empty()) all.push_back({one.span, {}, {one.correction}});
  std::stable_sort(all.begin(), all.end(), [](const Mark& a, const Mark& b) { return a.span.begin < b.span.begin; });
  std::vector<Mark> out;
  for (Mark& mark : all) {
    if (out.empty() || mark.span.begin >= out.back().span.end) {
      out.push_back(std::move(mark));
      continue;
    }
    Mark& last = out.back();
    last.span.end = std::max(last.span.end, mark.span.end);
    last.readings.insert(last.readings.end(), mark.readings.begin(), mark.readings.end());
    last.corrections.insert(last.corrections.end(), mark.corrections.begin(), mark.corrections.end());
  }
  return out;
}

std::string reading_words(const ComparableIngredient& one) {
  std::string out = one.printed.name + ": ";
  if (one.metric) {
    out += write_amount(*one.metric).text();
    if (!one.metric->why.empty()) out += "; " + one.metric->why;
  } else {
    out += "as printed";
  }
  return out + ".";
}

std::string note_of(const ComparableRecipe& recipe, const Mark& mark) {
  std::string out;
  for (const std::size_t i : mark.readings)
    out += "<span class=\"one\">" + html::escape(reading_words(recipe.ingredients[i])) + "</span>";
  for (const Correction* one : mark.corrections)
    out += "<span class=\"one corrected\">Corrected: " + html::escape(correction_sentence(*one)) + "</span>";
  return out;
}

std::string mark_markup(const ComparableRecipe& recipe, const Mark& mark, Span shown, std::size_t number) {
  const std::string words = html::escape(shown.in(recipe.recipe.text));
  const std::string to = mark.readings.empty() ? "corrections" : fmt::format("reading-{}", mark.readings.front() + 1);
  return fmt::format(
      "<a class=\"reading{}\" href=\"#{}\" aria-describedby=\"note-{}\">{}</a><span class=\"reading-note\" "
      "role=\"tooltip\" "
      "id=\"note-{}\">{}</span>",
      mark.corrections.empty() ? "" : " corrected", to, number, words, number, note_of(recipe, mark));
}

const char* part_class(Part::Kind kind) {
  switch (kind) {
    case Part::Kind::list_item:
    case Part::Kind::table_row:
      return "list";
    case Part::Kind::verse:
      return "verse";
    case Part::Kind::note:
      return "note";
    case Part::Kind::signature:
      return "signature";
    case Part::Kind::subtitle:
      return "subtitle";
    case Part::Kind::remark:
      return "remark";
    case Part::Kind::paragraph:
      return "paragraph";
  }
  return "paragraph";
}

}  // namespace

std::string marked_text(const ComparableRecipe& recipe, const std::vector<PlacedCorrection>& placed) {
  const std::string& text = recipe.recipe.text;
  const auto marks = marks_of(recipe, placed);
  std::string out;
  std::size_t next = 0, number = 0;
  const auto parts = recipe.recipe.parts.empty()
                         ? std::vector<Part>{{Part::Kind::paragraph, {0, static_cast<std::uint32_t>(text.size())}}}
                         : recipe.recipe.parts;
  for (const Part& part : parts) {
    out += fmt::format("<p class=\"{}\">", part_class(part.kind));
    std::uint32_t at = part.span.begin;
    while (next < marks.size() && marks[next].span.begin < part.span.end) {
      const Mark& mark = marks[next];
      const Span shown{std::max(mark.span.begin, at), std::min(mark.span.end, part.span.end)};
      if (shown.begin > at) out += html::escape(std::string_view(text).substr(at, shown.begin - at));
      if (!shown.empty()) out += mark_markup(recipe, mark, shown, ++number);
      at = std::max(at, shown.end);
      if (mark.span.end > part.span.end) break;  // it goes on in the next part
      ++next;
    }
    if (part.span.end > at) out += html::escape(std::string_view(text).substr(at, part.span.end - at));
    out += "</p>\n";
  }
  return out;
}

std::string relation_words(const Ingredient& one) {
  std::string out;
  const auto add = [&](const std::string& words) { out += (out.empty() ? "" : "; ") + words; };
  if (one.relative) {
    const char* by = one.relative->by == Relative::By::weight ? " by weight" : "";
    add(one.relative->factor == 1 ? fmt::format("as much as the {}{}", one.relative->to, by)
                                  : fmt::format("{:.4g} times the {}{}", one.relative->factor, one.relative->to, by));
  }
  if (one.per) {
    const bool plain = one.per->measure.empty();
    add(fmt::format("to every {:.4g} {}{}{}", one.per->quantity, one.per->measure,
                    plain || one.per->of.empty() ? "" : " of ", one.per->of));
  }
  if (one.optional) add("may be left out");
  if (!one.alternative_of.empty()) add("instead of " + one.alternative_of);
  return out;
}

std::string amount_drawn(const Amount& amount) {
  constexpr double wide = 120, tall = 14;
  if (!(amount.high > 0) || (amount.unit == Amount::Unit::count && amount.low == amount.high)) return {};
  const double scale = (wide - 4) / (amount.high * 1.15);
  const auto x = [&](double value) { return 2 + value * scale; };
  return fmt::format(
      "<svg class=\"amount\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" height=\"{1}\" aria-hidden=\"true\"><line "
      "class=\"axis\" x1=\"2\" "
      "y1=\"12\" x2=\"{2}\" y2=\"12\"/><line x1=\"{3:.1f}\" y1=\"6\" x2=\"{4:.1f}\" y2=\"6\"/><line class=\"likely\" "
      "x1=\"{5:.1f}\" y1=\"1\" x2=\"{5:.1f}\" y2=\"11\"/></svg>",
      wide, tall, wide - 2, x(amount.low), x(amount.high), x(amount.likely));
}

}  // namespace gallipot::room
