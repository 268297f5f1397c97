// Tags the words of a recipe with roles, lexicon phrases, clauses and sentences: one pass.
#include "indexer/parsing/row.h"

#include <algorithm>

namespace gallipot::parsing {
namespace {

/// A point that ends a sentence: a full stop that does not end an abbreviation ("lbs.", "oz.", "No.").
bool ends_sentence(const Row& row, std::uint32_t i) {
  const auto key = row.key(i);
  if (key == "!" || key == "?") return true;
  if (key != ".") return false;
  if (i == 0 || i + 1 >= row.size()) return true;
  const auto& next = row.word(i + 1);
  if (next.kind == Word::Kind::point) return true;
  if (next.kind == Word::Kind::word && !next.capital) return false;
  const auto before = row.key(i - 1);
  if (before.size() <= 3 && row.tags[i - 1].measure != kNone) return next.capital;
  return before != "no" && before != "mrs" && before != "mr" && before != "dr";
}

bool ends_clause(const Row& row, std::uint32_t i) {
  if (!row.point(i)) return false;
  const auto key = row.key(i);
  return key == "," || key == ";" || key == ":" || key == "--" || key == "(" || key == ")" || key == "[" || key == "]";
}

/// "rind", "juice", "yolk": a part of a thing and never a measure of it, whatever the table of measures says.
bool plain_part(const Tag& t) {
  return t.part == "peel" || t.part == "juice" || t.part == "yolk" || t.part == "white" || t.part == "crumb" ||
         t.part == "shell";
}

/// "cloves of garlic", "neck of veal" as phrases of stuff: the measure counts it, and the stuff is what follows "of".
void prefer_measure(Row& row, std::uint32_t i) {
  auto& t = row.tags[i];
  if (t.food == kNone || t.measure == kNone || t.food_words < t.measure_words + 2) return;
  if (row.key(i + t.measure_words) != "of") return;
  const auto rest = row.lexicon->foodstuff_phrases().longest(*row.words, i + t.measure_words + 1);
  if (rest.words + t.measure_words + 1 == t.food_words) t.food = kNone, t.food_words = 0;
}

void mark_lists(Row& row) {
  const auto& parts = row.recipe->parts;
  row.listed.resize(std::max<std::size_t>(parts.size(), 1));
  for (std::size_t p = 0; p < parts.size(); ++p)
    row.listed[p] = parts[p].kind == Part::Kind::list_item || parts[p].kind == Part::Kind::table_row;
}

/// A paragraph headed "INGREDIENTS": a list, whatever way it is set.
void mark_headed_list(Row& row, std::uint32_t i) {
  if (row.key(i) != "ingredients" || !row.word(i).capital) return;
  const auto line = row.tags[i].line;
  if (i >= 3 && row.tags[i - 3].line == line && !row.point(i - 1)) return;
  row.listed[line] = true;
}

}  // namespace

Row tag(const Recipe& recipe, const Words& words, const Lexicon& lexicon) {
  Row row;
  row.recipe = &recipe;
  row.lexicon = &lexicon;
  row.words = &words.all();
  row.tags.resize(words.size());
  mark_lists(row);
  const auto& all = words.all();
  std::uint32_t clause = 0, sentence = 0;
  std::uint16_t line = 0;
  for (std::uint32_t i = 0; i < row.size(); ++i) {
    auto& t = row.tags[i];
    while (line + 1u < recipe.parts.size() && all[i].span.begin >= recipe.parts[line + 1u].span.begin) {
      ++line;
      if (clause < i) clause = i;
      ++sentence;
    }
    if (all[i].kind == Word::Kind::word) {
      const auto& g = grammar_word(all[i].key);
      t.roles = g.roles;
      t.value = g.value;
      t.part = g.part;
      const auto food = lexicon.foodstuff_phrases().longest(all, i);
      if (food.words) t.food = food.value, t.food_words = food.words;
      const auto measure = lexicon.measure_phrases().longest(all, i);
      if (measure.words && !plain_part(t)) t.measure = measure.value, t.measure_words = measure.words;
      const auto operation = lexicon.operation_phrases().longest(all, i);
      if (operation.words) t.operation = operation.value;
    }
    prefer_measure(row, i);
    t.clause = clause;
    t.sentence = sentence;
    t.line = line;
    mark_headed_list(row, i);
    if (ends_sentence(row, i)) {
      clause = i + 1;
      ++sentence;
    } else if (ends_clause(row, i)) {
      clause = i + 1;
    }
  }
  return row;
}

}  // namespace gallipot::parsing
