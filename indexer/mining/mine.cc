// Walks the blocks of a book, tells tables of measures from the rest, and hands stretches of text to the readers.
#include "indexer/mining/mine.h"

#include <algorithm>
#include <utility>

#include "indexer/mining/equalities.h"
#include "indexer/mining/heats.h"
#include "indexer/mining/passage.h"
#include "indexer/mining/scout.h"
#include "indexer/mining/sizes.h"
#include "indexer/mining/tabular.h"
#include "indexer/mining/vessels.h"

namespace gallipot {
namespace {

using namespace mining;

constexpr std::size_t longest_quote = 240;

/// White space folded, points that a cut left at the ends taken off.
std::string folded(std::string_view words) {
  std::string out;
  for (const char c : words) {
    const bool space = c == ' ' || c == '\n';
    if (!space || (!out.empty() && out.back() != ' ')) out += space ? ' ' : c;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  if (out.size() > longest_quote) {
    auto cut = out.rfind(' ', longest_quote);
    out.resize(cut == std::string::npos ? longest_quote : cut);
  }
  return out;
}

class Walk {
 public:
  Walk(const std::string& book, const Lexicon& lexicon)
      : book_(book), sizes_(lexicon), scout_(lexicon), tables_(sizes_) {}

  void read(const Block& block) {
    if (block.text.empty() || block.contents) return;
    const bool tabular = tables_.enter(block);
    const auto before = out_.size();
    if (tabular) {
      read_tabular(block);
    } else {
      for (const Span window : scout_.windows(block.text)) read_prose(block, window);
    }
    tables_.leave(block, out_.size() > before && fills(block, out_.back()));
  }

  std::vector<Statement> finish() {
    std::stable_sort(out_.begin(), out_.end(), [](const auto& a, const auto& b) { return a.line < b.line; });
    const auto same = [](const Statement& a, const Statement& b) {
      return a.line == b.line && a.measure == b.measure && a.of == b.of && a.unit == b.unit && a.equals == b.equals;
    };
    out_.erase(std::unique(out_.begin(), out_.end(), same), out_.end());
    return std::move(out_);
  }

 private:
  /// The statement is what the block is there for.
  static bool fills(const Block& block, const Statement& last) {
    return block.kind == Block::Kind::table_row || 2 * last.quote.size() > block.text.size();
  }

  void read_tabular(const Block& block) {
    for (auto& text : tables_.plain(block)) read_row(block, std::move(text));
  }

  void read_row(const Block& block, std::string text) {
    const Passage passage(std::move(text), sizes_);
    auto told = equalities(passage, sizes_, true);
    if (told.empty()) told = tables_.listed(passage);
    tables_.learn(block, told);
    keep(block, passage, 0, told);
    keep(block, passage, 0, vessels(passage, sizes_));
    keep(block, passage, 0, heats(passage));
  }

  void read_prose(const Block& block, Span window) {
    std::string text(window.in(block.text));
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '\n' || c == '|'; }, ' ');
    const Passage passage(std::move(text), sizes_);
    keep(block, passage, window.begin, equalities(passage, sizes_, false));
    keep(block, passage, window.begin, vessels(passage, sizes_));
    keep(block, passage, window.begin, heats(passage));
  }

  void keep(const Block& block, const Passage& passage, std::uint32_t offset, const std::vector<Told>& all) {
    for (const Told& told : all) {
      const Span span = passage.row().span(told.words);
      Statement s;
      s.book = book_;
      s.page = block.page_at(offset + span.begin);
      s.line = block.line_at(offset + span.begin);
      s.measure = told.measure;
      s.of = told.of;
      s.equals = told.equals;
      s.unit = told.unit;
      s.quote = folded(told.quote.empty() ? span.in(passage.text()) : std::string_view(told.quote));
      out_.push_back(std::move(s));
    }
  }

  const std::string& book_;
  Sizes sizes_;
  Scout scout_;
  Tables tables_;
  std::vector<Statement> out_;
};

}  // namespace

std::vector<Statement> mine(const std::vector<Block>& blocks, const std::string& book, const Lexicon& lexicon) {
  Walk walk(book, lexicon);
  for (const Block& block : blocks) walk.read(block);
  return walk.finish();
}

}  // namespace gallipot
