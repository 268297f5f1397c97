// A stretch of a block as the grammar of statements sees it: its words, and the amounts that stand in it.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "indexer/mining/sizes.h"
#include "indexer/parsing/row.h"
#include "indexer/text/range.h"

namespace gallipot::mining {

/// An amount that may be one side of a statement.
struct Term {
  parsing::Extent at;  ///< its words: number, bending words, measure
  Range quantity{1, 1};
  std::string measure;    ///< canonical measure, or the name of a counted stuff
  std::string of;         ///< of which stuff; empty where none follows
  std::uint32_t end = 0;  ///< the word after it and its stuff
  int vagueness = 0;
  bool bare = false;     ///< a measure without a number ("wine-glasses usually hold"); quantity is 1
  bool counted = false;  ///< so many of a thing ("ten eggs")
  bool one = false;      ///< the print says "a", "one" or nothing: a single one
  Range holds;           ///< of a vessel named by what it holds ("a half-pint mug"): so many `holds_in`
  std::string holds_in;  ///< empty where it is not named so
};

/// Owns its text; neither copied nor moved, for the row looks into it.
class Passage {
 public:
  /// `text`: one line of words; cells are parted by spaces.
  Passage(std::string text, Sizes& sizes);
  Passage(const Passage&) = delete;
  Passage& operator=(const Passage&) = delete;

  const parsing::Row& row() const { return row_; }
  const std::vector<Term>& terms() const { return terms_; }
  const std::string& text() const { return recipe_.text; }
  std::uint32_t cues(std::uint32_t word) const { return word < cues_.size() ? cues_[word] : 0; }
  /// Canonical name of the stuff that stands between two words; empty where none does.
  std::string stuff_between(std::uint32_t begin, std::uint32_t end) const;

 private:
  void find_terms(Sizes& sizes);
  void add_amounts(Sizes& sizes);
  void add_bare(const Sizes& sizes);
  void read_vessel(const Sizes& sizes, Term& term) const;
  bool read_number_before(const Sizes& sizes, Term& term) const;
  bool in_likeness(std::uint32_t word) const;
  void join_compounds();
  std::uint32_t stuff_begin(const Term& term) const;
  void name_stuffs();

  Recipe recipe_;
  Words words_;
  parsing::Row row_;
  std::vector<std::uint32_t> cues_;
  std::vector<Term> terms_;
};

}  // namespace gallipot::mining
