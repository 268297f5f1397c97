// Words to numbers. What a word is depends on it alone, so that each is judged once.
#include "query/grouping/word_row.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "indexer/parsing/grammar.h"
#include "indexer/storing/schema.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr float little_tells = 0.4F;
constexpr float number_tells = 0.8F;
constexpr float measure_tells = 1.5F;
constexpr double recipes_beside = 1000, of_them_with_it = 4;

/// The value of a number in figures or in one word: "2", "1/2", "two", "half". None for a word that is no number.
std::optional<double> value_of(std::string_view key) {
  double whole = 0;
  const auto [end, error] = std::from_chars(key.data(), key.data() + key.size(), whole);
  if (error == std::errc{}) {
    if (end == key.data() + key.size()) return whole;
    double below = 0;
    if (*end == '/' && std::from_chars(end + 1, key.data() + key.size(), below).ec == std::errc{} && below > 0)
      return whole / below;
    return std::nullopt;
  }
  const auto& word = parsing::grammar_word(key);
  if ((word.roles & (parsing::number | parsing::multiplier | parsing::fraction)) != 0) return word.value;
  return std::nullopt;
}

/// Takes the mark of a word that makes shingles (0: makes none); the word itself is added next.
void add_mark(WordRow& row, std::uint64_t mark) {
  if (mark == 0) return;
  row.marks.push_back(mark);
  row.mark_words.push_back(static_cast<std::uint32_t>(row.words.size()));
}

bool is_number(const Word& word) { return word.kind == Word::Kind::number; }

/// How many words "1/2" covers that begins at `at`; 0 where there is none.
std::size_t fraction_at(const std::vector<Word>& words, std::size_t at) {
  const bool is = at + 2 < words.size() && is_number(words[at]) && words[at + 1].key == "/" && words[at + 1].glued &&
                  is_number(words[at + 2]) && words[at + 2].glued;
  return is ? 3 : 0;
}

}  // namespace

WordRows::WordRows(const Shelf& shelf, const Lexicon& lexicon)
    : database_(shelf.database()),
      documents_(static_cast<double>(database_.get_doccount())),
      lexicon_(lexicon),
      stems_(lexicon) {}

std::uint32_t WordRows::number_of(const std::string& plain) {
  return numbers_.try_emplace(plain, static_cast<std::uint32_t>(numbers_.size())).first->second;
}

float WordRows::rarity(const std::string& stem) const {
  const auto with_it = static_cast<double>(database_.get_termfreq(schema::term(schema::word, stem)));
  return static_cast<float>(std::max(0.0, std::log((documents_ + recipes_beside) / (with_it + of_them_with_it))));
}

WordRows::Known WordRows::judge(std::string_view key) {
  if (const auto value = value_of(key))
    return {number_of(fmt::format("#{:.4g}", *value)), number_tells, WordRow::Sort::number, 0};
  const auto numbers = stems_.numbers_of(key);
  const auto stem = numbers.plain;
  if (stem == Stems::none) return {number_of("l" + std::string(key)), little_tells, WordRow::Sort::little, 0};
  const std::string& plain = stems_.stem(stem);
  return {number_of("w" + plain), rarity(plain), WordRow::Sort::word, stems_.mark(stem)};
}

const WordRows::Known& WordRows::meet(std::string_view key) {
  if (const auto at = known_.find(key); at != known_.end()) return at->second;
  return known_.emplace(key, judge(key)).first->second;
}

void WordRows::append(WordRow& row, const Known& known, Span span) {
  row.words.push_back(known.number);
  row.tells.push_back(known.tells);
  row.sorts.push_back(known.sort);
  row.spans.push_back(span);
  row.tells_all += static_cast<double>(known.tells);
}

WordRow WordRows::of(std::string_view text) {
  WordRow out;
  const Words words(text);
  const auto& all = words.all();
  for (std::size_t i = 0; i < all.size();) {
    if (all[i].kind == Word::Kind::point) {
      ++i;
      continue;
    }
    if (const auto covers = fraction_at(all, i)) {
      const Span span{all[i].span.begin, all[i + covers - 1].span.end};
      append(out, meet(std::string(all[i].key) + "/" + std::string(all[i + 2].key)), span);
      i += covers;
      continue;
    }
    const auto measure = lexicon_.measure_phrases().longest(all, i);
    const std::size_t covers = std::max<std::size_t>(1, measure.words);
    for (std::size_t k = i; k < i + covers; ++k)  // shingles know nothing of measures
      if (all[k].kind == Word::Kind::word) add_mark(out, meet(all[k].key).mark);
    if (measure.words > 0) {
      const MeasureWord& word = lexicon_.measures()[measure.value];
      const Known known{number_of("m" + word.name), measure_tells,
                        word.kind == "time" ? WordRow::Sort::time : WordRow::Sort::measure, 0};
      append(out, known, {all[i].span.begin, all[i + covers - 1].span.end});
    } else {
      append(out, meet(all[i].key), all[i].span);
    }
    i += covers;
  }
  return out;
}

}  // namespace gallipot
