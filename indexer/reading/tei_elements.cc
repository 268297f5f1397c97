// The table of TEI elements, and what a header tells of the book.
#include <algorithm>
#include <array>

#include "indexer/reading/tei.h"
#include "indexer/text/xml.h"

namespace gallipot {
namespace {

using Part = TeiElement::Part;
using Kind = Block::Kind;

constexpr TeiElement named_run(std::string_view name) { return {name, Part::run, Kind::paragraph, 0, true}; }
constexpr TeiElement of_part(std::string_view name, Part part) { return {name, part}; }
constexpr TeiElement block(std::string_view name, Kind kind, bool centred = false, bool right = false) {
  return {name, Part::block, kind, 0, false, centred, right};
}

constexpr std::array<TeiElement, 78> elements = {{
    // Divisions and what holds blocks.
    of_part("text", Part::container),
    of_part("front", Part::container),
    of_part("body", Part::container),
    of_part("back", Part::container),
    of_part("group", Part::container),
    of_part("div", Part::division),
    of_part("div1", Part::division),
    of_part("div2", Part::division),
    of_part("div3", Part::division),
    of_part("div4", Part::division),
    of_part("div5", Part::division),
    of_part("div6", Part::division),
    of_part("div7", Part::division),
    of_part("titlePage", Part::container),
    of_part("floatingText", Part::container),
    of_part("argument", Part::container),
    of_part("epigraph", Part::container),
    of_part("lg", Part::container),
    of_part("table", Part::container),
    of_part("figure", Part::container),
    of_part("opener", Part::container),
    of_part("closer", Part::container),
    of_part("postscript", Part::container),
    of_part("list", Part::list),
    of_part("listBibl", Part::list),
    of_part("cit", Part::container),
    // Blocks.
    block("head", Kind::heading),
    block("p", Kind::paragraph),
    block("ab", Kind::paragraph),
    block("item", Kind::list_item),
    block("label", Kind::paragraph),
    block("figDesc", Kind::caption),
    block("docTitle", Kind::paragraph, true),
    block("titlePart", Kind::paragraph, true),
    block("docAuthor", Kind::paragraph, true),
    block("docImprint", Kind::paragraph, true),
    block("docEdition", Kind::paragraph, true),
    block("imprimatur", Kind::paragraph, true),
    block("byline", Kind::paragraph, false, true),
    block("signed", Kind::paragraph, false, true),
    block("dateline", Kind::paragraph, false, true),
    block("salute", Kind::paragraph),
    block("trailer", Kind::paragraph, true),
    block("bibl", Kind::paragraph),
    block("sp", Kind::paragraph),
    of_part("row", Part::row),
    of_part("l", Part::line),
    // Inside the text.
    {"emph", Part::run, Kind::paragraph, Run::italic},
    {"foreign", Part::run, Kind::paragraph, Run::italic},
    {"title", Part::run, Kind::paragraph, Run::italic},
    named_run("hi"),
    named_run("measure"),
    named_run("num"),
    named_run("ingredient"),
    {"ref", Part::run, Kind::paragraph, Run::link, true},
    of_part("pb", Part::page),
    of_part("fw", Part::forme),
    of_part("lb", Part::line_begin),
    of_part("cb", Part::line_begin),
    of_part("note", Part::note),
    of_part("choice", Part::choice),
    of_part("supplied", Part::supplied),
    of_part("unclear", Part::unclear),
    of_part("gap", Part::gap),
    // No print of the book's text.
    of_part("teiHeader", Part::skipped),
    of_part("facsimile", Part::skipped),
    of_part("sourceDoc", Part::skipped),
    of_part("standOff", Part::skipped),
    of_part("del", Part::skipped),
    of_part("surplus", Part::skipped),
    of_part("graphic", Part::skipped),
    of_part("binaryObject", Part::skipped),
    of_part("media", Part::skipped),
    of_part("interp", Part::skipped),
    of_part("index", Part::skipped),
    of_part("certainty", Part::skipped),
    of_part("desc", Part::skipped),
    of_part("formula", Part::run),
}};

void propose(std::vector<Proposal>& to, std::string_view field, std::string value) {
  const bool there = std::any_of(to.begin(), to.end(), [&](const Proposal& p) { return p.field == field; });
  if (!value.empty() && !there) to.push_back({std::string(field), std::move(value), "TEI header"});
}

std::string dated(pugi::xml_node date) {
  for (const std::string_view name : {"when", "notBefore", "from"})
    if (const auto value = xml_attribute(date, name); !value.empty()) return std::string(value);
  return xml_text(date);
}

}  // namespace

const TeiElement& tei_element(std::string_view name) {
  static constexpr TeiElement unknown;
  const auto found =
      std::find_if(elements.begin(), elements.end(), [&](const TeiElement& e) { return e.name == name; });
  return found == elements.end() ? unknown : *found;
}

std::uint16_t tei_rendition(std::string_view rend) {
  std::string small;
  for (const char c : rend)
    if (c != '-' && c != '_') small += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
  std::uint16_t out = 0;
  const auto has = [&](std::string_view word) { return small.find(word) != std::string::npos; };
  const auto add = [&](unsigned bit) { out = static_cast<std::uint16_t>(out | bit); };
  if (has("ital")) add(Run::italic);
  if (has("bold")) add(Run::bold);
  if (has("smallcap") || has("smcap") || small == "sc") add(Run::small_caps);
  if (has("sup")) add(Run::superscript);
  if (has("underl")) add(Run::underline);
  if (has("large")) add(Run::large);
  if (has("center") || has("centre")) add(tei_centred);
  if (has("right")) add(tei_right);
  return out;
}

void propose_from_tei(pugi::xml_node header, std::vector<Proposal>& proposals) {
  if (!header) return;
  const pugi::xml_node file = xml_first(header, "fileDesc");
  const pugi::xml_node source = xml_first(header, "sourceDesc");
  for (const pugi::xml_node from : {source, xml_first(file, "titleStmt"), xml_first(file, "publicationStmt")}) {
    if (!from) continue;
    propose(proposals, "title", xml_text(xml_first(from, "title")));
    propose(proposals, "creator", xml_text(xml_first(from, "author")));
    propose(proposals, "edition", xml_text(xml_first(from, "edition")));
    propose(proposals, "publisher", xml_text(xml_first(from, "publisher")));
    propose(proposals, "place", xml_text(xml_first(from, "pubPlace")));
    propose(proposals, "date", dated(xml_first(from, "date")));
    propose(proposals, "identifier", xml_text(xml_first(from, "idno")));
  }
  propose(proposals, "language", std::string(xml_attribute(xml_first(header, "language"), "ident")));
}

}  // namespace gallipot
