// Attaches amounts to mentions: forwards ("a pound of fine sugar"), backwards ("sugar, one pound"), jointly ("an ounce
// each of mace and cloves"), and by ellipsis ("three spoonfuls of ginger, one of cream of tartar").
#include "indexer/parsing/mentions.h"

#include <algorithm>

#include "indexer/parsing/naming.h"

namespace gallipot::parsing {
namespace {

/// Stuff that is told by the piece: "a lemon" is one lemon, "a rich gravy" is no number.
bool counted_stuff(const Foodstuff* food) {
  if (!food) return false;
  static constexpr std::string_view kinds[] = {"egg", "fruit", "vegetable", "fish", "meat",
                                               "nut", "spice", "herb",      "bread"};
  return std::find(std::begin(kinds), std::end(kinds), food->kind) != std::end(kinds);
}

class Attacher {
 public:
  Attacher(const Row& row, const std::vector<PrintedAmount>& amounts) : row_(row), amounts_(amounts) {}

  std::vector<Mention> run() {
    taken_.resize(row_.size());
    for (const auto& a : amounts_)
      if (a.measure_at.begin < a.measure_at.end)
        for (auto i = a.measure_at.begin; i < a.measure_at.end; ++i) taken_[i] = true;
    mentions_ = name_mentions(row_, amounts_, taken_);
    used_.resize(amounts_.size());
    for (const auto& m : mentions_)
      if (m.amount != kNone) used_[m.amount] = true;
    forwards();
    backwards();
    weighing();
    size_of();
    std::erase_if(mentions_, [&](const Mention& m) { return compared(m); });
    return std::move(mentions_);
  }

 private:
  /// The mention whose phrase begins at word i or after modifiers from there; kNone where other words come first.
  std::uint32_t mention_from(std::uint32_t i, std::size_t& hint, bool through_of) const {
    while (hint < mentions_.size() && mentions_[hint].name.end <= i) ++hint;
    if (hint >= mentions_.size()) return kNone;
    const auto& m = mentions_[hint];
    if (m.name.begin < i || m.name.begin > i + 12) return kNone;
    std::uint32_t words = 0;
    bool after_modifier = false;
    for (std::uint32_t j = i; j < m.name.begin; ++j) {
      if (row_.hyphen(j) || (j == i && row_.key(j) == "either")) continue;
      if (row_.key(j) == "," || row_.key(j) == "and") {
        if (!after_modifier || !modifier(row_, j + 1) || row_.key(j - 1).empty()) return kNone;
        continue;
      }
      const bool the = row_.is(j, definite) && (j == i || row_.is(j - 1, of_word));
      const bool best_of = through_of && row_.is(j, of_word) && j > i;
      if (!the && !best_of && !modifier(row_, j)) return kNone;
      if (row_.is(j, article) && j != i) return kNone;
      after_modifier = !the && !best_of;
      if (++words > 7) return kNone;
    }
    return static_cast<std::uint32_t>(hint);
  }

  void set(Mention& m, std::uint32_t k) {
    const auto& a = amounts_[k];
    used_[k] = true;
    m.amount = k;
    m.amount_at = a.all;
    m.quantity = a.quantity;
    m.quantity_at = a.quantity_at;
    m.measure = a.measure;
    m.measure_at = a.measure_at;
    m.note = a.note;
    if (a.partial) {
      m.amount_kind = AmountKind::partial;
      m.quantity.reset();
    } else if (a.vague) {
      m.amount_kind = a.measure.empty() ? AmountKind::vague : AmountKind::vague_measured;
    } else if (!a.measure.empty()) {
      m.amount_kind = AmountKind::measured;
    } else if (a.article) {
      m.amount_kind = AmountKind::article;
      if (!counted_stuff(m.food)) m.quantity.reset();
      const auto after = m.name.end;  // "a potato or two"
      if (m.quantity && row_.is(after, or_word) && row_.is(after + 1, number) &&
          (row_.point(after + 2) || after + 2 >= row_.size())) {
        m.quantity->high = row_.tags[after + 1].value;
        m.amount_kind = AmountKind::counted;
      }
    } else {
      m.amount_kind = AmountKind::counted;
    }
  }

  /// "three table-spoonfuls of ginger, ONE OF cream of tartar": the measure of the amount before in the sentence.
  bool elliptical(std::uint32_t k) const {
    const auto& a = amounts_[k];
    if (a.ditto || a.elliptical) return true;
    return a.measure.empty() && a.of && !a.article && !a.vague && !a.partial && a.quantity &&
           !row_.is(a.next, definite | pronoun) && !row_.is(a.all.end - 1, multiplier);
  }

  void borrow_measure(Mention& m, std::uint32_t k) const {
    const auto sentence = row_.tags[amounts_[k].all.begin].sentence;
    auto line = row_.tags[amounts_[k].all.begin].line;
    for (std::uint32_t j = k; j-- > 0;) {
      const auto& at = row_.tags[amounts_[j].all.begin];
      // a ditto mark points to the line above, which may hold another
      if (at.sentence != sentence && !(amounts_[k].ditto && line - at.line <= 1)) return;
      if (amounts_[j].ditto) line = at.line;
      if (amounts_[j].measure.empty()) continue;
      m.measure = amounts_[j].measure;
      m.amount_kind = AmountKind::measured;
      return;
    }
  }

  /// Things joined to `first` by "and" or commas take the same amount: "each of mace, cloves and allspice".
  void share(std::uint32_t first, std::uint32_t k, bool each_word) {
    for (std::uint32_t j = first + 1; j < mentions_.size(); ++j) {
      auto& m = mentions_[j];
      if (m.amount != kNone || m.quantity) break;
      const auto from = mentions_[j - 1].name.end;
      bool joined = m.phrase.begin > from;
      for (auto i = from; i < m.phrase.begin && joined; ++i)
        joined = row_.key(i) == "," || row_.key(i) == "and" || row_.is(i, of_word) || row_.hyphen(i);
      if (!joined) break;
      set(m, k);
      m.amount_kind = AmountKind::joint;
      if (!each_word && row_.key(from) == "and") break;
    }
  }

  void forwards() {
    std::size_t hint = 0;
    for (std::uint32_t k = 0; k < amounts_.size(); ++k) {
      if (used_[k]) continue;
      const auto& a = amounts_[k];
      std::size_t at = hint;
      const auto found = mention_from(a.next, at, !a.measure.empty());
      hint = at;
      if (found == kNone) {
        if (!give_to_pronoun(k)) name_unknown(k, at);
        continue;
      }
      auto& m = mentions_[found];
      if (m.amount != kNone) continue;
      set(m, k);
      if (elliptical(k)) borrow_measure(m, k);
      // parts that were read together share what the first got
      for (auto j = found + 1; j < mentions_.size() && mentions_[j].name.begin == m.name.begin; ++j)
        set(mentions_[j], k);
      if (a.each)
        share(found, k, true);
      else if (a.measure == "bunch" || a.measure == "faggot" || a.measure == "bundle" || a.measure == "bouquet")
        share(found, k, false);
    }
  }

  /// "Gather walnuts when green; take a peck OF THEM": the last stuff named in the plural, else the title's.
  bool give_to_pronoun(std::uint32_t k) {
    const auto& a = amounts_[k];
    if (!a.of || !a.quantity || a.vague || a.partial || a.measure.empty() || !takes(a.all.begin)) return false;
    const auto key = row_.key(a.next);
    if (key != "them" && key != "these" && key != "those") return false;
    for (std::uint32_t j = static_cast<std::uint32_t>(mentions_.size()); j-- > 0;) {
      auto& m = mentions_[j];
      if (m.name.begin >= a.all.begin) continue;
      const auto last = row_.key(m.name.end - 1);
      if (singular(last) == last) continue;
      if (m.amount != kNone || m.quantity) return false;
      set(m, k);
      return true;
    }
    return give_to_title(k);
  }

  /// The title's last stuff, as told by the pronoun after amount `k`.
  bool give_to_title(std::uint32_t k) {
    const Words title(row_.recipe->dish_title.empty() ? row_.recipe->title : row_.recipe->dish_title);
    const Foodstuff* food = nullptr;
    for (std::size_t i = 0; i < title.size(); ++i) {
      const auto match = row_.lexicon->foodstuff_phrases().longest(title.all(), i);
      if (match.words) food = &row_.lexicon->foodstuffs()[match.value];
    }
    if (!food) return false;
    const auto at = amounts_[k].next;
    Mention m;
    m.name = m.phrase = {at, at + 1};
    m.food = food;
    m.text = food->name;
    m.base = food->base.empty() ? food->name : food->base;
    const auto place =
        std::find_if(mentions_.begin(), mentions_.end(), [&](const Mention& o) { return o.name.begin >= at; });
    set(*mentions_.insert(place, std::move(m)), k);
    return true;
  }

  /// An order to fetch stuff stands right before word i.
  bool takes(std::uint32_t i) const {
    static constexpr std::string_view verbs[] = {"take", "get", "gather", "have", "procure", "choose", "pick", "weigh"};
    const auto verb = [&](std::uint32_t at) {
      return std::find(std::begin(verbs), std::end(verbs), row_.key(at)) != std::end(verbs);
    };
    return (i >= 1 && verb(i - 1)) || (i >= 2 && verb(i - 2) && row_.is(i - 1, about));
  }

  /// "2 cups of OLEO": stuff that no table knows, told by an amount.
  void name_unknown(std::uint32_t k, std::size_t at) {
    const auto& a = amounts_[k];
    if (a.measure.empty() || a.vague || a.container) return;
    const bool listed = row_.listed[row_.tags[a.all.begin].line];
    if (!a.of && !listed) return;
    std::uint32_t i = a.next;
    if (row_.is(i, definite | pronoun | article)) return;
    const auto stop = at < mentions_.size() ? mentions_[at].phrase.begin : row_.size();
    std::uint32_t end = i;
    while (end < stop && end < i + 5 && (modifier(row_, end) || row_.hyphen(end))) ++end;
    if (end == i || row_.tags[end - 1].measure != kNone) return;
    if (row_.key(end - 1).ends_with("ly") || row_.key(end - 1).size() < 3) return;
    auto m = unknown_mention(row_, {i, end});
    if (m.text.empty()) return;
    const auto place =
        std::find_if(mentions_.begin(), mentions_.end(), [&](const Mention& o) { return o.name.begin >= i; });
    const auto here = mentions_.insert(place, std::move(m));
    set(*here, k);
  }

  /// "sugar, one pound", "Butter--2 oz.", "mace and cloves, of each a drachm".
  void backwards() {
    for (std::uint32_t k = 0; k < amounts_.size(); ++k) {
      if (used_[k]) continue;
      const auto& a = amounts_[k];
      if (a.vague || a.partial || !a.quantity || (a.of && !a.each)) continue;
      if (a.measure.empty() && !a.ditto && (a.article || !row_.listed[row_.tags[a.all.begin].line])) continue;
      std::uint32_t before = a.all.begin;
      bool each = a.each;
      if (!a.measure.empty() && row_.key(a.all.end) == ")") before = opened(before);  // "chocolate (one ounce)"
      while (before > 0 && (row_.key(before - 1) == "," || row_.key(before - 1) == ":" ||
                            row_.key(before - 1) == "--" || row_.is(before - 1, about | each_roles()) ||
                            (row_.is(before - 1, of_word) && row_.is(before, each_roles()))))
        --before;
      for (std::uint32_t j = 0; j < mentions_.size(); ++j) {
        auto& m = mentions_[j];
        if (!closes_at(m, before) || m.amount != kNone) continue;
        set(m, k);
        if (a.ditto) borrow_measure(m, k);
        for (std::uint32_t i = j; each && i-- > 0 && mentions_[i].amount == kNone &&
                                  mentions_[i].name.end + 2 >= mentions_[i + 1].phrase.begin;) {
          set(mentions_[i], k);
          mentions_[i].amount_kind = AmountKind::joint;
        }
        break;
      }
    }
  }

  /// The place of a parenthesis that opens right before word i, what bends the number left out; else i.
  std::uint32_t opened(std::uint32_t i) const {
    auto at = i;
    while (at > 0 && row_.is(at - 1, about)) --at;
    return at > 0 && row_.key(at - 1) == "(" ? at - 1 : i;
  }

  /// "a round of beef WEIGHING TWENTY POUNDS", "as much cocoa-nut as WILL WEIGH A POUND": the weight is the amount
  /// where no other but a piece is told. "Two onions weighing an ounce" stay two.
  void weighing() {
    for (std::uint32_t k = 0; k < amounts_.size(); ++k) {
      const auto& a = amounts_[k];
      if (used_[k] || a.vague || a.partial || a.each || !a.quantity || !weight(a)) continue;
      auto verb = a.all.begin;
      while (verb > 0 && row_.is(verb - 1, about)) --verb;
      if (verb == 0) continue;
      const auto key = row_.key(--verb);
      if (key != "weighing" && key != "weighs" && key != "weigh") continue;
      for (std::uint32_t j = static_cast<std::uint32_t>(mentions_.size()); j-- > 0;) {
        auto& m = mentions_[j];
        if (m.name.end > verb) continue;
        const bool near = verb - m.name.end <= 6 && row_.tags[verb].sentence == row_.tags[m.name.begin].sentence;
        if (near && (m.amount == kNone || piece(m))) set(m, k);
        break;
      }
    }
  }
  bool weight(const PrintedAmount& a) const {
    return !a.measure_at.empty() && row_.measure(a.measure_at.begin) &&
           row_.measure(a.measure_at.begin)->kind == "weight";
  }
  bool piece(const Mention& m) const {
    return !m.measure_at.empty() && row_.measure(m.measure_at.begin) &&
           row_.measure(m.measure_at.begin)->kind == "piece";
  }

  /// The mention's phrase ends at word `at`, participles after the name included ("nutmeg, grated | a quarter of an
  /// ounce").
  bool closes_at(const Mention& m, std::uint32_t at) const {
    if (m.name.end > at || at > m.name.end + 5) return false;
    for (auto i = m.name.end; i < at; ++i) {
      const bool participle =
          modifier(row_, i) && (row_.key(i).ends_with("ed") || row_.key(i).ends_with("'d") ||
                                row_.key(i).ends_with("ly") || row_.key(i) == "fine" || row_.key(i) == "ground");
      if (!participle && row_.key(i) != "," && row_.key(i) != "and") return false;
    }
    return true;
  }

  static constexpr std::uint32_t each_roles() { return gallipot::parsing::each; }

  /// It is only what a size is told by: "the size of an EGG", "as big as a NUTMEG".
  bool compared(const Mention& m) const {
    auto i = m.name.begin;
    for (int n = 0; n < 3 && i > 0 && (modifier(row_, i - 1) || row_.is(i - 1, article | number) || row_.hyphen(i - 1));
         ++n)
      --i;
    if (i < 2) return false;
    if (row_.is(i - 1, of_word))
      return row_.key(i - 2) == "size" || row_.key(i - 2) == "bigness" || row_.key(i - 2) == "thickness";
    if (row_.key(i - 1) != "as" || i < 3) return false;
    const auto how = row_.key(i - 2);
    return row_.key(i - 3) == "as" && (how == "big" || how == "large" || how == "thick" || how == "thin");
  }

  /// "butter the SIZE OF AN EGG", "a piece of butter AS BIG AS a walnut".
  void size_of() {
    for (std::uint32_t j = 0; j < mentions_.size(); ++j) {
      auto i = mentions_[j].name.end;
      if (row_.key(i) == ",") ++i;
      if (row_.is(i, preposition) && row_.key(i) != "as") ++i;
      if (row_.key(i) == "about") ++i;
      std::uint32_t thing = kNone;
      const auto at = row_.key(i) == "the" || row_.key(i) == "a" ? i + 1 : i;
      if ((row_.key(at) == "size" || row_.key(at) == "bigness") && row_.is(at + 1, of_word)) thing = at + 2;
      if (row_.key(i) == "as" && (row_.key(i + 1) == "big" || row_.key(i + 1) == "large") && row_.key(i + 2) == "as")
        thing = i + 3;
      if (thing == kNone || thing + 1 >= row_.size()) continue;
      if (!row_.is(thing, article) && !(row_.is(thing, number))) continue;
      auto end = thing + 2;
      if (end < row_.size() && row_.word(end).kind == Word::Kind::word && row_.word(end - 1).key.ends_with("'s")) ++end;
      auto& m = mentions_[j];
      if (m.amount_kind == AmountKind::counted) continue;  // "two onions the size of an egg" are two
      if (m.amount == kNone || m.measure == "piece" || m.measure == "lump" || m.measure == "bit" ||
          m.measure == "knob" || m.measure == "ball") {
        if (!m.quantity) m.quantity = Range{1, 1};
        m.measure = "size of " + std::string(row_.key(thing)) + " " + std::string(row_.printed({thing + 1, end}));
        m.measure_at = {i, end};
        m.amount_kind = AmountKind::measured;
        if (m.amount_at.empty()) m.amount_at = {i, end};
      }
    }
  }

  const Row& row_;
  const std::vector<PrintedAmount>& amounts_;
  std::vector<bool> taken_, used_;
  std::vector<Mention> mentions_;
};

}  // namespace

std::vector<Mention> find_mentions(const Row& row, const std::vector<PrintedAmount>& amounts) {
  return Attacher(row, amounts).run();
}

}  // namespace gallipot::parsing
