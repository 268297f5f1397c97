// How does a transcription say where a printed page begins? Internal to the room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/reading/draft.h"

namespace gallipot {

/// A page number as printed: arabic with at most four digits ("12", "12a") or roman ("xiv"); empty where `text`,
/// stripped of brackets, braces, dashes and a leading "Pg", "Page" or "p.", is none.
std::string page_label(std::string_view text);

/// The label in an anchor's id ("Page_12", "page12", "pg-xii", "p12"); empty where it is none. `sure` is false where
/// the id could name something else as well ("p12").
std::string page_label_of_id(std::string_view id, bool& sure);

/// True for a class name under which transcriptions print page numbers: "pagenum", "page-no", "folio".
bool is_page_class(std::string_view name);

/// Numeric value of a label: arabic as it is, roman -> its value; 0 where it is none.
int page_value(std::string_view label, bool& roman);

/// Finds the page marks that stand in the text itself ("[Pg 12]", "[12]", "{12}", a number alone on a line) where
/// they run in order, adds them to `draft.marks` in the order of the text and takes them out of the text.
void find_printed_marks(Draft& draft);

/// Sets Block::page and Block::pages from the marks and reports pages that run backwards. Returns the number of
/// pages that begin; marks that repeat the page before them do not count.
std::size_t set_pages(Draft& draft, const std::string& name, std::vector<Fault>& doubts);

}  // namespace gallipot
