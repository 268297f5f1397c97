// Reads a shelf list (books.json) and checks it before anything else is done with it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"

namespace gallipot {

/// Reads the shelf list at `path`. Only id, file and title are required of an entry.
/// Faults name the list's file and line: no such file, not JSON (where), no "books", a field missing or of the wrong
/// type (which entry, which field), an id or a file listed twice, an id with characters other than letters, digits,
/// '-', '_' and '.', a date that is not EDTF, a country that is not two letters.
Outcome<std::vector<Book>> read_shelf_list(const std::string& path);

/// The same from text; `name` stands in faults and its folder in `Book::path`.
Outcome<std::vector<Book>> parse_shelf_list(std::string_view json, const std::string& name);

/// The years that an EDTF level 0/1 date allows (year, year-month, year-month-day, "~" and "?" and "%" qualifiers,
/// X for unspecified digits, interval "1830/1835"). Nothing where it is not such a date.
/// Source: Library of Congress, Extended Date/Time Format Specification (2019); "~" is read as five years either side
/// (our reading: the standard lays down none).
std::optional<Years> edtf_years(std::string_view date);

}  // namespace gallipot
