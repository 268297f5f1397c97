// One table of all known words, with a sieve of bits before it.
#include "indexer/mending/good_words.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstring>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

constexpr float lexicon_share = 5e-7F;    // a word that only the tables of the trade know
constexpr double inflected_share = 2e-7;  // known by its stem alone
constexpr std::uint32_t sieve_bits = 1u << 19;

}  // namespace

void GoodWords::grow() {
  std::vector<Slot> wider(std::max<std::size_t>(4096, slots_.size() * 2));
  const std::size_t mask = wider.size() - 1;
  for (const Slot& slot : slots_) {
    if (slot.length == 0) continue;
    std::size_t i = slot.hash & mask;
    while (wider[i].length != 0) i = (i + 1) & mask;
    wider[i] = slot;
  }
  slots_ = std::move(wider);
}

void GoodWords::enter(std::string_view word, float share) {
  if (word.empty() || word.size() > 64) return;
  const std::uint32_t hash = hash_of_word(word);
  if (share_spelt(word, hash) > 0) return;
  if (slots_.size() < 2 * (count_ + 1)) grow();
  const std::size_t mask = slots_.size() - 1;
  std::size_t i = hash & mask;
  while (slots_[i].length != 0) i = (i + 1) & mask;
  slots_[i] = {hash, static_cast<std::uint32_t>(letters_.size()), static_cast<std::uint16_t>(word.size()), share};
  letters_ += word;
  ++count_;
  const std::uint32_t bit = hash % sieve_bits;
  sieve_[bit / 64] |= 1ULL << (bit % 64);
}

Outcome<GoodWords> GoodWords::load(const Lexicon& lexicon) {
  GoodWords out;
  out.sieve_.assign(sieve_bits / 64, 0);
  const auto table = load_table("known-words");
  if (!table) return tl::unexpected(table.error());
  for (const auto& row : table->rows) {
    int weight = 0;
    const auto cell = table->cell(row, "weight");
    if (std::from_chars(cell.data(), cell.data() + cell.size(), weight).ec != std::errc())
      return fault("the weight is no number", "give the binary logarithm of the word's occurrences in a million words",
                   table->file_of(row), row.line);
    for (const auto word : parts_of(table->cell(row, "words")))
      out.enter(word, static_cast<float>(std::exp2(weight) * 1e-6));
  }
  const auto enter = [&](std::string_view word) { out.enter(word, lexicon_share); };
  for (const Phrases* phrases : {&lexicon.foodstuff_phrases(), &lexicon.measure_phrases(), &lexicon.operation_phrases(),
                                 &lexicon.dish_kind_phrases(), &lexicon.part_phrases(), &lexicon.spelling_phrases()})
    phrases->each_spelling(enter);
  return out;
}

double GoodWords::share_spelt(std::string_view word, std::uint32_t hash) const {
  const std::uint32_t bit = hash % sieve_bits;
  if (((sieve_[bit / 64] >> (bit % 64)) & 1u) == 0) return 0;
  const std::size_t mask = slots_.size() - 1;
  for (std::size_t i = hash & mask; slots_[i].length != 0; i = (i + 1) & mask) {
    const Slot& slot = slots_[i];
    if (slot.hash == hash && slot.length == word.size() &&
        std::memcmp(letters_.data() + slot.offset, word.data(), word.size()) == 0)
      return static_cast<double>(slot.share);
  }
  return 0;
}

double GoodWords::share(std::string_view word) const {
  if (const double spelt = share_spelt(word, hash_of_word(word)); spelt > 0) return spelt;
  static constexpr std::array<std::string_view, 13> ends = {"'s", "s",  "es", "'d",   "d",    "ed", "ing",
                                                            "ly", "er", "st", "ness", "less", "ful"};
  for (const auto end : ends) {
    if (word.size() < end.size() + 3 || !word.ends_with(end)) continue;
    const auto stem = word.substr(0, word.size() - end.size());
    if (share_spelt(stem, hash_of_word(stem)) > 0) return inflected_share;
    if (end[0] == 'i' || end == "ed" || end == "er" || end == "'d" || end == "ly") {
      std::string other(stem);
      other += 'e';  // "grating"
      if (share_spelt(other, hash_of_word(other)) > 0) return inflected_share;
      if (stem.size() > 3 && stem.back() == stem[stem.size() - 2]) {  // "sopping"
        const auto single = stem.substr(0, stem.size() - 1);
        if (share_spelt(single, hash_of_word(single)) > 0) return inflected_share;
      }
    }
  }
  return 0;
}

}  // namespace gallipot
