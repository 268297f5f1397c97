// Cuts a book at the openings that were judged to be titles.
#include "indexer/segmenting/segment.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "indexer/segmenting/assemble.h"
#include "indexer/segmenting/chapters.h"
#include "indexer/segmenting/contributor.h"
#include "indexer/segmenting/habit.h"
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

/// Walks the blocks of one book and cuts.
class Cutter {
 public:
  Cutter(const std::vector<Block>& blocks, const Openings& openings, const Habit& habit)
      : blocks_(blocks), openings_(openings), habit_(habit) {}

  std::vector<Recipe> cut() {
    for (std::uint32_t b = 0; b < blocks_.size(); ++b) take(b);
    close();
    return std::move(recipes_);
  }

 private:
  void take(std::uint32_t b) {
    const auto& block = blocks_[b];
    const auto at = openings_.at_block[b];
    if (openings_.contents[b]) {
      close();
      return;
    }
    if (at >= 0) {
      const auto k = static_cast<std::size_t>(at);
      switch (habit_.roles[k]) {
        case Role::title: begin(k); return;
        case Role::chapter: enter(k); return;
        case Role::essay: keep(block, Part::Kind::remark); essay_ = true; return;
        case Role::contributor: keep(block, Part::Kind::signature); return;
        case Role::subtitle: keep(block, Part::Kind::subtitle); return;
        case Role::none: break;
      }
    }
    if (block.kind == Block::Kind::rule || block.kind == Block::Kind::caption || block.text.empty()) return;
    if (block.right_aligned && block.text.size() < 200) {
      keep(block, Part::Kind::signature);
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

  void keep(const Block& block, Part::Kind kind) {
    heads_only_ = false;
    if (now_) add_piece(*now_, block, 0, static_cast<std::uint32_t>(block.text.size()), kind);
  }

  void begin(std::size_t k) {
    const auto& o = openings_.all[k];
    const auto& block = blocks_[o.block];
    close();
    essay_ = heads_only_ = false;
    Recipe& r = now_.emplace();
    r.title = clean_title(block, o.title);
    r.title_printed = clean_title(block, o.printed);
    r.number = std::string(o.number.in(block.text));
    r.chapter = chapters_.path();
    r.page = r.page_end = block.page_at(first_letter(block.text, o.printed));
    r.line_start = r.line_end = block.line_at(first_letter(block.text, o.title));
    r.dish_title = r.title;
    if (o.wording == Wording::way && !recipes_.empty()) r.dish_title = recipes_.back().dish_title;
    r.confidence = 1 / (1 + std::exp(-habit_.odds[k]));
    if (r.confidence < 0.7) r.doubt = doubt(k);
    if (o.body < block.text.size())
      add_piece(r, block, o.body, static_cast<std::uint32_t>(block.text.size()), opens_with_giver(block, o) ? Part::Kind::signature : Part::Kind::paragraph);
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
  std::vector<Recipe> recipes_;
  std::optional<Recipe> now_;
  Chapters chapters_;
  bool heads_only_ = false;
  bool essay_ = false;
};

}  // namespace

SegmentedBook segment(const std::vector<Block>& blocks, const Lexicon& lexicon) {
  Vocabulary vocabulary(lexicon);
  const auto openings = find_openings(blocks, vocabulary);
  const auto habit = learn_habit(blocks, openings);
  SegmentedBook book;
  book.recipes = Cutter(blocks, openings, habit).cut();
  book.habit = habit.sentence;
  name_contributors(book.recipes, vocabulary);
  return book;
}

}  // namespace gallipot
