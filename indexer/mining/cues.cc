// Loads the table of cues once and answers by word.
#include "indexer/mining/cues.h"

#include <array>
#include <string>
#include <unordered_map>
#include <utility>

#include "indexer/lexicon/tables.h"

namespace gallipot::mining {
namespace {

constexpr std::array<std::pair<std::string_view, Cue>, 14> names = {{{"verb", verb},
                                                                     {"copula", copula},
                                                                     {"link", link},
                                                                     {"alias", alias},
                                                                     {"head", head},
                                                                     {"hot", hot},
                                                                     {"gauge", gauge},
                                                                     {"test", test},
                                                                     {"proof", proof},
                                                                     {"size", size},
                                                                     {"share", share},
                                                                     {"allotted", allotted},
                                                                     {"tester", tester},
                                                                     {"span", mining::span}}};

std::unordered_map<std::string, std::uint32_t> load() {
  std::unordered_map<std::string, std::uint32_t> words;
  const auto table = parse_table(built_in_table("measure-cues"), "measure-cues", "measure-cues.tsv");
  if (!table) return words;
  for (const auto& row : table->rows)
    for (const auto& [name, cue] : names)
      if (row.cells[1] == name) words[std::string(row.cells[0])] |= cue;
  return words;
}

}  // namespace

std::uint32_t cues_of(std::string_view key) {
  static const auto loaded = load();
  static const auto words = [] {
    std::unordered_map<std::string_view, std::uint32_t> views;
    for (const auto& [word, cues] : loaded) views.emplace(word, cues);
    return views;
  }();
  const auto at = words.find(key);
  return at == words.end() ? 0 : at->second;
}

}  // namespace gallipot::mining
