// Sums mentions, ties amounts told by another stuff to it, and walks the ties.
#include "query/comparing/holdings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "indexer/measures/amount.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr std::size_t longest_chain = 8;  // ties followed before a ring of them is given up

std::string_view last_word(std::string_view name) {
  const auto space = name.rfind(' ');
  return space == std::string_view::npos ? name : name.substr(space + 1);
}

/// A figure as a cook writes it in a clause: "2", "0.5".
std::string plain(double value) { return fmt::format("{:.4g}", value); }

/// The kinds of foodstuff that a general word stands for: "fruit" is a fruit, "meat" a meat, a fish or a fowl.
bool stands_for(std::string_view word, std::string_view kind) {
  if (word == kind) return true;
  if (word == "fruit") return kind == "vegetable";  // tomatoes and pumpkins are fruit to the preserver
  return word == "goods" && (kind == "fruit" || kind == "vegetable" || kind == "meat" || kind == "fish");
}

class Reader {
 public:
  Reader(const ComparableRecipe& recipe, const Yardstick& yardstick, const Subject& subject)
      : recipe_(recipe), yardstick_(yardstick), subject_(subject) {}

  std::vector<Holding> read() {
    for (std::size_t i = 0; i < recipe_.ingredients.size(); ++i) mention(i);
    const std::size_t listed = holdings_.size();
    for (std::size_t h = 0; h < listed; ++h) amount_of(h);
    for (const auto& [h, tie] : by_yield_)
      if (!holdings_[h].amount && !holdings_[h].tie) holdings_[h].tie = tie;
    return std::move(holdings_);
  }

 private:
  const Ingredient& printed(std::size_t i) const { return recipe_.ingredients[i].printed; }

  std::optional<Amount> weigh(double low, double high, std::string_view measure, std::string_view note,
                              std::string_view of) const {
    return yardstick_.weigh({low, high, measure, note, of, recipe_.year, recipe_.country, recipe_.book});
  }

  /// "When cold, bottle the mead": the dish, not a part of it.
  bool is_the_dish(std::size_t i) const {
    const Dish& dish = recipe_.dish;
    if (printed(i).quantity || dish.kind.empty()) return false;
    if (printed(i).name == dish.base + " " + dish.kind) return true;
    static constexpr std::array<const char*, 4> made{"dish", "sauce", "drink", "liquor"};
    return printed(i).name == dish.kind &&
           std::find(made.begin(), made.end(), recipe_.ingredients[i].kind) != made.end();
  }

  /// The stuff that a mention is compared under.
  const std::string& stuff_of(std::size_t i) const {
    const std::string& name = printed(i).name;
    if (subject_.kind == "fruit" && (name == "fruit" || name == "berry")) return subject_.stuff;
    return yardstick_.stuff(name);
  }

  void mention(std::size_t i) {
    if (is_the_dish(i)) return;
    const std::string& name = stuff_of(i);
    auto at = place_of(holdings_, name);
    if (!at) {
      at = holdings_.size();
      holdings_.emplace_back();
      holdings_.back().name = name;
      holdings_.back().kind = recipe_.ingredients[i].kind;
    }
    holdings_[*at].mentions.push_back(i);
  }

  /// Sums what is firm; an optional mention or one that stands for another counts only where nothing firm does.
  void amount_of(std::size_t h) {
    const std::vector<std::size_t> mentions = holdings_[h].mentions;
    const auto firm = [&](std::size_t i) { return !printed(i).optional && printed(i).alternative_of.empty(); };
    const bool any_firm = std::any_of(mentions.begin(), mentions.end(), firm);
    std::optional<Amount> total;
    std::optional<Tie> tie;
    bool bare = false;
    std::string how;
    for (const std::size_t i : mentions) {
      if (any_firm && !firm(i)) continue;
      if (!any_firm) {
        // An alternative to itself ("a teaspoon instead of a tablespoon") is one amount or the other, not both.
        if (printed(i).optional) holdings_[h].optional = true;
        if (const auto& other = yardstick_.stuff(printed(i).alternative_of); other != holdings_[h].name)
          holdings_[h].alternative_of = other;
      }
      Told told = tell(i, h);
      if (told.amount) {
        if (!total) {
          total = told.amount;
          how = told.how;
        } else if (total->unit == told.amount->unit && any_firm) {
          total = sum(*total, *told.amount);
        } else {
          bare = true;  // grams and a count do not add up
        }
      } else if (told.tie) {
        if (!tie)
          tie = told.tie;
        else if (tie->to == told.tie->to && tie->part.unit == told.tie->part.unit &&
                 tie->whole.unit == told.tie->whole.unit)
          tie = Tie{tie->to, sum(ratio(tie->part, tie->whole, 1), ratio(told.tie->part, told.tie->whole, 1)),
                    Amount{tie->whole.unit, 1, 1, 1, ""}, tie->how};
        else
          bare = true;
      } else {
        bare = true;
      }
    }
    Holding& holding = holdings_[h];
    holding.more = bare && (total || tie);
    if (total && tie) holding.more = true;  // the firm amount is shown; what is told by another comes on top
    holding.amount = total;
    holding.how = how;
    if (!total) holding.tie = tie;
  }

  struct Told {
    std::optional<Amount> amount;
    std::optional<Tie> tie;
    std::string how;
  };

  /// What mention `i` of holding `h` says.
  Told tell(std::size_t i, std::size_t h) {
    const ComparableIngredient& ingredient = recipe_.ingredients[i];
    const Ingredient& words = ingredient.printed;
    if (words.relative) return tell_relative(words, h);
    if (!ingredient.metric) return {};
    if (words.per) return tell_per(*words.per, *ingredient.metric, h);
    return {ingredient.metric, std::nullopt, {}};
  }

  /// So much for so much of another.
  Told tell_per(const PerUnit& per, const Amount& part, std::size_t h) {
    const auto to = referent(per.of, h);
    if (!to || *to == h) return {};
    const auto whole = weigh(per.quantity, per.quantity, per.measure, {}, holdings_[*to].name);
    if (!whole || whole->low <= 0) return {};
    std::string how = "per ";
    if (per.quantity != 1) how += plain(per.quantity) + " ";
    if (!per.measure.empty()) how += per.measure + (per.of.empty() ? ", taken to be of " : " of ");
    how += per.of.empty() ? holdings_[*to].name : per.of;
    return {std::nullopt, Tie{*to, part, *whole, how}, how};
  }

  Told tell_relative(const Ingredient& words, std::size_t h) {
    const Relative& relative = *words.relative;
    const auto to = referent(relative.to, h);
    if (relative.to.empty()) return {};
    const std::string& named = relative.to;
    if (relative.by == Relative::By::weight) {
      const std::string how = relative.factor == 1 ? "the weight of the " + named
                                                   : plain(relative.factor) + " times the weight of the " + named;
      if (counts_items(words, to)) {
        const auto items = weigh(relative.factor, relative.factor, {}, {}, to ? holdings_[*to].name : relative.to);
        if (!items || items->unit != Amount::Unit::gram) return {};
        return {items, std::nullopt, fmt::format("the weight of {} {}", plain(relative.factor), named)};
      }
      if (!to || *to == h) return {};
      const Amount factor{Amount::Unit::gram, relative.factor, relative.factor, relative.factor, "weight for weight"};
      return {std::nullopt, Tie{*to, factor, Amount{Amount::Unit::gram, 1, 1, 1, ""}, how}, how};
    }
    if (!to || *to == h || holdings_[*to].mentions.empty()) return {};
    return tell_as_much(relative.factor, *to, h, 0);
  }

  /// "As much" by measure: the printed amount of the other, taken of this stuff.
  Told tell_as_much(double factor, std::size_t to, std::size_t h, std::size_t depth) {
    if (depth > longest_chain) return {};
    for (const std::size_t i : holdings_[to].mentions) {
      const Ingredient& other = printed(i);
      const std::string how = factor == 1 ? "as much as of " + holdings_[to].name
                                          : plain(factor) + " times as much as of " + holdings_[to].name;
      if (other.relative && other.relative->by == Relative::By::measure) {
        const auto next = referent(other.relative->to, to);
        if (!next || *next == to || *next == h) return {};
        Told told = tell_as_much(factor * other.relative->factor, *next, h, depth + 1);
        told.how = how;
        return told;
      }
      if (!other.quantity) continue;
      const auto amount = weigh(other.quantity->low * factor, other.quantity->high * factor, other.measure,
                                other.measure_note, holdings_[h].name);
      if (!amount) return {};
      if (!other.per) return {amount, std::nullopt, how};
      return tell_per(*other.per, *amount, h);
    }
    return {};
  }

  /// Whether "the weight of N things" counts the things ("of six eggs") rather than multiplies all of them.
  bool counts_items(const Ingredient& words, std::optional<std::size_t> to) const {
    const double factor = words.relative->factor;
    if (factor < 1 || std::floor(factor) != factor) return false;
    if (to && !holdings_[*to].mentions.empty()) {
      const Ingredient& other = printed(holdings_[*to].mentions.front());
      if (!other.measure.empty() || !other.quantity) return false;
      if (factor >= 3) return true;
    }
    // "weight of an egg", "weight of two eggs": a number or article stands between "of" and the thing.
    const std::string_view text = words.span.in(recipe_.recipe.text);
    const Words row(text);
    for (std::size_t i = 0; i + 2 < row.size(); ++i) {
      if (row[i].key != "weight" || row[i + 1].key != "of") continue;
      const std::string_view next = row[i + 2].key;
      static constexpr std::string_view numbers[] = {"a",   "an",    "one",   "two",  "three", "four",  "five",
                                                     "six", "seven", "eight", "nine", "ten",   "twelve"};
      return row[i + 2].kind == Word::Kind::number ||
             std::find(std::begin(numbers), std::end(numbers), next) != std::end(numbers);
    }
    return !to && factor >= 3;
  }

  /// The holding that a word of reference means; made where it names something drawn from a holding or unlisted.
  std::optional<std::size_t> referent(const std::string& word, std::size_t asking) {
    std::string name = yardstick_.stuff(word);
    if (name.empty()) return of_nothing_named(asking);
    if (const auto at = place_of(holdings_, name); at && !bare_product(*at)) return at;
    if (const auto at = general(name, asking)) return at;
    const std::string_view product = last_word(name);
    if (yardstick_.is_product(product)) return product_of(std::string(product), name, asking);
    // "the plums" of a recipe that lists "damson plum", "the berries" of one that lists "strawberry".
    for (std::size_t h = 0; h < holdings_.size(); ++h)
      if (h != asking && !holdings_[h].mentions.empty() &&
          (last_word(holdings_[h].name) == name || last_word(name) == holdings_[h].name))
        return h;
    return unlisted(std::move(name), {});
  }

  /// Whether a listed stuff is drawn from another and named without any amount: "strain the juice".
  bool bare_product(std::size_t h) const {
    const auto& mentions = holdings_[h].mentions;
    return yardstick_.is_product(last_word(holdings_[h].name)) && holdings_[h].name.find(' ') != std::string::npos &&
           std::none_of(mentions.begin(), mentions.end(), [&](std::size_t i) { return printed(i).quantity.has_value(); });
  }

  /// "to each pound" and no more: what the dish is named for, where it is listed.
  std::optional<std::size_t> of_nothing_named(std::size_t asking) const {
    const auto at = place_of(holdings_, yardstick_.stuff(recipe_.dish.base));
    return at && *at != asking && !holdings_[*at].mentions.empty() ? at : std::nullopt;
  }

  /// "fruit", "meat": the first listed stuff of that kind, the dish's own base before others.
  std::optional<std::size_t> general(const std::string& word, std::size_t asking) const {
    std::optional<std::size_t> found;
    for (std::size_t h = 0; h < holdings_.size(); ++h) {
      if (h == asking || holdings_[h].mentions.empty() || !stands_for(word, holdings_[h].kind)) continue;
      if (holdings_[h].name == yardstick_.stuff(recipe_.dish.base)) return h;
      if (!found) found = h;
    }
    return found;
  }

  /// "juice", "currant juice", "pulp": tied to what it is drawn from by the table of yields where that knows it.
  std::optional<std::size_t> product_of(const std::string& product, const std::string& name, std::size_t asking) {
    std::string from = name.size() > product.size() ? name.substr(0, name.size() - product.size() - 1) : std::string();
    if (from.empty() || !place_of(holdings_, from)) {  // "juice", "fruit juice": of the dish's own fruit
      const bool open = from.empty() || general(from, asking).has_value() || from == "berry";
      const auto fruit = open ? general("fruit", asking) : std::nullopt;
      if (fruit)
        from = holdings_[*fruit].name;
      else if (from.empty())
        from = yardstick_.stuff(recipe_.dish.base);
    }
    const std::string full = from.empty() ? product : from + " " + product;
    const auto listed = place_of(holdings_, full);
    if (listed && !bare_product(*listed)) return listed;
    const auto source = from.empty() ? std::nullopt : place_of(holdings_, from);
    const auto yield = source && *source != asking ? yardstick_.yield(product, from) : std::nullopt;
    std::optional<Tie> tie;
    if (yield) {
      // In the unit in which the register gives a measure of it, so that the two ties join.
      const auto quart = weigh(1, 1, "quart", {}, full);
      const auto unit = quart ? quart->unit : Amount::Unit::millilitre;
      const double by = unit == Amount::Unit::gram ? 1 : yield->density;
      const Amount part{unit, yield->low / by, yield->likely / by, yield->high / by,
                        "what " + from + " yields of " + product};
      tie = Tie{*source, part, Amount{Amount::Unit::gram, 1, 1, 1, ""}, "by the yield of " + product};
    }
    if (!listed) return unlisted(full, tie);
    if (tie) by_yield_.emplace_back(*listed, *tie);
    return listed;
  }

  std::size_t unlisted(std::string name, std::optional<Tie> tie) {
    holdings_.emplace_back();
    holdings_.back().name = std::move(name);
    holdings_.back().tie = std::move(tie);
    return holdings_.size() - 1;
  }

  const ComparableRecipe& recipe_;
  const Yardstick& yardstick_;
  const Subject& subject_;
  std::vector<Holding> holdings_;
  std::vector<std::pair<std::size_t, Tie>> by_yield_;  // for listed stuffs that turn out to name no amount
};

/// A holding seen along its ties: so much of it for one unit of `at`.
struct Link {
  std::size_t at = 0;
  Amount factor;       // in the unit of the holding asked about
  Amount::Unit whole;  // of `at`
};

std::vector<Link> links_of(const std::vector<Holding>& holdings, std::size_t from) {
  std::vector<Link> out;
  std::size_t at = from;
  while (holdings[at].tie && out.size() < longest_chain) {
    const Tie& tie = *holdings[at].tie;
    if (tie.whole.low <= 0) break;
    const Amount step = ratio(tie.part, tie.whole, 1);
    if (out.empty())
      out.push_back({tie.to, step, tie.whole.unit});
    else if (out.back().whole == tie.part.unit)
      out.push_back({tie.to, chained(out.back().factor, step), tie.whole.unit});
    else
      break;
    at = tie.to;
    if (at == from) break;
  }
  return out;
}

}  // namespace

std::vector<Holding> holdings_of(const ComparableRecipe& recipe, const Yardstick& yardstick, const Subject& subject) {
  return Reader(recipe, yardstick, subject).read();
}

std::optional<std::size_t> place_of(const std::vector<Holding>& holdings, const std::string& name) {
  for (std::size_t h = 0; h < holdings.size(); ++h)
    if (holdings[h].name == name) return h;
  return std::nullopt;
}

std::optional<Amount> total_of(const std::vector<Holding>& holdings, std::size_t holding) {
  if (holdings[holding].amount) return holdings[holding].amount;
  for (const Link& link : links_of(holdings, holding)) {
    const auto& amount = holdings[link.at].amount;
    if (amount && amount->unit == link.whole) return chained(link.factor, *amount);
  }
  return std::nullopt;
}

std::optional<Amount> against(const std::vector<Holding>& holdings, std::size_t holding, std::size_t basis, double per,
                              Amount::Unit unit) {
  if (holding == basis) return Amount{unit, per, per, per, "the basis"};
  const auto upwards = links_of(holdings, holding);
  for (const Link& link : upwards)
    if (link.at == basis && link.whole == unit) return times(link.factor, per);
  const auto of_basis = links_of(holdings, basis);
  for (const Link& link : of_basis)  // the basis is told by this holding
    if (link.at == holding && link.factor.unit == unit && link.factor.low > 0)
      return ratio(Amount{link.whole, 1, 1, 1, ""}, link.factor, per);
  for (const Link& own : upwards)  // both are told by a third
    for (const Link& other : of_basis)
      if (own.at == other.at && own.whole == other.whole && other.factor.unit == unit && other.factor.low > 0)
        return ratio(own.factor, other.factor, per);
  const auto part = total_of(holdings, holding);
  const auto whole = total_of(holdings, basis);
  if (!part || !whole || whole->unit != unit || whole->low <= 0) return std::nullopt;
  return ratio(*part, *whole, per);
}

}  // namespace gallipot
