// What the cook has decided of a measure, once and for all: "the small teacup of this book is 90 ml, measured against
// the museum's cup". Kept in a file of the cook's own that outlives every index.
//
// The file (JSON):
//   {"gallipot":"decisions","version":2,"decisions":[
//     {"measure":"teacup","size":"small","of":null,       what is decided: for ONE of the measure; "size" is a word
//     that
//                                                         bends it, "of" the stuff; null for any
//      "value":{"unit":"ml","low":90,"likely":90,"high":90},
//      "book":"oldacre-1838",                             where it holds: in a book, or
//      "country":"GB","from":1830,"to":1860,              in a country and years of printing, or, all null, everywhere
//      "note":"measured against the museum's cup","decided":"2026-11-25"}]}
// Version 1 told a value as one figure ("amount":90,"unit":"ml") and knew no stuff; such a file is read as it is and
// written anew as version 2 with the next decision.
#pragma once

#include <string>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/measures/amount.h"

namespace gallipot {

struct Decision {
  std::string measure;  ///< modern singular; empty for a counted thing
  std::string size;     ///< "small", "heaped"; empty for the measure as it is
  std::string of;       ///< canonical stuff; empty for any
  Amount::Unit unit = Amount::Unit::millilitre;
  double low = 0, likely = 0, high = 0;  ///< for one
  std::string book;                      ///< id; empty for any
  std::string country;                   ///< ISO 3166; empty for any
  int from = 0, to = 0;                  ///< years of printing; 0 without limit
  std::string note;                      ///< the cook's own words
  std::string decided;                   ///< ISO 8601 date

  bool everywhere() const { return book.empty() && country.empty() && from == 0 && to == 0; }
};

/// Whether both decide the same thing in the same place, so that the later one takes the place of the earlier.
bool same_question(const Decision& a, const Decision& b);

/// "shelf" -> "shelf.decisions.json", beside the index folder.
std::string decisions_beside(const std::string& index_folder);

/// All decisions in the file, in the order in which they were made; none where there is no such file. Faults: not
/// JSON, or a decision that cannot be read (with the line), or a newer version. The file is left as it is.
Outcome<std::vector<Decision>> read_decisions(const std::string& path);

/// Puts the decision in the file, in the place of one on the same question; makes the file where there is none. On
/// disk when it returns; two writers come one after the other. Faults: as read_decisions, and then the file is left as
/// it is; it cannot be written.
Outcome<bool> record_decision(const std::string& path, const Decision& decision);

/// Drops the decision on that question. Answers whether there was one. Faults: as record_decision.
Outcome<bool> forget_decision(const std::string& path, const Decision& question);

}  // namespace gallipot
