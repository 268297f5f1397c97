// Asks the lexicon and the table of cues what a word is a sign of.
#include "indexer/segmenting/vocabulary.h"

#include <array>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

struct SvHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
};
template <typename T>
using ByWord = std::unordered_map<std::string, T, SvHash, std::equal_to<>>;

struct Cues {
  ByWord<std::uint16_t> words;
  ByWord<Wording> headings;
};

std::uint16_t word_cue(std::string_view cue) {
  if (cue == "talk") return sign_talk;
  if (cue == "direct") return sign_direct;
  if (cue == "begin") return sign_begin;
  if (cue == "number") return sign_number;
  if (cue == "time") return sign_time;
  if (cue == "honorific") return sign_honorific;
  if (cue == "rank") return sign_rank;
  if (cue == "closing") return sign_closing;
  if (cue == "given") return sign_given;
  if (cue == "source") return sign_source;
  return 0;
}

Wording heading_cue(std::string_view cue) {
  if (cue == "part") return Wording::part;
  if (cue == "component") return Wording::component;
  if (cue == "way") return Wording::way;
  if (cue == "chapter") return Wording::chapter;
  if (cue == "front") return Wording::front;
  if (cue == "remarks") return Wording::remarks;
  if (cue == "division") return Wording::division;
  if (cue == "menu") return Wording::menu;
  if (cue == "calendar") return Wording::calendar;
  return Wording::plain;
}

Cues read_cues() {
  Cues cues;
  auto table = parse_table(built_in_table("cutting_cues"), "cutting_cues", "cutting_cues.tsv");
  if (!table) return cues;
  const auto word = table->column("word"), cue = table->column("cue");
  if (word < 0 || cue < 0) return cues;
  for (const auto& row : table->rows) {
    const auto w = row.cells[static_cast<std::size_t>(word)], c = row.cells[static_cast<std::size_t>(cue)];
    if (const auto bits = word_cue(c)) cues.words[std::string(w)] |= bits;
    if (const auto as = heading_cue(c); as != Wording::plain) cues.headings[std::string(w)] = as;
  }
  return cues;
}

/// The table is compiled in and never changes while the program runs.
const Cues& cues() {
  static const Cues read = read_cues();
  return read;
}

}  // namespace

Vocabulary::Vocabulary(const Lexicon& lexicon) : lexicon_(lexicon) { known_.reserve(8192); }

std::uint16_t Vocabulary::ask(std::string_view key) const {
  std::uint16_t bits = 0;
  if (const auto it = cues().words.find(key); it != cues().words.end()) bits = it->second;
  std::uint32_t value = 0;
  if (!(bits & sign_talk)) {
    if (lexicon_.foodstuff_phrases().find(key, value)) bits |= sign_food;
    if (lexicon_.measure_phrases().find(key, value)) bits |= sign_measure;
    if (lexicon_.operation_phrases().find(key, value)) {
      bits |= sign_operation;
      if (lexicon_.operations()[value].form == "imperative") bits |= sign_begin;
    }
    if (lexicon_.dish_kind_phrases().find(key, value)) bits |= sign_dish;
  }
  return bits;
}

std::uint16_t Vocabulary::signs(std::string_view key) {
  if (const auto it = known_.find(key); it != known_.end()) return it->second;
  const auto bits = ask(key);
  known_.emplace(key, bits);
  return bits;
}

Wording Vocabulary::wording(std::string_view plain_heading) const {
  const auto it = cues().headings.find(plain_heading);
  return it == cues().headings.end() ? Wording::plain : it->second;
}

}  // namespace gallipot
