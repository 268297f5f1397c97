// The file of corrections.
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/error/en.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <array>
#include <ctime>
#include <filesystem>

#include "indexer/correcting/correction.h"
#include "indexer/keeping/json_places.h"
#include "indexer/keeping/whole_file.h"

namespace gallipot {
namespace {

constexpr int version = 1;
constexpr double patience = 5;  // seconds

struct Text {
  const char* name;
  std::string Correction::*member;
};
constexpr std::array<Text, 9> texts = {{{"book", &Correction::book},
                                        {"printed", &Correction::printed},
                                        {"measure", &Correction::measure},
                                        {"name", &Correction::name},
                                        {"stuff", &Correction::stuff},
                                        {"title", &Correction::title},
                                        {"was", &Correction::was},
                                        {"note", &Correction::note},
                                        {"corrected", &Correction::corrected}}};

tl::unexpected<Fault> damaged(std::string what, const std::string& path, long line) {
  return fault("not a file of corrections: " + std::move(what), "mend it, or move it away to begin anew", path, line);
}

/// What is wrong with an entry; empty where it was read.
std::string read_entry(const rapidjson::Value& json, Correction& out) {
  if (!json.IsObject()) return "a correction is not an object";
  for (const Text& text : texts) {
    const auto at = json.FindMember(text.name);
    if (at == json.MemberEnd() || at->value.IsNull()) continue;
    if (!at->value.IsString()) return fmt::format("\"{}\" is not a text", text.name);
    out.*text.member = at->value.GetString();
  }
  const auto kind =
      json.HasMember("kind") && json["kind"].IsString() ? kind_named(json["kind"].GetString()) : std::nullopt;
  if (!kind) return "\"kind\" is none that there is";
  out.kind = *kind;
  for (const char* name : {"number", "line"})
    if (!json.HasMember(name) || !json[name].IsUint()) return fmt::format("\"{}\" is not a whole number", name);
  out.number = json["number"].GetUint();
  out.line = json["line"].GetUint();
  if (out.book.empty() || out.printed.empty()) return "it does not say where it holds";
  const auto range = json.FindMember("quantity");
  if (range == json.MemberEnd() || range->value.IsNull()) return {};
  if (!range->value.IsArray() || range->value.Size() != 2 || !range->value[0].IsNumber() || !range->value[1].IsNumber())
    return "\"quantity\" is not a pair of numbers";
  out.quantity = Range{range->value[0].GetDouble(), range->value[1].GetDouble()};
  if (out.quantity->low < 0 || out.quantity->high < out.quantity->low) return "\"quantity\" runs backwards";
  return {};
}

Outcome<std::vector<Correction>> read_all(const std::string& path) {
  std::vector<Correction> out;
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) return out;
  const auto bytes = read_whole_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  rapidjson::Document json;
  json.Parse<rapidjson::kParseIterativeFlag>(bytes->c_str(), bytes->size());
  if (json.HasParseError())
    return damaged(fmt::format("it is not JSON ({})", rapidjson::GetParseError_En(json.GetParseError())), path,
                   line_of(*bytes, json.GetErrorOffset()));
  if (!json.IsObject() || !json.HasMember("gallipot") || json["gallipot"] != "corrections" ||
      !json.HasMember("version") || !json["version"].IsInt() || !json.HasMember("corrections") ||
      !json["corrections"].IsArray())
    return damaged("it does not begin as one", path, 1);
  if (json["version"].GetInt() > version)
    return fault(fmt::format("the corrections are of version {} and this program reads up to {}",
                             json["version"].GetInt(), version),
                 "use the newer gallipot that wrote them", path);
  const auto lines = entry_lines(*bytes, "corrections");
  for (const auto& entry : json["corrections"].GetArray()) {
    const std::size_t i = out.size();
    const std::string wrong = read_entry(entry, out.emplace_back());
    if (!wrong.empty()) return damaged(wrong, path, i < lines.size() ? lines[i] : 0);
  }
  return out;
}

std::string as_json(const std::vector<Correction>& all) {
  rapidjson::StringBuffer buffer;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json(buffer);
  json.SetIndent(' ', 1);
  json.SetFormatOptions(rapidjson::kFormatSingleLineArray);
  json.SetMaxDecimalPlaces(6);
  json.StartObject();
  json.Key("gallipot");
  json.String("corrections");
  json.Key("version");
  json.Int(version);
  json.Key("corrections");
  json.StartArray();
  for (const Correction& one : all) {
    json.StartObject();
    json.Key("number");
    json.Uint(one.number);
    json.Key("kind");
    json.String(kind_name(one.kind));
    json.Key("line");
    json.Uint(one.line);
    for (const Text& text : texts) {
      if ((one.*text.member).empty()) continue;
      json.Key(text.name);
      json.String(one.*text.member);
    }
    if (one.quantity) {
      json.Key("quantity");
      json.StartArray();
      json.Double(one.quantity->low);
      json.Double(one.quantity->high);
      json.EndArray();
    }
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

Outcome<FileLock> hold(const std::string& path) {
  return FileLock::wait(path + ".lock",
                        {"the corrections are being written by another", path, 0, "try again in a moment"}, patience);
}

bool same_question(const Correction& a, const Correction& b) {
  return a.kind == b.kind && a.book == b.book && a.line == b.line && a.printed == b.printed;
}

}  // namespace

std::string corrections_beside(const std::string& index_folder) {
  std::string out = index_folder;
  while (out.size() > 1 && out.back() == '/') out.pop_back();
  return out + ".corrections.json";
}

Outcome<Corrections> read_corrections(const std::string& path) {
  auto all = read_all(path);
  if (!all) return tl::unexpected(all.error());
  return Corrections(std::move(*all));
}

Outcome<Correction> record_correction(const std::string& path, Correction correction) {
  if (correction.book.empty() || correction.line == 0 || correction.printed.empty())
    return fault("a correction must say where it holds", "name the book, the line and the printed words");
  const auto lock = hold(path);
  if (!lock) return tl::unexpected(lock.error());
  auto all = read_all(path);
  if (!all) return tl::unexpected(all.error());
  correction.number = 0;
  for (const Correction& one : *all) correction.number = std::max(correction.number, one.number);
  ++correction.number;
  if (correction.corrected.empty()) correction.corrected = fmt::format("{:%Y-%m-%d}", fmt::gmtime(std::time(nullptr)));
  const auto same =
      std::find_if(all->begin(), all->end(), [&](const Correction& one) { return same_question(one, correction); });
  if (same != all->end()) {
    if (!same->was.empty()) correction.was = same->was;  // what the program itself had read
    all->erase(same);
  }
  all->push_back(correction);
  if (auto done = replace_file(path, as_json(*all)); !done) return tl::unexpected(done.error());
  return correction;
}

Outcome<Correction> withdraw_correction(const std::string& path, unsigned number) {
  const auto lock = hold(path);
  if (!lock) return tl::unexpected(lock.error());
  auto all = read_all(path);
  if (!all) return tl::unexpected(all.error());
  const auto at = std::find_if(all->begin(), all->end(), [&](const Correction& one) { return one.number == number; });
  if (at == all->end())
    return fault(fmt::format("there is no correction {}", number), "take a number from the list of corrections", path);
  Correction gone = std::move(*at);
  all->erase(at);
  if (auto done = replace_file(path, as_json(*all)); !done) return tl::unexpected(done.error());
  return gone;
}

}  // namespace gallipot
