// One pass over the bytes; a word is hashed as it is read.
#include "indexer/mending/book_words.h"

#include <array>
#include <cstring>

namespace gallipot {
namespace {

enum class Sort : unsigned char { other, letter, digit, inner, beyond };

constexpr std::array<Sort, 256> sorts() {
  std::array<Sort, 256> out{};
  for (std::size_t c = 0; c < 256; ++c) {
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) out[c] = Sort::letter;
    if (c >= '0' && c <= '9') out[c] = Sort::digit;
    if (c == '\'' || c == '!' || c == '|' || c == '^') out[c] = Sort::inner;
    if (c >= 0x80) out[c] = Sort::beyond;
  }
  return out;
}
constexpr std::array<Sort, 256> sort_of = sorts();

Sort sort_at(std::string_view text, std::size_t at) {
  return at < text.size() ? sort_of[static_cast<unsigned char>(text[at])] : Sort::other;
}

bool long_s_at(std::string_view text, std::size_t at) { return text.substr(at, 2) == "\xC5\xBF"; }
bool apostrophe_at(std::string_view text, std::size_t at) { return text.substr(at, 3) == "\xE2\x80\x99"; }

/// Bytes of a dash or quotation mark at `at`, which part words as a space does; 0 where it is none.
std::size_t mark_at(std::string_view text, std::size_t at) {
  return text.substr(at, 2) == "\xE2\x80" ? 3 : text.substr(at, 2) == "\xC2\xA0" ? 2 : 0;
}

void put(MetWord& word, char c, std::size_t& letters, std::size_t& capitals) {
  const bool upper = c >= 'A' && c <= 'Z';
  const char small = upper ? static_cast<char>(c + 32) : c;
  if (word.length == 0) word.capital = upper;
  if (word.length < longest_word) word.letters[word.length] = small;
  if (word.length <= longest_word) ++word.length;  // longer is no word, however long
  word.hash = hash_on(word.hash, small);
  letters += small >= 'a' && small <= 'z';
  capitals += upper;
}

}  // namespace

bool next_word(std::string_view text, std::uint32_t& at, MetWord& word) {
  std::size_t i = at;
  const std::size_t n = text.size();
  while (i < n) {
    const Sort first = sort_at(text, i);
    if (first == Sort::other || first == Sort::inner) {
      ++i;
      continue;
    }
    if (first == Sort::beyond && !long_s_at(text, i) && mark_at(text, i) > 0) {
      i += mark_at(text, i);
      continue;
    }
    word.length = 0;
    word.hash = hash_start;
    std::size_t letters = 0, capitals = 0;
    bool foreign = first == Sort::digit;
    const std::size_t begin = i;
    while (i < n) {
      const Sort sort = sort_at(text, i);
      if (sort == Sort::letter) {
        put(word, text[i], letters, capitals);
        ++i;
      } else if (sort == Sort::digit || (sort == Sort::inner && sort_at(text, i + 1) == Sort::letter)) {
        foreign = foreign || sort_at(text, i + 1) != Sort::letter;
        put(word, text[i], letters, capitals);
        ++i;
      } else if (sort != Sort::beyond) {
        break;
      } else if (long_s_at(text, i)) {
        put(word, 's', letters, capitals);
        i += 2;
      } else if (apostrophe_at(text, i) && sort_at(text, i + 3) == Sort::letter) {
        put(word, '\'', letters, capitals);
        i += 3;
      } else if (mark_at(text, i) > 0) {
        break;
      } else {
        foreign = true;
        ++i;
      }
    }
    if (foreign || word.length > longest_word || letters == 0) continue;
    word.span = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(i)};
    word.all_capitals = letters > 1 && letters == capitals;
    at = static_cast<std::uint32_t>(i);
    return true;
  }
  at = static_cast<std::uint32_t>(n);
  return false;
}

void BookWords::grow() {
  seats_.assign(std::max<std::size_t>(8192, seats_.size() * 2), 0);
  const std::size_t mask = seats_.size() - 1;
  for (std::uint32_t w = 0; w < words_.size(); ++w) {
    std::size_t i = words_[w].hash & mask;
    while (seats_[i] != 0) i = (i + 1) & mask;
    seats_[i] = w + 1;
  }
}

std::int64_t BookWords::find(std::string_view key, std::uint32_t hash) const {
  if (seats_.empty()) return -1;
  const std::size_t mask = seats_.size() - 1;
  for (std::size_t i = hash & mask; seats_[i] != 0; i = (i + 1) & mask) {
    const BookWord& word = words_[seats_[i] - 1];
    if (word.hash == hash && word.length == key.size() &&
        std::memcmp(letters_.data() + word.offset, key.data(), key.size()) == 0)
      return seats_[i] - 1;
  }
  return -1;
}

void BookWords::count(std::string_view text) {
  std::uint32_t at = 0;
  MetWord met;
  while (next_word(text, at, met)) {
    ++total_;
    total_letters_ += met.length;
    for (std::uint16_t i = 0; i + 1 < met.length; ++i) early_s_ += met.letters[i] == 's';
    auto index = find(met.key(), met.hash);
    if (index < 0) {
      if (seats_.size() < 2 * (words_.size() + 1)) grow();
      index = static_cast<std::int64_t>(words_.size());
      words_.push_back({met.hash, static_cast<std::uint32_t>(letters_.size()), met.length, 0, 0});
      letters_ += met.key();
      const std::size_t mask = seats_.size() - 1;
      std::size_t i = met.hash & mask;
      while (seats_[i] != 0) i = (i + 1) & mask;
      seats_[i] = static_cast<std::uint32_t>(words_.size());
    }
    BookWord& word = words_[static_cast<std::size_t>(index)];
    ++word.count;
    word.capitals += met.capital && !met.all_capitals;  // a head in capitals is no row of names
  }
}

}  // namespace gallipot
