// Which dish does a title name? The kind is the head of the title ("catsup" in "Walnut Catsup" and in "Catsup of
// Walnuts"), the base the first foodstuff beside it.
#include <optional>

#include "indexer/normalizing/normalize.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

struct Place {
  std::size_t begin = 0, end = 0;  ///< words [begin, end)
  std::uint32_t value = 0;
};

bool is_any(std::string_view key, std::initializer_list<std::string_view> keys) {
  for (const auto k : keys)
    if (k == key) return true;
  return false;
}

/// Words after which a title speaks of something else: what the dish goes with, or how it is served.
bool turns_away(const Word& word) {
  return is_any(word.key, {"for", "with", "without", "like", "from", "as", "in", "on", "(", "[", ";", "--", ":"});
}

/// Where the part of the title that names the dish ends. Never before anything was named.
std::size_t name_end(const std::vector<Word>& words) {
  for (std::size_t i = 1; i < words.size(); ++i)
    if (turns_away(words[i])) return i;
  return words.size();
}

std::vector<Place> places_of(const Phrases& phrases, const std::vector<Word>& words, std::size_t from, std::size_t to) {
  std::vector<Place> out;
  for (std::size_t i = from; i < to;) {
    const auto match = phrases.longest(words, i);
    if (match.words > 0 && i + match.words <= words.size()) {
      out.push_back({i, i + match.words, match.value});
      i += match.words;
    } else {
      ++i;
    }
  }
  return out;
}

/// The head of the name: the last kind before an "of", else the last of all.
std::optional<Place> head_kind(const std::vector<Place>& kinds, const std::vector<Word>& words, std::size_t end) {
  if (kinds.empty()) return std::nullopt;
  for (std::size_t i = 0; i < end; ++i) {
    if (words[i].key != "of") continue;
    std::optional<Place> before;
    for (const auto& kind : kinds)
      if (kind.end <= i) before = kind;
    if (before) return before;
    break;
  }
  return kinds.back();
}

std::string base_in(const std::vector<Word>& words, std::size_t from, std::size_t to, const std::optional<Place>& kind,
                    const Lexicon& lexicon) {
  for (std::size_t i = from; i < to; ++i) {
    if (kind && i >= kind->begin && i < kind->end) continue;
    const auto match = lexicon.foodstuff_phrases().longest(words, i);
    if (match.words == 0) continue;
    const auto& food = lexicon.foodstuffs()[match.value];
    const bool covers_kind = kind && i < kind->end && i + match.words > kind->begin;
    if (!covers_kind) return food.name;
    if (!food.base.empty()) return food.base;
    if (i >= kind->begin) continue;
    // "quince marmalade" is a foodstuff too: what stands before the kind is the base.
    for (std::size_t j = i; j < kind->begin; ++j) {
      std::uint32_t value = 0;
      std::string text;
      for (std::size_t k = j; k < kind->begin; ++k) text.append(text.empty() ? "" : " ").append(words[k].key);
      if (lexicon.foodstuff_phrases().find(text, value)) return lexicon.foodstuffs()[value].name;
    }
  }
  return {};
}

}  // namespace

Dish dish_of(std::string_view title, std::string_view chapter, std::string_view main, const Lexicon& lexicon) {
  Dish out;
  const Words title_words(title);
  const auto& words = title_words.all();
  const std::size_t end = name_end(words);
  const auto kind = head_kind(places_of(lexicon.dish_kind_phrases(), words, 0, end), words, end);
  if (kind) out.kind = lexicon.dish_kinds()[kind->value].name;
  out.base = base_in(words, 0, end, kind, lexicon);
  if (out.base.empty()) out.base = base_in(words, end, words.size(), kind, lexicon);
  if (out.kind.empty()) {
    const Words chapter_words(chapter);
    const auto kinds = places_of(lexicon.dish_kind_phrases(), chapter_words.all(), 0, chapter_words.size());
    if (kinds.size() == 1) out.kind = lexicon.dish_kinds()[kinds.front().value].name;
    if (out.base.empty()) out.base = main;
  }
  return out;
}

}  // namespace gallipot
