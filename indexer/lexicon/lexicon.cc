// Answers questions about names; how the lexicon is filled from its tables stands in filling.cc.
#include "indexer/lexicon/lexicon.h"

namespace gallipot {

const Foodstuff* Lexicon::foodstuff(std::string_view name) const {
  const auto hit = foodstuff_by_name_.find(std::string(name));
  return hit == foodstuff_by_name_.end() ? nullptr : &foodstuffs_[hit->second];
}

const MeasureWord* Lexicon::measure(std::string_view name) const {
  const auto hit = measure_by_name_.find(std::string(name));
  return hit == measure_by_name_.end() ? nullptr : &measures_[hit->second];
}

const Foodstuff* Lexicon::part_of(std::uint32_t part, const Foodstuff& whole) const {
  const auto at = foodstuff_by_name_.find(whole.name);
  if (at == foodstuff_by_name_.end()) return nullptr;
  const auto hit = parts_.find(static_cast<std::uint64_t>(part) << 32 | at->second);
  return hit == parts_.end() ? nullptr : &foodstuffs_[hit->second];
}

std::string_view Lexicon::modern_spelling(std::string_view key) const {
  Word word;
  word.key = key;
  const auto match = spelling_phrases_.longest({word}, 0);
  return match.words == 0 ? std::string_view{} : std::string_view(spellings_[match.value]);
}

}  // namespace gallipot
