// How is a list of citations told to other programs? CSL-JSON, BibTeX and RIS: the formats that reference managers
// read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/citing/cite.h"

namespace gallipot {

/// CSL-JSON (Citation Style Language 1.0.2, csl-data): an array of "chapter" items, the recipe in its book. Dates go in
/// as date-parts, "circa" for approximate ones, or as a literal where the year is not known whole.
std::string bibliography_as_csl(const std::vector<Citation>& citations);

/// BibTeX: @incollection entries in UTF-8, what TeX would take for its own escaped. The key is the recipe's id with '/'
/// as ':'.
std::string bibliography_as_bibtex(const std::vector<Citation>& citations);

/// RIS: TY CHAP records with CRLF line ends.
std::string bibliography_as_ris(const std::vector<Citation>& citations);

/// The books cited, each once, as entries of a printed bibliography in order of their authors' names:
/// "Oldacre, Temperance. The Orchard House Receipts. Philadelphia: Pennyfeather and Graves, 1838."
std::vector<std::string> printed_bibliography(const std::vector<Citation>& citations);

/// A name as bibliographies part it. Bodies, pen-names and bare initials ("A Lady", "Mrs. M. P.") are one literal.
struct PartedName {
  std::string family, given;
  std::string literal;
};
/// The names of "Hannah Plain and Mary Short; The Ladies of the Chapel".
std::vector<PartedName> parted_names(std::string_view creators);

/// The year of an EDTF date where it is told whole, and whether it is about then.
struct PlainYear {
  int first = 0, last = 0;
  bool about = false;
};
std::optional<PlainYear> plain_year(const std::string& edtf);

}  // namespace gallipot
