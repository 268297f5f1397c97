// Asks the four layers of the register in turn and carries the printed number through.
#include "indexer/measures/register.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/measures/folding.h"

namespace gallipot {
using measuring::bend_of;
using measuring::Held;
using measuring::One;
using measuring::Place;
using measuring::Stuff;
using measuring::StuffClass;
using measuring::Testimony;
using measuring::Voice;
using Rule = Reading::Rule;

struct Register::Tables : measuring::MeasureTables {
  explicit Tables(MeasureTables t) : MeasureTables(std::move(t)) {}
};

struct Register::Folded : measuring::Folded {
  Folded(measuring::Folded f, std::vector<Decision> d) : measuring::Folded(std::move(f)), decisions(std::move(d)) {}
  std::vector<Decision> decisions;
};

namespace {

/// One of the measure, and what it rests on.
struct Found {
  One one;
  Rule rule = Rule::table;
  bool bent = false;  ///< the note has been heeded already
  std::vector<std::uint32_t> voices;
  const Decision* decision = nullptr;
};

bool is_dry(StuffClass c) { return c == StuffClass::dry || c == StuffClass::heap; }

/// How narrowly a decision holds: of a book before of a period before everywhere; then by its own size and stuff.
int narrowness(const Decision& d) {
  return (d.book.empty() ? 0 : 8) + (d.from != 0 || d.to != 0 || !d.country.empty() ? 4 : 0) +
         (d.size.empty() ? 0 : 2) + (d.of.empty() ? 0 : 1);
}

bool decides(const Decision& d, const Measured& asked) {
  if (d.measure != asked.measure) return false;
  if (!d.of.empty() && d.of != asked.of) return false;
  if (d.measure.empty() && d.of.empty()) return false;
  if (!d.size.empty() && d.size != asked.note) return false;
  if (!d.book.empty() && d.book != asked.book) return false;
  if (!d.country.empty() && d.country != asked.country) return false;
  const measuring::Period period{d.from, d.to};
  return period.always() || (asked.year != 0 && period.holds(asked.year));
}

/// Looks one measure up in a register with all its layers.
class Lookup {
 public:
  /// `in_bulk`: a measure of capacity is left in millilitres also of a stuff that is given by weight.
  Lookup(const measuring::Folded& folded, const std::vector<Decision>& decisions, const Measured& asked,
         bool in_bulk = false)
      : f_(folded),
        decisions_(decisions),
        asked_(asked),
        stuff_(folded.tables.stuff(asked.of)),
        weighed_by_(in_bulk ? folded.tables.stuff({}) : stuff_) {}

  std::optional<Found> find() const {
    auto found = decided();
    if (!found) found = said_by_the_book();
    if (!found) found = in_the_tables();
    if (found && !found->bent && found->one.unit != Amount::Unit::count) bend(*found);
    return found;
  }

  const Stuff& stuff() const { return stuff_; }
  /// A spoon of a dry stuff is rounded where the book says nothing; where it says how the spoon is filled, its brimful
  /// is what that is told from.
  StuffClass as() const {
    const bool told = is_dry(stuff_.stuff_class) && measuring::is_spoon(asked_.measure) &&
                      f_.tables.bends.contains(std::string(asked_.note) + "/spoon");
    return told ? StuffClass::liquid : stuff_.stuff_class;
  }

 private:
  Place place() const { return {asked_.of, asked_.country, asked_.year}; }

  std::optional<Found> decided() const {
    const Decision* best = nullptr;
    for (const Decision& d : decisions_)
      if (decides(d, asked_) && (best == nullptr || narrowness(d) >= narrowness(*best))) best = &d;
    if (best == nullptr) return std::nullopt;
    Found out;
    out.one = {best->unit, {best->low, best->likely, best->high}, "decided by you", {}};
    if (!best->note.empty()) out.one.why += ": " + best->note;
    measuring::weigh(out.one, weighed_by_, asked_.of);
    out.rule = Rule::decision;
    out.bent = !best->size.empty();
    out.decision = best;
    return out;
  }

  const std::vector<std::uint32_t>* own_voices(std::string_view measure) const {
    if (asked_.book.empty() || f_.own.empty()) return nullptr;
    std::string key(asked_.book);
    key.append("/").append(measure);
    const auto at = f_.own.find(key);
    return at == f_.own.end() ? nullptr : &at->second;
  }

  std::optional<Found> said_by_the_book() const {
    const auto* own = own_voices(asked_.measure.empty() ? asked_.of : asked_.measure);
    if (own == nullptr) return std::nullopt;
    if (asked_.measure.empty()) return weighed_by_the_book(*own, "");
    if (auto of_the_stuff = weighed_by_the_book(*own, asked_.of)) return of_the_stuff;
    return held_by_the_book(*own);
  }

  /// Witnesses of the book that speak of this very stuff, by weight: an egg, a quart of flour, a square of chocolate.
  std::optional<Found> weighed_by_the_book(const std::vector<std::uint32_t>& own, std::string_view of) const {
    std::vector<Testimony> readings;
    Found out;
    for (const std::uint32_t i : own) {
      const Voice& v = f_.voices[i];
      if (v.of != of || !v.grams) continue;
      out.voices.push_back(i);
      readings.push_back({*v.grams, v.author});
    }
    if (readings.empty() || (of.empty() && !asked_.measure.empty())) return std::nullopt;
    out.one.unit = Amount::Unit::gram;
    rule_by(out, readings);
    if (asked_.measure.empty())
      if (const auto eaten = f_.tables.eaten.find(asked_.of); eaten != f_.tables.eaten.end())
        out.one.extent = product(out.one.extent, eaten->second);
    return out;
  }

  /// Witnesses of the book that tell what the measure holds of anything. Of a legal measure they are heard only where
  /// the book gives it another content than the law ("a gill is half a pint").
  std::optional<Found> held_by_the_book(const std::vector<std::uint32_t>& own) const {
    const auto rows = f_.tables.held.find(asked_.measure);
    const bool household = rows == f_.tables.held.end() || std::any_of(rows->second.begin(), rows->second.end(),
                                                                       [](const Held& h) { return h.household; });
    std::vector<Testimony> readings;
    Found out;
    for (const std::uint32_t i : own) {
      const Voice& v = f_.voices[i];
      const StuffClass c = f_.tables.stuff(v.of).stuff_class;
      const bool brimful = v.of.empty() || c == StuffClass::unknown || c == StuffClass::liquid || c == StuffClass::ale;
      if (!brimful || !(v.millilitres.low > 0) || (!household && v.grams)) continue;
      out.voices.push_back(i);
      readings.push_back({v.millilitres, v.author});
    }
    if (readings.empty()) return std::nullopt;
    out.one.unit = Amount::Unit::millilitre;
    keep_first_hand(out, readings);
    rule_by(out, readings, household);
    if (!household && agrees_with_law(rows->second, out.one.extent)) return std::nullopt;
    if (measuring::is_spoon(asked_.measure) && is_dry(as()))
      if (const auto* rounded = bend_of(f_.tables, "rounded or level", asked_.measure))
        out.one.extent = product(out.one.extent, rounded->factor);
    measuring::weigh(out.one, weighed_by_, asked_.of);
    return out;
  }

  /// What the book tells in legal measures rules over what it tells in its other cups and spoons.
  void keep_first_hand(Found& out, std::vector<Testimony>& readings) const {
    const auto second = [&](std::uint32_t i) { return f_.voices[i].at_second_hand; };
    if (std::all_of(out.voices.begin(), out.voices.end(), second)) return;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < out.voices.size(); ++i) {
      if (second(out.voices[i])) continue;
      out.voices[kept] = out.voices[i];
      readings[kept++] = readings[i];
    }
    out.voices.resize(kept);
    readings.resize(kept);
  }

  /// Whether the law leaves nothing open for the book to settle, and the book says what it says.
  bool agrees_with_law(const std::vector<Held>& rows, const Extent& said) const {
    constexpr double exact = 1.05;  // from low to high
    const auto law = measuring::one_of(rows, as(), Stuff{}, place());
    if (!law || law->unit != Amount::Unit::millilitre) return true;
    return law->extent.high <= exact * law->extent.low && said.low <= exact * law->extent.high &&
           law->extent.low <= exact * said.high;
  }

  void rule_by(Found& out, const std::vector<Testimony>& readings, bool household = true) const {
    out.rule = Rule::book;
    // a book knows its own measures, so that only the hand that fills them is left in doubt
    const double wider = household ? measuring::by_eye : 0;
    out.one.extent = product(measuring::verdict_of(readings).said, {1 - wider, 1, 1 + wider});
    const Voice& first = f_.voices[out.voices.front()];
    out.one.why = fmt::format("by this book's own word ({}{})", first.said,
                              first.page.empty() ? "" : fmt::format(", p. {}", first.page));
  }

  std::optional<Found> in_the_tables() const {
    Found out;
    if (auto one = measuring::one_counted(f_.tables, place(), asked_.measure)) {
      out.one = std::move(*one);
    } else if (asked_.measure.empty()) {
      out.one = {Amount::Unit::count, {1, 1, 1}, "counted", {}};
    } else {
      const auto rows = f_.tables.held.find(asked_.measure);
      if (rows == f_.tables.held.end()) return std::nullopt;
      auto found = measuring::one_of(rows->second, as(), weighed_by_, place());
      if (!found) return std::nullopt;
      out.one = std::move(*found);
      if (out.one.unit == Amount::Unit::count) weigh_each(out.one);
    }
    for (const Held* row : out.one.rows) {
      for (const std::uint32_t i : row->witnesses) {
        if (!f_.voices[i].book.empty()) out.rule = Rule::period;
        out.voices.push_back(i);
      }
    }
    return out;
  }

  /// A dozen eggs weighs twelve eggs.
  void weigh_each(One& one) const {
    const auto each = measuring::one_counted(f_.tables, place(), "");
    if (!each) return;
    one.extent = product(one.extent, each->extent);
    one.unit = Amount::Unit::gram;
    one.why += " of them, each " + each->why;
  }

  void bend(Found& found) const {
    const auto* bend = bend_of(f_.tables, asked_.note, asked_.measure);
    if (bend == nullptr) return;
    found.one.extent = product(found.one.extent, bend->factor);
    found.one.why = std::string(asked_.note) + ": " + found.one.why;
  }

  const measuring::Folded& f_;
  const std::vector<Decision>& decisions_;
  const Measured& asked_;
  const Stuff& stuff_;
  const Stuff& weighed_by_;
};

bool can_be_meant(const Measured& asked) { return asked.high > 0 && asked.low >= 0 && asked.low <= asked.high; }

Amount counted_out(const Measured& asked, One one) {
  return {one.unit, asked.low * one.extent.low, (asked.low + asked.high) / 2 * one.extent.likely,
          asked.high * one.extent.high, std::move(one.why)};
}

Attestation attestation_of(const Voice& v, bool by_weight, bool set_aside) {
  Attestation w;
  w.who = v.who;
  w.book = v.book;
  w.page = v.page;
  w.quote = v.quote;
  w.line = v.line;
  w.said = v.said;
  w.of = v.of;
  w.country = v.country;
  w.year = v.year;
  const bool grams = v.grams && (by_weight || !(v.millilitres.low > 0));
  const Extent& e = grams ? *v.grams : v.millilitres;
  w.one = {grams ? Amount::Unit::gram : Amount::Unit::millilitre, e.low, e.likely, e.high, {}};
  w.set_aside = set_aside;
  return w;
}

void add_once(std::vector<std::string>& list, const std::string& one) {
  if (!one.empty() && std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
}

}  // namespace

Outcome<std::shared_ptr<const Register>> Register::load(const std::string& overlay_folder) {
  auto tables = measuring::load_measure_tables(overlay_folder);
  if (!tables) return tl::unexpected(tables.error());
  Register bare;
  bare.tables_ = std::make_shared<const Tables>(std::move(*tables));
  return bare.with({});
}

std::shared_ptr<const Register> Register::with(Layers layers) const {
  auto out = std::make_shared<Register>();
  out->tables_ = tables_;
  out->folded_ = std::make_shared<const Folded>(measuring::fold(*tables_, layers.statements, layers.books),
                                                std::move(layers.decisions));
  return out;
}

std::optional<Amount> Register::amount(const Measured& asked) const {
  if (!can_be_meant(asked)) return std::nullopt;
  auto found = Lookup(*folded_, folded_->decisions, asked).find();
  if (!found) return std::nullopt;
  return counted_out(asked, std::move(found->one));
}

std::optional<Reading> Register::read(const Measured& asked) const {
  if (!can_be_meant(asked)) return std::nullopt;
  const Lookup lookup(*folded_, folded_->decisions, asked);
  auto found = lookup.find();
  if (!found) return std::nullopt;
  Reading out;
  out.rule = found->rule;
  out.amount = counted_out(asked, found->one);
  const Stuff& stuff = lookup.stuff();
  const bool known = stuff.density.low > 0;
  if (out.amount.unit == Amount::Unit::gram) out.grams = out.amount;
  if (out.amount.unit == Amount::Unit::millilitre) out.millilitres = out.amount;
  if (out.grams && known) out.millilitres = in_millilitres(out.amount, stuff.density);
  if (out.millilitres && !out.grams && known) out.grams = in_grams(out.amount, stuff.density);
  // what was a volume before it was weighed is told as that volume, not as the weight turned back
  if (out.grams)
    if (auto bulk = Lookup(*folded_, folded_->decisions, asked, true).find();
        bulk && bulk->one.unit == Amount::Unit::millilitre)
      out.millilitres = counted_out(asked, std::move(bulk->one));
  for (const std::uint32_t i : found->voices)
    out.witnesses.push_back(attestation_of(
        folded_->voices[i], out.amount.unit == Amount::Unit::gram && found->rule == Rule::book, folded_->set_aside[i]));
  for (const Held* row : found->one.rows)
    if (!row->household) add_once(out.sources, row->source);
  if (known && out.grams) add_once(out.sources, "weight of " + std::string(asked.of) + ": " + stuff.source);
  if (found->decision != nullptr) out.decision = *found->decision;
  return out;
}

std::vector<std::string> Register::measures() const {
  std::vector<std::string> out;
  for (const auto& [measure, rows] : folded_->tables.held) out.push_back(measure);
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace gallipot
