// Ingredients of a recipe: tag the words, find amounts and mentions, relate them, decide, and write down what is left.
#include <algorithm>
#include <cmath>

#include "indexer/parsing/asides.h"
#include "indexer/parsing/decide.h"
#include "indexer/parsing/mentioned.h"
#include "indexer/parsing/parse.h"

namespace gallipot {
namespace {

using namespace parsing;

Span cover(Span a, Span b) {
  if (a.empty()) return b;
  if (b.empty()) return a;
  return {std::min(a.begin, b.begin), std::max(a.end, b.end)};
}

Ingredient written(const Row& row, const Mention& m, double log_odds) {
  Ingredient out;
  out.name = m.text;
  out.name_span = row.span(m.name);
  out.quantity = m.quantity;
  out.quantity_span = m.quantity ? row.span(m.quantity_at) : Span{};
  out.measure = m.measure;
  out.measure_span = row.span(m.measure_at);
  out.measure_note = m.note;
  out.span = cover(cover(row.span(m.phrase), row.span(m.amount_at)), cover(out.quantity_span, out.measure_span));
  out.relative = m.relative;
  out.per = m.per;
  out.optional = m.optional;
  out.confidence = 1.0 / (1.0 + std::exp(-log_odds));
  return out;
}

}  // namespace

namespace parsing {

Mentioned read_mentions(const Recipe& recipe, const Words& words, const Lexicon& lexicon) {
  Mentioned out;
  out.row = tag(recipe, words, lexicon);
  const auto amounts = find_amounts(out.row);
  out.mentions = find_mentions(out.row, amounts);
  drop_asides(out.row, out.mentions);
  relate_amounts(out.row, out.mentions);
  relate_units(out.row, amounts, out.mentions);
  relate_alternatives(out.row, out.mentions);
  out.variant = mark_optional(out.row, out.mentions);
  return out;
}

}  // namespace parsing

std::vector<Ingredient> parse_ingredients(const Recipe& recipe, const Words& words, const Lexicon& lexicon) {
  const auto read = read_mentions(recipe, words, lexicon);
  std::vector<double> scores;
  const auto accepted = decide(circumstances(read.row, read.mentions, read.variant), scores);
  std::vector<Ingredient> out;
  for (std::size_t j = 0; j < read.mentions.size(); ++j) {
    if (!accepted[j]) continue;
    const auto& m = read.mentions[j];
    out.push_back(written(read.row, m, scores[j]));
    if (m.alternative_to != kNone && accepted[m.alternative_to])
      out.back().alternative_of = read.mentions[m.alternative_to].text;
  }
  return out;
}

}  // namespace gallipot
