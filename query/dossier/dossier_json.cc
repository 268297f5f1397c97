// The file form of a dossier. Each struct lists its texts once, in a table; reading and writing walk it.
#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/error/en.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <array>

#include "query/dossier/dossier.h"

namespace gallipot {
namespace {

using Json = rapidjson::Value;
using Pretty = rapidjson::PrettyWriter<rapidjson::StringBuffer>;

template <typename T>
struct Text {
  const char* name;
  std::string T::*member;
};

constexpr std::array<Text<Dossier>, 4> head_texts = {{{"title", &Dossier::title},
                                                      {"question", &Dossier::question},
                                                      {"begun", &Dossier::begun},
                                                      {"changed", &Dossier::changed}}};
constexpr std::array<Text<DossierRecipe>, 6> recipe_texts = {{{"id", &DossierRecipe::id},
                                                              {"reason", &DossierRecipe::reason},
                                                              {"title", &DossierRecipe::title},
                                                              {"citation", &DossierRecipe::citation},
                                                              {"note", &DossierRecipe::note},
                                                              {"caption", &DossierRecipe::caption}}};
constexpr std::array<Text<DossierDecision>, 4> decision_texts = {{{"date", &DossierDecision::date},
                                                                  {"about", &DossierDecision::about},
                                                                  {"words", &DossierDecision::words},
                                                                  {"why", &DossierDecision::why}}};
constexpr std::array<Text<Trial>, 6> trial_texts = {{{"date", &Trial::date},
                                                     {"of", &Trial::of},
                                                     {"batch", &Trial::batch},
                                                     {"changes", &Trial::changes},
                                                     {"tasting", &Trial::tasting},
                                                     {"verdict", &Trial::verdict}}};
constexpr std::array<Text<TrialAmount>, 2> amount_texts = {
    {{"stuff", &TrialAmount::stuff}, {"unit", &TrialAmount::unit}}};
constexpr std::array<const char*, 11> known = {"gallipot", "version", "revision",  "title",       "question", "begun",
                                               "changed",  "recipes", "decisions", "corrections", "trials"};

/// Reads members; the first that is of the wrong type is told in `wrong`.
class Members {
 public:
  std::string wrong;

  template <typename T, std::size_t n>
  void texts(const Json& json, const std::array<Text<T>, n>& table, T& into) {
    for (const auto& text : table) {
      const auto at = json.FindMember(text.name);
      if (at == json.MemberEnd()) continue;
      if (at->value.IsString())
        into.*text.member = std::string(at->value.GetString(), at->value.GetStringLength());
      else
        note(text.name, "a text");
    }
  }
  template <typename Each>
  void list(const Json& json, const char* name, Each each) {
    const auto at = json.FindMember(name);
    if (at == json.MemberEnd()) return;
    if (!at->value.IsArray()) {
      note(name, "a list");
      return;
    }
    for (const Json& item : at->value.GetArray()) each(item);
  }
  template <typename Each>
  void objects(const Json& json, const char* name, Each each) {
    list(json, name, [&](const Json& item) { item.IsObject() ? each(item) : note(name, "a list of objects"); });
  }
  unsigned number(const Json& json, const char* name) {
    const auto at = json.FindMember(name);
    if (at == json.MemberEnd()) return 0;
    if (at->value.IsUint()) return at->value.GetUint();
    note(name, "a whole number");
    return 0;
  }
  void note(const char* name, const char* wanted) {
    if (wrong.empty()) wrong = fmt::format("\"{}\" is not {}", name, wanted);
  }
};

DossierRecipe recipe_in(const Json& json, Members& members) {
  DossierRecipe out;
  members.texts(json, recipe_texts, out);
  if (out.id.empty()) members.note("id", "told for every recipe");
  if (const auto at = json.FindMember("standing"); at != json.MemberEnd()) {
    const auto standing = at->value.IsString() ? standing_named(at->value.GetString()) : std::nullopt;
    if (standing)
      out.standing = *standing;
    else
      members.note("standing", "\"chosen\", \"kept\" or \"struck\"");
  }
  if (const auto at = json.FindMember("by_hand"); at != json.MemberEnd()) {
    if (at->value.IsBool())
      out.by_hand = at->value.GetBool();
    else
      members.note("by_hand", "true or false");
  }
  return out;
}

TrialAmount amount_in(const Json& json, Members& members) {
  TrialAmount out;
  members.texts(json, amount_texts, out);
  const auto at = json.FindMember("amount");
  if (at == json.MemberEnd() || at->value.IsNull()) return out;
  if (at->value.IsNumber() && at->value.GetDouble() >= 0)
    out.amount = at->value.GetDouble();
  else
    members.note("amount", "a number from 0 up, or null");
  return out;
}

Trial trial_in(const Json& json, Members& members) {
  Trial out;
  out.number = members.number(json, "number");
  members.texts(json, trial_texts, out);
  members.objects(json, "amounts", [&](const Json& item) { out.amounts.push_back(amount_in(item, members)); });
  return out;
}

/// The members of the file that this program has no name for, as one object.
std::string further_members(const Json& json) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);
  writer.StartObject();
  bool any = false;
  for (const auto& member : json.GetObject()) {
    const std::string_view name(member.name.GetString(), member.name.GetStringLength());
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    writer.Key(member.name.GetString(), member.name.GetStringLength());
    member.value.Accept(writer);
    any = true;
  }
  writer.EndObject();
  return any ? std::string(buffer.GetString(), buffer.GetSize()) : std::string();
}

template <typename T, std::size_t n>
void write_texts(Pretty& json, const std::array<Text<T>, n>& table, const T& from) {
  for (const auto& text : table) {
    if ((from.*text.member).empty()) continue;
    json.Key(text.name);
    json.String(from.*text.member);
  }
}

template <typename List, typename Each>
void write_list(Pretty& json, const char* name, const List& list, Each each) {
  json.Key(name);
  json.StartArray();
  for (const auto& item : list) each(item);
  json.EndArray();
}

void write_recipe(Pretty& json, const DossierRecipe& recipe) {
  json.StartObject();
  write_texts(json, recipe_texts, recipe);
  json.Key("standing");
  json.String(standing_name(recipe.standing));
  json.Key("by_hand");
  json.Bool(recipe.by_hand);
  json.EndObject();
}

void write_trial(Pretty& json, const Trial& trial) {
  json.StartObject();
  json.Key("number");
  json.Uint(trial.number);
  write_texts(json, trial_texts, trial);
  write_list(json, "amounts", trial.amounts, [&](const TrialAmount& amount) {
    json.StartObject();
    write_texts(json, amount_texts, amount);
    json.Key("amount");
    amount.amount ? json.Double(*amount.amount) : json.Null();
    json.EndObject();
  });
  json.EndObject();
}

void write_further(Pretty& json, const std::string& more) {
  if (more.empty()) return;
  rapidjson::Document further;
  further.Parse(more.c_str(), more.size());
  if (further.HasParseError() || !further.IsObject()) return;
  for (const auto& member : further.GetObject()) {
    json.Key(member.name.GetString(), member.name.GetStringLength());
    member.value.Accept(json);
  }
}

tl::unexpected<Fault> not_one(const std::string& what, const std::string& path, long line = 0) {
  return fault("not a dossier: " + what, "mend the file, or take an earlier version of it from beside it", path, line);
}

}  // namespace

std::string dossier_as_json(const Dossier& dossier) {
  rapidjson::StringBuffer buffer;
  Pretty json(buffer);
  json.SetIndent(' ', 1);
  json.SetMaxDecimalPlaces(6);
  json.StartObject();
  json.Key("gallipot");
  json.String("dossier");
  json.Key("version");
  json.Int(dossier_version);
  json.Key("revision");
  json.Uint(dossier.revision);
  write_texts(json, head_texts, dossier);
  write_list(json, "recipes", dossier.recipes, [&](const DossierRecipe& one) { write_recipe(json, one); });
  write_list(json, "decisions", dossier.decisions, [&](const DossierDecision& one) {
    json.StartObject();
    write_texts(json, decision_texts, one);
    json.EndObject();
  });
  write_list(json, "corrections", dossier.corrections, [&](const std::string& one) { json.String(one); });
  write_list(json, "trials", dossier.trials, [&](const Trial& one) { write_trial(json, one); });
  write_further(json, dossier.more);
  json.EndObject();
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

Outcome<Dossier> read_dossier_json(std::string_view bytes, const std::string& path) {
  rapidjson::Document json;
  json.Parse<rapidjson::kParseIterativeFlag>(bytes.data(), bytes.size());
  if (json.HasParseError()) {
    const auto at = bytes.substr(0, json.GetErrorOffset());
    return not_one(fmt::format("it is not JSON ({})", rapidjson::GetParseError_En(json.GetParseError())), path,
                   1 + static_cast<long>(std::count(at.begin(), at.end(), '\n')));
  }
  if (!json.IsObject() || !json.HasMember("gallipot") || json["gallipot"] != "dossier")
    return not_one("it does not say \"gallipot\": \"dossier\"", path);
  if (!json.HasMember("version") || !json["version"].IsInt()) return not_one("it names no \"version\"", path);
  const int version = json["version"].GetInt();
  if (version > dossier_version)
    return fault(fmt::format("this dossier is of version {} and this program reads up to {}", version, dossier_version),
                 "open it with the newer gallipot that wrote it", path);
  if (version < 1) return not_one(fmt::format("there is no version {}", version), path);
  Members members;
  Dossier out;
  out.revision = members.number(json, "revision");
  members.texts(json, head_texts, out);
  members.objects(json, "recipes", [&](const Json& item) { out.recipes.push_back(recipe_in(item, members)); });
  members.objects(json, "decisions",
                  [&](const Json& item) { members.texts(item, decision_texts, out.decisions.emplace_back()); });
  members.list(json, "corrections", [&](const Json& item) {
    if (item.IsString())
      out.corrections.emplace_back(item.GetString());
    else
      members.note("corrections", "a list of texts");
  });
  members.objects(json, "trials", [&](const Json& item) { out.trials.push_back(trial_in(item, members)); });
  if (!members.wrong.empty()) return not_one(members.wrong, path);
  out.more = further_members(json);
  return out;
}

}  // namespace gallipot
