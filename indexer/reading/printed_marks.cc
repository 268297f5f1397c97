// Page numbers that stand in the text itself, without an element to name them. A number in brackets may as well be a
// footnote's mark, and a number alone on a line a receipt's: only a form that runs in order through the book, at the
// distances of pages, is taken.
#include <algorithm>
#include <array>
#include <map>

#include "indexer/reading/edits.h"
#include "indexer/reading/page_marks.h"

namespace gallipot {
namespace {

enum class Form : unsigned char { bracket_word, bracket, brace, dashes, alone, word_alone };

struct Found {
  std::uint32_t block = 0;
  Span span;
  std::string label;
  Form form = Form::bracket;
  std::size_t offset = 0;  ///< bytes of text before it in the book
  bool in_sentence = false;
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool ends_sentence(std::string_view text) {
  while (!text.empty() && (text.back() == '"' || text.back() == ')' || text.back() == '_')) text.remove_suffix(1);
  return text.empty() || std::string_view(".!?:;]").find(text.back()) != std::string_view::npos;
}

bool goes_on(const std::vector<Block>& blocks, std::size_t b) {
  if (b == 0 || b + 1 >= blocks.size()) return false;
  const auto& next = blocks[b + 1].text;
  return blocks[b - 1].kind == Block::Kind::paragraph && blocks[b + 1].kind == Block::Kind::paragraph &&
         !ends_sentence(blocks[b - 1].text) && !next.empty() && next[0] >= 'a' && next[0] <= 'z';
}

/// A block that is nothing but a number: "-12-", "12", "Page 12".
bool alone(const Block& block, Form& form, std::string& label) {
  const std::string_view text = block.text;
  if (text.size() > 16 || text.empty() || block.kind == Block::Kind::rule || block.kind == Block::Kind::heading)
    return false;
  if (text[0] == '[' || text[0] == '{') return false;
  label = page_label(text);
  if (label.empty() || text.back() == '.') return false;
  const bool roman = !is_digit(label[0]);
  if (text[0] == '-' || text.starts_with("\xE2\x80\x93") || text[0] == '(')
    form = Form::dashes;
  else if (is_digit(text[0]) || (roman && text == label))
    form = Form::alone;
  else
    form = Form::word_alone;
  return !(roman && form == Form::alone && label.size() < 2);
}

void find_bracketed(const Block& block, std::uint32_t index, std::size_t offset, std::vector<Found>& out) {
  const std::string_view text = block.text;
  for (std::size_t i = text.find_first_of("[{"); i != std::string_view::npos; i = text.find_first_of("[{", i + 1)) {
    const char close = text[i] == '[' ? ']' : '}';
    const std::size_t end = text.substr(i, 16).find(close);
    if (end == std::string_view::npos || end < 2) continue;
    const auto inside = text.substr(i + 1, end - 1);
    std::string label = page_label(inside);
    if (label.empty()) continue;
    const bool word = inside[0] == 'P' || (inside[0] == 'p' && inside.size() > label.size());
    if (!word && !is_digit(label[0]) && label.size() < 2) continue;
    Found f{index,
            {static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(i + end + 1)},
            std::move(label),
            Form::bracket,
            offset + i,
            false};
    f.form = word ? Form::bracket_word : close == '}' ? Form::brace : Form::bracket;
    out.push_back(std::move(f));
  }
}

/// Do these run as pages do: mostly one by one, not two of a number, a page's length apart?
bool run_in_order(const std::vector<const Found*>& marks) {
  if (marks.size() < 4) return false;
  std::size_t steps = 0, repeats = 0, in_sentence = 0;
  std::vector<std::size_t> gaps;
  std::map<std::string_view, int> seen;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    repeats += seen[marks[i]->label]++ > 0;
    in_sentence += marks[i]->in_sentence;
    if (i == 0) continue;
    bool roman = false, roman_before = false;
    const int step = page_value(marks[i]->label, roman) - page_value(marks[i - 1]->label, roman_before);
    steps += step >= 1 && step <= 3;
    gaps.push_back(marks[i]->offset - marks[i - 1]->offset);
  }
  std::nth_element(gaps.begin(), gaps.begin() + static_cast<std::ptrdiff_t>(gaps.size() / 2), gaps.end());
  const std::size_t gap = gaps[gaps.size() / 2];
  const bool one_by_one = steps * 10 >= (marks.size() - 1) * 7 && repeats * 10 <= marks.size();
  if (marks[0]->form == Form::alone) return one_by_one && gap >= 600 && in_sentence * 10 >= marks.size();
  return one_by_one && gap >= 200;
}

void keep_sure_anchors(Draft& draft) {
  std::size_t sure = 0, unsure = 0, steps = 0;
  int before = 0;
  for (const auto& mark : draft.marks) {
    if (mark.sure) {
      ++sure;
      continue;
    }
    bool roman = false;
    const int value = page_value(mark.label, roman);
    steps += value > before && value <= before + 3;
    before = value;
    ++unsure;
  }
  if (unsure > 0 && (sure >= 3 || steps * 10 < unsure * 8))
    std::erase_if(draft.marks, [](const PageMark& m) { return !m.sure; });
}

/// Takes a mark out of its text without leaving a space in a broken word or two between whole ones.
Edit removal(std::string_view text, Span span, bool& hyphen) {
  std::uint32_t begin = span.begin, end = span.end;
  const bool space_before = begin > 0 && (text[begin - 1] == ' ' || text[begin - 1] == '\n');
  const bool space_after = end < text.size() && (text[end] == ' ' || text[end] == '\n');
  const std::uint32_t word_end = space_before ? begin - 1 : begin;
  const std::uint32_t next = space_after ? end + 1 : end;
  hyphen = word_end > 1 && text[word_end - 1] == '-' && text[word_end - 2] >= 'a' && text[word_end - 2] <= 'z' &&
           next < text.size() && text[next] >= 'a' && text[next] <= 'z';
  if (hyphen) return {word_end, next - word_end, ""};
  if ((space_before || begin == 0) && space_after)
    ++end;
  else if (space_before && end == text.size())
    --begin;
  return {begin, end - begin, ""};
}

/// A sentence that a mark on its own line had cut in two becomes one paragraph again.
void join_around(Draft& draft, std::vector<bool>& gone) {
  auto& blocks = draft.blocks;
  for (std::uint32_t b = 1; b + 1 < blocks.size(); ++b) {
    if (!gone[b] || gone[b + 1]) continue;
    std::uint32_t before = b - 1;
    while (before > 0 && gone[before]) --before;
    const auto& next = blocks[b + 1].text;
    const bool one_sentence = blocks[before].kind == Block::Kind::paragraph &&
                              blocks[b + 1].kind == Block::Kind::paragraph && !ends_sentence(blocks[before].text) &&
                              !next.empty() && next[0] >= 'a' && next[0] <= 'z';
    if (gone[before] || !one_sentence) continue;
    const auto end = static_cast<std::uint32_t>(blocks[before].text.size());
    const auto [first, last] = std::equal_range(draft.marks.begin(), draft.marks.end(), PageMark{b, 0, 0, "", true},
                                                [](const PageMark& x, const PageMark& y) { return x.block < y.block; });
    for (auto mark = first; mark != last; ++mark) mark->block = before, mark->at = end;
    append_block(draft, before, b + 1);
    gone[b + 1] = true;
  }
}

void take_out(Draft& draft, const std::vector<Found>& found, const std::array<bool, 6>& taken) {
  std::vector<bool> gone(draft.blocks.size());
  bool any_gone = false;
  std::vector<PageMark> new_marks;
  std::vector<Seam> new_seams;
  for (std::size_t i = 0; i < found.size();) {
    const std::uint32_t b = found[i].block;
    std::vector<Edit> edits;
    std::vector<PageMark> marks;
    std::vector<std::uint32_t> hyphens;
    const std::uint32_t line = draft.blocks[b].line_start();
    for (; i < found.size() && found[i].block == b; ++i) {
      if (!taken[static_cast<std::size_t>(found[i].form)]) continue;
      bool hyphen = false;
      Edit edit = removal(draft.blocks[b].text, found[i].span, hyphen);
      if (!edits.empty() && edit.at < edits.back().at + edits.back().erase) continue;
      if (hyphen) hyphens.push_back(edit.at + edit.erase);
      marks.push_back({b, edit.at + edit.erase, std::max(line, draft.blocks[b].line_at(found[i].span.begin)),
                       found[i].label, true});
      edits.push_back(std::move(edit));
    }
    if (edits.empty()) continue;
    const auto tidying = apply_edits(edits, draft, b);
    const EditMap first(edits), second(tidying);
    for (auto& mark : marks) mark.at = second.moved(first.moved(mark.at));
    for (const auto at : hyphens) new_seams.push_back({b, second.moved(first.moved(at))});
    new_marks.insert(new_marks.end(), std::make_move_iterator(marks.begin()), std::make_move_iterator(marks.end()));
    gone[b] = draft.blocks[b].text.empty();
    any_gone = any_gone || gone[b];
  }
  const auto by_place = [](const auto& x, const auto& y) {
    return x.block != y.block ? x.block < y.block : x.at < y.at;
  };
  draft.marks.insert(draft.marks.end(), std::make_move_iterator(new_marks.begin()),
                     std::make_move_iterator(new_marks.end()));
  draft.seams.insert(draft.seams.end(), new_seams.begin(), new_seams.end());
  std::stable_sort(draft.marks.begin(), draft.marks.end(), by_place);
  std::stable_sort(draft.seams.begin(), draft.seams.end(), by_place);
  if (!any_gone) return;
  join_around(draft, gone);
  drop_blocks(draft, gone);
}

}  // namespace

void find_printed_marks(Draft& draft) {
  keep_sure_anchors(draft);
  const bool marked = draft.marks.size() >= 3;
  std::vector<Found> found;
  std::size_t offset = 0;
  for (std::uint32_t b = 0; b < draft.blocks.size(); ++b) {
    const Block& block = draft.blocks[b];
    find_bracketed(block, b, offset, found);
    Form form = Form::alone;
    std::string label;
    if (!marked && alone(block, form, label))
      found.push_back({b,
                       {0, static_cast<std::uint32_t>(block.text.size())},
                       std::move(label),
                       form,
                       offset,
                       goes_on(draft.blocks, b)});
    offset += block.text.size() + 1;
  }
  if (found.empty()) return;
  std::array<bool, 6> taken{};
  for (std::size_t f = 0; f < taken.size(); ++f) {
    std::vector<const Found*> marks;
    for (const auto& one : found)
      if (one.form == static_cast<Form>(f)) marks.push_back(&one);
    taken[f] = static_cast<Form>(f) == Form::bracket_word || (!marked && run_in_order(marks));
  }
  take_out(draft, found, taken);
}

}  // namespace gallipot
