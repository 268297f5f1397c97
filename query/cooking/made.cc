// Sums what goes in and takes the losses off.
#include "query/cooking/made.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/measures/amount.h"
#include "query/cooking/bulk.h"

namespace gallipot {
namespace {

constexpr double usual_pot = 4000;     // millilitres to which the rates of boiling away belong
constexpr double covered_share = 0.3;  // of what an open pot gives off
constexpr double driest = 0.25;        // of what goes in, that no boiling takes
constexpr double dried_from = 120;     // minutes from which drying takes the water out of a thing
constexpr double small_part = 0.1;     // of the batch, at most, of a stuff without an amount that is a small part
constexpr double sugary = 0.3;         // share of sugar from which a liquid is a syrup

bool one_of(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool liquid_kind(const SheetLine& line) {
  return line.kind == "water" || line.kind == "liquor" || line.kind == "drink" || line.name == "vinegar" ||
         line.name.find("vinegar") != std::string::npos || line.name == "milk" || line.name == "cream" ||
         line.name.find("juice") != std::string::npos || line.name == "stock" || line.name == "broth";
}

bool liquid_dish(const Dish& dish) {
  static constexpr std::string_view kinds[] = {
      "catsup", "ketchup", "soy",   "sauce", "soup", "broth", "gravy",   "vinegar", "wine",     "cordial",
      "syrup",  "shrub",   "punch", "beer",  "ale",  "mead",  "liqueur", "ratafia", "lemonade", "essence"};
  return std::find(std::begin(kinds), std::end(kinds), dish.kind) != std::end(kinds);
}

/// What stays of a line of the print, as shares of its weight.
struct Kept {
  double low = 1, likely = 1, high = 1;
  void lose(const Figures& share) {
    low *= 1 - share.high;
    likely *= 1 - share.likely;
    high *= 1 - share.low;
  }
};

Amount weight(double low, double likely, double high) { return {Amount::Unit::gram, low, likely, high, {}}; }

class Reckoner {
 public:
  Reckoner(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Plan& plan, bool covered,
           const Kitchen& kitchen, const Yardstick& yardstick)
      : recipe_(recipe), plan_(plan), covered_(covered), kitchen_(kitchen), yardstick_(yardstick) {
    for (const SheetLine& line : lines) {
      const auto amount = counts(line) ? amount_or_siblings(line) : std::nullopt;
      const auto grams = amount ? in_grams(line.name, *amount, yardstick_) : std::nullopt;
      if (grams) weighed_.push_back({&line, *grams, {}});
    }
  }

  Made reckon(const Amount& in) {
    out_.parts.push_back({"goes in", in, in.why, false});
    unnamed_ = in;
    for (const Loss& loss : kitchen_.losses)
      if (loss.unit == "share") take_off(loss);
    strain_off();
    boil_away();
    finish();
    return std::move(out_);
  }

 private:
  struct Weighed {
    const SheetLine* line;
    Amount grams;
    Kept kept;
  };

  bool does(const std::vector<std::string>& ops) const {
    return std::any_of(recipe_.steps.begin(), recipe_.steps.end(), [&](const Step& s) { return one_of(ops, s.op); });
  }

  /// "Dry them in a cloth" takes nothing; "dry them in the sun four days" does.
  bool dried_long(const std::vector<std::string>& ops) const {
    return std::any_of(recipe_.steps.begin(), recipe_.steps.end(),
                       [&](const Step& s) { return one_of(ops, s.op) && s.minutes && s.minutes->high >= dried_from; });
  }

  /// Takes a share off the lines for which `takes` has one, and tells the sum of it.
  template <typename Takes>
  void lose(const std::string& what, const std::string& why, Takes takes) {
    Amount lost = weight(0, 0, 0);
    std::string names;
    for (Weighed& one : weighed_) {
      const std::optional<Figures> share = takes(*one.line);
      if (!share) continue;
      lost.low += one.grams.low * one.kept.low * share->low;
      lost.likely += one.grams.likely * one.kept.likely * share->likely;
      lost.high += one.grams.high * one.kept.high * share->high;
      one.kept.lose(*share);
      names += (names.empty() ? "" : ", ") + one.line->name;
    }
    if (lost.high > 0) out_.parts.push_back({what, lost, why + (names.size() < 80 ? " (" + names + ")" : ""), true});
  }

  /// Trimmings, what the oven dries off.
  void take_off(const Loss& loss) {
    if (!does(loss.ops) || (one_of(loss.ops, "dry") && !dried_long(loss.ops))) return;
    lose(loss.what,
         fmt::format("{:.0f} to {:.0f} per cent, {}", loss.figures.low * 100, loss.figures.high * 100, loss.why),
         [&](const SheetLine& line) -> std::optional<Figures> {
           if (!loss.kinds.empty() && !one_of(loss.kinds, line.kind) && !one_of(loss.kinds, line.name))
             return std::nullopt;
           return loss.figures;
         });
  }

  /// "Rub them through a sieve", whether or not an operation was read from it.
  bool rubbed_through() const {
    constexpr std::size_t near = 30;
    const std::string& text = recipe_.recipe.text;
    for (auto at = text.find("through a"); at != std::string::npos; at = text.find("through a", at + 1)) {
      const std::string_view after = std::string_view(text).substr(at, near);
      for (const std::string_view vessel : {"sieve", "cullender", "colander"})
        if (after.find(vessel) != std::string_view::npos) return true;
    }
    return false;
  }

  /// Fruit through a sieve or a bag leaves its skins; spices and herbs stay behind; meat stays out of its broth.
  void strain_off() {
    const bool sieved = does({"sieve"}) || rubbed_through(), strained = does({"strain", "press"});
    if (!sieved && !strained) return;
    const std::string where = sieved ? "left in the sieve" : "strained off";
    lose(where, sieved ? "skins and seeds" : "what gives its juice and stays behind",
         [&](const SheetLine& line) -> std::optional<Figures> {
           if (line.kind != "fruit" && line.kind != "vegetable") return std::nullopt;
           const auto kept = yardstick_.yield(sieved ? "pulp" : "juice", line.name);
           if (!kept) return std::nullopt;
           return Figures{1 - kept->high, 1 - kept->likely, 1 - kept->low};
         });
    lose(where, "spices and herbs stay behind unless they are in powder",
         [](const SheetLine& line) -> std::optional<Figures> {
           if ((line.kind != "spice" && line.kind != "herb") || line.name == "salt") return std::nullopt;
           return Figures{0.3, 0.8, 1};
         });
    if (strained && liquid_dish(recipe_.dish))
      lose("taken out", "meat and bones stay out of the broth", [](const SheetLine& line) -> std::optional<Figures> {
        if (line.kind != "meat" && line.kind != "fish") return std::nullopt;
        return Figures{0.6, 0.8, 0.95};
      });
  }

  struct Evaporated {
    Amount hourly = weight(0, 0, 0);  ///< grams from a pot of four litres, for all the time on the fire
    std::string why;
    bool usual = false;
  };

  Evaporated evaporated() const {
    Evaporated out;
    for (const Task& task : plan_.tasks) {
      for (const Loss& loss : kitchen_.losses) {
        if (task.repeat || loss.unit != "g/h" || !one_of(loss.ops, task.op) || task.brief) continue;
        const double lid = covered_ ? covered_share : 1;
        out.hourly.low += task.minutes.low / 60 * loss.figures.low * lid;
        out.hourly.likely += task.likely / 60 * loss.figures.likely * lid;
        out.hourly.high += task.minutes.high / 60 * loss.figures.high;
        out.usual = out.usual || task.from == Task::From::usual;
        out.why = loss.why;
      }
    }
    return out;
  }

  void boil_away() {
    left_ = weight(0, 0, 0);
    // What has no amount is in `unnamed_` beyond the lines that have.
    left_.low = unnamed_.low;
    left_.likely = unnamed_.likely;
    left_.high = unnamed_.high;
    for (const Weighed& one : weighed_) {
      left_.low -= one.grams.low;
      left_.likely -= one.grams.likely;
      left_.high -= one.grams.high;
    }
    for (const Weighed& one : weighed_) {
      left_.low += one.grams.low * one.kept.low;
      left_.likely += one.grams.likely * one.kept.likely;
      left_.high += one.grams.high * one.kept.high;
    }
    Evaporated gone = evaporated();
    if (gone.hourly.high <= 0) return;
    // What goes off goes off at the surface, which grows more slowly than the pot's room; and never all of it.
    const auto off = [&](double left, double rate) {
      const double surface = std::clamp(std::pow(left / usual_pot, 2.0 / 3), 0.05, 8.0);
      return std::min(rate * surface, left * (1 - driest));
    };
    if (gone.usual) gone.why += "; the time is partly a usual one, since the print gives none";
    if (covered_) gone.why += "; less under a lid, as siblings have it";
    out_.parts.push_back({"boils away",
                          weight(off(left_.likely, gone.hourly.low), off(left_.likely, gone.hourly.likely),
                                 off(left_.likely, gone.hourly.high)),
                          gone.why, true});
    left_ = weight(left_.low - off(left_.low, gone.hourly.high), left_.likely - off(left_.likely, gone.hourly.likely),
                   left_.high - off(left_.high, gone.hourly.low));
  }

  void finish() {
    left_.why = "what goes in, less the losses";
    out_.grams = left_;
    double liquid = 0, sweet = 0, all = 0;
    for (const Weighed& one : weighed_) {
      all += one.grams.likely;
      if (liquid_kind(*one.line)) liquid += one.grams.likely;
      if (one.line->kind == "sweet") sweet += one.grams.likely;
    }
    out_.liquid = liquid_dish(recipe_.dish) || liquid > 0.6 * all;
    const bool syrup = sweet > sugary * all;
    const double least = syrup ? 1.1 : 0.98, likely = syrup ? 1.25 : 1.03, most = syrup ? 1.36 : 1.12;
    out_.millilitres =
        Amount{Amount::Unit::millilitre, left_.low / most, left_.likely / likely, left_.high / least, left_.why};
  }

  const ComparableRecipe& recipe_;
  const Plan& plan_;
  bool covered_;
  const Kitchen& kitchen_;
  const Yardstick& yardstick_;
  std::vector<Weighed> weighed_;
  Made out_;
  Amount left_;
  Amount unnamed_;
};

}  // namespace

bool counts(const SheetLine& line) {
  return !line.optional && line.alternative_of.empty() && line.kind != "household" && line.kind != "dish" &&
         !line.kind.empty();
}

std::optional<Amount> amount_or_siblings(const SheetLine& line) {
  if (line.amount) return line.amount;
  if (line.siblings) return line.siblings->amount;
  return std::nullopt;
}

bool is_bulk(const SheetLine& line) {
  static constexpr std::string_view kinds[] = {"fruit", "vegetable", "meat",  "fish", "dairy", "grain",
                                               "sweet", "liquor",    "water", "egg",  "drink"};
  if (line.name.ends_with(" peel")) return false;
  return line.name.find("vinegar") != std::string::npos ||
         std::find(std::begin(kinds), std::end(kinds), line.kind) != std::end(kinds);
}

namespace {

/// What the print calls a little of, or names late and without an amount, is a small part of the batch.
bool is_small_part(const SheetLine& line, std::size_t place, const std::string& base) {
  if (line.name == base) return false;
  static constexpr std::string_view small[] = {"little", "few",   "bit ", "slice", "some ",
                                               "piece",  "sprig", "dust", "pinch"};
  const std::string words = line.print.empty() ? std::string() : line.print.front().words;
  if (std::any_of(std::begin(small), std::end(small),
                  [&](std::string_view word) { return words.find(word) != std::string::npos; }))
    return true;
  return place >= 2 && !liquid_kind(line) && line.kind != "meat" && line.kind != "fish";
}

}  // namespace

std::optional<Amount> goes_in(const std::vector<SheetLine>& lines, const std::string& base, const Yardstick& yardstick,
                              std::vector<std::string>& missing) {
  std::optional<Amount> out;
  std::string small;
  double parts = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const SheetLine& line = lines[i];
    if (!counts(line)) continue;
    const auto amount = amount_or_siblings(line);
    const auto grams = amount ? in_grams(line.name, *amount, yardstick) : std::nullopt;
    if (grams) {
      out = out ? sum(*out, *grams) : grams;
    } else if (is_bulk(line) && !is_small_part(line, i, base)) {
      missing.push_back(line.name);
    } else if (is_bulk(line)) {
      small += (small.empty() ? "" : ", ") + line.name;
      parts += small_part;
    }
  }
  if (!out) return out;
  out->why = "the sum of the lines that have an amount";
  if (small.empty()) return out;
  out->likely *= 1 + parts / 3;
  out->high *= 1 + parts;
  out->why += "; nought to a tenth more for each of those without: " + small;
  return out;
}

std::optional<Amount> room_for(const std::vector<SheetLine>& lines, const Yardstick& yardstick) {
  std::optional<Amount> out;
  for (const SheetLine& line : lines) {
    const auto amount = counts(line) ? amount_or_siblings(line) : std::nullopt;
    const auto room = amount ? in_millilitres(line.name, line.kind, *amount, yardstick) : std::nullopt;
    if (room) out = out ? sum(*out, *room) : room;
  }
  return out;
}

Made made_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Plan& plan, bool covered,
             const Kitchen& kitchen, const Yardstick& yardstick) {
  Made out;
  std::vector<std::string> missing;
  const auto in = goes_in(lines, recipe.dish.base, yardstick, missing);
  if (!in)
    out.why_not = "the print gives no amount of anything that can be weighed";
  else if (!missing.empty())
    out.why_not = "the print does not say how much " + missing.front() + " goes in";
  else
    out = Reckoner(recipe, lines, plan, covered, kitchen, yardstick).reckon(*in);
  return out;
}

}  // namespace gallipot
