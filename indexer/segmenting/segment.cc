// Cuts a book at the openings that were judged to be titles.
#include "indexer/segmenting/segment.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <unordered_map>

#include "indexer/mending/mend.h"
#include "indexer/segmenting/assemble.h"
#include "indexer/segmenting/chapters.h"
#include "indexer/segmenting/contributor.h"
#include "indexer/segmenting/habit.h"
#include "indexer/segmenting/notes.h"
#include "indexer/segmenting/opening.h"
#include "indexer/segmenting/titles.h"

namespace gallipot {
namespace {

/// The first letter or digit of [from, to): what a page or a line is asked for.
std::uint32_t first_letter(std::string_view t, Span s) {
  for (auto i = s.begin; i < s.end; ++i) {
    const auto c = static_cast<unsigned char>(t[i]);
    if ((c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c >= 0xC3) return i;
  }
  return s.begin;
}

/// "ORANGE CAKE. From Mrs. Clark, of Ohio.": what runs into the title is who gave the receipt.
bool opens_with_giver(const Block& block, const Opening& o) {
  const auto rest = std::string_view(block.text).substr(o.body);
  return rest.size() < 150 && (rest.starts_with("From ") || rest.starts_with("By ") || rest.starts_with("Mrs. ") ||
                               rest.starts_with("Miss ") || rest.starts_with("MRS. ") || rest.starts_with("MISS "));
}

bool mended(const Block& block, Span span) {
  return std::any_of(block.mends.begin(), block.mends.end(),
                     [&](const Mend& m) { return m.span.overlaps(span) && m.read != m.printed; });
}

/// The title's letters as they stand in the copy.
void set_title_as_it_stands(Recipe& r, const Block& block, const Opening& o) {
  const Block copy = as_it_stood(block);
  r.title_printed = clean_title(copy, span_as_it_stood(block, o.printed));
  if (mended(block, o.title)) r.title_stands = clean_title(copy, span_as_it_stood(block, o.title));
}

/// Walks the blocks of one book and cuts.
class Cutter {
 public:
  Cutter(const std::vector<Block>& blocks, const Openings& openings, const Habit& habit, Vocabulary& vocabulary)
      : blocks_(blocks), openings_(openings), habit_(habit), vocabulary_(vocabulary) {}

  std::vector<Recipe> cut() {
    for (std::uint32_t b = 0; b < blocks_.size(); ++b) take(b);
    close();
    return std::move(recipes_);
  }

 private:
  void take(std::uint32_t b) {
    const auto& block = blocks_[b];
    const auto at = openings_.at_block[b];
    if (block.kind == Block::Kind::note) {
      add_note(block);
      return;
    }
    if (openings_.contents[b]) {
      close();
      return;
    }
    if (at < 0 && block.kind == Block::Kind::heading && !block.text.empty()) {  // a number and no words: "No. 560"
      close();
      return;
    }
    if (at >= 0) {
      const auto k = static_cast<std::size_t>(at);
      switch (habit_.roles[k]) {
        case Role::title:
          begin(k);
          return;
        case Role::chapter:
          enter(k);
          return;
        case Role::essay:
          keep(block, Part::Kind::remark);
          essay_ = true;
          return;
        case Role::contributor:
          keep(block, Part::Kind::signature);
          return;
        case Role::subtitle:
          keep(block, Part::Kind::subtitle);
          return;
        case Role::blank:
          close();
          heads_only_ = false;
          return;
        case Role::none:
          number_of(k);
          break;
      }
    }
    if (block.kind == Block::Kind::rule || block.kind == Block::Kind::caption || block.text.empty()) return;
    if (block.right_aligned && block.text.size() < 200) {
      keep(block, saying_ ? Part::Kind::remark : Part::Kind::signature);
      saying_ = false;
      return;
    }
    // A saying set in the middle of the page between two receipts.
    saying_ = at < 0 && block.centred && block.kind == Block::Kind::paragraph && openings_.prose[b].log_odds() < 0 &&
              openings_.prose[b].amounts == 0;
    if (saying_) {
      keep(block, Part::Kind::remark);
      return;
    }
    if (essay_ && at < 0 && block.kind == Block::Kind::paragraph && openings_.prose[b].log_odds() < 0) {
      keep(block, Part::Kind::remark);
      return;
    }
    essay_ = false;
    heads_only_ = false;
    keep(block, part_kind(block));
  }

  /// A footnote goes to the receipt that bears its mark, which may be closed by now; it does not move that one's end.
  void add_note(const Block& block) {
    const auto owner = marks_.owner(block, now_ ? recipes_.size() : NoteMarks::nowhere);
    Recipe* r = owner < recipes_.size() ? &recipes_[owner] : owner == recipes_.size() && now_ ? &*now_ : nullptr;
    if (!r) return;
    const auto page = r->page_end;
    const auto line = r->line_end;
    add_piece(*r, block, 0, static_cast<std::uint32_t>(block.text.size()), Part::Kind::note);
    r->page_end = page;
    r->line_end = line;
  }

  /// Some books number the ingredients rather than the title: "410. INGREDIENTS.--".
  void number_of(std::size_t k) {
    const auto& o = openings_.all[k];
    if (now_ && now_->number.empty() && now_->parts.empty() && o.wording == Wording::part && !o.number.empty())
      now_->number = std::string(o.number.in(blocks_[o.block].text));
  }

  void keep(const Block& block, Part::Kind kind) {
    heads_only_ = false;
    marks_.meet(block, now_ ? recipes_.size() : NoteMarks::nowhere);
    if (now_) add_piece(*now_, block, 0, static_cast<std::uint32_t>(block.text.size()), kind);
  }

  void begin(std::size_t k) {
    const auto& o = openings_.all[k];
    const auto& block = blocks_[o.block];
    close();
    essay_ = heads_only_ = false;
    Recipe& r = now_.emplace();
    marks_.meet(block, recipes_.size());
    Span giver, number;
    const auto named_at = name_in_title(block.text, o.title, vocabulary_, giver);
    r.title = clean_title(block, giver.empty() ? o.title : trim_title(block.text, {o.title.begin, named_at}, number));
    if (!giver.empty()) r.contributor = clean_title(block, giver);
    r.title_printed = clean_title(block, o.printed);
    if (mended(block, o.printed)) set_title_as_it_stands(r, block, o);
    r.number = std::string(o.number.in(block.text));
    r.chapter = chapters_.path();
    r.page = r.page_end = block.page_at(first_letter(block.text, o.printed));
    r.line_start = r.line_end = block.line_at(first_letter(block.text, o.title));
    r.dish_title = r.title;
    if (o.wording == Wording::way && !recipes_.empty()) r.dish_title = recipes_.back().dish_title;
    r.confidence = 1 / (1 + std::exp(-habit_.odds[k]));
    if (r.confidence < 0.7) r.doubt = doubt(k);
    if (o.body < block.text.size())
      add_piece(r, block, o.body, static_cast<std::uint32_t>(block.text.size()),
                opens_with_giver(block, o) ? Part::Kind::signature : Part::Kind::paragraph);
    else
      r.line_end = block.line_end;
  }

  std::string doubt(std::size_t k) const {
    if (habit_.after[k].log_odds() < 0) return "what stands under it hardly reads like directions";
    if (habit_.groups[openings_.all[k].group].weight < 0) return "this book seldom marks receipts in this way";
    return "it hardly reads like the name of a dish";
  }

  void enter(std::size_t k) {
    const auto& o = openings_.all[k];
    const auto& block = blocks_[o.block];
    close();
    chapters_.enter(clean_title(block, o.title), o, block.level, heads_only_);
    heads_only_ = o.standing;
    essay_ = false;
  }

  void close() {
    if (!now_) return;
    now_->ordinal = static_cast<std::uint32_t>(recipes_.size()) + 1;
    recipes_.push_back(std::move(*now_));
    now_.reset();
  }

  const std::vector<Block>& blocks_;
  const Openings& openings_;
  const Habit& habit_;
  Vocabulary& vocabulary_;
  std::vector<Recipe> recipes_;
  std::optional<Recipe> now_;
  Chapters chapters_;
  NoteMarks marks_;
  bool heads_only_ = false;  // nothing but heads since the last of them
  bool essay_ = false;
  bool saying_ = false;  // the block before was one
};

/// A head that stands over nearly every receipt is the book's title, not a chapter.
void drop_book_title(std::vector<Recipe>& recipes) {
  while (!recipes.empty()) {
    std::unordered_map<std::string_view, std::size_t> firsts;
    for (const auto& r : recipes) ++firsts[std::string_view(r.chapter).substr(0, r.chapter.find(" / "))];
    const auto most =
        std::max_element(firsts.begin(), firsts.end(), [](auto& a, auto& b) { return a.second < b.second; });
    const std::string title(most->first);
    if (title.empty() || most->second * 20 < recipes.size() * 19) return;
    bool more = false;
    for (const auto& r : recipes) more = more || (r.chapter.starts_with(title) && r.chapter.size() > title.size());
    if (!more) return;
    for (auto& r : recipes)
      if (r.chapter.starts_with(title)) r.chapter.erase(0, std::min(r.chapter.size(), title.size() + 3));
  }
}

}  // namespace

SegmentedBook segment(const std::vector<Block>& blocks, const Lexicon& lexicon) {
  Vocabulary vocabulary(lexicon);
  const auto openings = find_openings(blocks, vocabulary);
  const auto habit = learn_habit(blocks, openings);
  SegmentedBook book;
  book.recipes = Cutter(blocks, openings, habit, vocabulary).cut();
  drop_book_title(book.recipes);
  book.habit = habit.sentence;
  name_contributors(book.recipes, vocabulary);
  return book;
}

}  // namespace gallipot
