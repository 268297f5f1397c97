// What a printed amount comes to, for reading and as JSON.
#pragma once

#include <string>
#include <vector>

#include "query/measuring/measure.h"
#include "query/measuring/usual.h"
#include "query/reporting/report.h"

namespace gallipot {

/// The amount, by weight, by volume and by the spoons of today; which rule gave it; who bears witness and how far they
/// disagree. Of a heat: both scales, the sign that a cook goes by, the published figures.
std::string measure_as_text(const MeasureAnswer& answer, const TextStyle& style);

/// {"asked":{"words","of","year","country","book"},"kind":"amount"|"heat"|"none",
///  "quantity":[low,high],"measure","size","of",
///  "amount":{"unit","low","likely","high","why"}|null,"volume":{...}|null,"weight":{...}|null,
///  "kitchen":{"us","metric"}|null,
///  "rule":"decision"|"book"|"period"|"table"|null,
///  "agreement":{"witnesses","set_aside","least","most","unit"}|null,
///  "witnesses":[{"who","book","page","line","of","country","year","said","one":{...},"set_aside","quote"}],"sources":[...],
///  "decision":{"measure","size","of","book","country","from","to","note","decided"}|null,
///  "heat":{"name","kind","sign","unit","range":[low,likely,high]|null,"celsius":[...]|null,"witnesses":[...]}|null,"why"}
std::string measure_as_json(const MeasureAnswer& answer);

/// A table in Markdown of household measures: range in millilitres by country, number of witnesses.
std::string usual_as_text(const std::vector<UsualMeasure>& measures);

/// A decision in words: "one small teacup is 90 ml, everywhere".
std::string decision_in_words(const Decision& decision);

}  // namespace gallipot
