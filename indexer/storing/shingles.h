// Which runs of words does the index keep of a recipe, so that a text taken from it is found again?
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "indexer/storing/stems.h"

namespace gallipot {

/// A shingle is a run of three telling words (Stems: little words and numbers are none, spellings are one). With the
/// little words between them that is a run of five or six printed words, but one that a copyist who writes "2" for
/// "two" or "of the" for "of" leaves whole. On 79 pairs of real recipes of which one draws on the other, one kept in
/// four of these loses two pairs at 16 terms a recipe; of five printed words, numbers read as one, one kept in four
/// loses five at 34 terms.
inline constexpr std::size_t shingle_words = 3;

/// One shingle in so many is kept, by its own hash: the sketch MOD_m of Broder 1997 ("On the resemblance and
/// containment of documents"). Two texts keep the same of what they share, however long either is, so that a whole
/// recipe inside one five times as long is found as surely as a copy of it.
inline constexpr std::uint64_t shingle_sampling = 4;

/// Words of a text as numbers that are the same in every process and on every machine: a hash of each word.
using WordMarks = std::vector<std::uint64_t>;

/// The hashes of all shingles of a text, in order, each below 2^40; a shingle that comes again stands there again.
std::vector<std::uint64_t> shingles_of(std::span<const std::uint64_t> marks);

/// Whether a shingle is one of those kept.
constexpr bool is_kept(std::uint64_t shingle) { return shingle % shingle_sampling == 0; }

/// The term, with its prefix, under which the index keeps a shingle.
std::string shingle_term(std::uint64_t shingle);

/// What two sketches tell of the texts that they were taken of (Broder 1997): the shingles that both have over those
/// that either has (resemblance), over those of the first, over those of the second (containment). 0 where there are
/// none to divide by. Given all shingles it is the truth, given those kept an estimate without bias.
struct Resemblance {
  double resemblance = 0, of_first = 0, of_second = 0;
};
Resemblance resemblance_of(std::vector<std::uint64_t> first, std::vector<std::uint64_t> second);

}  // namespace gallipot
