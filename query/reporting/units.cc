// Units in JSON.
#include "query/reporting/units.h"

namespace gallipot {

const char* ucum_code(Amount::Unit unit) {
  switch (unit) {
    case Amount::Unit::gram:
      return "g";
    case Amount::Unit::millilitre:
      return "mL";
    case Amount::Unit::count:
      return "1";
  }
  return "1";
}

void write_amount_with_code(JsonWriter& json, const std::optional<Amount>& amount) {
  if (!amount) {
    json.Null();
    return;
  }
  json.StartObject();
  write_field(json, "unit", unit_name(amount->unit));
  write_field(json, "ucum", ucum_code(amount->unit));
  json.Key("low");
  json.Double(amount->low);
  json.Key("likely");
  json.Double(amount->likely);
  json.Key("high");
  json.Double(amount->high);
  write_field_or_null(json, "why", amount->why);
  json.EndObject();
}

}  // namespace gallipot
