// Reads a question with the grammar of the recipes.
#include "query/measuring/phrase.h"

#include <algorithm>
#include <array>

#include "indexer/parsing/amounts.h"
#include "indexer/text/unicode.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

using parsing::PrintedAmount;
using parsing::Row;

/// The words tagged as the words of a recipe are. Holds what the row looks into, so it stays where it is.
class Print {
 public:
  Print(std::string_view text, const Lexicon& lexicon) {
    recipe_.text = text;
    recipe_.parts = {{Part::Kind::paragraph, {0, static_cast<std::uint32_t>(recipe_.text.size())}}};
    words_ = Words(recipe_.text);
    row_ = parsing::tag(recipe_, words_, lexicon);
  }
  Print(const Print&) = delete;
  Print& operator=(const Print&) = delete;
  const Row& row() const { return row_; }

 private:
  Recipe recipe_;
  Words words_;
  Row row_;
};

/// The first stuff named from word `from` on, but for `except`; empty where none is.
std::string stuff_from(const Row& row, std::uint32_t from, std::string_view except = {}) {
  for (std::uint32_t i = from; i < row.size(); ++i)
    if (const Foodstuff* food = row.food(i); food != nullptr && food->name != except) return food->name;
  return {};
}

/// Words that leave the amount to the cook.
bool leaves_it_to_the_cook(std::string_view plain) {
  const bool as_much = says_any(plain, {"as much ", "as many "}) && says_any(plain, {" as "});
  return as_much || says_any(plain, {"enough", "sufficient", "to taste", "to your taste", "to your mind",
                                     "to your liking", "quantum suff", "q.s.", "at pleasure", "at discretion"});
}

/// "size of a walnut" -> "walnut".
std::string_view thing_of(std::string_view size) {
  for (const std::string_view before : {"size of a ", "size of an "})
    if (size.starts_with(before)) return size.substr(before.size());
  return {};
}

/// The measure of size that the words tell ("as big as a walnut"), by the longest thing; empty where they tell none.
std::string size_in(std::string_view plain, const std::vector<std::string>& measures) {
  if (!says_any(plain, {"size of", "bigness of", "bulk of", "big as", "large as"})) return {};
  std::string best;
  for (const std::string& m : measures) {
    const auto thing = thing_of(m);
    if (!thing.empty() && plain.find(thing) != std::string_view::npos && m.size() > best.size()) best = m;
  }
  return best;
}

/// The amount that is most wanted: the first with a number and a measure, else with a number, else any.
std::size_t chief(const std::vector<PrintedAmount>& amounts) {
  for (std::size_t i = 0; i < amounts.size(); ++i)
    if (amounts[i].quantity && !amounts[i].measure.empty()) return i;
  for (std::size_t i = 0; i < amounts.size(); ++i)
    if (amounts[i].quantity) return i;
  return 0;
}

SaidAmount said(const PrintedAmount& a) { return {a.quantity, a.measure, a.note}; }

/// Whether nothing but "and" and points stand between two amounts.
bool add_up(const Row& row, const PrintedAmount& before, const PrintedAmount& after) {
  if (!before.quantity || !after.quantity || before.measure.empty() || after.measure.empty()) return false;
  for (std::uint32_t i = before.all.end; i < after.all.begin; ++i)
    if (!row.point(i) && row.key(i) != "and") return false;
  return true;
}

/// The word after the number that no table knows.
std::string unknown_word(const Row& row, const PrintedAmount& amount) {
  for (std::uint32_t i = amount.quantity_at.end; i < row.size(); ++i) {
    if (row.point(i) || row.key(i) == "of" || row.key(i) == "a" || row.key(i) == "an") continue;
    if (row.food(i) != nullptr || row.tags[i].measure != parsing::kNone) return {};
    if (row.tags[i].roles == 0) return std::string(row.key(i));
  }
  return {};
}

/// A measure with no number before it: "pint and a half", "pennyworth of saffron".
std::string bare_measure(const Row& row) {
  for (std::uint32_t i = 0; i < row.size(); ++i)
    if (const MeasureWord* m = row.measure(i)) return m->name;
  return {};
}

bool begins_with_measure(const Row& row) { return row.size() > 0 && row.measure(0) != nullptr; }

}  // namespace

bool says_any(std::string_view words, std::initializer_list<const char*> phrases) {
  return std::any_of(phrases.begin(), phrases.end(),
                     [&](const char* p) { return words.find(p) != std::string_view::npos; });
}

std::string stuff_in(std::string_view words, const Lexicon& lexicon) {
  const std::string plain = to_plain(words);
  std::uint32_t at = 0;
  for (const std::string& form : {plain, singular(plain)})
    if (lexicon.foodstuff_phrases().find(form, at)) return lexicon.foodstuffs()[at].name;
  return stuff_from(Print(words, lexicon).row(), 0);
}

std::optional<Range> number_in(std::string_view words, const Lexicon& lexicon) {
  const Print print(words, lexicon);
  for (const PrintedAmount& a : parsing::find_amounts(print.row()))
    if (a.quantity && !a.article) return a.quantity;
  return std::nullopt;
}

Phrase read_phrase(std::string_view words, const Lexicon& lexicon, const std::vector<std::string>& sizes) {
  Phrase out;
  std::string plain = to_plain(words);
  std::replace(plain.begin(), plain.end(), '-', ' ');
  out.left_to_the_cook = leaves_it_to_the_cook(plain) && !says_any(plain, {"will lie"});
  out.scaled = says_any(plain, {"weight of"});
  std::string text(words);
  if (begins_with_measure(Print(text, lexicon).row())) text = "a " + text;
  const Print print(text, lexicon);
  const Row& row = print.row();
  if (const std::string size = size_in(plain, sizes); !size.empty()) {
    out.amounts.push_back({Range{1, 1}, size, {}});
    out.of = stuff_from(row, 0, thing_of(size));
    return out;
  }
  if (says_any(plain, {"will lie on", "will lie upon"})) {
    out.amounts.push_back({Range{1, 1}, "as much as will lie on a shilling", {}});
    out.of = stuff_from(row, 0);
    return out;
  }
  const auto amounts = parsing::find_amounts(row);
  if (amounts.empty()) {
    if (auto measure = bare_measure(row); !measure.empty()) out.amounts.push_back({std::nullopt, measure, {}});
    out.of = stuff_from(row, 0);
    out.unknown = plain;
    return out;
  }
  std::size_t i = chief(amounts);
  out.amounts.push_back(said(amounts[i]));
  if (amounts[i].vague && !amounts[i].quantity) out.left_to_the_cook = true;
  while (i + 1 < amounts.size() && add_up(row, amounts[i], amounts[i + 1])) out.amounts.push_back(said(amounts[++i]));
  out.of = stuff_from(row, amounts[i].next);
  if (out.amounts.front().measure.empty()) {
    out.unknown = unknown_word(row, amounts[i]);
    if (const std::string measure = bare_measure(row); out.unknown.empty() && out.of.empty() && !measure.empty())
      out.amounts.front() = {std::nullopt, measure, {}};
  }
  return out;
}

}  // namespace gallipot
