// A global alignment of two rows of words, read off as changes.
#include "query/grouping/changes.h"

#include <algorithm>

#include "query/grouping/passages.h"

namespace gallipot {
namespace {

constexpr std::uint32_t least_moved = 3;  // words; fewer may meet by chance

struct Places {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> pairs;  ///< equal words, in order in both rows
};

/// Equal words in order, of the greatest weight together.
Places common_row(const WordRow& a, const WordRow& b) {
  const std::size_t n = std::min(a.size(), longest_aligned), m = std::min(b.size(), longest_aligned), width = m + 1;
  std::vector<std::uint8_t> ways((n + 1) * width, 0);  // 1: pair, 2: leave the left word, 3: leave the right one
  std::vector<float> above(width, 0), here(width, 0);
  for (std::size_t i = 1; i <= n; ++i) {
    for (std::size_t j = 1; j <= m; ++j) {
      float best = above[j];
      std::uint8_t way = 2;
      if (here[j - 1] > best) {
        best = here[j - 1];
        way = 3;
      }
      // A word beside a pair is worth a little more than one alone, so that sentences are kept whole.
      if (a.words[i - 1] == b.words[j - 1]) {
        const bool beside = i > 1 && j > 1 && ways[(i - 1) * width + j - 1] == 1;
        const float paired = above[j - 1] + a.tells[i - 1] + (beside ? 0.3F : 0.0F);
        if (paired > best) {
          best = paired;
          way = 1;
        }
      }
      here[j] = best;
      ways[i * width + j] = way;
    }
    std::swap(above, here);
  }
  Places out;
  for (std::size_t i = n, j = m; i > 0 && j > 0;) {
    const auto way = ways[i * width + j];
    if (way == 1) out.pairs.emplace_back(static_cast<std::uint32_t>(--i), static_cast<std::uint32_t>(--j));
    if (way == 2) --i;
    if (way == 3) --j;
  }
  std::reverse(out.pairs.begin(), out.pairs.end());
  return out;
}

Span span_of(const WordRow& row, std::uint32_t first, std::uint32_t count) {
  if (row.spans.empty()) return {};
  if (count > 0) return {row.spans[first].begin, row.spans[first + count - 1].end};
  const std::uint32_t at = first < row.size() ? row.spans[first].begin : row.spans.back().end;
  return {at, at};
}

bool has_amount(const WordRow& row, std::uint32_t first, std::uint32_t count) {
  for (std::uint32_t i = first; i < first + count; ++i)
    if (row.sorts[i] == WordRow::Sort::number || row.sorts[i] == WordRow::Sort::measure ||
        row.sorts[i] == WordRow::Sort::time)
      return true;
  return false;
}

/// The ingredient whose amount stands in `span`; empty where none does.
std::string stuff_at(const ComparableRecipe& recipe, Span span) {
  for (const auto& item : recipe.ingredients)
    if (item.printed.quantity_span.overlaps(span) || item.printed.measure_span.overlaps(span)) return item.printed.name;
  return {};
}

/// Whether the words [first, first + count) of one row stand, in that order, within `other`.
bool stands_in(const WordRow& row, std::uint32_t first, std::uint32_t count, const WordRow& other) {
  const auto begin = row.words.begin() + first;
  return count >= least_moved &&
         std::search(other.words.begin(), other.words.end(), begin, begin + count) != other.words.end();
}

WordChange change_of(const PrintedText& source, const PrintedText& witness, WordChange change) {
  change.was_at = span_of(source.row, change.was_word, change.was_words);
  change.is_at = span_of(witness.row, change.is_word, change.is_words);
  change.was = change.was_at.in(source.recipe.recipe.text);
  change.is = change.is_at.in(witness.recipe.recipe.text);
  if ((change.is_words == 0 && stands_in(source.row, change.was_word, change.was_words, witness.row)) ||
      (change.was_words == 0 && stands_in(witness.row, change.is_word, change.is_words, source.row))) {
    change.kind = WordChange::Kind::moved;
  } else if (has_amount(source.row, change.was_word, change.was_words) ||
             has_amount(witness.row, change.is_word, change.is_words)) {
    change.kind = WordChange::Kind::amount;
    change.stuff = stuff_at(witness.recipe, change.is_at);
    if (change.stuff.empty()) change.stuff = stuff_at(source.recipe, change.was_at);
  }
  return change;
}

}  // namespace

std::vector<WordChange> changes_between(const PrintedText& source, const PrintedText& witness) {
  auto pairs = common_row(source.row, witness.row).pairs;
  pairs.emplace_back(static_cast<std::uint32_t>(source.row.size()), static_cast<std::uint32_t>(witness.row.size()));
  std::vector<WordChange> out;
  std::uint32_t i = 0, j = 0;
  for (const auto& [next_i, next_j] : pairs) {
    if (next_i > i || next_j > j) {
      WordChange change;
      change.was_word = i;
      change.was_words = next_i - i;
      change.is_word = j;
      change.is_words = next_j - j;
      out.push_back(change_of(source, witness, std::move(change)));
    }
    i = next_i + 1;
    j = next_j + 1;
  }
  return out;
}

std::vector<std::uint32_t> applied(const std::vector<WordChange>& changes, const WordRow& source,
                                   const WordRow& witness) {
  std::vector<std::uint32_t> out;
  std::uint32_t at = 0;
  for (const WordChange& change : changes) {
    out.insert(out.end(), source.words.begin() + at, source.words.begin() + change.was_word);
    const auto put = witness.words.begin() + change.is_word;
    out.insert(out.end(), put, put + change.is_words);
    at = change.was_word + change.was_words;
  }
  out.insert(out.end(), source.words.begin() + at, source.words.end());
  return out;
}

std::vector<WordChange> amounts_first(std::vector<WordChange> changes) {
  std::stable_sort(changes.begin(), changes.end(),
                   [](const WordChange& a, const WordChange& b) { return a.kind < b.kind; });
  return changes;
}

}  // namespace gallipot
