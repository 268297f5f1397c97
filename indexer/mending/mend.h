// What did the printer set, where the copy is damaged or the print early? Words that no table and no habit of the book
// explains are read as the word that was most likely meant: a noisy channel over a table of confusions, its strength
// learnt from the book itself. A word good as it stands is left alone.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/reading/block.h"

namespace gallipot {

/// What was found out about a book's print while it was mended.
struct Mending {
  std::uint64_t words = 0;   ///< of the book
  std::uint64_t mended = 0;  ///< read otherwise than they stand in the copy
  std::uint64_t unread = 0;  ///< in a damaged book: neither known nor mended
  double scan = 0;           ///< letters in one that are misread, by the book's own evidence
  double long_s = 0;         ///< of the s that end no word, those whose long shape was taken for another letter
  double early = 0;          ///< of u, v, i, j: set the one for the other, or words written short
  double spelling = 0;       ///< words in one spelt as the table of early spellings has it
  std::string sentence;      ///< for the person whose shelf it is; empty where nothing of note was mended
  std::vector<std::pair<std::string, std::string>> changes;  ///< copy's word -> reading, commonest first
};

class Mender {
 public:
  /// Loads the tables "known-words" and "confusions". Faults name the table's file and line.
  static Outcome<std::shared_ptr<const Mender>> load(const Lexicon& lexicon);
  /// One mender for all books that are read with a lexicon: loaded when first asked for. Throws what load() faults
  /// with, which the built-in tables never do. Thread-safe.
  static std::shared_ptr<const Mender> of(const Lexicon& lexicon);

  /// Mends the words of a book's blocks in place; Block::mends says what stood there. Thread-safe.
  Mending mend(std::vector<Block>& blocks) const;

  ~Mender();
  Mender(const Mender&) = delete;
  Mender& operator=(const Mender&) = delete;

 private:
  Mender();
  struct Tables;
  std::unique_ptr<const Tables> tables_;
};

/// The block as it stood before it was mended.
Block as_it_stood(const Block& block);
/// Where `span` of the mended text lies in as_it_stood(block).text.
Span span_as_it_stood(const Block& block, Span span);

}  // namespace gallipot
