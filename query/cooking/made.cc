// Sums what goes in and takes the losses off.
#include "query/cooking/made.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "query/comparing/interval.h"
#include "query/cooking/bulk.h"

namespace gallipot {
namespace {

constexpr double usual_pot = 4000;     // millilitres to which the rates of boiling away belong
constexpr double covered_share = 0.3;  // of what an open pot gives off
constexpr double driest = 0.25;        // of what goes in, that no boiling takes
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

class Reckoner {
 public:
  Reckoner(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Plan& plan, bool covered,
           const Kitchen& kitchen, const Yardstick& yardstick)
      : recipe_(recipe), lines_(lines), plan_(plan), covered_(covered), kitchen_(kitchen), yardstick_(yardstick) {}

  Made reckon() {
    std::vector<std::string> missing;
    const auto in = goes_in(lines_, yardstick_, missing);
    if (!in) {
      out_.why_not = "the print gives no amount of anything that can be weighed";
      return std::move(out_);
    }
    if (!missing.empty()) {
      out_.why_not = "the print does not say how much " + missing.front() + " goes in";
      return std::move(out_);
    }
    out_.parts.push_back({"goes in", *in, "the sum of the lines that have an amount", false});
    left_ = *in;
    for (const Loss& loss : kitchen_.losses) take_off(loss);
    strain_off();
    boil_away();
    finish(*in);
    return std::move(out_);
  }

 private:
  bool does(const std::vector<std::string>& ops) const {
    return std::any_of(recipe_.steps.begin(), recipe_.steps.end(), [&](const Step& s) { return one_of(ops, s.op); });
  }

  void lose(const std::string& what, Amount amount, const std::string& why) {
    if (amount.high <= 0) return;
    left_.low -= amount.high;
    left_.likely -= amount.likely;
    left_.high -= amount.low;
    out_.parts.push_back({what, std::move(amount), why, true});
  }

  /// Shares of weight: trimmings, what the oven dries off.
  void take_off(const Loss& loss) {
    if (loss.unit != "share" || !does(loss.ops)) return;
    std::optional<Amount> of;
    std::string names;
    for (const SheetLine& line : lines_) {
      if (!counts(line) || (!loss.kinds.empty() && !one_of(loss.kinds, line.kind) && !one_of(loss.kinds, line.name)))
        continue;
      const auto amount = amount_or_siblings(line);
      const auto grams = amount ? in_grams(line.name, *amount, yardstick_) : std::nullopt;
      if (!grams) continue;
      of = of ? sum(*of, *grams) : grams;
      names += (names.empty() ? "" : ", ") + line.name;
    }
    if (!of) return;
    lose(loss.what,
         {Amount::Unit::gram,
          of->low * loss.figures.low,
          of->likely * loss.figures.likely,
          of->high * loss.figures.high,
          {}},
         fmt::format("{:.0f} to {:.0f} per cent of {}: {}", loss.figures.low * 100, loss.figures.high * 100,
                     loss.kinds.empty() ? "all" : names, loss.why));
  }

  /// Fruit through a sieve or a bag leaves its skins; spices and herbs stay behind; meat stays out of its broth.
  void strain_off() {
    const bool sieved = does({"sieve"}), strained = does({"strain", "press"});
    if (!sieved && !strained) return;
    for (const SheetLine& line : lines_) {
      const auto amount = counts(line) ? amount_or_siblings(line) : std::nullopt;
      const auto grams = amount ? in_grams(line.name, *amount, yardstick_) : std::nullopt;
      if (!grams) continue;
      const auto left = [&](double low, double likely, double high, const std::string& why) {
        lose(line.name + (sieved ? " left in the sieve" : " strained off"),
             {Amount::Unit::gram, grams->low * low, grams->likely * likely, grams->high * high, {}}, why);
      };
      if (line.kind == "fruit" || line.kind == "vegetable") {
        const auto kept = yardstick_.yield(sieved ? "pulp" : "juice", line.name);
        if (kept)
          left(1 - kept->high, 1 - kept->likely, 1 - kept->low,
               fmt::format("{:.0f} to {:.0f} per cent of its weight comes through", kept->low * 100, kept->high * 100));
      } else if (line.kind == "spice" || line.kind == "herb") {
        left(0.3, 0.8, 1, "spices stay behind unless they are in powder");
      } else if (strained && line.kind == "meat" && liquid_dish(recipe_.dish)) {
        left(0.6, 0.8, 0.95, "meat and bones stay out of the broth");
      }
    }
  }

  void boil_away() {
    Amount lost{Amount::Unit::gram, 0, 0, 0, {}};
    std::string why;
    bool usual = false;
    for (const Task& task : plan_.tasks) {
      if (task.repeat) continue;
      for (const Loss& loss : kitchen_.losses) {
        if (loss.unit != "g/h" || !one_of(loss.ops, task.op)) continue;
        // What goes off goes off at the surface, which grows more slowly than the pot's room.
        const double surface = std::clamp(std::pow(std::max(left_.likely, 200.0) / usual_pot, 2.0 / 3), 0.15, 8.0);
        const double lid = covered_ ? covered_share : 1;
        lost.low += task.minutes.low / 60 * loss.figures.low * surface * lid;
        lost.likely += task.likely / 60 * loss.figures.likely * surface * lid;
        lost.high += task.minutes.high / 60 * loss.figures.high * surface;
        usual = usual || task.from == Task::From::usual;
        why = loss.why;
      }
    }
    if (lost.high <= 0) return;
    const double most = std::max(0.0, 1 - driest);
    lost.low = std::min(lost.low, std::max(0.0, left_.low) * most);
    lost.likely = std::min(lost.likely, std::max(0.0, left_.likely) * most);
    lost.high = std::min(lost.high, std::max(0.0, left_.high) * most);
    lost.low = std::min(lost.low, lost.likely);
    if (usual) why += "; the time is partly a usual one, since the print gives none";
    lose("boils away", lost, why);
  }

  void finish(const Amount& in) {
    left_.low = std::max(left_.low, in.low * 0.05);
    left_.high = std::max(left_.high, left_.low);
    left_.likely = std::clamp(left_.likely, left_.low, left_.high);
    left_.why = "what goes in, less the losses";
    out_.grams = left_;
    double liquid = 0, sweet = 0, all = 0;
    for (const SheetLine& line : lines_) {
      const auto amount = counts(line) ? amount_or_siblings(line) : std::nullopt;
      const auto grams = amount ? in_grams(line.name, *amount, yardstick_) : std::nullopt;
      if (!grams) continue;
      all += grams->likely;
      if (liquid_kind(line)) liquid += grams->likely;
      if (line.kind == "sweet") sweet += grams->likely;
    }
    out_.liquid = liquid_dish(recipe_.dish) || liquid > 0.6 * all;
    const bool syrup = sweet > sugary * all;
    const double least = syrup ? 1.1 : 0.98, likely = syrup ? 1.25 : 1.03, most = syrup ? 1.36 : 1.12;
    out_.millilitres =
        Amount{Amount::Unit::millilitre, left_.low / most, left_.likely / likely, left_.high / least, left_.why};
  }

  const ComparableRecipe& recipe_;
  const std::vector<SheetLine>& lines_;
  const Plan& plan_;
  bool covered_;
  const Kitchen& kitchen_;
  const Yardstick& yardstick_;
  Made out_;
  Amount left_;
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
                                               "sweet", "liquor",    "water", "egg",  "drink", "nut"};
  return line.name.find("vinegar") != std::string::npos ||
         std::find(std::begin(kinds), std::end(kinds), line.kind) != std::end(kinds);
}

std::optional<Amount> goes_in(const std::vector<SheetLine>& lines, const Yardstick& yardstick,
                              std::vector<std::string>& missing) {
  std::optional<Amount> out;
  for (const SheetLine& line : lines) {
    if (!counts(line)) continue;
    const auto amount = amount_or_siblings(line);
    const auto grams = amount ? in_grams(line.name, *amount, yardstick) : std::nullopt;
    if (grams)
      out = out ? sum(*out, *grams) : grams;
    else if (is_bulk(line))
      missing.push_back(line.name);
  }
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
  return Reckoner(recipe, lines, plan, covered, kitchen, yardstick).reckon();
}

}  // namespace gallipot
