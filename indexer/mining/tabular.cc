// Heads of tables, ditto marks, and rows that say only "Wheat 60".
#include "indexer/mining/tabular.h"

#include <algorithm>
#include <cctype>

#include "indexer/mining/cues.h"
#include "indexer/parsing/numbers.h"

namespace gallipot::mining {
namespace {

constexpr std::size_t longest_head = 170, longest_row = 260;
constexpr std::uint32_t longest_listed = 16, longest_name = 5;  // words
constexpr int warm_from_head = 30, warm_from_row = 4;

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

/// Whether a short block speaks of measures as the head of a table does. In running text "measure" is mostly a verb, so
/// there the plural is wanted.
bool speaks_of_measures(const Block& block) {
  if (block.text.size() > longest_head) return false;
  const bool headed = block.kind == Block::Kind::heading || block.centred || block.text.size() <= 48;
  std::string word;
  for (std::size_t i = 0; i <= block.text.size(); ++i) {
    const char c = i < block.text.size() ? block.text[i] : ' ';
    if (is_letter(c)) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      continue;
    }
    if (!word.empty() && (cues_of(word) & head) && (word.ends_with("s") || headed)) return true;
    word.clear();
  }
  return false;
}

/// "Flour . . . . one pound": points that lead the eye across a row end no sentence.
void blot_leaders(std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '.') continue;
    std::size_t to = i + 1, points = 1;
    while (to < text.size() && (text[to] == '.' || text[to] == ' ')) points += text[to++] == '.';
    if (points > 1)
      std::fill(text.begin() + static_cast<std::ptrdiff_t>(i), text.begin() + static_cast<std::ptrdiff_t>(to), ' ');
    i = to;
  }
}

std::string with_spaces(std::string text) {
  for (char& c : text)
    if (c == '|' || c == '\n' || c == '}' || c == '{') c = ' ';
  blot_leaders(text);
  return text;
}

/// "1 "", "64 ,," : the digits of a cell that is a number and a ditto mark; empty where it is not.
std::string_view dittoed_number(std::string_view cell) {
  std::size_t digits = 0;
  while (digits < cell.size() && static_cast<unsigned char>(cell[digits]) < 0x80 && !is_letter(cell[digits]) &&
         cell[digits] != '"' && cell[digits] != ',')
    ++digits;
  const auto mark = cell.substr(digits);
  if (digits == 0 || !std::isdigit(static_cast<unsigned char>(cell[0]))) return {};
  return mark == "\"" || mark == ",," || mark == "\u201D" || mark == "\u201C" ? cell.substr(0, digits)
                                                                              : std::string_view();
}

/// The measure of a cell such as "1 lb." or "2 qts"; empty where the cell is none such.
std::string_view measure_in(std::string_view cell) {
  if (cell.empty() || !std::isdigit(static_cast<unsigned char>(cell[0]))) return {};
  const auto at = std::find_if(cell.begin(), cell.end(), is_letter);
  return cell.substr(static_cast<std::size_t>(at - cell.begin()));
}

std::vector<std::string> cells_of(const Block& block) {
  std::vector<std::string> cells;
  for (const Span cell : block.cells) cells.emplace_back(cell.in(block.text));
  return cells;
}

/// Rows of which each has one line of the cell with the most lines, the others blotted out so that places stay.
std::vector<std::string> lines_of(const std::string& text, const std::vector<std::string>& cells) {
  const auto lines = [](const std::string& cell) { return std::count(cell.begin(), cell.end(), '\n'); };
  const auto most =
      std::max_element(cells.begin(), cells.end(), [&](const auto& a, const auto& b) { return lines(a) < lines(b); });
  if (most == cells.end() || lines(*most) == 0) return {text};
  const auto at = text.find(*most);
  if (at == std::string::npos) return {text};
  std::vector<std::string> rows;
  for (std::size_t from = 0; from <= most->size();) {
    const auto to = std::min(most->find('\n', from), most->size());
    std::string row = text;
    for (std::size_t i = 0; i < most->size(); ++i)
      if (i < from || i >= to) row[at + i] = ' ';
    rows.push_back(std::move(row));
    from = to + 1;
  }
  return rows;
}

bool weighed_or_held(const Term& t) { return t.vagueness <= 1; }

}  // namespace

bool Tables::enter(const Block& block) {
  if (block.text.empty() || block.text.size() > longest_row) return false;
  if (speaks_of_measures(block)) {
    warm_ = warm_from_head;
    of_each_.clear();
    counted_in_.clear();
    note_head(block.text);
  }
  if (block.kind != Block::Kind::table_row) above_.clear();
  return warm_ > 0;
}

void Tables::leave(const Block& block, bool told) {
  if (told) {
    if (block.text.size() <= longest_row) warm_ = std::max(warm_, warm_from_row);
    return;
  }
  if (speaks_of_measures(block)) return;
  if (warm_ > 0) --warm_;
  if (block.text.size() > longest_row) warm_ = 0;
  if (warm_ == 0) {
    of_each_.clear();
    counted_in_.clear();
  }
}

/// "Pounds of various articles to a bushel", "Weight of a bushel of".
void Tables::note_head(const std::string& text) {
  const Passage passage(with_spaces(text), sizes_);
  for (const Term& t : passage.terms()) {
    if (t.quantity.high != 1 || !weighed_or_held(t)) continue;
    if (t.vagueness == 0 && counted_in_.empty()) counted_in_ = t.measure;
    if (t.vagueness == 1 && of_each_.empty()) of_each_ = t.measure;
  }
}

std::vector<std::string> Tables::plain(const Block& block) {
  if (block.kind != Block::Kind::table_row) return {with_spaces(block.text)};
  auto cells = cells_of(block);
  std::string text = block.text;
  for (std::size_t i = cells.size(); i-- > 0;) {
    const auto number = dittoed_number(cells[i]);
    if (number.empty()) continue;
    const auto from_right = cells.size() - i;
    auto measure = i < above_.size() ? measure_in(above_[i]) : std::string_view();
    if (measure.empty() && from_right <= above_.size()) measure = measure_in(above_[above_.size() - from_right]);
    if (measure.empty()) continue;
    const std::string resolved = std::string(number) + std::string(measure);
    const Span at = block.cells[i];
    text.replace(at.begin, at.size(), resolved);
    cells[i] = resolved;
  }
  std::vector<std::string> rows;
  for (auto& row : lines_of(text, cells)) rows.push_back(with_spaces(std::move(row)));
  above_ = std::move(cells);
  return rows;
}

void Tables::learn(const Block& block, const std::vector<Told>& told) {
  if (told.empty() || block.kind != Block::Kind::table_row) return;
  of_each_ = told.front().measure;
  counted_in_ = told.front().unit;
}

std::vector<Told> Tables::listed(const Passage& passage) {
  std::vector<Told> out;
  const auto& row = passage.row();
  if (of_each_.empty() || row.size() > longest_listed) return out;
  std::uint32_t name = 0;
  for (std::uint32_t i = 0; i < row.size();) {
    const auto n = parsing::number_at(row, i);
    if (!n.words || n.article) {
      if (row.point(i) && name == i) ++name;
      ++i;
      continue;
    }
    auto end = i + n.words;
    const auto* m = end < row.size() ? row.measure(end) : nullptr;
    if (m) end += row.tags[end].measure_words;
    const std::string unit = m ? m->name : counted_in_;
    const bool named = name < i && i - name <= longest_name && row.word(name).kind == Word::Kind::word;
    if (!named || unit.empty() || unit == of_each_ || sizes_.vagueness(unit) != 0) return {};
    Told told;
    told.measure = of_each_;
    told.unit = unit;
    told.equals = n.value;
    told.of = passage.stuff_between(name, i);
    if (told.of.empty()) told.of = std::string(row.printed({name, i}));
    told.words = {name, end};
    if (!may_equal(sizes_, 1, of_each_, (n.value.low + n.value.high) / 2, unit, Closeness::stated)) return {};
    out.push_back(std::move(told));
    name = i = end;
  }
  return out;
}

}  // namespace gallipot::mining
