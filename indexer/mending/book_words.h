// What words does a book use, and how often? Internal to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/mending/good_words.h"
#include "indexer/text/span.h"

namespace gallipot {

/// Longer rows of letters are no words of a cookery book.
inline constexpr std::size_t longest_word = 40;

/// A word met in a text: its letters in small, a long s as s, and signs that were taken for letters left in
/// ("f1our"). Words with letters beyond English print are not met.
struct MetWord {
  Span span;
  std::uint32_t hash = hash_start;
  std::uint16_t length = 0;
  bool capital = false;       ///< begins with a capital
  bool all_capitals = false;  ///< two letters or more, all capitals
  char letters[longest_word] = {};

  std::string_view key() const { return {letters, length}; }
};

/// Finds the next word at or after `at` and moves `at` behind it; false at the text's end.
bool next_word(std::string_view text, std::uint32_t& at, MetWord& word);

struct BookWord {
  std::uint32_t hash = 0;
  std::uint32_t offset = 0;
  std::uint16_t length = 0;
  std::uint32_t count = 0;
  std::uint32_t capitals = 0;  ///< of these, printed with a capital first and small letters after it
};

class BookWords {
 public:
  void count(std::string_view text);

  const std::vector<BookWord>& all() const { return words_; }
  std::string_view key(const BookWord& word) const {
    return std::string_view(letters_).substr(word.offset, word.length);
  }
  /// Index in all(); -1 where the book has not the word.
  std::int64_t find(std::string_view key, std::uint32_t hash) const;
  std::uint64_t total() const { return total_; }  ///< words
  std::uint64_t letters() const { return total_letters_; }
  std::uint64_t early_s() const { return early_s_; }  ///< s that do not end their word: where a long s would stand

 private:
  void grow();

  std::vector<BookWord> words_;
  std::vector<std::uint32_t> seats_;  ///< index in words_ + 1, open-addressed
  std::string letters_;
  std::uint64_t total_ = 0, total_letters_ = 0, early_s_ = 0;
};

}  // namespace gallipot
