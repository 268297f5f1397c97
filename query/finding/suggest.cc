// Mends misspelt words from the titles of the shelf.
#include "query/finding/suggest.h"

#include <algorithm>
#include <vector>

#include "indexer/storing/schema.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

bool known(const Shelf& shelf, const Lexicon& lexicon, Telling& telling, const Word& word) {
  if (word.kind != Word::Kind::word || word.key.size() < 4) return true;
  const auto stems = telling.stems_of(word.key);
  if (stems.empty()) return true;
  const auto& database = shelf.database();
  if (database.term_exists(std::string(schema::title) + stems.front())) return true;
  if (database.term_exists("Z" + stems.front())) return true;
  std::uint32_t value = 0;
  return lexicon.foodstuff_phrases().find(word.key, value) || lexicon.dish_kind_phrases().find(word.key, value);
}

/// The commonest title word nearest to `key`; empty where none is near.
std::string nearest(const Shelf& shelf, std::string_view key) {
  const auto& database = shelf.database();
  const std::string prefix(schema::title_word);
  const unsigned reach = key.size() >= 7 ? 2 : 1;
  std::string best;
  unsigned best_distance = reach + 1;
  Xapian::doccount best_count = 0;
  for (auto it = database.allterms_begin(prefix); it != database.allterms_end(prefix); ++it) {
    const std::string word = (*it).substr(prefix.size());
    if (word.size() + reach < key.size() || word.size() > key.size() + reach) continue;
    const unsigned distance = edit_distance(key, word, reach);
    if (distance > reach) continue;
    if (distance < best_distance || (distance == best_distance && it.get_termfreq() > best_count)) {
      best = word;
      best_distance = distance;
      best_count = it.get_termfreq();
    }
  }
  return best;
}

}  // namespace

unsigned edit_distance(std::string_view a, std::string_view b, unsigned most) {
  std::vector<unsigned> before(b.size() + 1), row(b.size() + 1), next(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<unsigned>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    next[0] = static_cast<unsigned>(i);
    unsigned least = next[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const unsigned other = a[i - 1] == b[j - 1] ? 0 : 1;
      next[j] = std::min({row[j] + 1, next[j - 1] + 1, row[j - 1] + other});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        next[j] = std::min(next[j], before[j - 2] + 1);
      least = std::min(least, next[j]);
    }
    if (least > most) return most + 1;
    before.swap(row);
    row.swap(next);
  }
  return row[b.size()];
}

std::string suggestion(const Shelf& shelf, const Lexicon& lexicon, Telling& telling,
                       const std::vector<std::string>& words) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : " ") + word;
  const Words parts(text);
  std::string out;
  bool mended = false;
  for (const auto& word : parts.all()) {
    if (!out.empty() && !word.glued) out += ' ';
    const std::string better = known(shelf, lexicon, telling, word) ? std::string{} : nearest(shelf, word.key);
    mended = mended || !better.empty();
    out += better.empty() ? std::string(word.key) : better;
  }
  return mended ? out : std::string{};
}

}  // namespace gallipot
