// TEI P5: the elements of its Guidelines that books of receipts are encoded with. What an editor read otherwise than
// the print has it (corr, reg, expan, supplied) is set as read, and the print's words are kept beside it.
#include "indexer/reading/tei.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "indexer/reading/composer.h"
#include "indexer/reading/draft.h"
#include "indexer/reading/page_marks.h"
#include "indexer/text/xml.h"

namespace gallipot {
namespace {

/// A note's mark so that it does not run into the word before it.
std::string bracketed(std::string_view mark) {
  return mark.starts_with('[') || mark.starts_with('(') ? std::string(mark) : "[" + std::string(mark) + "]";
}

class TeiReader {
 public:
  TeiReader(const XmlTree& tree, Draft& draft) : tree_(tree), draft_(draft), composer_(draft) {}

  void read(pugi::xml_node text) {
    children(text);
    end_block();
  }

 private:
  void children(pugi::xml_node node) {
    for (const pugi::xml_node child : node.children()) visit(child);
  }
  void visit(pugi::xml_node node);
  void element(pugi::xml_node node, const TeiElement& e);
  void block(pugi::xml_node node, const TeiElement& e);
  void inline_run(pugi::xml_node node, const TeiElement& e);
  void page(pugi::xml_node node);
  void choice(pugi::xml_node node);
  void reading(pugi::xml_node node, std::string printed, bool unsure);
  void note(pugi::xml_node node);
  void row(pugi::xml_node node);
  void text(std::string_view words, std::uint32_t line);
  void begin(Block::Kind kind, std::string_view style);
  void end_block();

  const XmlTree& tree_;
  Draft& draft_;
  Composer composer_;
  int divisions_ = 0, lists_ = 0;
  Block::Kind kind_ = Block::Kind::paragraph;  ///< of text that stands in no block of its own
  std::vector<pugi::xml_node> notes_;          ///< met in the open block, to follow it
};

void TeiReader::begin(Block::Kind kind, std::string_view style) {
  end_block();
  Block& b = composer_.begin(kind);
  b.style = style;
  b.level = kind == Block::Kind::heading ? std::clamp(divisions_ + 1, 1, 6) : lists_;
}

/// Ends the open block; the notes that hang on it follow.
void TeiReader::end_block() {
  composer_.end();
  std::vector<pugi::xml_node> notes;
  notes.swap(notes_);
  for (const pugi::xml_node node : notes) {
    Block& b = composer_.begin(Block::Kind::note);
    b.style = "note";
    b.anchor = xml_attribute(node, "id");
    if (const auto mark = xml_attribute(node, "n"); !mark.empty()) {
      std::uint32_t line = tree_.line_of(node);
      const int run = composer_.begin_run(Run::note_mark, "n");
      composer_.put(bracketed(mark), line);
      composer_.end_run(run);
      composer_.put(" ", line);
    }
    const auto outer = std::exchange(kind_, Block::Kind::note);
    children(node);
    kind_ = outer;
    composer_.end();
  }
}

void TeiReader::text(std::string_view words, std::uint32_t line) {
  const bool blank =
      std::all_of(words.begin(), words.end(), [](char c) { return static_cast<unsigned char>(c) <= ' '; });
  if (!composer_.open()) {
    if (blank) return;
    composer_.begin(kind_).style = "text";
  }
  composer_.put(words, line);
}

void TeiReader::page(pugi::xml_node node) {
  const auto n = xml_attribute(node, "n");
  const std::string label = page_label(n);
  const auto image = xml_attribute(node, "facs");
  if (!label.empty()) composer_.page_mark(label, tree_.line_of(node), true);
  if (!label.empty() && !image.empty()) draft_.images.emplace_back(label, image);
}

/// The words inside `node` are set as read; in the copy stands `printed`, or the same where they are unsure.
void TeiReader::reading(pugi::xml_node node, std::string printed, bool unsure) {
  if (!composer_.open()) composer_.begin(kind_).style = "text";
  const int mend = composer_.begin_mend(std::move(printed));
  children(node);
  composer_.end_mend(mend, unsure);
}

/// choice: of the witnesses to one place the editor's is set (corr before sic, reg before orig, expan before abbr).
void TeiReader::choice(pugi::xml_node node) {
  static constexpr std::array<std::array<std::string_view, 2>, 3> pairs = {
      {{"corr", "sic"}, {"reg", "orig"}, {"expan", "abbr"}}};
  for (const auto& [read, printed] : pairs) {
    pugi::xml_node first, second;
    for (const pugi::xml_node child : node.children()) {
      if (!first && xml_name(child) == read) first = child;
      if (!second && xml_name(child) == printed) second = child;
    }
    if (!first) continue;
    if (second)
      reading(first, xml_text(second), false);
    else
      children(first);
    return;
  }
  for (const pugi::xml_node child : node.children())
    if (child.type() == pugi::node_element) {
      visit(child);
      return;
    }
}

void TeiReader::note(pugi::xml_node node) {
  const auto place = xml_attribute(node, "place");
  std::uint32_t line = tree_.line_of(node);
  if (place == "margin" || place == "left" || place == "right") {
    const int run = composer_.open() ? composer_.begin_run(Run::sidenote, "note") : -1;
    text(" ", line);
    children(node);
    composer_.put(" ", line);
    composer_.end_run(run);
    return;
  }
  if (const auto mark = xml_attribute(node, "n"); composer_.has_text() && !mark.empty()) {
    const int run = composer_.begin_run(Run::note_mark, "n");
    composer_.put(bracketed(mark), line);
    composer_.end_run(run);
  }
  notes_.push_back(node);
  if (!composer_.open()) end_block();
}

/// A table's row is one block, its cells parted.
void TeiReader::row(pugi::xml_node node) {
  begin(Block::Kind::table_row, "row");
  for (const pugi::xml_node cell : node.children()) {
    if (xml_name(cell) != "cell") continue;
    const auto before = static_cast<std::uint32_t>(composer_.current().text.size());
    composer_.cell_break();
    children(cell);
    if (!composer_.open()) return;  // the cell held blocks of its own
    const auto after = static_cast<std::uint32_t>(composer_.current().text.size());
    composer_.current().cells.push_back({before == 0 || after == before ? before : before + 3, after});
  }
  end_block();
}

void TeiReader::inline_run(pugi::xml_node node, const TeiElement& e) {
  const auto style = static_cast<std::uint16_t>(e.style | tei_rendition(xml_attribute(node, "rend")) |
                                                tei_rendition(xml_attribute(node, "rendition")));
  if (!composer_.open() || (style == 0 && !e.named)) {
    children(node);
    return;
  }
  const int run = composer_.begin_run(style, std::string(xml_name(node)));
  children(node);
  composer_.end_run(run);
}

void TeiReader::block(pugi::xml_node node, const TeiElement& e) {
  const auto rend = tei_rendition(xml_attribute(node, "rend"));
  // A paragraph inside an item or a note is a piece of it.
  const bool inner =
      e.kind == Block::Kind::paragraph && (kind_ == Block::Kind::list_item || kind_ == Block::Kind::note);
  begin(inner ? kind_ : e.kind, xml_name(node));
  Block& b = composer_.current();
  b.anchor = xml_attribute(node, "id");
  b.centred = e.centred || (rend & tei_centred) != 0;
  b.right_aligned = e.right || (rend & tei_right) != 0;
  const auto style = static_cast<std::uint16_t>(rend & ~(tei_centred | tei_right));
  const int run = style != 0 ? composer_.begin_run(style, std::string(xml_name(node))) : -1;
  const auto outer = std::exchange(kind_, inner || e.kind == Block::Kind::heading ? kind_ : e.kind);
  children(node);
  composer_.end_run(run);
  kind_ = outer;
  end_block();
}

void TeiReader::element(pugi::xml_node node, const TeiElement& e) {
  switch (e.part) {
    case TeiElement::Part::skipped:
      return;
    case TeiElement::Part::division:
    case TeiElement::Part::list:
      end_block();
      ++(e.part == TeiElement::Part::list ? lists_ : divisions_);
      children(node);
      --(e.part == TeiElement::Part::list ? lists_ : divisions_);
      end_block();
      return;
    case TeiElement::Part::container:
      end_block();
      children(node);
      end_block();
      return;
    case TeiElement::Part::block:
      block(node, e);
      return;
    case TeiElement::Part::line:  // l: a line of verse
      if (!composer_.open()) begin(Block::Kind::verse, "l");
      composer_.hard_break();
      children(node);
      composer_.hard_break();
      return;
    case TeiElement::Part::row:
      row(node);
      return;
    case TeiElement::Part::run:
      inline_run(node, e);
      return;
    case TeiElement::Part::page:
      page(node);
      return;
    case TeiElement::Part::forme: {  // fw: running heads, catchwords, signatures; only a page number tells anything
      const auto type = xml_attribute(node, "type");
      const std::string label = type.starts_with("pageNum") ? page_label(xml_text(node)) : std::string();
      if (!label.empty()) composer_.page_mark(label, tree_.line_of(node), true);
      return;
    }
    case TeiElement::Part::note:
      note(node);
      return;
    case TeiElement::Part::choice:
      choice(node);
      return;
    case TeiElement::Part::supplied:
      reading(node, "[" + xml_text(node) + "]", false);
      return;
    case TeiElement::Part::unclear:
      reading(node, {}, true);
      return;
    case TeiElement::Part::gap: {
      std::uint32_t line = tree_.line_of(node);
      if (!composer_.open()) return;
      const int mend = composer_.begin_mend({});
      composer_.put("[...]", line);
      composer_.end_mend(mend, true);
      return;
    }
    case TeiElement::Part::line_begin: {
      std::uint32_t line = tree_.line_of(node);
      if (composer_.open() && xml_attribute(node, "break") != "no") composer_.put(" ", line);
      return;
    }
  }
}

void TeiReader::visit(pugi::xml_node node) {
  if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata)
    text(node.value(), tree_.line_of(node));
  else if (node.type() == pugi::node_element)
    element(node, tei_element(xml_name(node)));
}

}  // namespace

Outcome<Draft> draft_tei(std::string_view source) {
  const auto tree = XmlTree::parse(source);
  if (!tree) return tl::unexpected(tree.error());
  Draft draft;
  propose_from_tei(xml_first(tree->root(), "teiHeader"), draft.proposals);
  pugi::xml_node text;
  for (const pugi::xml_node child : tree->root().children())
    if (!text && xml_name(child) == "text") text = child;
  if (!text) text = xml_first(tree->root(), "text");
  if (!text) return fault("this TEI has no <text>", "ask for the file with the book's text, not only its header");
  TeiReader(*tree, draft).read(text);
  return draft;
}

}  // namespace gallipot
