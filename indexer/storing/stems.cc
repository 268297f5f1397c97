// Stems, each word's worked out once.
#include "indexer/storing/stems.h"

#include <algorithm>
#include <unordered_set>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/grammar.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr std::size_t longest_word = 48;  // longer "words" are rows of rubbish from a bad scan

/// The words of the table; one that cannot be read would be found by the test that walks every row.
std::unordered_set<std::string> load_common_words() {
  std::unordered_set<std::string> out;
  const auto table = load_table("common_words");
  if (!table) return out;
  for (const auto& row : table->rows) out.emplace(row.cells.front());
  return out;
}

bool is_common(std::string_view key) {
  static const std::unordered_set<std::string> words = load_common_words();
  return words.contains(std::string(key));
}

/// Fowler, Noll and Vo's hash FNV-1a of 64 bits, with their offset basis and prime.
std::uint64_t hash_of(std::string_view word) {
  std::uint64_t out = 0xcbf29ce484222325ULL;
  for (const char c : word) {
    out ^= static_cast<unsigned char>(c);
    out *= 0x100000001b3ULL;
  }
  return out;
}

bool is_number(std::string_view key) {
  using namespace parsing;
  return (grammar_word(key).roles & (Role::number | Role::multiplier | Role::fraction)) != 0;
}

bool is_one_word(std::string_view s) { return !s.empty() && s.find_first_of(" -") == std::string_view::npos; }

}  // namespace

Stems::Stems(const Lexicon& lexicon) : lexicon_(lexicon) { forget(); }

void Stems::forget() {
  numbers_.clear();
  stem_numbers_.clear();
  stems_.assign(1, std::string());
  marks_.assign(1, 0);
}

std::string_view Stems::lexicon_spelling(std::string_view key) const {
  std::uint32_t value = 0;
  if (lexicon_.dish_kind_phrases().find(key, value) && is_one_word(lexicon_.dish_kinds()[value].name))
    return lexicon_.dish_kinds()[value].name;
  if (lexicon_.foodstuff_phrases().find(key, value)) {
    const Foodstuff& stuff = lexicon_.foodstuffs()[value];
    if (!stuff.weak && is_one_word(stuff.name)) return stuff.name;
  }
  return key;
}

/// The stem of a word spelt the modern way ("boyl", "strew'd") and then as the lexicon spells it.
std::uint32_t Stems::plain_of(std::string_view key) {
  std::string modern(lexicon_.modern_spelling(key));
  if (modern.empty()) modern = key;
  if (modern.size() > 4 && modern.ends_with("'d")) modern.replace(modern.size() - 2, 2, "ed");
  return number_of_stem_of(lexicon_spelling(modern));
}

std::uint32_t Stems::number_of_stem_of(std::string_view word) {
  const std::string stem = snowball_(std::string(word));
  if (stem.empty()) return none;
  const auto [at, is_new] = stem_numbers_.try_emplace(stem, static_cast<std::uint32_t>(stems_.size()));
  if (is_new) {
    stems_.push_back(stem);
    marks_.push_back(hash_of(stem));
  }
  return at->second;
}

Stems::Numbers Stems::meet(std::string_view key) {
  Numbers numbers;
  if (key.size() <= longest_word && !is_common(key)) {
    numbers.printed = number_of_stem_of(key);
    const auto lexicon = number_of_stem_of(lexicon_spelling(key));
    if (lexicon != numbers.printed) numbers.lexicon = lexicon;
    if (!is_number(key)) numbers.plain = plain_of(key);
  }
  numbers_.emplace(key, numbers);
  return numbers;
}

Stems::Numbers Stems::numbers_of(std::string_view key) {
  const auto at = numbers_.find(key);
  return at != numbers_.end() ? at->second : meet(key);
}

void Stems::append_numbers(std::string_view text, std::vector<std::uint32_t>& out, std::vector<std::uint64_t>* marks) {
  const Words words(text);
  for (const Word& word : words.all()) {
    if (word.kind != Word::Kind::word) continue;
    const auto numbers = numbers_of(word.key);
    if (numbers.printed != none) out.push_back(numbers.printed);
    if (numbers.lexicon != none) out.push_back(numbers.lexicon);
    if (marks != nullptr && numbers.plain != none) marks->push_back(mark(numbers.plain));
  }
}

std::vector<std::string> Stems::of(std::string_view text) {
  std::vector<std::uint32_t> numbers;
  append_numbers(text, numbers);
  std::vector<std::string> out;
  out.reserve(numbers.size());
  for (const auto number : numbers) out.push_back(stem(number));
  return out;
}

}  // namespace gallipot
