// Loads the closed classes once and answers by word.
#include "indexer/parsing/grammar.h"

#include <cstdlib>
#include <string>
#include <unordered_map>

#include "indexer/lexicon/tables.h"

namespace gallipot::parsing {
namespace {

std::uint32_t role_named(std::string_view name) {
  static const std::unordered_map<std::string_view, std::uint32_t> roles = {{"number", number},
                                                                            {"multiplier", multiplier},
                                                                            {"fraction", fraction},
                                                                            {"article", article},
                                                                            {"definite", definite},
                                                                            {"each", each},
                                                                            {"vague", vague},
                                                                            {"little", little},
                                                                            {"about", about},
                                                                            {"bend", bend},
                                                                            {"preposition", preposition},
                                                                            {"conjunction", conjunction},
                                                                            {"or", or_word},
                                                                            {"pronoun", pronoun},
                                                                            {"auxiliary", auxiliary},
                                                                            {"of", of_word},
                                                                            {"part", part}};
  const auto found = roles.find(name);
  return found == roles.end() ? 0 : found->second;
}

/// The words and the bytes that they view.
struct Loaded {
  Table table;
  std::unordered_map<std::string_view, GrammarWord> words;
};

Loaded load() {
  Loaded loaded;
  auto table = parse_table(built_in_table("grammar-words"), "grammar-words", "grammar-words.tsv");
  if (!table) return loaded;
  loaded.table = std::move(*table);
  for (const auto& row : loaded.table.rows) {
    if (row.cells.size() < 3) continue;
    const auto roles = role_named(row.cells[1]);
    auto& word = loaded.words[row.cells[0]];
    word.roles |= roles;
    if (roles & (number | multiplier | fraction)) word.value = std::strtod(std::string(row.cells[2]).c_str(), nullptr);
    if (roles & part) word.part = row.cells[2];
  }
  return loaded;
}

}  // namespace

const GrammarWord& grammar_word(std::string_view key) {
  static const Loaded loaded = load();
  static const GrammarWord none;
  const auto found = loaded.words.find(key);
  return found == loaded.words.end() ? none : found->second;
}

}  // namespace gallipot::parsing
