// What has the cook put right? A correction of one reading or one cut, tied to the place in print where it holds, so
// that it outlives every index: the book, the line of the file on which its words begin, and the printed words
// themselves.
//
// The file (JSON) lies beside the index folder, "shelf.corrections.json" for "shelf":
//   {"gallipot":"corrections","version":1,"corrections":[
//     {"number":3,                                  its name; never given twice
//      "kind":"amount",                             see Correction::Kind
//      "book":"oldacre-1838","line":344,"printed":"30 ounces of ginger",    where it holds
//      "quantity":[3,3],"measure":"ounce",          amount: what the print says; quantity null: it names none
//      "name":"ginger","stuff":"spice",             ingredient: the name it goes by; empty: it is no ingredient
//      "title":"Plum Catsup",                       title, begins: the title
//      "was":"30 ounce","note":"a slip of the transcription","corrected":"2026-11-25"}]}
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/text/range.h"

namespace gallipot {

struct Correction {
  enum class Kind : unsigned char {
    amount,      ///< the words ask for another amount
    ingredient,  ///< the words name another stuff, or none; or one that was missed
    title,       ///< the recipe whose title stands there has another
    no_recipe,   ///< what was cut there as a recipe is none; it is dropped
    joined,      ///< what was cut there as a recipe belongs to the one before
    begins,      ///< a recipe begins with these words, which are its title
    ends,        ///< the recipe ends with these words
  };
  unsigned number = 0;
  Kind kind = Kind::amount;
  std::string book;
  std::uint32_t line = 0;  ///< 1-based raw line of the file
  std::string printed;     ///< white space folded
  std::optional<Range> quantity;
  std::string measure;  ///< modern singular; empty for a plain count
  std::string name, stuff;
  std::string title;
  std::string was, note, corrected;

  /// Whether it is applied when a book is cut, and not when it is read.
  bool of_cut() const { return kind != Kind::amount && kind != Kind::ingredient; }
};

/// "amount", "ingredient", "title", "no recipe", "joined", "begins", "ends".
const char* kind_name(Correction::Kind kind);
std::optional<Correction::Kind> kind_named(std::string_view name);

/// What it puts right, in one sentence: "\"30 ounces of ginger\" is 3 ounce, not 30 ounce."
std::string correction_sentence(const Correction& correction);

/// Corrections by book. Immutable once read.
class Corrections {
 public:
  Corrections() = default;
  explicit Corrections(std::vector<Correction> all);

  const std::vector<Correction>& all() const { return all_; }
  bool empty() const { return all_.empty(); }
  /// Those of a book, by line; none where it has none.
  const std::vector<const Correction*>& of(std::string_view book) const;

  Corrections(const Corrections&) = delete;
  Corrections& operator=(const Corrections&) = delete;
  Corrections(Corrections&&) = default;  // the vector's items stay where they are
  Corrections& operator=(Corrections&&) = default;

 private:
  std::vector<Correction> all_;
  std::map<std::string, std::vector<const Correction*>, std::less<>> by_book_;
};

/// "shelf" -> "shelf.corrections.json", beside the index folder.
std::string corrections_beside(const std::string& index_folder);

/// All corrections in the file; none where there is no such file. Faults: not JSON, one that cannot be read (with the
/// line), a version that a later program wrote. The file is left as it is.
Outcome<Corrections> read_corrections(const std::string& path);

/// Puts a correction in the file, in the place of one of the same kind at the same place, and answers it with its
/// number. On disk when it returns; two writers come one after the other. Faults: as read_corrections, and then the
/// file is left as it is; one without a book, line or printed words; it cannot be written.
Outcome<Correction> record_correction(const std::string& path, Correction correction);

/// Takes a correction back. Answers it. Faults: as record_correction; no such number.
Outcome<Correction> withdraw_correction(const std::string& path, unsigned number);

}  // namespace gallipot
