// Reads changes clause by clause. A clause that names stuffs and no change waits for the next ("the ginger and the mace
// down by a third"); one that names a share and no direction goes the way of the one before.
#include "query/dossier/change.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr const char* how_to_say =
    "say which stuff and by how much, as in \"ginger down by a third\" or \"set the mace to 3 g\"";

bool is_any_of(std::string_view key, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), key) != words.end();
}

struct Named {
  std::string_view word;
  double value;
};
constexpr std::array<Named, 17> numbers = {{{"a", 1},
                                            {"an", 1},
                                            {"one", 1},
                                            {"two", 2},
                                            {"three", 3},
                                            {"four", 4},
                                            {"five", 5},
                                            {"six", 6},
                                            {"seven", 7},
                                            {"eight", 8},
                                            {"nine", 9},
                                            {"ten", 10},
                                            {"twelve", 12},
                                            {"fifteen", 15},
                                            {"twenty", 20},
                                            {"thirty", 30},
                                            {"fifty", 50}}};
constexpr std::array<Named, 18> shares = {{{"half", 0.5},
                                           {"halves", 0.5},
                                           {"third", 1.0 / 3},
                                           {"thirds", 1.0 / 3},
                                           {"quarter", 0.25},
                                           {"quarters", 0.25},
                                           {"fourth", 0.25},
                                           {"fourths", 0.25},
                                           {"fifth", 0.2},
                                           {"fifths", 0.2},
                                           {"sixth", 1.0 / 6},
                                           {"sixths", 1.0 / 6},
                                           {"eighth", 0.125},
                                           {"eighths", 0.125},
                                           {"tenth", 0.1},
                                           {"tenths", 0.1},
                                           {"seventh", 1.0 / 7},
                                           {"ninth", 1.0 / 9}}};
struct Measure {
  std::string_view word;
  const char* unit;
  double times;
};
constexpr std::array<Measure, 14> units = {{{"g", "g", 1},
                                            {"gram", "g", 1},
                                            {"grams", "g", 1},
                                            {"gramme", "g", 1},
                                            {"grammes", "g", 1},
                                            {"kg", "g", 1000},
                                            {"kilo", "g", 1000},
                                            {"kilogram", "g", 1000},
                                            {"ml", "ml", 1},
                                            {"millilitre", "ml", 1},
                                            {"millilitres", "ml", 1},
                                            {"l", "ml", 1000},
                                            {"litre", "ml", 1000},
                                            {"litres", "ml", 1000}}};

template <std::size_t n>
std::optional<double> value_of(const std::array<Named, n>& table, std::string_view word) {
  const auto at = std::find_if(table.begin(), table.end(), [&](const Named& one) { return one.word == word; });
  if (at == table.end()) return std::nullopt;
  return at->value;
}

std::optional<double> number_of(const Word& word) {
  if (word.kind != Word::Kind::number) return value_of(numbers, word.key);
  const std::string key(word.key);
  char* end = nullptr;
  double value = std::strtod(key.c_str(), &end);
  if (*end == '/') {
    const double below = std::strtod(end + 1, &end);
    if (below <= 0) return std::nullopt;
    value /= below;
  }
  return *end == '\0' ? std::optional(value) : std::nullopt;
}

/// What a clause says, before it is known of which stuff.
struct Clause {
  enum class Way : unsigned char { none, down, up, to, out };
  Way way = Way::none;
  std::optional<double> times;   ///< "halve", "double", "twice"
  std::optional<double> share;   ///< "a third", "20 %"
  std::optional<double> amount;  ///< in `unit`
  std::string unit;
  bool again = false, everything = false, little = false;
  std::vector<std::string> stuffs;
};

Clause::Way way_of(std::string_view key) {
  if (is_any_of(key, {"down", "less", "fewer", "reduce", "lower", "cut", "lessen", "off"})) return Clause::Way::down;
  if (is_any_of(key, {"up", "more", "raise", "increase", "extra", "add"})) return Clause::Way::up;
  if (is_any_of(key, {"set", "to", "use", "take", "make"})) return Clause::Way::to;
  if (is_any_of(key, {"omit", "without", "no", "drop", "out"})) return Clause::Way::out;
  return Clause::Way::none;
}

void take_way(Clause& clause, std::string_view key) {
  const auto way = way_of(key);
  if (way == Clause::Way::none) return;
  // "cut to a third", "turn it down to 5 g": what stands after "to" is what it comes to.
  const bool stronger = clause.way == Clause::Way::none || way == Clause::Way::out || key == "to" ||
                        (clause.way == Clause::Way::to && key != "make" && key != "use" && key != "take");
  if (stronger) clause.way = way;
}

void take_times(Clause& clause, std::string_view key) {
  if (is_any_of(key, {"halve", "halved"})) clause.times = 0.5;
  if (is_any_of(key, {"double", "doubled", "twice"})) clause.times = 2;
  if (is_any_of(key, {"treble", "triple", "thrice"})) clause.times = 3;
  if (key == "quartered") clause.times = 0.25;
  if (key == "again") clause.again = true;
  if (is_any_of(key, {"all", "everything", "whole"})) clause.everything = true;
  if (is_any_of(key, {"little", "touch", "bit", "somewhat", "slightly"})) clause.little = true;
}

/// The unit that stands at words[i]; nullptr where none does.
const Measure* unit_at(const Words& words, std::size_t i) {
  if (i >= words.size()) return nullptr;
  const auto at = std::find_if(units.begin(), units.end(), [&](const Measure& m) { return m.word == words[i].key; });
  return at == units.end() ? nullptr : &*at;
}

void set_amount(Clause& clause, double number, const Measure& unit) {
  clause.amount = number * unit.times;
  clause.unit = unit.unit;
}

/// "half", "half a litre" at words[i]; how many words it took.
std::size_t take_share(Clause& clause, const Words& words, std::size_t i) {
  const auto share = value_of(shares, words[i].key);
  if (!share) return 0;
  const std::size_t next = i + 1 < words.size() && is_any_of(words[i + 1].key, {"a", "an"}) ? i + 2 : i + 1;
  if (const Measure* unit = unit_at(words, next)) {
    set_amount(clause, *share, *unit);
    return next + 1 - i;
  }
  clause.share = *share;
  return 1;
}

/// "1/4" at words[i], as it comes out of the tokenizer: three words.
std::optional<double> fraction_at(const Words& words, std::size_t i) {
  if (i + 2 >= words.size() || words[i + 1].key != "/" || words[i + 2].kind != Word::Kind::number) return std::nullopt;
  const auto above = number_of(words[i]), below = number_of(words[i + 2]);
  if (!above || !below || *below <= 0) return std::nullopt;
  return *above / *below;
}

/// "a third", "two thirds", "20 %", "12 g", "three" at words[i]; how many words it took.
std::size_t take_figure(Clause& clause, const Words& words, std::size_t i) {
  if (const std::size_t taken = take_share(clause, words, i); taken > 0) return taken;
  const auto number = number_of(words[i]);
  if (!number) return 0;
  if (const auto fraction = fraction_at(words, i)) {
    clause.share = *fraction;
    return 3;
  }
  if (i + 1 < words.size()) {
    const std::string_view next = words[i + 1].key;
    if (const auto share = value_of(shares, next)) {
      clause.share = *number * *share;
      return 2;
    }
    if (is_any_of(next, {"%", "percent", "per"})) {
      clause.share = *number / 100;
      return next == "per" ? 3 : 2;
    }
    if (next == "times") {
      clause.times = *number;
      return 2;
    }
    if (const Measure* unit = unit_at(words, i + 1)) {
      set_amount(clause, *number, *unit);
      return 2;
    }
  }
  if (words[i].key == "a" || words[i].key == "an") return 0;
  if (*number < 1) {
    clause.share = *number;  // a fraction character
    return 1;
  }
  clause.amount = *number;
  clause.unit = "count";
  return 1;
}

/// "12g" is one word to a cook.
std::string parted(std::string_view words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool digit = words[i] >= '0' && words[i] <= '9';
    out += words[i];
    if (digit && i + 1 < words.size() && ((words[i + 1] >= 'a' && words[i + 1] <= 'z') || words[i + 1] == '%'))
      out += ' ';
  }
  return out;
}

/// The stuff of the trial that the printed name stands for.
std::string in_trial(const Foodstuff& stuff, const std::vector<TrialAmount>& amounts, const Lexicon& lexicon) {
  for (const TrialAmount& one : amounts)
    if (one.stuff == stuff.name) return one.stuff;
  for (const TrialAmount& one : amounts) {
    const Foodstuff* known = lexicon.foodstuff(one.stuff);
    if (known && (known->base == stuff.name ||
                  (!stuff.base.empty() && (known->name == stuff.base || known->base == stuff.base))))
      return one.stuff;
  }
  return stuff.name;
}

class ChangeReader {
 public:
  ChangeReader(const std::vector<TrialAmount>& amounts, const Lexicon& lexicon)
      : amounts_(amounts), lexicon_(lexicon) {}

  Outcome<std::vector<Change>> read(std::string_view text) {
    for (const std::string& clause : clauses(text))
      if (auto done = take(clause); !done) return tl::unexpected(done.error());
    if (!waiting_.empty())
      return fault(
          fmt::format("\"{}\" does not say what is to be done with the {}", text.substr(0, 200), waiting_.front()),
          how_to_say);
    if (changes_.empty()) return fault("nothing is said of what to change", how_to_say);
    return std::move(changes_);
  }

 private:
  static std::vector<std::string> clauses(std::string_view text) {
    std::vector<std::string> out(1);
    const std::string spaced = parted(text);
    const Words words(spaced);
    std::uint32_t from = 0;
    const auto part = [&](std::uint32_t to, std::uint32_t next) {
      out.push_back(spaced.substr(from, to - from));
      from = next;
    };
    for (const Word& word : words.all()) {
      const bool ends = word.kind == Word::Kind::point ? is_any_of(word.key, {",", ";", ".", ":"})
                                                       : is_any_of(word.key, {"and", "but", "then"});
      if (ends) part(word.span.begin, word.span.end);
    }
    part(static_cast<std::uint32_t>(spaced.size()), 0);
    std::erase_if(out, [](const std::string& s) { return s.find_first_not_of(" \t\r\n") == std::string::npos; });
    return out;
  }

  Clause read_clause(const Words& words) const {
    Clause clause;
    for (std::size_t i = 0; i < words.size();) {
      const auto stuff = lexicon_.foodstuff_phrases().longest(words.all(), i);
      const bool speaks = way_of(words[i].key) != Clause::Way::none;
      if (stuff.words > 0 && !speaks) {
        clause.stuffs.push_back(in_trial(lexicon_.foodstuffs()[stuff.value], amounts_, lexicon_));
        i += stuff.words;
        continue;
      }
      if (const std::size_t taken = take_figure(clause, words, i); taken > 0) {
        i += taken;
        continue;
      }
      take_way(clause, words[i].key);
      take_times(clause, words[i].key);
      ++i;
    }
    return clause;
  }

  Outcome<bool> take(const std::string& text) {
    const Words words(text);
    Clause clause = read_clause(words);
    std::vector<std::string> stuffs = waiting_;
    stuffs.insert(stuffs.end(), clause.stuffs.begin(), clause.stuffs.end());
    const bool figure = clause.share || clause.amount || clause.times;
    if (!figure && clause.way == Clause::Way::none && !clause.little) {
      // "halve the salt and the sugar": stuffs alone after a change go the way of it.
      if (!clause.stuffs.empty() && last_ && last_leads_) {
        for (const std::string& stuff : clause.stuffs) add(*last_, stuff, text);
        return true;
      }
      if (clause.stuffs.empty()) return unclear(text);
      waiting_ = std::move(stuffs);
      return true;
    }
    if (clause.everything && stuffs.empty()) stuffs.emplace_back();
    if (stuffs.empty()) return unclear(text);
    if (clause.way == Clause::Way::none && last_ && clause.share) clause.way = last_way_;
    auto change = meaning(clause, text);
    if (!change) return tl::unexpected(change.error());
    for (const std::string& stuff : stuffs)
      if (auto known = is_there(stuff, *change); !known) return known;
    for (const std::string& stuff : stuffs) add(*change, stuff, text);
    last_way_ = clause.way;
    last_ = *change;
    last_leads_ = change_leads(words);
    waiting_.clear();
    return true;
  }

  /// Whether the clause says what is to be done before it names the stuff, so that more stuffs may follow.
  static bool change_leads(const Words& words) {
    if (words.size() == 0) return false;
    const std::string_view first = words[0].key;
    return is_any_of(
        first, {"halve", "double", "treble", "triple", "omit", "drop", "leave", "without", "no", "twice", "half"});
  }

  static Outcome<Change> meaning(const Clause& clause, const std::string& text) {
    Change out;
    if (clause.way == Clause::Way::out) {
      out.figure = 0;
      return out;
    }
    if (clause.times) {
      out.figure = *clause.times;
      return out;
    }
    if (clause.amount) {
      out.unit = clause.unit;
      out.kind =
          clause.way == Clause::Way::down || clause.way == Clause::Way::up ? Change::Kind::add : Change::Kind::set;
      out.figure = clause.way == Clause::Way::down ? -*clause.amount : *clause.amount;
      return out;
    }
    if (!clause.share)
      return fault(fmt::format("\"{}\" does not say by how much", text),
                   "give a share (\"by a third\", \"by 20 %\") or a weight (\"to 12 g\")");
    if (clause.again || clause.way == Clause::Way::up)
      out.figure = 1 + *clause.share;
    else
      out.figure = clause.way == Clause::Way::down ? 1 - *clause.share : *clause.share;
    if (out.figure < 0)
      return fault(fmt::format("\"{}\" takes away more than all", text), "take away a part, or leave it out");
    return out;
  }

  Outcome<bool> is_there(const std::string& stuff, const Change& change) const {
    const auto has = [&](const TrialAmount& one) { return one.stuff == stuff; };
    const bool may_be_new = change.kind == Change::Kind::set || (change.kind == Change::Kind::add && change.figure > 0);
    if (stuff.empty() || may_be_new || std::any_of(amounts_.begin(), amounts_.end(), has)) return true;
    std::string there;
    for (const TrialAmount& one : amounts_) there += (there.empty() ? "" : ", ") + one.stuff;
    return fault(fmt::format("the trial before has no {}", stuff),
                 there.empty() ? "add it with an amount" : "take one of: " + there.substr(0, 200));
  }

  static tl::unexpected<Fault> unclear(const std::string& text) {
    return fault(fmt::format("\"{}\" names no stuff of the recipe", text), how_to_say);
  }

  void add(Change change, const std::string& stuff, const std::string& text) {
    change.stuff = stuff;
    change.words = text;
    changes_.push_back(std::move(change));
  }

  const std::vector<TrialAmount>& amounts_;
  const Lexicon& lexicon_;
  std::vector<Change> changes_;
  std::vector<std::string> waiting_;
  std::optional<Change> last_;
  Clause::Way last_way_ = Clause::Way::none;
  bool last_leads_ = false;
};

}  // namespace

Outcome<std::vector<Change>> read_changes(std::string_view words, const std::vector<TrialAmount>& amounts,
                                          const Lexicon& lexicon) {
  return ChangeReader(amounts, lexicon).read(words);
}

}  // namespace gallipot
