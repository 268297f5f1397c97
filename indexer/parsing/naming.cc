// Names the mentions: phrases of the lexicon, parts of things, names of two words, and heads that two names share.
#include "indexer/parsing/naming.h"

#include <algorithm>

namespace gallipot::parsing {
namespace {

constexpr std::uint32_t kStops =
    preposition | conjunction | pronoun | auxiliary | of_word | article | definite | number | or_word | each;

bool imperative(const Row& row, std::uint32_t i) {
  return row.tags[i].operation != kNone && row.lexicon->operations()[row.tags[i].operation].form == "imperative";
}

/// Gives the mention its name, known to the lexicon or put together.
void call(const Row& row, Mention& m, const std::string& name, std::string_view base) {
  m.food = row.lexicon->foodstuff(name);
  m.text = m.food ? m.food->name : name;
  m.base = m.food && !m.food->base.empty() ? m.food->base : std::string(base.empty() ? std::string_view(m.text) : base);
}

void call(Mention& m, const Foodstuff& food) {
  m.food = &food;
  m.text = food.name;
  m.base = food.base.empty() ? food.name : food.base;
}

/// Stuff of which "juice", "rind", "white" are said without naming it again.
bool has_part(std::string_view part, const Mention& whole) {
  if (part == "yolk" || part == "white" || part == "shell") return whole.base == "egg";
  if (part == "juice" || part == "peel")
    return whole.food && whole.food->kind == "fruit" &&
           (part == "juice" || whole.base == "lemon" || whole.base == "orange");
  return false;
}

/// "shell" of "lemon" is no stuff: the parts that a thing of that kind can give.
bool gives(const Foodstuff& food, std::string_view part) {
  const auto& base = food.base.empty() ? food.name : food.base;
  if (part == "yolk" || part == "white" || part == "shell") return base == "egg";
  if (part == "peel") return food.kind == "fruit";
  if (part == "pulp") return food.kind == "fruit" || food.kind == "vegetable" || food.kind == "nut";
  return true;
}

struct Parts {
  std::vector<std::string_view> names;  ///< "peel", "juice"
  std::uint32_t end = 0;                ///< first word after them
  bool plural = false;
};

/// "rind and juice", "white and shell", "yolks". "white" counts only with "of" or another part after it.
Parts parts_at(const Row& row, std::uint32_t i) {
  Parts out;
  out.end = i;
  while (row.is(out.end, gallipot::parsing::part)) {
    out.names.push_back(row.tags[out.end].part);
    ++out.end;
    std::uint32_t next = out.end;
    if (row.key(next) == ",") ++next;
    if (row.key(next) != "and" && row.key(next) != "or" && row.key(next) != "with") break;
    ++next;
    for (int skipped = 0; skipped < 2 && next < row.size() && (row.is(next, definite) || modifier(row, next)) &&
                          !row.is(next, gallipot::parsing::part);
         ++skipped)
      ++next;
    if (!row.is(next, gallipot::parsing::part)) break;
    out.end = next;
  }
  return out;
}

class Namer {
 public:
  Namer(const Row& row, const std::vector<PrintedAmount>& amounts, const std::vector<bool>& taken)
      : row_(row), amounts_(amounts), taken_(taken) {}

  std::vector<Mention> run() {
    for (std::uint32_t i = 0; i < row_.size();) {
      const auto before = i;
      if (!taken_[i] && row_.word(i).kind == Word::Kind::word) {
        if (row_.is(i, gallipot::parsing::part)) i = part_mentions(i);
        if (i == before && row_.tags[i].food != kNone) i = plain_mention(i);
      }
      if (i == before) ++i;
    }
    share_heads();
    return std::move(out_);
  }

 private:
  const PrintedAmount* amount_at(std::uint32_t word) {
    while (next_amount_ < amounts_.size() && amounts_[next_amount_].all.end <= word) ++next_amount_;
    for (auto k = next_amount_; k < amounts_.size() && amounts_[k].all.begin <= word; ++k)
      if (amounts_[k].all.begin == word) return &amounts_[k];
    return nullptr;
  }

  /// The word where stuff begins after "of", past an amount, an article and modifiers; kNone where there is none.
  std::uint32_t stuff_after(std::uint32_t i, const PrintedAmount*& amount) {
    amount = amount_at(i);
    if (amount) i = amount->next;
    for (std::uint32_t n = 0; n < 5 && i < row_.size(); ++n, ++i) {
      if (row_.tags[i].food != kNone && !taken_[i]) return i;
      if (!(modifier(row_, i) || row_.hyphen(i) || (n == 0 && row_.is(i, definite)))) return kNone;
    }
    return kNone;
  }

  void set_amount(Mention& m, const PrintedAmount& a) {
    m.amount = static_cast<std::uint32_t>(&a - amounts_.data());
    m.amount_at = a.all;
    m.quantity = a.quantity;
    m.quantity_at = a.quantity_at;
    m.measure = a.measure;
    m.measure_at = a.measure_at;
    m.note = a.note;
    m.amount_kind =
        a.vague ? AmountKind::vague
                : (a.measure.empty() ? (a.article ? AmountKind::article : AmountKind::counted) : AmountKind::measured);
  }

  /// "the juice of two lemons", "rind and juice of 1", "then the whites". Returns the word after, or i.
  std::uint32_t part_mentions(std::uint32_t i) {
    const auto parts = parts_at(row_, i);
    const bool of = row_.is(parts.end, of_word);
    if (of || counts_egg(parts.end)) {
      const PrintedAmount* amount = nullptr;
      const auto at = stuff_after(of ? parts.end + 1 : parts.end, amount);
      if (at != kNone && gives(*row_.food(at), parts.names.front()) && (amount || !whole_phrase(i, at))) {
        emit(i, parts, row_.food(at), {i, at + row_.tags[at].food_words}, amount);
        return at + row_.tags[at].food_words;
      }
      if (at == kNone && amount && amount->measure.empty() && !amount->article && amount->quantity)
        return refer_back(i, parts, amount, amount->all.end);
      if (at == kNone && row_.is(parts.end + 1, pronoun | definite)) return i;
    } else if (row_.tags[i].food == kNone || row_.tags[i].food_words <= 1) {
      const bool adjective =
          row_.key(i) == "white" || row_.key(i) == "shell" || row_.key(i) == "meat" || row_.key(i) == "skin";
      if (!adjective && (parts.end >= row_.size() || row_.tags[parts.end].food == kNone))
        return refer_back(i, parts, nullptr, parts.end);
    }
    return i;
  }

  /// "yolks 2 eggs", as laconic lists have it.
  bool counts_egg(std::uint32_t i) {
    const auto* amount = amount_at(i);
    if (!amount || !amount->quantity || !amount->measure.empty() || amount->next >= row_.size()) return false;
    const auto* food = row_.food(amount->next);
    return food && food->name == "egg";
  }

  /// The lexicon's own phrase from i reaches as far ("oil of almonds" as one entry).
  bool whole_phrase(std::uint32_t i, std::uint32_t at) const {
    return row_.tags[i].food != kNone && i + row_.tags[i].food_words >= at + row_.tags[at].food_words;
  }

  /// "the yolks and whites of two eggs": eggs.
  static bool whole_egg(const Parts& parts) {
    bool yolk = false, white = false;
    for (const auto part : parts.names) yolk = yolk || part == "yolk", white = white || part == "white";
    return yolk && white;
  }

  void emit(std::uint32_t i, Parts parts, const Foodstuff* whole, Extent name, const PrintedAmount* amount) {
    if (whole_egg(parts)) parts.names = {""};
    for (const auto part : parts.names) {
      Mention m;
      m.name = name;
      m.phrase = {phrase_begin(row_, i, out_.empty() ? 0 : out_.back().name.end), name.end};
      const auto& base = whole->base.empty() ? whole->name : whole->base;
      if (part.empty())
        call(m, *whole);
      else
        call(row_, m, (part == "seed" ? whole->name : base) + " " + std::string(part), base);
      if (amount) set_amount(m, *amount);
      if (m.amount_kind == AmountKind::article) m.amount_kind = AmountKind::counted;
      out_.push_back(std::move(m));
    }
  }

  /// A part whose whole was named before ("the juice of 1", "then the whites").
  std::uint32_t refer_back(std::uint32_t i, const Parts& parts, const PrintedAmount* amount, std::uint32_t end) {
    if (!amount && whole_egg(parts)) return end;  // "two eggs, whites and yolks beaten separately"
    for (std::size_t k = out_.size(); k-- > 0 && out_.size() - k <= 40;) {
      if (!has_part(parts.names.front(), out_[k])) continue;
      const auto whole = out_[k];
      for (const auto part : parts.names) {
        Mention m;
        m.name = {i, end};
        m.phrase = {phrase_begin(row_, i, out_.back().name.end), end};
        call(row_, m, whole.base + " " + std::string(part), whole.base);
        m.back_reference = true;
        if (amount) {
          set_amount(m, *amount);
        } else if (whole.measure.empty() && whole.quantity) {
          m.quantity = whole.quantity;
          m.quantity_at = {};
        }
        out_.push_back(std::move(m));
      }
      return end;
    }
    return i;
  }

  /// A phrase of the lexicon, with a part after it ("lemon juice") or another phrase ("veal broth").
  std::uint32_t plain_mention(std::uint32_t i) {
    Mention m;
    const auto& food = *row_.food(i);
    std::uint32_t end = i + row_.tags[i].food_words;
    call(m, food);
    const std::uint32_t next = row_.hyphen(end) ? end + 1 : end;
    if (next < row_.size() && !taken_[next]) {
      if (const auto* head = row_.food(next); head && row_.word(next).kind == Word::Kind::word) {
        const auto both = food.name + " " + head->name;
        call(row_, m, compound(*head) || row_.lexicon->foodstuff(both) ? both : head->name, head->base);
        end = next + row_.tags[next].food_words;
      } else if (row_.is(next, gallipot::parsing::part) && gives(food, row_.tags[next].part) &&
                 row_.key(next) != "white" && row_.key(next) != "meat") {
        call(row_, m, food.name + " " + std::string(row_.tags[next].part), food.name);
        end = next + 1;
      }
    }
    m.name = {i, end};
    m.phrase = {phrase_begin(row_, i, out_.empty() ? 0 : out_.back().name.end), end};
    out_.push_back(std::move(m));
    return end;
  }

  /// Heads that need what stands before them to say what they are: "veal broth", "currant jelly".
  static bool compound(const Foodstuff& head) {
    static constexpr std::string_view kinds[] = {"sauce", "dish", "drink", "condiment"};
    static constexpr std::string_view names[] = {
        "broth", "stock",     "gravy", "jelly",    "syrup",   "vinegar", "wine", "crumb",  "juice",   "powder", "paste",
        "water", "marmalade", "jam",   "preserve", "essence", "extract", "ball", "brandy", "ketchup", "pickle"};
    return std::find(std::begin(kinds), std::end(kinds), head.kind) != std::end(kinds) ||
           std::find(std::begin(names), std::end(names), head.name) != std::end(names);
  }

  /// "mushroom or walnut ketchup", "lemon and orange peel": the first has the head of the second.
  void share_heads() {
    for (std::size_t k = 0; k + 1 < out_.size(); ++k) {
      auto& first = out_[k];
      const auto& second = out_[k + 1];
      const auto gap = first.name.end;
      if (gap + 1 != second.name.begin || !(row_.is(gap, or_word) || row_.key(gap) == "and")) continue;
      if (!first.food || second.text.size() <= second.base.size() || second.back_reference) continue;
      const auto space = second.text.rfind(' ');
      if (space == std::string::npos || first.text.find(' ') != std::string::npos) continue;
      const auto joint = first.text + second.text.substr(space);
      const auto* food = row_.lexicon->foodstuff(joint);
      if (!food || !second.food || food->kind != second.food->kind) continue;
      call(first, *food);
    }
  }

  const Row& row_;
  const std::vector<PrintedAmount>& amounts_;
  const std::vector<bool>& taken_;
  std::size_t next_amount_ = 0;
  std::vector<Mention> out_;
};

}  // namespace

std::vector<Mention> name_mentions(const Row& row, const std::vector<PrintedAmount>& amounts,
                                   const std::vector<bool>& taken) {
  return Namer(row, amounts, taken).run();
}

bool modifier(const Row& row, std::uint32_t i) {
  if (i >= row.size() || row.word(i).kind != Word::Kind::word) return false;
  if (row.is(i, kStops) && !row.is(i, bend)) return false;
  return !imperative(row, i) || row.tags[i].food != kNone;
}

std::uint32_t phrase_begin(const Row& row, std::uint32_t name_begin, std::uint32_t floor) {
  std::uint32_t begin = name_begin;
  for (std::uint32_t n = 0; n < 5 && begin > floor; ++n) {
    const auto before = begin - 1;
    if (row.hyphen(before) && before > floor) {
      begin = before - 1;
      continue;
    }
    if (row.key(before) == "," && before > floor && modifier(row, before - 1) && begin < name_begin) {
      if (row.tags[before].clause == before - 1) break;
      break;
    }
    if (!modifier(row, before) || row.is(before, vague | little | part)) break;
    begin = before;
  }
  return begin;
}

Mention unknown_mention(const Row& row, Extent words) {
  Mention m;
  m.name = words;
  m.phrase = words;
  std::string name;
  for (std::uint32_t i = words.begin; i < words.end; ++i) {
    const auto key = row.key(i);
    if (row.point(i)) continue;
    const bool last = i + 1 == words.end;
    const bool manner = row.is(i, bend) || (key.size() > 4 && (key.ends_with("ed") || key.ends_with("ly")));
    if (!last && manner) continue;
    if (!name.empty()) name += ' ';
    name += last ? singular(key) : std::string(key);
  }
  m.text = name;
  m.base = name;
  return m;
}

}  // namespace gallipot::parsing
