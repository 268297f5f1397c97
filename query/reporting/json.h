// The parts that all JSON answers share: amounts, ranges, citations. Internal to reporting.
#pragma once

#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <optional>
#include <string>

#include "indexer/measures/amount.h"
#include "indexer/parsing/parsed.h"
#include "query/citing/cite.h"

namespace gallipot {

using JsonWriter = rapidjson::Writer<rapidjson::StringBuffer>;

/// A field with a text; one with a text or null where it is empty.
void write_field(JsonWriter& json, const char* name, const std::string& value);
void write_field_or_null(JsonWriter& json, const char* name, const std::string& value);

/// {"unit","low","likely","high","why"} or null.
void write_amount(JsonWriter& json, const std::optional<Amount>& amount);

/// [low, high] or null.
void write_range(JsonWriter& json, const std::optional<Range>& range);

/// The citation's object: see citation_as_json.
void write_citation(JsonWriter& json, const Citation& citation);

/// The answer that `write` makes, with a line end.
template <typename Write>
std::string json_answer(Write write) {
  rapidjson::StringBuffer buffer;
  JsonWriter json(buffer);
  json.SetMaxDecimalPlaces(9);
  write(json);
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

}  // namespace gallipot
