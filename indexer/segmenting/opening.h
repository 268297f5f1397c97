// Where could a receipt begin? Every heading, every short line that stands alone, every run-in at the head of a
// paragraph.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/reading/block.h"
#include "indexer/segmenting/prose.h"
#include "indexer/segmenting/vocabulary.h"
#include "indexer/text/span.h"

namespace gallipot {

/// How a stretch of letters is set: the one style that most of it shares.
enum class Setting : char {
  plain = 'p',
  title_case = 't',
  caps = 'C',
  italic = 'i',
  bold = 'b',
  bold_caps = 'B',
  small_caps = 's',
  underline = 'u',
  margin = 'n',
  mixed = 'm',
};

/// Nothing but its words sets it off.
inline bool is_unset(Setting s) { return s == Setting::plain || s == Setting::title_case; }

/// A place where a receipt could begin. Spans are in the block's text.
struct Opening {
  std::uint32_t block = 0;
  Span printed;            ///< title with its number and points
  Span title;              ///< without them
  Span number;             ///< the receipt's number; empty where there is none
  std::uint32_t body = 0;  ///< where the receipt's own words begin in the block; its end where the title stands alone
  bool standing = false;   ///< the title is a block of its own
  bool heading = false;    ///< transcribed as a heading
  bool labelled = false;   ///< a run-in that is only "No. 2."
  bool numeral = false;    ///< it is a numeral and nothing else
  bool name = false;       ///< it is the name of a person, not of a dish
  bool bare_name = false;  ///< it may be a name without "Mrs.": two to four capitals, a Christian name or an initial
  bool bracketed = false;  ///< all of it stands in brackets
  Setting setting = Setting::plain;
  Wording wording = Wording::plain;
  std::uint32_t words = 0;  ///< of the title
  std::uint32_t group = 0;  ///< typographic class: index in Openings::groups
  std::uint32_t same = 0;   ///< number of the plain wording, equal for openings worded alike
  double look = 0;          ///< 0..1: how much it reads like the name of a dish or a task
};

/// All openings of a book, and the prose of each block that is not part of one.
struct Openings {
  std::vector<Opening> all;            ///< in order; at most one a block
  std::vector<std::string> groups;     ///< what the typographic classes are, in words
  std::vector<ProseCount> prose;       ///< by block: what stands there beside the opening
  std::vector<std::int32_t> at_block;  ///< by block: index in `all`; -1 where it has no opening
  std::vector<bool> contents;          ///< by block: a contents list or index, by what the reader saw and by its words
  std::uint32_t wordings = 0;          ///< how many different plain wordings there are
};

Openings find_openings(const std::vector<Block>& blocks, Vocabulary& vocabulary);

/// A heading as plain lower-case words joined by single spaces, for looking up what it is worded as.
std::string plain_wording(std::string_view title);

}  // namespace gallipot
