// The words that tell a reader: here one measure is set equal to another. They are data (data/measure-cues.tsv).
#pragma once

#include <cstdint>
#include <string_view>

namespace gallipot::mining {

/// What a word can be in a statement; it may be several at once.
enum Cue : std::uint32_t {
  verb = 1,         ///< "equal", "hold", "weigh", "contain", "understood": says equality of itself
  copula = 2,       ///< "is", "are", "make": says it between two amounts
  link = 4,         ///< "to", "about", "generally": may stand between a verb and the amount that follows
  alias = 8,        ///< "or", "namely": names the same amount anew
  head = 16,        ///< "measures", "weights": in the heading of a table of measures
  hot = 32,         ///< "oven", "syrup", "fat": a thing whose heat is told
  gauge = 64,       ///< "degrees", "thermometer", "count": how heat is told
  test = 128,       ///< "called", "known", "snaps": how a stage is known
  proof = 256,      ///< "proof": strength of spirits
  size = 512,       ///< "size", "bigness": opens a measure by likeness
  share = 1024,     ///< "to", "per", "in": so many of one to one of the other
  tester = 4096,    ///< "flour", "paper", "hand": what an oven is tried with
  span = 8192,      ///< "minutes", "seconds"
  allotted = 2048,  ///< "allow", "add", "put": a proportion to be taken, not what a measure holds
};

/// The cues of a plain lower-case word; 0 where the table does not know it.
std::uint32_t cues_of(std::string_view key);

}  // namespace gallipot::mining
