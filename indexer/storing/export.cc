// Writes one recipe as the export schema lays it down.
#include "indexer/storing/export.h"

#include <fmt/format.h>
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace gallipot {
namespace {

using Json = rapidjson::Writer<rapidjson::StringBuffer>;

/// Byte offsets of a text turned into code points. Text that is all ASCII, as most print is, costs one pass.
class CodePoints {
 public:
  explicit CodePoints(std::string_view text) : text_(text) {
    if (std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) return;
    before_.reserve(text.size() + 1);
    std::uint32_t n = 0;
    for (const char c : text) {
      before_.push_back(n);
      if (!continues(c)) ++n;
    }
    before_.push_back(n);
  }
  std::uint32_t operator[](std::uint32_t byte) const { return before_.empty() ? byte : before_[byte]; }

  /// The span, widened to whole characters and cut to the text: what is printed from it is always well-formed.
  Span whole(Span s) const {
    const auto size = static_cast<std::uint32_t>(text_.size());
    s.begin = std::min(s.begin, size);
    s.end = std::clamp(s.end, s.begin, size);
    while (s.begin > 0 && s.begin < size && continues(text_[s.begin])) --s.begin;
    while (s.end < size && continues(text_[s.end])) ++s.end;
    return s;
  }

 private:
  static bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }
  std::string_view text_;
  std::vector<std::uint32_t> before_;  ///< byte -> code points before it; empty where the two are one
};

void key(Json& json, std::string_view name) { json.Key(name.data(), static_cast<rapidjson::SizeType>(name.size())); }

void text(Json& json, std::string_view value) {
  json.String(value.data(), static_cast<rapidjson::SizeType>(value.size()));
}

void text_or_null(Json& json, std::string_view value) {
  if (value.empty()) {
    json.Null();
  } else {
    text(json, value);
  }
}

/// Seven digits are more than any kitchen needs; the seventeenth would be noise of the binary form.
void real(Json& json, double value) {
  if (!std::isfinite(value)) {
    json.Null();
    return;
  }
  fmt::memory_buffer digits;
  fmt::format_to(std::back_inserter(digits), "{:.7g}", value);
  json.RawValue(digits.data(), digits.size(), rapidjson::kNumberType);
}

void range_or_null(Json& json, const std::optional<Range>& range) {
  if (!range) {
    json.Null();
    return;
  }
  json.StartArray();
  real(json, range->low);
  real(json, range->high);
  json.EndArray();
}

void relative_or_null(Json& json, const std::optional<Relative>& relative) {
  if (!relative) {
    json.Null();
    return;
  }
  json.StartObject();
  key(json, "factor");
  real(json, relative->factor);
  key(json, "to");
  text(json, relative->to);
  key(json, "by");
  text(json, relative->by == Relative::By::weight ? "weight" : "measure");
  json.EndObject();
}

void per_or_null(Json& json, const std::optional<PerUnit>& per) {
  if (!per) {
    json.Null();
    return;
  }
  json.StartObject();
  key(json, "quantity");
  real(json, per->quantity);
  key(json, "measure");
  text_or_null(json, per->measure);
  key(json, "of");
  text(json, per->of);
  json.EndObject();
}

void metric_or_null(Json& json, const std::optional<Amount>& metric) {
  if (!metric) {
    json.Null();
    return;
  }
  json.StartObject();
  key(json, "unit");
  text(json, unit_name(metric->unit));
  key(json, "low");
  real(json, metric->low);
  key(json, "likely");
  real(json, metric->likely);
  key(json, "high");
  real(json, metric->high);
  key(json, "why");
  text(json, metric->why);
  json.EndObject();
}

void ingredient(Json& json, const ComparableIngredient& item, std::string_view words, const CodePoints& points) {
  const Ingredient& printed = item.printed;
  const Span span = points.whole(printed.span);
  json.StartObject();
  key(json, "raw");
  text(json, span.in(words));
  key(json, "span");
  json.StartArray();
  json.Uint(points[span.begin]);
  json.Uint(points[span.end]);
  json.EndArray();
  key(json, "name");
  text(json, printed.name);
  key(json, "quantity");
  range_or_null(json, printed.quantity);
  key(json, "measure");
  text_or_null(json, printed.measure);
  key(json, "relative");
  relative_or_null(json, printed.relative);
  key(json, "per");
  per_or_null(json, printed.per);
  key(json, "optional");
  json.Bool(printed.optional);
  key(json, "alternative_of");
  text_or_null(json, printed.alternative_of);
  key(json, "metric");
  metric_or_null(json, item.metric);
  json.EndObject();
}

void step(Json& json, const Step& item, std::string_view words, const CodePoints& points) {
  json.StartObject();
  key(json, "op");
  text(json, item.op);
  key(json, "minutes");
  range_or_null(json, item.minutes);
  key(json, "raw");
  text(json, points.whole(item.span).in(words));
  json.EndObject();
}

void place(Json& json, const ComparableRecipe& r) {
  key(json, "page");
  text_or_null(json, r.recipe.page);
  key(json, "page_end");
  text_or_null(json, r.recipe.page_end);
  key(json, "chapter");
  text_or_null(json, r.recipe.chapter);
  key(json, "contributor");
  text_or_null(json, r.recipe.contributor);
  key(json, "source");
  json.StartObject();
  key(json, "file");
  text(json, r.file);
  key(json, "line_start");
  json.Uint(r.recipe.line_start);
  key(json, "line_end");
  json.Uint(r.recipe.line_end);
  json.EndObject();
}

}  // namespace

std::string export_line(const ComparableRecipe& r) {
  rapidjson::StringBuffer out;
  Json json(out);
  const std::string_view words = r.recipe.text;
  const CodePoints points(words);
  json.StartObject();
  key(json, "id");
  text(json, r.id);
  key(json, "book");
  text(json, r.book);
  key(json, "title");
  text(json, r.recipe.title);
  place(json, r);
  key(json, "text");
  text(json, words);
  key(json, "dish");
  json.StartObject();
  key(json, "base");
  text(json, r.dish.base);
  key(json, "kind");
  text(json, r.dish.kind);
  json.EndObject();
  key(json, "ingredients");
  json.StartArray();
  for (const auto& item : r.ingredients) ingredient(json, item, words, points);
  json.EndArray();
  key(json, "steps");
  json.StartArray();
  for (const auto& item : r.steps) step(json, item, words, points);
  json.EndArray();
  key(json, "cautions");
  json.StartArray();
  for (const auto& caution : r.cautions) text(json, caution);
  json.EndArray();
  json.EndObject();
  return {out.GetString(), out.GetSize()};
}

}  // namespace gallipot
