// One pass over the letters of a recipe; only words that begin some phrase are looked at closely, and what silences or
// conditions a caution is looked for only once it is raised.
#include "indexer/normalizing/cautions.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <stdexcept>

#include "indexer/lexicon/tables.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }

// The next word of `text` at or after `at`, in lower case; empty at the end. Moves `at` behind it.
std::string_view next_word(std::string_view text, std::size_t& at, std::string& held) {
  while (at < text.size() && !letter(text[at])) ++at;
  held.clear();
  while (at < text.size() && (letter(text[at]) || (text[at] == '\'' && at + 1 < text.size() && letter(text[at + 1]))))
    held.push_back(lower(text[at++]));
  return held;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string held;
  std::size_t at = 0;
  for (auto word = next_word(text, at, held); !word.empty(); word = next_word(text, at, held)) out.emplace_back(word);
  return out;
}

std::size_t start_of(std::string_view word) {
  return static_cast<std::size_t>(word[0] - 'a') * 32 + (word.size() > 1 ? static_cast<std::size_t>(word[1] & 31) : 0);
}

bool same_word(std::string_view printed, std::string_view wanted) {
  return printed == wanted || singular(printed) == wanted;
}

/// Whether a point of the sentence stands at or after `at`, before the next word: "greens, potatoes" is no "green
/// potato".
bool parted(std::string_view text, std::size_t at) {
  while (at < text.size() && !letter(text[at])) {
    if (std::string_view(".,;:!?()").find(text[at]) != std::string_view::npos) return true;
    ++at;
  }
  return false;
}

/// Whether the words of a phrase stand at `at`, one after the other; `inside`: the first follows another word of it.
bool stands_at(std::string_view text, std::size_t at, const std::vector<std::string>& phrase, bool inside) {
  std::string held;
  for (const std::string& wanted : phrase) {
    if (inside && parted(text, at)) return false;
    if (!same_word(next_word(text, at, held), wanted)) return false;
    inside = true;
  }
  return true;
}

bool has_phrase(std::string_view text, const std::vector<std::string>& phrase) {
  std::string held;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t before = at;
    if (next_word(text, at, held).empty()) return false;
    if (same_word(held, phrase.front()) && stands_at(text, before, phrase, false)) return true;
  }
  return false;
}

/// Words of cookery in which nothing is raw at the end, as the letters that they begin with.
constexpr std::string_view heat[] = {"bak",    "boil",   "oven",   "fry",  "fri",     "cook",     "stew",    "roast",
                                     "steam",  "simmer", "scald",  "fire", "poach",   "grid",     "broil",   "brown",
                                     "hot",    "heat",   "toast",  "melt", "cake",    "pudding",  "pie",     "bread",
                                     "muffin", "waffle", "omelet", "loaf", "custard", "dumpling", "biscuit", "tart",
                                     "pastry", "paste",  "jumble", "wafer"};

bool cooked(std::string_view text) {
  std::string held;
  for (std::size_t at = 0; at < text.size();) {
    const auto word = next_word(text, at, held);
    if (std::any_of(std::begin(heat), std::end(heat), [&](std::string_view stem) { return word.starts_with(stem); }))
      return true;
  }
  return false;
}

constexpr std::size_t silence = 6;  // words over which "never" reaches

/// The place where the last words before a match begin.
class Window {
 public:
  void pass(std::size_t begin) {
    begins_[passed_ % silence] = begin;
    ++passed_;
  }
  std::size_t begin() const { return passed_ < silence ? 0 : begins_[passed_ % silence]; }

 private:
  std::array<std::size_t, silence> begins_{};
  std::size_t passed_ = 0;
};

}  // namespace

void Cautions::add(std::string_view phrase, std::uint32_t caution) {
  PhraseWords words = words_of(phrase);
  if (words.empty()) return;
  const std::string first = words.front();
  words.erase(words.begin());
  starts_[start_of(first)] = true;
  by_first_[first].push_back({std::move(words), caution});
}

void Cautions::add_also(std::string_view part, Caution& caution) {
  constexpr std::string_view kind = "kind=";
  caution.wants_also = true;
  if (part.starts_with('='))
    caution.also_stuffs.emplace_back(part.substr(1));
  else if (part.starts_with(kind))
    caution.also_kinds.emplace_back(part.substr(kind.size()));
  else
    caution.also.push_back(words_of(part));
}

Outcome<Cautions> Cautions::load(std::string_view table_bytes) {
  const auto table = parse_table(table_bytes, "cautions", "cautions.tsv");
  if (!table) return tl::unexpected(table.error());
  for (const char* column : {"hazard", "words", "where", "stuff", "least", "also", "unless", "heat", "caution"})
    if (table->column(column) < 0)
      return fault("the table of cautions lacks the column " + std::string(column), "add it to the heading",
                   table->file, 1);
  Cautions out;
  out.starts_.assign(26 * 32, false);
  for (const auto& row : table->rows) {
    const auto cell = [&](std::string_view column) { return table->cell(row, column); };
    const auto each = [&](std::string_view column, auto take) {
      if (!cell(column).empty())
        for (const auto part : parts_of(cell(column))) take(part);
    };
    const auto number = static_cast<std::uint32_t>(out.cautions_.size());
    Caution c;
    c.hazard = cell("hazard");
    c.sentence = cell("caution");
    c.unheated = cell("heat") == "unheated";
    if (cell("where") == "title")
      c.where = Where::title;
    else if (cell("where") == "chapter")
      c.where = Where::chapter;
    else if (cell("where") != "text")
      return fault("\"" + std::string(cell("where")) + "\" is not a place of a recipe", "write text, title or chapter",
                   table->file, row.line);
    if (const auto least = cell("least"); !least.empty()) {
      const auto read = std::from_chars(least.data(), least.data() + least.size(), c.least);
      const std::string_view rest(read.ptr, static_cast<std::size_t>(least.data() + least.size() - read.ptr));
      c.for_each_kilogram = rest == "/kg";
      if (read.ec != std::errc{} || !(rest.empty() || c.for_each_kilogram) || !(c.least > 0))
        return fault("\"" + std::string(least) + "\" is no amount", "write a figure over 0, \"2.2/kg\", or nothing",
                     table->file, row.line);
    }
    each("unless", [&](std::string_view part) { c.unless.push_back(words_of(part)); });
    each("also", [&](std::string_view part) { add_also(part, c); });
    out.cautions_.push_back(std::move(c));
    each("words", [&](std::string_view part) { out.add(part, number); });
    each("stuff", [&](std::string_view part) { out.by_stuff_[std::string(part)].push_back(number); });
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

void Cautions::look(std::string_view text, Where where, std::vector<bool>& raised) const {
  std::string held;
  Window window;
  for (std::size_t at = 0; at < text.size();) {
    const auto printed = next_word(text, at, held);
    if (printed.empty()) break;
    const std::size_t begin = at - printed.size();
    if (starts_[start_of(printed)]) {
      auto hit = by_first_.find(printed);
      if (hit == by_first_.end() && printed.back() == 's') hit = by_first_.find(singular(printed));
      if (hit != by_first_.end()) {
        for (const Start& start : hit->second) {
          const Caution& caution = cautions_[start.caution];
          if (caution.where != where || raised[start.caution] || !stands_at(text, at, start.more, true)) continue;
          const std::string_view before = text.substr(window.begin(), begin - window.begin());
          raised[start.caution] = std::none_of(caution.unless.begin(), caution.unless.end(),
                                               [&](const PhraseWords& phrase) { return has_phrase(before, phrase); });
        }
      }
    }
    window.pass(begin);
  }
}

bool Cautions::holds(const Caution& caution, const Recipe& recipe,
                     const std::vector<ComparableIngredient>& ingredients) const {
  if (caution.wants_also) {
    const auto is_one = [](const std::vector<std::string>& list, const std::string& word) {
      return std::find(list.begin(), list.end(), word) != list.end();
    };
    const bool stuff = std::any_of(ingredients.begin(), ingredients.end(), [&](const ComparableIngredient& i) {
      return is_one(caution.also_stuffs, i.printed.name) || is_one(caution.also_kinds, i.kind);
    });
    if (!stuff && std::none_of(caution.also.begin(), caution.also.end(),
                               [&](const PhraseWords& phrase) { return has_phrase(recipe.text, phrase); }))
      return false;
  }
  if (!caution.unheated) return true;
  // What holds a stuff of the household is not eaten.
  if (std::any_of(ingredients.begin(), ingredients.end(),
                  [](const ComparableIngredient& i) { return i.kind == "household"; }))
    return false;
  // A leaven is for the oven or the griddle, whether or not that is said.
  const bool leavened = std::any_of(ingredients.begin(), ingredients.end(),
                                    [](const ComparableIngredient& i) { return i.kind == "leaven"; });
  return !leavened && !cooked(recipe.title) && !cooked(recipe.chapter) && !cooked(recipe.text);
}

bool Cautions::enough(const Caution& caution, const ComparableIngredient& stuff,
                      const std::vector<ComparableIngredient>& ingredients) {
  if (caution.least <= 0) return true;
  if (!stuff.metric || stuff.metric->unit == Amount::Unit::count) return false;
  if (!caution.for_each_kilogram) return stuff.metric->likely >= caution.least;
  // What is told by another ("to each gallon of water") has no share of the meat that could be reckoned here.
  if (stuff.printed.per || stuff.printed.relative) return false;
  double kilograms = 0;
  for (const ComparableIngredient& i : ingredients)
    if ((i.kind == "meat" || i.kind == "fish") && i.metric && i.metric->unit == Amount::Unit::gram)
      kilograms += i.metric->likely / 1000;
  return kilograms > 0 && stuff.metric->likely >= caution.least * kilograms;
}

std::vector<std::size_t> Cautions::places_of(const Recipe& recipe,
                                             const std::vector<ComparableIngredient>& ingredients) const {
  std::vector<bool> raised(cautions_.size());
  look(recipe.dish_title.empty() ? recipe.title : recipe.dish_title, Where::title, raised);
  look(recipe.chapter, Where::chapter, raised);
  look(recipe.text, Where::text, raised);
  for (const ComparableIngredient& i : ingredients) {
    const auto known = by_stuff_.find(i.printed.name);
    if (known == by_stuff_.end()) continue;
    for (const std::uint32_t c : known->second)
      if (enough(cautions_[c], i, ingredients)) raised[c] = true;
  }
  std::vector<std::size_t> out;
  for (std::size_t c = 0; c < cautions_.size(); ++c)
    if (raised[c] && holds(cautions_[c], recipe, ingredients)) out.push_back(c);
  return out;
}

std::vector<std::string> Cautions::of(const Recipe& recipe,
                                      const std::vector<ComparableIngredient>& ingredients) const {
  std::vector<std::string> out;
  for (const std::size_t c : places_of(recipe, ingredients))
    if (std::find(out.begin(), out.end(), cautions_[c].sentence) == out.end()) out.push_back(cautions_[c].sentence);
  return out;
}

}  // namespace gallipot
