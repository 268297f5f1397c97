// One pass over the letters of a recipe; only words that begin some phrase are looked at closely.
#include "indexer/normalizing/cautions.h"

#include <algorithm>
#include <stdexcept>

#include "indexer/lexicon/tables.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }

// The next word of `text` at or after `at`, in lower case and in the singular; empty at the end. Moves `at` behind it.
std::string_view next_word(std::string_view text, std::size_t& at, std::string& held) {
  while (at < text.size() && !letter(text[at])) ++at;
  held.clear();
  while (at < text.size() && (letter(text[at]) || (text[at] == '\'' && at + 1 < text.size() && letter(text[at + 1]))))
    held.push_back(lower(text[at++]));
  return held;
}

std::size_t start_of(std::string_view word) {
  return static_cast<std::size_t>(word[0] - 'a') * 32 + (word.size() > 1 ? static_cast<std::size_t>(word[1] & 31) : 0);
}

bool same_word(std::string_view printed, std::string_view wanted) {
  return printed == wanted || singular(printed) == wanted;
}

constexpr int silence = 6;  // words over which "never" reaches

}  // namespace

// What was found of one caution: raised, its second condition met, and where it was last silenced.
struct Cautions::Seen {
  bool raised = false, also = false;
  int silenced_at = -1000;
};

void Cautions::add(std::string_view phrase, std::uint32_t caution, Part part) {
  Phrase p;
  p.caution = caution;
  p.part = part;
  std::string held, first;
  std::size_t at = 0;
  for (auto w = next_word(phrase, at, held); !w.empty(); w = next_word(phrase, at, held)) {
    if (first.empty())
      first = w;
    else
      p.more.emplace_back(w);
  }
  if (first.empty()) return;
  starts_[start_of(first)] = true;
  by_first_[first].push_back(std::move(p));
}

Outcome<Cautions> Cautions::load(std::string_view table_bytes) {
  const auto table = parse_table(table_bytes, "cautions", "cautions.tsv");
  if (!table) return tl::unexpected(table.error());
  Cautions out;
  out.starts_.assign(26 * 32, false);
  const int words = table->column("words"), where = table->column("where"), also = table->column("also"),
            unless = table->column("unless"), sentence = table->column("caution");
  if (std::min({words, where, also, unless, sentence}) < 0)
    return fault("the table of cautions lacks a column", "give it words, where, also, unless, caution and source",
                 table->file, 1);
  for (const auto& row : table->rows) {
    auto cell = [&](int column) { return row.cells[static_cast<std::size_t>(column)]; };
    const auto number = static_cast<std::uint32_t>(out.cautions_.size());
    Caution c;
    c.sentence = cell(sentence);
    if (cell(where) == "title")
      c.where = Where::title;
    else if (cell(where) == "chapter")
      c.where = Where::chapter;
    else if (cell(where) != "text")
      return fault("\"" + std::string(cell(where)) + "\" is not a place of a recipe", "write text, title or chapter",
                   table->file, row.line);
    c.wants_also = !cell(also).empty();
    out.cautions_.push_back(std::move(c));
    for (const auto p : parts_of(cell(words))) out.add(p, number, Part::raises);
    for (const auto p : parts_of(cell(also))) out.add(p, number, Part::also);
    for (const auto p : parts_of(cell(unless))) out.add(p, number, Part::unless);
  }
  return out;
}

const Cautions& Cautions::built_in() {
  static const Cautions cautions = [] {
    auto loaded = load(built_in_table("cautions"));
    // the table is part of the program and its rows are walked by the tests: a fault here is a broken build
    if (!loaded) throw std::logic_error(loaded.error().sentence());
    return std::move(*loaded);
  }();
  return cautions;
}

void Cautions::look(std::string_view text, Where where, std::vector<Seen>& seen) const {
  std::string held, more;
  int place = 0;
  for (std::size_t at = 0; at < text.size(); ++place) {
    const auto printed = next_word(text, at, held);
    if (printed.empty()) break;
    if (!starts_[start_of(printed)]) continue;
    auto hit = by_first_.find(printed);
    if (hit == by_first_.end() && printed.back() == 's') hit = by_first_.find(singular(printed));
    if (hit == by_first_.end()) continue;
    for (const Phrase& p : hit->second) {
      std::size_t behind = at;
      const bool whole = std::all_of(p.more.begin(), p.more.end(),
                                     [&](const std::string& w) { return same_word(next_word(text, behind, more), w); });
      if (!whole) continue;
      const Caution& c = cautions_[p.caution];
      Seen& s = seen[p.caution];
      if (p.part == Part::also)
        s.also = s.also || where == Where::text;
      else if (c.where != where)
        continue;
      else if (p.part == Part::unless)
        s.silenced_at = place;
      else if (place - s.silenced_at > silence)
        s.raised = true;
    }
  }
  for (Seen& s : seen) s.silenced_at = -1000;
}

std::vector<std::string> Cautions::of(const Recipe& recipe) const {
  std::vector<Seen> seen(cautions_.size());
  look(recipe.dish_title.empty() ? recipe.title : recipe.dish_title, Where::title, seen);
  look(recipe.chapter, Where::chapter, seen);
  look(recipe.text, Where::text, seen);
  std::vector<std::string> out;
  for (std::size_t i = 0; i < cautions_.size(); ++i)
    if (seen[i].raised && (seen[i].also || !cautions_[i].wants_also) &&
        std::find(out.begin(), out.end(), cautions_[i].sentence) == out.end())
      out.push_back(cautions_[i].sentence);
  return out;
}

}  // namespace gallipot
