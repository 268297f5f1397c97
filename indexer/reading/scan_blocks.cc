// From lines with places on a page to blocks: where a paragraph begins is told by indents, gaps, sizes and ends of
// lines.
#include <algorithm>
#include <cmath>
#include <map>

#include "indexer/reading/composer.h"
#include "indexer/reading/scan.h"

namespace gallipot {
namespace {

constexpr double unsure = 0.5;    // the engine's confidence in a word under which it counts as not read for sure
constexpr double wide_gap = 1.4;  // of the usual distance of lines, from which a gap parts blocks
constexpr double larger = 1.25;   // type so much larger than the book's is a head's
constexpr double smaller = 0.8;   // ... and so much smaller is another kind of text's
constexpr double indented = 0.7;  // heights of type
constexpr double margin = 0.06;   // of the column's width, on both sides of what is centred

double size_of(const ScanLine& line) { return line.size > 0 ? line.size : line.box.height(); }

double percentile(std::vector<double> values, double share) {
  if (values.empty()) return 0;
  const auto at = static_cast<std::size_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(at), values.end());
  return values[at];
}

struct Column {
  double left = 0, right = 0;
  double width() const { return right - left; }
};

std::map<int, Column> columns_of(const ScanPage& page) {
  std::map<int, std::pair<std::vector<double>, std::vector<double>>> sides;
  for (const ScanLine& line : page.lines) {
    sides[line.column].first.push_back(line.box.left);
    sides[line.column].second.push_back(line.box.right);
  }
  std::map<int, Column> out;
  for (auto& [column, both] : sides) out[column] = {percentile(both.first, 0.15), percentile(both.second, 0.9)};
  return out;
}

bool ends_sentence(std::string_view text) {
  while (!text.empty() && (text.back() == '"' || text.back() == '\'' || text.back() == ')')) text.remove_suffix(1);
  return !text.empty() && (text.back() == '.' || text.back() == '!' || text.back() == '?' || text.back() == ':');
}

bool begins_small(std::string_view text) { return !text.empty() && text.front() >= 'a' && text.front() <= 'z'; }

/// What a line looks like in its column.
struct Look {
  bool centred = false;
  bool right = false;
  bool indent = false;
  bool short_end = false;  ///< ends well before the column does
  double size = 0;
};

class ScanSetter {
 public:
  ScanSetter(const std::vector<ScanPage>& pages, Draft& draft) : pages_(pages), draft_(draft), composer_(draft) {
    std::vector<double> sizes, pitches;
    for (const ScanPage& page : pages)
      for (std::size_t i = 0; i < page.lines.size(); ++i) {
        sizes.push_back(size_of(page.lines[i]));
        if (i == 0) continue;
        const double pitch = page.lines[i].box.top - page.lines[i - 1].box.top;
        if (pitch > 0) pitches.push_back(pitch);
      }
    size_ = percentile(sizes, 0.5);
    pitch_ = percentile(pitches, 0.5);
  }

  void set() {
    for (const ScanPage& page : pages_) set_page(page);
    composer_.end();
  }

 private:
  void set_page(const ScanPage& page);
  Look look_of(const ScanLine& line, const Column& column) const;
  bool begins_block(const ScanLine& line, const Look& look, bool new_page) const;
  void open(const ScanLine& line, const Look& look, bool apart);
  void put(const ScanLine& line);

  const std::vector<ScanPage>& pages_;
  Draft& draft_;
  Composer composer_;
  double size_ = 0, pitch_ = 0;
  const ScanLine* before_ = nullptr;  ///< the line set last
  Look look_before_;
  std::string text_before_;
};

Look ScanSetter::look_of(const ScanLine& line, const Column& column) const {
  Look look;
  look.size = size_ > 0 ? size_of(line) / size_ : 1;
  const double left = line.box.left - column.left, right = column.right - line.box.right;
  const double width = std::max(column.width(), 1.0);
  look.centred = left > margin * width && right > margin * width && std::abs(left - right) < 0.12 * width;
  look.right = !look.centred && left > 0.4 * width && right < margin * width;
  look.indent = left > indented * size_ && !look.centred && !look.right;
  look.short_end = right > 0.12 * width;
  return look;
}

bool ScanSetter::begins_block(const ScanLine& line, const Look& look, bool new_page) const {
  if (!before_ || !composer_.open()) return true;
  const std::string text = line.text();
  if (look.centred != look_before_.centred || look.right != look_before_.right) return true;
  if (look.size > larger * look_before_.size || look.size < smaller * look_before_.size) {
    // Heights of lines without long letters are no sign by themselves.
    if (look.size > larger || look_before_.size > larger) return true;
  }
  const double step = line.box.top - before_->box.top;
  if (new_page || step <= 0 || line.column != before_->column)
    return look.indent || (ends_sentence(text_before_) && !begins_small(text)) || look.centred;
  if (step > wide_gap * pitch_) return true;
  if (look.centred) return false;
  if (look.indent && !look_before_.indent) return true;
  if (ends_sentence(text_before_) && look_before_.short_end && !begins_small(text)) return true;
  return line.area != before_->area && !begins_small(text) && ends_sentence(text_before_);
}

void ScanSetter::open(const ScanLine& line, const Look& look, bool apart) {
  const bool head = look.size > larger && line.words.size() < 14;
  Block& block = composer_.begin(head ? Block::Kind::heading : Block::Kind::paragraph);
  block.level = head ? look.size > larger * larger ? 1 : 2 : 0;
  block.style = head ? "head" : "text";
  block.centred = look.centred;
  block.right_aligned = look.right;
  block.indent = static_cast<std::uint16_t>(look.indent ? 2 : 0);
  block.blank_before = apart ? 1 : 0;
  std::uint16_t style = 0;
  if (line.bold) style |= Run::bold;
  if (line.italic) style |= Run::italic;
  if (style != 0) composer_.begin_run(style, "line");
}

void ScanSetter::put(const ScanLine& line) {
  for (const ScanWord& word : line.words) {
    std::uint32_t at = word.line;
    const int mend = word.sure < unsure ? composer_.begin_mend({}) : -1;
    composer_.put(word.text, at);
    composer_.end_mend(mend, true);
    composer_.put(&word == &line.words.back() ? "\n" : " ", at);
  }
}

void ScanSetter::set_page(const ScanPage& page) {
  bool new_page = true;
  const auto columns = columns_of(page);
  for (const ScanLine& line : page.lines) {
    const Look look = look_of(line, columns.at(line.column));
    const bool begins = begins_block(line, look, new_page);
    const bool apart = !before_ || new_page || line.box.top - before_->box.top > wide_gap * pitch_;
    if (begins) composer_.end();
    if (new_page && !page.folio.empty()) {
      composer_.page_mark(page.folio, page.line, true);
      if (!page.image.empty()) draft_.images.emplace_back(page.folio, page.image);
    }
    if (begins) open(line, look, apart);
    put(line);
    before_ = &line;
    look_before_ = look;
    text_before_ = line.text();
    new_page = false;
  }
}

}  // namespace

Draft draft_scan(std::vector<ScanPage> pages) {
  Draft draft;
  take_folios(pages);
  for (ScanPage& page : pages) order_lines(page);
  ScanSetter(pages, draft).set();
  return draft;
}

}  // namespace gallipot
