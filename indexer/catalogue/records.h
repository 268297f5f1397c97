// Library records as entries of a shelf list: MARCXML and Dublin Core in XML, as catalogues give them out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"

namespace gallipot {

/// The books that records describe. Ids are made of the creator's surname and the year ("hartley-1744"), with a letter
/// where two would be the same; `file` is the id with ".txt", for the person to put right. A record without a title is
/// left out. Faults: not XML (line), no record in it.
/// Source: Library of Congress, MARC 21 Format for Bibliographic Data (008, 020, 041, 100, 110, 245, 250, 260, 264,
/// 700, 856) and its MARCXML schema; DCMI Metadata Terms in the simple Dublin Core XML of OAI-PMH.
Outcome<std::vector<Book>> parse_records(std::string_view xml, const std::string& name);

/// A shelf list (books.json) of these books: only the fields that are known.
std::string shelf_list_text(const std::vector<Book>& books);

/// `books` behind those of `shelf`; one whose identifier or whose title and date the shelf has already is left out, and
/// an id that is taken gets a letter.
std::vector<Book> with_records(std::vector<Book> shelf, const std::vector<Book>& books);

}  // namespace gallipot
