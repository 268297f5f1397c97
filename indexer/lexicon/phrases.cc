// A trie over word numbers. All spellings of a word (plural, possessive, "'d") are entered beforehand, so that matching
// is one look-up of the printed key and one a further word.
#include "indexer/lexicon/phrases.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace gallipot {
namespace {

struct Irregular {
  std::string_view plural, singular;
};
// English plurals that no rule of spelling makes, or that singular() takes for another word's.
constexpr std::array<Irregular, 8> irregulars = {{{"feet", "foot"},
                                                  {"geese", "goose"},
                                                  {"teeth", "tooth"},
                                                  {"oxen", "ox"},
                                                  {"mice", "mouse"},
                                                  {"men", "man"},
                                                  {"women", "woman"},
                                                  {"olives", "olive"}}};

// Words whose plural form is a thing of its own ("greens" is no colour, "bitters" no taste) or no plural at all.
constexpr std::array<std::string_view, 23> stays = {
    "greens", "bitters",   "lights",     "lees",        "suds",      "shorts",   "grits",   "groats",
    "naples", "sassafras", "aloes",      "cantharides", "sanders",   "duxelles", "gras",    "spirits",
    "whites", "peppers",   "alexanders", "avens",       "hippocras", "barbados", "alkermes"};

std::uint32_t hash_of(std::string_view s) {
  std::uint64_t head = 0, tail = 0;
  const std::size_t n = s.size();
  if (n >= 8) {
    std::memcpy(&head, s.data(), 8);
    std::memcpy(&tail, s.data() + n - 8, 8);
  } else {
    for (const char c : s) head = head << 8 | static_cast<unsigned char>(c);
  }
  std::uint64_t h = (head ^ (n * 0x9E3779B97F4A7C15ULL)) * 0xBF58476D1CE4E5B9ULL;
  h = (h ^ (h >> 29) ^ tail) * 0x94D049BB133111EBULL;
  return static_cast<std::uint32_t>(h >> 32);
}

std::size_t edge_hash(std::uint64_t from) { return static_cast<std::size_t>((from * 0x9E3779B97F4A7C15ULL) >> 20); }

bool ends_with(std::string_view s, std::string_view end) {
  return s.size() > end.size() && s.substr(s.size() - end.size()) == end;
}

// Spellings that plain_word() may reduce to `word`, without possessives; the caller checks each.
std::vector<std::string> spellings_of(const std::string& word) {
  std::vector<std::string> out = {word, word + "s", word + "es"};
  const auto stem = [&](std::size_t n) { return word.substr(0, word.size() - n); };
  if (ends_with(word, "y")) out.push_back(stem(1) + "ies");
  if (ends_with(word, "f")) out.push_back(stem(1) + "ves");
  if (ends_with(word, "fe")) out.push_back(stem(2) + "ves");
  if (ends_with(word, "ed")) out.push_back(stem(2) + "'d");
  if (ends_with(word, "ied")) out.push_back(stem(3) + "y'd");
  for (const auto& i : irregulars)
    if (i.singular == word) out.emplace_back(i.plural);
  return out;
}

// A hyphen, or the apostrophe of a plural possessive ("calves' feet"), stands between two words of one phrase.
bool joins(const Word& w) { return w.kind == Word::Kind::point && (w.key == "-" || (w.key == "'" && w.glued)); }

// Most phrases of the tables are small letters and spaces: cut at those without a tokenizer.
bool simple(std::string_view phrase) {
  return std::all_of(phrase.begin(), phrase.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == ' '; });
}

std::vector<std::string> words_of(std::string_view phrase) {
  std::vector<std::string> out;
  if (simple(phrase)) {
    while (!phrase.empty()) {
      const auto end = std::min(phrase.find(' '), phrase.size());
      if (end > 0) out.push_back(Phrases::plain_word(phrase.substr(0, end)));
      phrase.remove_prefix(std::min(end + 1, phrase.size()));
    }
    return out;
  }
  const Words words(phrase);
  for (const auto& w : words.all())
    if (!joins(w)) out.push_back(Phrases::plain_word(w.key));
  return out;
}

}  // namespace

std::string Phrases::plain_word(std::string_view key) {
  if (ends_with(key, "'s")) key.remove_suffix(2);
  if (ends_with(key, "'d")) {
    const auto stem = key.substr(0, key.size() - 2);
    return stem.back() == 'y' ? std::string(stem.substr(0, stem.size() - 1)).append("ied")
                              : std::string(stem).append("ed");
  }
  for (const auto& i : irregulars)
    if (i.plural == key) return std::string(i.singular);
  if (std::find(stays.begin(), stays.end(), key) != stays.end()) return std::string(key);
  return singular(key);
}

std::uint32_t Phrases::word_id(std::string_view key) const {
  if (slots_.empty()) return none;
  const std::size_t mask = slots_.size() - 1;
  const std::uint32_t hash = hash_of(key);
  for (std::size_t i = hash & mask;; i = (i + 1) & mask) {
    const Slot& slot = slots_[i];
    if (slot.id == none) return none;
    if (slot.hash == hash && slot.length == key.size() &&
        std::memcmp(letters_.data() + slot.offset, key.data(), key.size()) == 0)
      return slot.id;
  }
}

void Phrases::enter_spelling(std::string_view spelling, std::uint32_t id) {
  if (word_id(spelling) != none) return;
  const auto place = [](std::vector<Slot>& slots, const Slot& slot) {
    const std::size_t mask = slots.size() - 1;
    std::size_t i = slot.hash & mask;
    while (slots[i].id != none) i = (i + 1) & mask;
    slots[i] = slot;
  };
  if (slots_.size() < 3 * (spellings_ + 1)) {
    std::vector<Slot> wider(std::max<std::size_t>(1024, slots_.size() * 2));
    for (const auto& slot : slots_)
      if (slot.id != none) place(wider, slot);
    slots_ = std::move(wider);
  }
  place(slots_, {hash_of(spelling), id, static_cast<std::uint32_t>(letters_.size()),
                 static_cast<std::uint32_t>(spelling.size())});
  letters_ += spelling;
  ++spellings_;
}

std::uint32_t Phrases::enter_word(const std::string& word, bool joined) {
  auto id = word_id(word);
  if (id == none) {
    id = word_count_++;
    first_.push_back(0);
    spelt_out_.push_back(false);
  }
  if (joined) {
    enter_spelling(word, id);
    if (plain_word(word + "s") == word) enter_spelling(word + "s", id);
    return id;
  }
  if (spelt_out_[id]) return id;
  spelt_out_[id] = true;
  for (const auto& spelling : spellings_of(word)) {
    if (plain_word(spelling) != word) continue;
    enter_spelling(spelling, id);
    enter_spelling(spelling + "'s", id);
  }
  return id;
}

std::uint32_t Phrases::step(std::uint32_t node, std::uint32_t id) const {
  if (node == 0) return first_[id];
  if (!nodes_[node].leads_on) return 0;
  return edges_[seat(edges_, static_cast<std::uint64_t>(node) << 32 | id)].to;
}

// Where the edge of that origin stands, or the free place where it would.
std::size_t Phrases::seat(const std::vector<Edge>& edges, std::uint64_t from) {
  const std::size_t mask = edges.size() - 1;
  std::size_t i = edge_hash(from) & mask;
  while (edges[i].to != 0 && edges[i].from != from) i = (i + 1) & mask;
  return i;
}

std::uint32_t Phrases::enter_step(std::uint32_t node, std::uint32_t id) {
  const auto next = static_cast<std::uint32_t>(nodes_.size());
  if (node == 0) {
    if (first_[id] == 0) {
      first_[id] = next;
      nodes_.emplace_back();
    }
    return first_[id];
  }
  widen_edges(edge_count_ + 1);
  const std::uint64_t from = static_cast<std::uint64_t>(node) << 32 | id;
  auto& edge = edges_[seat(edges_, from)];
  if (edge.to != 0) return edge.to;
  edge = {from, next};
  ++edge_count_;
  nodes_[node].leads_on = true;
  nodes_.emplace_back();
  return next;
}

void Phrases::widen_edges(std::size_t for_count) {
  if (edges_.size() >= 2 * for_count) return;
  std::size_t size = std::max<std::size_t>(1024, edges_.size());
  while (size < 2 * for_count) size *= 2;
  std::vector<Edge> wider(size);
  for (const auto& edge : edges_)
    if (edge.to != 0) wider[seat(wider, edge.from)] = edge;
  edges_ = std::move(wider);
}

std::uint32_t Phrases::place(std::uint32_t from, const std::vector<std::uint32_t>& numbers) {
  if (nodes_.empty()) nodes_.emplace_back();
  for (const auto id : numbers) from = enter_step(from, id);
  return from;
}

bool Phrases::claim(std::uint32_t place, std::uint32_t value) {
  if (place == 0 || nodes_[place].value != none) return false;
  nodes_[place].value = value;
  ++count_;
  return true;
}

void Phrases::reserve(std::size_t phrases) {
  nodes_.reserve(phrases + phrases / 4);
  widen_edges(phrases);
}

// Written together: every way of joining neighbours ("all spice", "bread crumbs"). The pieces are words of a table, so
// that what they make together is hardly ever another English word.
void Phrases::enter_joined(const std::vector<std::string>& words, std::uint32_t value) {
  if (words.size() < 2 || words.size() > 3) return;
  const unsigned ways = 1u << (words.size() - 1);
  for (unsigned way = 1; way < ways; ++way) {
    std::vector<std::string> joined = {words[0]};
    for (std::size_t i = 1; i < words.size(); ++i) {
      if ((way >> (i - 1)) & 1u)
        joined.back() += words[i];
      else
        joined.push_back(words[i]);
    }
    std::vector<std::uint32_t> ids;
    for (const auto& w : joined) ids.push_back(enter_word(plain_word(w), true));
    claim(place(0, ids), value);
  }
}

std::vector<std::uint32_t> Phrases::numbers(std::string_view phrase) {
  std::vector<std::uint32_t> out;
  for (const auto& w : words_of(phrase)) out.push_back(enter_word(w));
  return out;
}

bool Phrases::add(std::string_view phrase, std::uint32_t value) {
  const auto words = words_of(phrase);
  std::vector<std::uint32_t> ids;
  for (const auto& w : words) ids.push_back(enter_word(w));
  const bool fresh = claim(place(0, ids), value);
  if (fresh) enter_joined(words, value);
  return fresh;
}

Phrases::Match Phrases::longest(const std::vector<Word>& words, std::size_t at) const {
  Match best;
  std::uint32_t node = 0;
  for (std::size_t i = at; i < words.size(); ++i) {
    const Word& w = words[i];
    if (w.kind == Word::Kind::point) {
      if (i == at || !joins(w)) break;
      continue;
    }
    const auto id = word_id(w.key);
    if (id == none) break;
    node = step(node, id);
    if (node == 0) break;
    if (nodes_[node].value != none) best = {nodes_[node].value, static_cast<std::uint32_t>(i + 1 - at)};
    if (!nodes_[node].leads_on) break;
  }
  return best;
}

bool Phrases::find(std::string_view phrase, std::uint32_t& value) const {
  const Words words(phrase);
  const auto match = longest(words.all(), 0);
  if (match.words == 0 || match.words != words.size()) return false;
  value = match.value;
  return true;
}

}  // namespace gallipot
