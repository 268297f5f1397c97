// Sums salt, sugar and acid over the lines.
#include "query/cooking/keeping.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/text/words.h"
#include "indexer/measures/amount.h"
#include "query/cooking/bulk.h"
#include "query/cooking/made.h"

namespace gallipot {
namespace {

/// The words that say that it is put up to keep; empty where none do.
std::string keeping_words(const ComparableRecipe& recipe, const Kitchen& kitchen) {
  const Words words(recipe.recipe.text);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto match = kitchen.keeping_phrases.longest(words.all(), i);
    if (match.words == 0) continue;
    const Span span{words[i].span.begin, words[i + match.words - 1].span.end};
    return std::string(span.in(recipe.recipe.text));
  }
  return {};
}

constexpr double low_acid = 0.8;  // per cent of acid going in, under which the guidance for low-acid food is printed

bool is_vinegar(const std::string& name) { return name.find("vinegar") != std::string::npos; }

struct Share {
  const SheetLine* line;
  Amount grams;
  Figures salt, sugar, acid;
};

/// Share of the whole, in per cent; each end is the most and the least that the parts allow together.
std::optional<Amount> percent_of(const std::vector<Share>& parts, Figures Share::*of) {
  double low = 0, likely = 0, high = 0, all_low = 0, all = 0, all_high = 0;
  for (const Share& part : parts) {
    const Figures& f = part.*of;
    low += part.grams.low * f.low;
    likely += part.grams.likely * f.likely;
    high += part.grams.high * f.high;
    all_low += part.grams.low;
    all += part.grams.likely;
    all_high += part.grams.high;
  }
  if (all_low <= 0 || high <= 0) return std::nullopt;
  return Amount{Amount::Unit::gram, low / all_high, likely / all, std::min(100.0, high / all_low), "by weight"};
}

void rows_of(const std::vector<Share>& parts, const char* what, Figures Share::*of, std::vector<Keeping::Row>& rows) {
  for (const Share& part : parts) {
    const Figures& f = part.*of;
    if (f.high <= 0 || f.likely * part.grams.likely < 0.5) continue;
    rows.push_back({fmt::format("{} in {}", what, part.line->name),
                    {Amount::Unit::gram, f.low, f.likely, f.high, {}},
                    "per cent of its weight"});
  }
}

}  // namespace

Amount vinegar_strength(const Kitchen& kitchen, int year, const std::string& country) {
  Amount out{Amount::Unit::gram, 0, 0, 0, {}};
  for (const VinegarStrength& row : kitchen.vinegars) {
    const bool there = row.countries.empty() || country.empty() ||
                       std::find(row.countries.begin(), row.countries.end(), country) != row.countries.end();
    const bool then = year == 0 || ((row.from == 0 || year >= row.from) && (row.to == 0 || year <= row.to));
    if (!there || !then) continue;
    if (out.high == 0) {
      out = {Amount::Unit::gram, row.acid.low, row.acid.likely, row.acid.high, row.why};
    } else {
      out.low = std::min(out.low, row.acid.low);
      out.high = std::max(out.high, row.acid.high);
      if (out.why.find(row.why) == std::string::npos) out.why += "; " + row.why;
    }
  }
  return out;
}

Keeping keeping_of(const ComparableRecipe& recipe, const std::vector<SheetLine>& lines, const Kitchen& kitchen,
                   const Yardstick& yardstick) {
  Keeping out;
  const std::string words = keeping_words(recipe, kitchen);
  const bool put_up = std::any_of(recipe.steps.begin(), recipe.steps.end(),
                                  [](const Step& step) { return step.op == "bottle" || step.op == "pickle"; });
  if (kitchen.keeping_kinds.contains(recipe.dish.kind))
    out.why = "a " + recipe.dish.kind + " is made to be kept";
  else if (!words.empty())
    out.why = "the print says \"" + words + "\"";
  else if (put_up && recipe.dish.kind.empty())
    out.why = "it is put up in jars or bottles";
  out.meant_to_keep = !out.why.empty();
  if (!out.meant_to_keep) return out;

  goes_in(lines, recipe.dish.base, yardstick, out.no_amount);
  const Amount vinegar = vinegar_strength(kitchen, recipe.year, recipe.country);
  std::vector<Share> parts;
  bool any_vinegar = false;
  const bool any_acid = std::any_of(lines.begin(), lines.end(), [&](const SheetLine& line) {
    const auto known = kitchen.composition.find(line.name);
    return is_vinegar(line.name) || (known != kitchen.composition.end() && known->second.acid.high > low_acid);
  });
  for (const SheetLine& line : lines) {
    if (!counts(line)) continue;
    const auto amount = amount_or_siblings(line);
    const auto grams = amount ? in_grams(line.name, *amount, yardstick) : std::nullopt;
    if (!grams) {
      any_vinegar = any_vinegar || is_vinegar(line.name);
      continue;
    }
    Share part{&line, *grams, {}, {}, {}};
    if (is_vinegar(line.name)) {
      any_vinegar = true;
      part.acid = {vinegar.low, vinegar.likely, vinegar.high};
    } else if (const auto known = kitchen.composition.find(line.name); known != kitchen.composition.end()) {
      part.salt = known->second.salt;
      part.sugar = known->second.sugar;
      part.acid = known->second.acid;
    } else if (is_bulk(line) && line.kind != "water") {
      out.left_out.push_back(line.name);
    }
    parts.push_back(part);
  }
  if (any_vinegar) out.vinegar_then = vinegar;
  // A share of a whole that is not known would be no share: nothing is told then.
  if (!parts.empty() && out.no_amount.empty()) {
    out.salt = percent_of(parts, &Share::salt);
    out.sugar = percent_of(parts, &Share::sugar);
    out.acid = percent_of(parts, &Share::acid);
    rows_of(parts, "acid", &Share::acid, out.rows);
    rows_of(parts, "sugar", &Share::sugar, out.rows);
    rows_of(parts, "salt", &Share::salt, out.rows);
  }
  const bool in_brine = std::any_of(recipe.steps.begin(), recipe.steps.end(), [](const Step& step) {
    return step.op == "pickle" || step.op == "ferment" || step.op == "salt";
  });
  for (const Guidance& row : kitchen.guidance) {
    const bool wanted = row.when == "keeps" || (row.when == "vinegar" && any_vinegar) ||
                        (row.when == "sugar" && out.sugar && out.sugar->high > 30) ||
                        (row.when == "salt" && out.salt && out.salt->high > 2 && !any_vinegar && in_brine) ||
                        (row.when == "low-acid" && (out.acid ? out.acid->high < low_acid : !any_acid));
    if (wanted) out.guidance.push_back({row.says, row.source});
  }
  return out;
}

}  // namespace gallipot
