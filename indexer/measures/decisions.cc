// The cook's decisions as JSON, read whole and replaced whole.
#include "indexer/measures/decisions.h"

#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/error/en.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <filesystem>

#include "indexer/keeping/json_places.h"
#include "indexer/keeping/whole_file.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;
using rapidjson::Value;

constexpr int version = 2;
constexpr const char* left_alone = "mend that line, or move the file away; until then it is left as it is";

/// Reads the members of one decision; remembers the first thing wrong.
class Members {
 public:
  explicit Members(const Value& json) : json_(json) {}

  std::string text(const char* name) {
    const Value* v = find(name);
    if (v == nullptr) return {};
    if (!v->IsString()) wrong(fmt::format("\"{}\" is not a text", name));
    return v->IsString() ? std::string(v->GetString(), v->GetStringLength()) : std::string();
  }
  int year(const char* name) {
    const Value* v = find(name);
    if (v == nullptr) return 0;
    if (!v->IsInt()) wrong(fmt::format("\"{}\" is not a year", name));
    return v->IsInt() ? v->GetInt() : 0;
  }
  double number(const Value& in, const char* name) {
    const auto at = in.FindMember(name);
    if (at != in.MemberEnd() && at->value.IsNumber()) return at->value.GetDouble();
    wrong(fmt::format("\"{}\" is not a number", name));
    return 0;
  }
  Amount::Unit unit(const Value& in) {
    const auto at = in.FindMember("unit");
    const std::string name = at != in.MemberEnd() && at->value.IsString() ? at->value.GetString() : "";
    if (name == "g") return Amount::Unit::gram;
    if (name == "count") return Amount::Unit::count;
    if (name != "ml") wrong("\"unit\" is neither g, ml nor count");
    return Amount::Unit::millilitre;
  }
  void wrong(const std::string& what) {
    if (wrong_.empty()) wrong_ = what;
  }
  const std::string& what_is_wrong() const { return wrong_; }

 private:
  const Value* find(const char* name) const {
    const auto at = json_.FindMember(name);
    return at == json_.MemberEnd() || at->value.IsNull() ? nullptr : &at->value;
  }
  const Value& json_;
  std::string wrong_;
};

void read_value(const Value& json, int of_version, Members& members, Decision& d) {
  if (of_version == 1) {
    d.unit = members.unit(json);
    d.low = d.likely = d.high = members.number(json, "amount");
  } else {
    const auto at = json.FindMember("value");
    if (at == json.MemberEnd() || !at->value.IsObject()) return members.wrong("it has no \"value\"");
    d.unit = members.unit(at->value);
    d.low = members.number(at->value, "low");
    d.likely = members.number(at->value, "likely");
    d.high = members.number(at->value, "high");
  }
  if (!(0 < d.low && d.low <= d.likely && d.likely <= d.high && d.high < 1e9))
    members.wrong("low, likely and high are not positive and in order");
}

Outcome<Decision> read_decision(const Value& json, int of_version, const std::string& path, long line) {
  if (!json.IsObject()) return fault("a decision is not an object", left_alone, path, line);
  Members members(json);
  Decision d;
  d.measure = members.text("measure");
  d.size = members.text("size");
  d.of = members.text("of");
  read_value(json, of_version, members, d);
  d.book = members.text("book");
  d.country = members.text("country");
  d.from = members.year("from");
  d.to = members.year("to");
  d.note = members.text("note");
  d.decided = members.text("decided");
  if (d.measure.empty() && d.of.empty()) members.wrong("it names neither \"measure\" nor \"of\"");
  if (!members.what_is_wrong().empty())
    return fault("a decision cannot be read: " + members.what_is_wrong(), left_alone, path, line);
  return d;
}

Outcome<std::vector<Decision>> parse(const std::string& bytes, const std::string& path) {
  const auto damaged = [&](const std::string& how, long line) {
    return fault("the file of decisions is damaged: " + how, left_alone, path, line);
  };
  rapidjson::Document json;
  json.Parse(bytes.c_str(), bytes.size());
  if (json.HasParseError())
    return damaged(fmt::format("it is not JSON ({})", rapidjson::GetParseError_En(json.GetParseError())),
                   line_of(bytes, json.GetErrorOffset()));
  if (!json.IsObject() || !json.HasMember("gallipot") || json["gallipot"] != "decisions")
    return damaged("it does not say \"gallipot\": \"decisions\"", 1);
  if (!json.HasMember("version") || !json["version"].IsInt() || json["version"].GetInt() < 1)
    return damaged("it names no \"version\"", 1);
  const int of_version = json["version"].GetInt();
  if (of_version > version)
    return fault(fmt::format("the decisions are of version {} and this program reads up to {}", of_version, version),
                 "use the newer program; until then the file is left as it is", path);
  if (!json.HasMember("decisions") || !json["decisions"].IsArray()) return damaged("it has no \"decisions\"", 1);
  const auto lines = entry_lines(bytes, "decisions");
  std::vector<Decision> out;
  for (const Value& entry : json["decisions"].GetArray()) {
    auto decision = read_decision(entry, of_version, path, out.size() < lines.size() ? lines[out.size()] : 0);
    if (!decision) return tl::unexpected(decision.error());
    out.push_back(std::move(*decision));
  }
  return out;
}

using Json = rapidjson::PrettyWriter<rapidjson::StringBuffer>;

void text_or_null(Json& json, const char* name, const std::string& text) {
  json.Key(name);
  if (text.empty())
    json.Null();
  else
    json.String(text);
}

void year_or_null(Json& json, const char* name, int year) {
  json.Key(name);
  if (year == 0)
    json.Null();
  else
    json.Int(year);
}

void write_decision(Json& json, const Decision& d) {
  json.StartObject();
  text_or_null(json, "measure", d.measure);
  text_or_null(json, "size", d.size);
  text_or_null(json, "of", d.of);
  json.Key("value");
  json.StartObject();
  json.Key("unit");
  json.String(unit_name(d.unit));
  json.Key("low");
  json.Double(d.low);
  json.Key("likely");
  json.Double(d.likely);
  json.Key("high");
  json.Double(d.high);
  json.EndObject();
  text_or_null(json, "book", d.book);
  text_or_null(json, "country", d.country);
  year_or_null(json, "from", d.from);
  year_or_null(json, "to", d.to);
  text_or_null(json, "note", d.note);
  text_or_null(json, "decided", d.decided);
  json.EndObject();
}

Outcome<bool> write_decisions(const std::string& path, const std::vector<Decision>& decisions) {
  rapidjson::StringBuffer out;
  Json json(out);
  json.SetIndent(' ', 1);
  json.StartObject();
  json.Key("gallipot");
  json.String("decisions");
  json.Key("version");
  json.Int(version);
  json.Key("decisions");
  json.StartArray();
  for (const Decision& d : decisions) write_decision(json, d);
  json.EndArray();
  json.EndObject();
  return replace_file(path, std::string(out.GetString(), out.GetSize()) + "\n");
}

Outcome<FileLock> lock(const std::string& path) {
  constexpr double patience = 10;  // seconds; a writer is done in a few thousandths
  return FileLock::wait(path + ".lock", {"the decisions are being written by another run", path, 0, "try again"},
                        patience);
}

}  // namespace

bool same_question(const Decision& a, const Decision& b) {
  return a.measure == b.measure && a.size == b.size && a.of == b.of && a.book == b.book && a.country == b.country &&
         a.from == b.from && a.to == b.to;
}

std::string decisions_beside(const std::string& index_folder) {
  fs::path folder = fs::path(index_folder).lexically_normal();
  if (!folder.has_filename()) folder = folder.parent_path();  // "shelf/"
  return folder.string() + ".decisions.json";
}

Outcome<std::vector<Decision>> read_decisions(const std::string& path) {
  std::error_code ignored;
  if (!fs::exists(path, ignored)) return std::vector<Decision>{};
  const auto bytes = read_whole_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse(*bytes, path);
}

Outcome<bool> record_decision(const std::string& path, const Decision& decision) {
  const auto held = lock(path);
  if (!held) return tl::unexpected(held.error());
  auto all = read_decisions(path);
  if (!all) return tl::unexpected(all.error());
  std::erase_if(*all, [&](const Decision& d) { return same_question(d, decision); });
  all->push_back(decision);
  return write_decisions(path, *all);
}

Outcome<bool> forget_decision(const std::string& path, const Decision& question) {
  const auto held = lock(path);
  if (!held) return tl::unexpected(held.error());
  auto all = read_decisions(path);
  if (!all) return tl::unexpected(all.error());
  if (std::erase_if(*all, [&](const Decision& d) { return same_question(d, question); }) == 0) return false;
  if (auto written = write_decisions(path, *all); !written) return tl::unexpected(written.error());
  return true;
}

}  // namespace gallipot
