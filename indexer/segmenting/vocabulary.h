// What does a single word tell about the kind of prose it stands in? The lexicon and the cutter's own cues, asked once
// a word and remembered, because a book says the same few thousand words over and over.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>

#include "indexer/lexicon/lexicon.h"

namespace gallipot {

/// What a word is a sign of; several may hold.
enum WordSign : std::uint16_t {
  sign_food = 1,
  sign_measure = 2,
  sign_operation = 4,  ///< any form of a kitchen verb
  sign_begin = 8,      ///< a verb in the form that opens a direction
  sign_number = 16,
  sign_time = 32,
  sign_talk = 64,
  sign_direct = 128,
  sign_dish = 256,  ///< a kind of dish
  sign_honorific = 512,
  sign_rank = 1024,     ///< opens a person's name or a dish named after one
  sign_closing = 2048,  ///< of the closing of a letter
  sign_given = 8192,    ///< a Christian name
  sign_source = 4096,   ///< "recipe", "style" after a name
};

/// What a whole heading is worded as.
enum class Wording : unsigned char { plain, part, component, way, chapter, remarks, division, front, menu, calendar };

/// Remembers signs by word. One for each book: not to be shared between threads.
class Vocabulary {
 public:
  explicit Vocabulary(const Lexicon& lexicon);

  /// WordSign bits of a word's key (lower case, plain).
  std::uint16_t signs(std::string_view key);

  /// What the wording of a heading is: its plain words joined by single spaces, without number and points.
  Wording wording(std::string_view plain_heading) const;

 private:
  std::uint16_t ask(std::string_view key) const;

  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  const Lexicon& lexicon_;
  std::unordered_map<std::string, std::uint16_t, Hash, std::equal_to<>> known_;
};

}  // namespace gallipot
