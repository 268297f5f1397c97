// A measure in words: the figure first, then why, then who says so.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "query/reporting/amounts.h"
#include "query/reporting/layout.h"
#include "query/reporting/measuring.h"

namespace gallipot {
namespace {

constexpr std::size_t few = 12;  // witnesses shown; more are counted

const char* rule_in_words(Reading::Rule rule) {
  switch (rule) {
    case Reading::Rule::decision:
      return "Your own decision rules.";
    case Reading::Rule::book:
      return "The book's own word rules.";
    case Reading::Rule::period:
      return "Books of this shelf and published tables of its country and time, heard together.";
    case Reading::Rule::table:
      break;
  }
  return "The general table.";
}

std::string where_and_when(const MeasureQuestion& asked) {
  std::string out = asked.book;
  for (const std::string& part : {asked.country, asked.year == 0 ? std::string() : std::to_string(asked.year)})
    if (!part.empty()) out += (out.empty() ? "" : ", ") + part;
  return out.empty() ? "of no particular time or place" : out;
}

std::string figure(const std::optional<Amount>& amount) {
  return amount ? write_large_amount(*amount).text() : std::string();
}

std::string witnesses_in_words(const Reading& reading, std::string_view measure) {
  std::set<std::string> heard;
  double least = 1e300, most = 0;
  std::size_t aside = 0;
  for (const Attestation& a : reading.witnesses) {
    if (a.set_aside) {
      ++aside;
      continue;
    }
    heard.insert(a.book.empty() ? a.who.substr(0, a.who.find_first_of(",:;")) : a.book);
    least = std::min(least, a.one.likely);
    most = std::max(most, a.one.likely);
  }
  if (heard.empty()) return {};
  const char* unit = unit_name(reading.witnesses.front().one.unit);
  std::string out = fmt::format("{} witness{} to one {}", heard.size(), heard.size() == 1 ? "" : "es", measure);
  if (heard.size() == 1)
    out += fmt::format(": {:.3g} {}", least, unit);
  else if (most <= least * 1.005)
    out += fmt::format(", all agreed on {:.3g} {}", least, unit);
  else
    out += fmt::format(", from {:.3g} to {:.3g} {}: the greatest is {:.2g} times the least", least, most, unit,
                       most / least);
  if (aside > 0) out += fmt::format("; {} more set aside as too far from the others", aside);
  return out + ".";
}

std::string witness_table(const Reading& reading, unsigned width) {
  Grid grid;
  grid.rows.push_back({"comes to", "says", "of", "witness"});
  grid.right = {true};
  for (const Attestation& a : reading.witnesses) {
    if (grid.rows.size() > few) break;
    std::string who = a.who;
    if (!a.page.empty()) who += ", p. " + a.page;
    const Amount& one = a.one;
    std::string to = one.high <= one.low * 1.005
                         ? fmt::format("{:.3g} {}", one.likely, unit_name(one.unit))
                         : fmt::format("{:.3g}\u2013{:.3g} {}", one.low, one.high, unit_name(one.unit));
    if (a.set_aside) to += " (set aside)";
    grid.rows.push_back({std::move(to), a.said, a.of, fmt::format("{}", fmt::join(wrapped(who, width / 2), "\n"))});
  }
  std::string out = grid.text(width);
  if (reading.witnesses.size() > few)
    out += fmt::format("and {} more (--json shows all)\n", reading.witnesses.size() - few);
  return out;
}

std::string amount_as_text(const MeasureAnswer& answer, const TextStyle& style) {
  const Reading& r = answer.reading;
  std::string out = fmt::format("{} \u2014 {}\n\n", answer.asked.words, where_and_when(answer.asked));
  out += "  " + figure(r.amount);
  if (!answer.of.empty()) out += " of " + answer.of;
  out += "\n";
  if (r.grams && r.amount.unit != Amount::Unit::gram) out += "  " + figure(r.grams) + " by weight\n";
  if (r.millilitres && r.amount.unit != Amount::Unit::millilitre) out += "  " + figure(r.millilitres) + " by volume\n";
  if (!answer.us.empty()) out += fmt::format("  US measures: {}\n  metric measures: {}\n", answer.us, answer.metric);
  out += "\n" + paragraph(r.amount.why + ". " + rule_in_words(r.rule), style.width, "Why: ");
  if (r.decision) out += paragraph(decision_in_words(*r.decision), style.width, "Decided: ");
  const std::string agreement = witnesses_in_words(r, answer.measure.empty() ? answer.of : answer.measure);
  if (!agreement.empty()) out += "\n" + paragraph(agreement, style.width) + "\n" + witness_table(r, style.width);
  for (const std::string& source : r.sources) out += paragraph(source, style.width, "Source: ");
  return out;
}

const char* unit_of(Heat::Kind kind) {
  if (kind == Heat::Kind::spirit) return "parts of alcohol in a hundred by volume";
  if (kind == Heat::Kind::vinegar) return "parts of acetic acid in a hundred";
  return "\u00b0F";
}

bool is_temperature(Heat::Kind kind) { return kind != Heat::Kind::spirit && kind != Heat::Kind::vinegar; }

std::string between(double low, double high, const char* unit, int decimals) {
  const double tenth = decimals > 0 ? 0.05 : 0.5;
  if (high - low < tenth) return fmt::format("{:.{}f} {}", low, decimals, unit);
  return fmt::format("{:.{}f}\u2013{:.{}f} {}", low, decimals, high, decimals, unit);
}

std::string heat_as_text(const MeasureAnswer& answer, const TextStyle& style) {
  const Heat& heat = *answer.heat;
  std::string out = fmt::format("{} \u2014 {}\n\n", answer.asked.words, where_and_when(answer.asked));
  if (!answer.range) {
    out += "  as printed: no figure is known for that place and time\n";
  } else if (is_temperature(heat.kind)) {
    out += "  " + between(answer.range->low, answer.range->high, unit_of(heat.kind), 0);
    out += "\n  " + between(celsius(answer.range->low), celsius(answer.range->high), "\u00b0C", 0) + "\n";
  } else {
    out += "  " + between(answer.range->low, answer.range->high, unit_of(heat.kind), 1) + "\n";
  }
  out += fmt::format("\nWhy: read as \"{}\"{}.\n", heat.name, answer.why.empty() ? "" : ", " + answer.why);
  if (!heat.sign.empty()) out += paragraph("it is told by this: " + heat.sign + ".", style.width, "Sign: ");
  for (const HeatWitness& w : heat.witnesses) {
    const std::string figures = between(w.low, w.high, is_temperature(heat.kind) ? "\u00b0F" : "in a hundred",
                                        is_temperature(heat.kind) ? 0 : 1);
    out += paragraph(fmt::format("{}: {}{}", w.source, figures, w.country.empty() ? "" : " (" + w.country + ")"),
                     style.width, "Source: ");
  }
  return out;
}

}  // namespace

std::string measure_as_text(const MeasureAnswer& answer, const TextStyle& style) {
  switch (answer.kind) {
    case MeasureAnswer::Kind::amount:
      return amount_as_text(answer, style);
    case MeasureAnswer::Kind::heat:
      return heat_as_text(answer, style);
    case MeasureAnswer::Kind::no_figure:
      break;
  }
  return fmt::format("{} \u2014 {}\n\n  as printed\n\nWhy: {}.\n", answer.asked.words, where_and_when(answer.asked),
                     answer.why);
}

std::string decision_in_words(const Decision& d) {
  std::string what = d.size.empty() ? d.measure : d.size + " " + d.measure;
  if (what.empty()) what = d.of;
  if (!d.of.empty() && !d.measure.empty()) what += " of " + d.of;
  const Amount one{d.unit, d.low, d.likely, d.high, {}};
  std::string where = "everywhere";
  if (!d.book.empty()) {
    where = "in " + d.book;
  } else if (!d.everywhere()) {
    where = d.country.empty() ? "in books" : "in books of " + d.country;
    if (d.from != 0) where += fmt::format(" from {}", d.from);
    if (d.to != 0) where += fmt::format(" to {}", d.to);
  }
  std::string out = fmt::format("one {} is {}, {}", what, write_large_amount(one).text(), where);
  if (!d.note.empty()) out += ": " + d.note;
  if (!d.decided.empty()) out += " (" + d.decided + ")";
  return out;
}

std::string usual_as_text(const std::vector<UsualMeasure>& measures) {
  std::string out =
      "| measure | amounts told in it | Britain, ml | witnesses | United States, ml | witnesses |\n"
      "| --- | --- | --- | --- | --- | --- |\n";
  for (const UsualMeasure& m : measures) {
    out += fmt::format("| {} | {} |", m.measure, m.uses);
    for (const char* country : {"GB", "US"}) {
      const auto at =
          std::find_if(m.places.begin(), m.places.end(), [&](const auto& p) { return p.country == country; });
      if (at == m.places.end()) {
        out += " as printed | 0 |";
        continue;
      }
      const WrittenAmount written = write_amount(at->one);
      out += fmt::format(" {} ({}) | {} |", written.figure, written.range, at->witnesses);
    }
    out += "\n";
  }
  return out;
}

}  // namespace gallipot
