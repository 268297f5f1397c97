// A word is known by a number made of its letters; the words that matter stand in one open-addressed table.
#include "indexer/mining/scout.h"

#include <algorithm>

#include "indexer/lexicon/tables.h"
#include "indexer/mining/cues.h"
#include "indexer/mining/heats.h"
#include "indexer/mining/sizes.h"
#include "indexer/parsing/grammar.h"
#include "indexer/text/words.h"

namespace gallipot::mining {
namespace {

enum Flag : std::uint32_t {
  is_measure = 1,
  is_number = 2,
  is_verb = 4,
  is_copula = 8,
  is_alias = 16,  ///< "or", an opening bracket, a dash, an equals sign
  is_hot = 32,
  is_gauge = 64,
  is_test = 128,
  is_stage = 256,
  is_proof = 512,
  is_lawful = 1024,  ///< a weight or a capacity by law
  is_vessel = 2048,
  is_share = 4096,
  is_oven = 8192,
  is_tester = 16384,
  is_span = 32768,
  is_count = 65536,
  is_weighing = 131072,
  is_of = 262144,
};

constexpr std::uint64_t seed = 0xCBF29CE484222325ULL, prime = 0x100000001B3ULL;  // FNV-1a

std::uint64_t mixed(std::uint64_t key, unsigned char letter) { return (key ^ letter) * prime; }

std::uint64_t key_of(std::string_view word) {
  std::uint64_t key = seed;
  for (const char c : word) key = mixed(key, static_cast<unsigned char>(c));
  return key;
}

/// What a byte is to the scout: 0 nothing, a lower-case letter, '0' for a digit, or the sign itself.
constexpr std::array<unsigned char, 256> make_classes() {
  std::array<unsigned char, 256> out{};
  for (unsigned c = 'a'; c <= 'z'; ++c) out[c] = out[c - 32] = static_cast<unsigned char>(c);
  for (unsigned c = '0'; c <= '9'; ++c) out[c] = '0';
  out['('] = out['['] = '(';
  out['='] = '=';
  out[0xC2] = out[0xE2] = 0xC2;  // may begin a fraction, a degree sign, a dash
  return out;
}
constexpr auto classes = make_classes();

/// The word of a measure's name that says what it is: the last, but the first of "leaves of gelatine".
std::string_view chief_word(std::string_view phrase) {
  const auto of = phrase.find(" of ");
  if (of != std::string_view::npos) phrase = phrase.substr(0, of);
  const auto at = phrase.find_last_of(" -'");
  return at == std::string_view::npos ? phrase : phrase.substr(at + 1);
}

}  // namespace

Scout::Scout(const Lexicon& lexicon) : slots_(4096) {
  for (const auto& m : lexicon.measures())
    if (Sizes::tells(m.name, m.kind)) enter_measure(m.name, m.kind);
  if (const auto table = parse_table(built_in_table("measure-words"), "measure-words", "measure-words.tsv"))
    for (const auto& row : table->rows) {
      const std::string name(table->cell(row, "name")), kind(table->cell(row, "kind"));
      if (!Sizes::tells(name, kind)) continue;
      for (const auto form : parts_of(table->cell(row, "forms"))) enter_measure(form, kind);
    }
  for (const char* egg : {"egg", "eggs"}) enter(egg, is_measure);
  const auto words = parse_table(built_in_table("measure-cues"), "measure-cues", "measure-cues.tsv");
  if (words) {
    for (const auto& row : words->rows) {
      const auto cues = cues_of(row.cells[0]);
      enter(row.cells[0], ((cues & verb) ? is_verb : 0U) | ((cues & copula) ? is_copula : 0U) |
                              ((cues & alias) ? is_alias : 0U) | ((cues & hot) ? is_hot : 0U) |
                              ((cues & gauge) ? is_gauge : 0U) | ((cues & test) ? is_test : 0U) |
                              ((cues & proof) ? is_proof : 0U) | ((cues & tester) ? is_tester : 0U) |
                              ((cues & mining::span) ? is_span : 0U) | ((cues & size) ? is_measure : 0U));
    }
  }
  for (const auto& word : stage_words()) enter(word, is_stage);
  for (const char* oven : {"oven", "ovens", "fat", "lard"}) enter(oven, is_oven);
  for (const char* count : {"count", "counting"}) enter(count, is_count);
  for (const char* weighing : {"weigh", "weighs", "weighing", "weighed"}) enter(weighing, is_weighing);
  enter("of", is_of);
  enter("to", is_share);
  enter("the", is_share);
  const auto grammar = parse_table(built_in_table("grammar-words"), "grammar-words", "grammar-words.tsv");
  if (grammar)
    for (const auto& row : grammar->rows)
      if (parsing::grammar_word(row.cells[0]).roles &
          (parsing::number | parsing::multiplier | parsing::fraction | parsing::article))
        enter(row.cells[0], is_number);
}

/// Enters the last word of a measure's name, in the singular and the plural.
void Scout::enter_measure(std::string_view name, std::string_view kind) {
  if (kind == "length" || kind == "time" || kind == "size") return;
  const bool lawful = kind == "weight" || kind == "capacity";
  const bool vessel = kind == "household" || kind == "container";
  const std::uint32_t flags = is_measure | (lawful ? is_lawful : 0U) | (vessel ? is_vessel : 0U);
  const std::string word(chief_word(name));
  if (parsing::grammar_word(word).roles & parsing::fraction) return;  // "a quarter of corn"
  enter(word, flags);
  enter(word + "s", flags);
  if (word.ends_with("s") || word.ends_with("h")) enter(word + "es", flags);
  if (word.ends_with("f")) enter(word.substr(0, word.size() - 1) + "ves", flags);
}

void Scout::enter(std::string_view word, std::uint32_t flags) {
  if (word.empty() || flags == 0) return;
  const auto key = key_of(word);
  const auto mask = slots_.size() - 1;
  for (auto at = static_cast<std::size_t>(key ^ (key >> 29)) & mask;; at = (at + 1) & mask) {
    if (slots_[at].key != 0 && slots_[at].key != key) continue;
    slots_[at].key = key;
    slots_[at].flags |= flags;
    return;
  }
}

std::uint32_t Scout::flags_of(std::uint64_t key) const {
  const auto mask = slots_.size() - 1;
  for (auto at = static_cast<std::size_t>(key ^ (key >> 29)) & mask; slots_[at].key != 0; at = (at + 1) & mask)
    if (slots_[at].key == key) return slots_[at].flags;
  return 0;
}

void Scout::find_marks(std::string_view text) {
  marks_.clear();
  const auto n = static_cast<std::uint32_t>(text.size());
  for (std::uint32_t i = 0; i < n;) {
    const auto c = classes[static_cast<unsigned char>(text[i])];
    if (c == 0) {
      if (text[i] == '-' && i + 1 < n && text[i + 1] == '-') marks_.push_back({i, i + 2, is_alias});
      ++i;
      continue;
    }
    const auto from = i;
    if (c >= 'a' && c <= 'z') {
      std::uint64_t key = seed;
      for (; i < n; ++i) {
        const auto letter = classes[static_cast<unsigned char>(text[i])];
        if (letter < 'a' || letter > 'z') break;
        key = mixed(key, letter);
      }
      if (const auto flags = flags_of(key)) marks_.push_back({from, i, flags});
      continue;
    }
    ++i;
    if (c == '0') {
      while (i < n && classes[static_cast<unsigned char>(text[i])] == '0') ++i;
      marks_.push_back({from, i, is_number});
    } else if (c == '(' || c == '=') {
      marks_.push_back({from, i, is_alias});
    } else if (i < n) {
      const auto second = static_cast<unsigned char>(text[i]);
      if (second == 0xB0 || second == 0xBA) marks_.push_back({from, i + 1, is_gauge});   // degree
      if (second >= 0xBC && second <= 0xBE) marks_.push_back({from, i + 1, is_number});  // fractions
      const auto third = i + 1 < n ? static_cast<unsigned char>(text[i + 1]) : 0;
      if (second == 0x85 || (second == 0x80 && (third == 0x93 || third == 0x94)))
        marks_.push_back({from, i + 2, is_number | is_alias});  // fractions, dashes
    }
  }
}

bool Scout::measure_before(std::size_t i, std::uint32_t within) const {
  for (auto k = i; k-- > 0 && marks_[k].end + within >= marks_[i].at;)
    if (marks_[k].flags & is_measure) return true;
  return false;
}

/// A number close behind mark i, and a measure after it.
bool Scout::amount_after(std::size_t i, std::uint32_t to_number, std::uint32_t to_measure) const {
  bool number = false;
  for (auto k = i + 1; k < marks_.size() && marks_[k].at <= marks_[i].end + to_measure; ++k) {
    if (marks_[k].flags & is_number) number = true;
    if (!number && marks_[k].at > marks_[i].end + to_number) return false;
    if (marks_[k].flags & is_measure) return number;
  }
  return false;
}

/// "or half a pint", "(pounds)", "-- one quart": the amount named anew stands at once behind mark i.
bool Scout::renamed_after(std::size_t i) const {
  if (i + 1 < marks_.size() && (marks_[i + 1].flags & is_measure) && marks_[i + 1].at <= marks_[i].end + 8) return true;
  return amount_after(i, 22, 44);
}

/// The nearest mark with one of the flags on either side; i itself where there is none.
std::size_t Scout::partner(std::size_t i, std::uint32_t flags, std::uint32_t within) const {
  std::size_t best = i;
  std::uint32_t nearest = within + 1;
  for (auto k = i; k-- > 0 && marks_[k].end + within >= marks_[i].at;) {
    if (!(marks_[k].flags & flags)) continue;
    best = k;
    nearest = marks_[i].at - std::min(marks_[i].at, marks_[k].end);
    break;
  }
  for (auto k = i + 1; k < marks_.size() && marks_[k].at < marks_[i].end + nearest; ++k)
    if (marks_[k].flags & flags) return k;
  return best;
}

/// Whether mark i is a word that ties two measures of which the one stands before it and the other after.
bool Scout::ties_measures(std::size_t i) const {
  const auto& mark = marks_[i];
  if ((mark.flags & is_verb) && measure_before(i, 90) && amount_after(i, 36, 60)) return true;
  if ((mark.flags & is_weighing) && i > 0 && (marks_[i - 1].flags & is_number) && marks_[i - 1].end + 40 >= mark.at &&
      amount_after(i, 24, 40))
    return true;  // "two onions weighing three ounces"
  if ((mark.flags & is_of) && i > 0 && (marks_[i - 1].flags & is_lawful) && marks_[i - 1].end + 3 >= mark.at &&
      i + 2 < marks_.size() && (marks_[i + 1].flags & is_number) && (marks_[i + 2].flags & is_lawful) &&
      marks_[i + 2].at <= mark.end + 24)
    return true;  // "the firkin of nine gallons"
  if ((mark.flags & is_copula) && measure_before(i, 80) && amount_after(i, 24, 36)) return true;
  if ((mark.flags & is_alias) && measure_before(i, 56) && renamed_after(i)) return true;
  if (i == 0 || !(marks_[i - 1].flags & is_lawful)) return false;
  if ((mark.flags & is_vessel) && marks_[i - 1].end + 2 >= mark.at) return true;
  return (mark.flags & is_share) && marks_[i - 1].end + 14 >= mark.at && i + 1 < marks_.size() &&
         marks_[i + 1].at <= mark.end + 8;
}

/// The other mark of a heat or a strength that mark i tells; i itself where it tells none.
std::size_t Scout::told_with(std::size_t i) const {
  const auto flags = marks_[i].flags;
  if (flags & is_count)
    if (const auto k = partner(i, is_oven, 280); k != i) return k;
  if (flags & is_gauge)
    if (const auto k = partner(i, is_hot | is_stage, 120); k != i) return k;
  if ((flags & is_span) && partner(i, is_tester, 80) != i)
    if (const auto k = partner(i, is_oven, 160); k != i) return k;
  if ((flags & is_stage) && partner(i, is_hot, 200) != i)
    if (const auto k = partner(i, is_test, 60); k != i) return k;
  if ((flags & is_stage) && i + 1 < marks_.size() && (marks_[i + 1].flags & is_number) &&
      marks_[i + 1].at <= marks_[i].end + 8)
    return i + 1;
  if ((flags & is_proof) && i > 0 && (marks_[i - 1].flags & (is_number | is_gauge)) &&
      marks_[i - 1].end + 24 >= marks_[i].at)
    return i - 1;
  return i;
}

/// Widens to whole sentences, a full stop before a capital being a sentence's end, and joins with the window before.
void Scout::add_window(std::string_view text, std::uint32_t begin, std::uint32_t end) {
  constexpr std::uint32_t far = 320;
  const auto n = static_cast<std::uint32_t>(text.size());
  const auto ends = [&](std::uint32_t i) {
    if (text[i] != '.' && text[i] != '!' && text[i] != '?' && text[i] != ';') return false;
    if (i + 2 >= n || text[i + 1] != ' ') return false;
    const auto next = static_cast<unsigned char>(text[i + 2]);
    return text[i] != ';' && next >= 'A' && next <= 'Z' && i >= 5 && text[i - 2] != ' ' && text[i - 3] != ' ' &&
           text[i - 4] != ' ';
  };
  std::uint32_t from = begin, to = end;
  while (from > 0 && begin - from < far && !(from >= 2 && ends(from - 2))) --from;
  while (from > 0 && from < begin && text[from - 1] != ' ') ++from;
  while (to < n && to - end < far && !ends(to)) ++to;
  while (to < n && to > end && text[to] != ' ' && text[to] != '.') --to;
  if (to < n && text[to] == '.') ++to;
  if (!windows_.empty() && windows_.back().end >= from) {
    windows_.back().end = std::max(windows_.back().end, to);
  } else {
    windows_.push_back({from, to});
  }
}

const std::vector<Span>& Scout::windows(std::string_view text) {
  windows_.clear();
  find_marks(text);
  for (std::size_t i = 0; i < marks_.size(); ++i) {
    if (!windows_.empty() && marks_[i].end <= windows_.back().end) continue;
    const auto k = told_with(i);
    if (k != i) {
      add_window(text, std::min(marks_[i].at, marks_[k].at), std::max(marks_[i].end, marks_[k].end));
    } else if (ties_measures(i)) {
      add_window(text, marks_[i].at, marks_[i].end);
    }
  }
  return windows_;
}

bool Scout::names_measure(std::string_view text) {
  find_marks(text);
  return std::any_of(marks_.begin(), marks_.end(), [](const Mark& m) { return (m.flags & is_measure) != 0; });
}

}  // namespace gallipot::mining
