// Cuts sentences out of a recipe's text.
#include "query/cooking/printed.h"

#include <algorithm>

namespace gallipot {
namespace {

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// Whether the point at `at` ends a sentence: white space (or the end) behind it, and no initial or short form before.
bool ends_sentence(std::string_view text, std::size_t at) {
  const char c = text[at];
  if (c == '!' || c == '?') return true;
  if (c != '.') return false;
  if (at + 1 < text.size() && text[at + 1] != ' ' && text[at + 1] != '"') return false;
  if (at >= 1 && letter(text[at - 1]) && (at < 2 || !letter(text[at - 2])))
    return false;  // "F. W.", "lb"-like initials
  static constexpr std::string_view shorts[] = {"oz", "lb",  "lbs", "qt",  "pt",   "No",
                                                "Mr", "Mrs", "Dr",  "viz", "tbsp", "tsp"};
  std::size_t begin = at;
  while (begin > 0 && letter(text[begin - 1])) --begin;
  const std::string_view word = text.substr(begin, at - begin);
  return std::find(std::begin(shorts), std::end(shorts), word) == std::end(shorts);
}

template <typename Ends>
Span round(std::string_view text, Span span, Ends ends) {
  const std::size_t begin_at = std::min<std::size_t>(span.begin, text.size());
  std::size_t begin = begin_at;
  while (begin > 0 && !ends(begin - 1)) --begin;
  while (begin < begin_at && (text[begin] == ' ' || text[begin] == '"')) ++begin;
  std::size_t end = std::max<std::size_t>(std::min<std::size_t>(span.end, text.size()), begin);
  if (end > begin && ends(end - 1)) --end;
  while (end < text.size() && !ends(end)) ++end;
  if (end < text.size() && text[end] != ';') ++end;
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

}  // namespace

Span sentence_round(std::string_view text, Span span) {
  return round(text, span, [&](std::size_t at) { return ends_sentence(text, at); });
}

Span clause_round(std::string_view text, Span span) {
  return round(text, span,
               [&](std::size_t at) { return text[at] == ';' || text[at] == ':' || ends_sentence(text, at); });
}

Printed printed_at(const ComparableRecipe& recipe, Span span) {
  Printed out;
  out.span = span;
  out.words = span.in(recipe.recipe.text);
  out.page = recipe.recipe.page;
  for (const PageStart& page : recipe.recipe.pages)
    if (page.at <= span.begin) out.page = page.page;
  return out;
}

}  // namespace gallipot
