// Moves between the two texts of a mended recipe.
#include "indexer/normalizing/printed_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

constexpr double doubtful = 0.7;
constexpr double cost_of_mended = 0.4, cost_of_unread = 2.5;  // in confidence, by their share of the words

std::string edited(const std::string& text, const std::vector<Edit>& edits) {
  std::string out;
  std::size_t from = 0;
  for (const Edit& e : edits) {
    out.append(text, from, e.at - from);
    out += e.insert;
    from = e.at + e.erase;
  }
  return out.append(text, from);
}

/// The edits that put every mended word into the one form or the other.
std::vector<Edit> edits_to(const Recipe& r, std::string Mend::*form) {
  std::vector<Edit> edits;
  for (const Mend& m : r.mends)
    if (m.read != m.printed && m.span.end <= r.text.size()) edits.push_back({m.span.begin, m.span.size(), m.*form});
  return edits;
}

}  // namespace

void set_back(ComparableRecipe& recipe) {
  Recipe& r = recipe.recipe;
  const std::vector<Edit> edits = edits_to(r, &Mend::printed);
  if (edits.empty()) return;
  const EditMap map(edits);
  const auto move = [&](Span& s) {
    if (!s.empty()) s = {map.moved(s.begin), map.moved_end(s.end)};
  };
  r.text = edited(r.text, edits);
  for (auto& part : r.parts) move(part.span);
  for (auto& line : r.lines) line.at = map.moved(line.at);
  for (auto& page : r.pages) page.at = map.moved(page.at);
  for (auto& mend : r.mends) move(mend.span);
  for (auto& step : recipe.steps) move(step.span);
  for (auto& item : recipe.ingredients) {
    Ingredient& i = item.printed;
    for (Span* span : {&i.span, &i.name_span, &i.quantity_span, &i.measure_span}) move(*span);
  }
}

std::string text_as_read(const Recipe& recipe) { return edited(recipe.text, edits_to(recipe, &Mend::read)); }

void weigh_reading(Recipe& recipe) {
  std::size_t mended = 0, unread = 0;
  for (const Mend& m : recipe.mends) ++(m.read == m.printed ? unread : mended);
  if (mended + unread == 0) return;
  const auto words =
      static_cast<double>(std::max<std::ptrdiff_t>(10, std::count(recipe.text.begin(), recipe.text.end(), ' ')));
  const double cost =
      (cost_of_mended * static_cast<double>(mended) + cost_of_unread * static_cast<double>(unread)) / words;
  recipe.confidence *= std::max(0.1, 1 - cost);
  if (recipe.confidence >= doubtful || !recipe.doubt.empty()) return;
  recipe.doubt =
      fmt::format("{} of its words are misread in the copy and {} could not be read", mended + unread, unread);
}

}  // namespace gallipot
