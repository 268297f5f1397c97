// How is a printed title taken apart? Its number, its points, its words; and how much it reads like the name of a dish.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/reading/block.h"
#include "indexer/segmenting/vocabulary.h"
#include "indexer/text/span.h"

namespace gallipot {

/// A number at the head of a title: "12.", "No. 12.", "(12)", "XII."; `end` is where the title's words begin.
struct LeadingNumber {
  Span number;  ///< empty where there is none
  std::uint32_t end = 0;
  bool labelled = false;  ///< "No. 12" rather than "12."
};

/// Reads past spaces, stars and quotation marks, then a number if there is one.
LeadingNumber leading_number(std::string_view text, std::uint32_t from);

/// The first byte at or after `from` that is no space, star, cross, quotation mark or dash.
std::uint32_t skip_ornament(std::string_view text, std::uint32_t from);

/// `span` without ornaments before and points after its words; a number in brackets at its end is cut off into
/// `number`.
Span trim_title(std::string_view text, Span span, Span& number);

/// Where the first piece of [from, limit) ends that a full stop, colon or dash closes, outside brackets and not after a
/// common abbreviation. The points are not part of it. `limit` where nothing closes it.
std::uint32_t piece_end(std::string_view text, std::uint32_t from, std::uint32_t limit);

/// The first byte after the points and dashes at `from`.
std::uint32_t skip_points(std::string_view text, std::uint32_t from);

/// Title text as it is kept: one line, white space folded, marks of footnotes left out.
std::string clean_title(const Block& block, Span span);

/// Every word but the small ones has a capital, and there are at most ten: "Apple Pie with Cream".
bool is_title_case(std::string_view title);

/// Two to four words with capitals, one of them a Christian name or an initial: "Mary A. Clark".
bool is_bare_name(std::string_view text, Vocabulary& vocabulary);

/// Where a name in a title begins, with the dash or bracket before it: "ORANGE CAKE.--MRS. CLARK", "Orange Cake (Miss
/// Clark)"; the title's end where it holds none. `name` is then the name.
std::uint32_t name_in_title(std::string_view text, Span title, Vocabulary& vocabulary, Span& name);

/// 0..1: how much words [span) read like the name of a dish or a task of the house.
double title_look(std::string_view title, Vocabulary& vocabulary, std::uint32_t& words, bool& name);

}  // namespace gallipot
