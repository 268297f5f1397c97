// What the elements of TEI P5 mean to a reader of receipts. Internal to the room.
// Source: TEI Consortium, TEI P5: Guidelines for Electronic Text Encoding and Interchange, the element definitions of
// the modules core, textstructure, header, transcr, figures and linking.
#pragma once

#include <cstdint>
#include <pugixml.hpp>
#include <string_view>
#include <vector>

#include "indexer/reading/block.h"
#include "indexer/reading/proposal.h"

namespace gallipot {

struct TeiElement {
  enum class Part : unsigned char {
    run,        ///< a stretch of the text; unknown elements are taken for one
    block,      ///< begins and ends a block of text
    container,  ///< holds blocks
    division,   ///< holds blocks and makes headings lower
    list,       ///< holds items
    line,       ///< of verse
    row,        ///< of a table
    skipped,    ///< no print of the book's text
    page,       ///< pb
    forme,      ///< fw
    note,
    choice,
    supplied,
    unclear,
    gap,
    line_begin,  ///< lb, cb
  };
  std::string_view name;
  Part part = Part::run;
  Block::Kind kind = Block::Kind::paragraph;
  std::uint16_t style = 0;  ///< Run::Style bits that the element has by itself
  bool named = false;       ///< its run is kept by name even where it looks like the rest
  bool centred = false;
  bool right = false;
};

/// The element of that name without prefix; an unknown one is a run.
const TeiElement& tei_element(std::string_view name);

/// Run::Style bits, and these two, that a rend or rendition attribute speaks for: "italic", "#smallcaps center".
inline constexpr std::uint16_t tei_centred = 1u << 14;
inline constexpr std::uint16_t tei_right = 1u << 15;
std::uint16_t tei_rendition(std::string_view rend);

/// Title, author, publisher, place, date, language and identifier as a teiHeader has them: those of the source
/// described (sourceDesc) before those of the electronic text.
void propose_from_tei(pugi::xml_node header, std::vector<Proposal>& proposals);

}  // namespace gallipot
