// Reads and writes shelf.json.
#include "indexer/storing/manifest.h"

#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/error/en.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/keeping/whole_file.h"
#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

constexpr const char* again = "move the folder away and index the books again";

/// The fields of a book that are plain strings, by their names in the shelf list.
struct Field {
  const char* name;
  std::string Book::*member;
};
constexpr std::array<Field, 15> fields = {{{"id", &Book::id},
                                           {"file", &Book::file},
                                           {"title", &Book::title},
                                           {"creator", &Book::creator},
                                           {"contributor", &Book::contributor},
                                           {"date", &Book::date},
                                           {"first_published", &Book::first_published},
                                           {"publisher", &Book::publisher},
                                           {"place", &Book::place},
                                           {"country", &Book::country},
                                           {"edition", &Book::edition},
                                           {"language", &Book::language},
                                           {"rights", &Book::rights},
                                           {"source", &Book::source},
                                           {"identifier", &Book::identifier}}};

std::string path_of(const std::string& folder) { return (fs::path(folder) / "shelf.json").string(); }

tl::unexpected<Fault> damaged(const std::string& path, const std::string& how, long line = 0) {
  return fault("the index is damaged: " + how, again, path, line);
}

Outcome<ShelvedBook> read_book(const rapidjson::Value& json, const std::string& path) {
  if (!json.IsObject()) return damaged(path, "a book is not an object");
  ShelvedBook out;
  for (const auto& field : fields) {
    const auto at = json.FindMember(field.name);
    if (at == json.MemberEnd()) continue;
    if (!at->value.IsString()) return damaged(path, fmt::format("\"{}\" of a book is not a text", field.name));
    out.book.*field.member = at->value.GetString();
  }
  if (out.book.id.empty()) return damaged(path, "a book has no \"id\"");
  for (const char* name : {"order", "recipes", "bytes", "statements"})
    if (!json.HasMember(name) || !json[name].IsUint64())
      return damaged(path, fmt::format("the book \"{}\" has no \"{}\"", out.book.id, name));
  if (!json["order"].IsUint())
    return damaged(path, fmt::format("\"order\" of the book \"{}\" is too large", out.book.id));
  out.order = json["order"].GetUint();
  out.recipes = json["recipes"].GetUint64();
  out.bytes = json["bytes"].GetUint64();
  out.statements = json["statements"].GetUint64();
  if (json.HasMember("tables") && json["tables"].IsString()) out.tables = json["tables"].GetString();
  out.book.years = edtf_years(out.book.date);
  out.book.first_years = edtf_years(out.book.first_published);
  return out;
}

Outcome<Manifest> parse(const std::string& bytes, const std::string& path) {
  rapidjson::Document json;
  json.Parse(bytes.c_str(), bytes.size());
  if (json.HasParseError()) {
    const auto at = bytes.begin() + static_cast<std::ptrdiff_t>(std::min(json.GetErrorOffset(), bytes.size()));
    return damaged(path,
                   fmt::format("its manifest is not JSON ({})", rapidjson::GetParseError_En(json.GetParseError())),
                   1 + static_cast<long>(std::count(bytes.begin(), at, '\n')));
  }
  if (!json.IsObject() || !json.HasMember("schema") || !json["schema"].IsInt())
    return damaged(path, "its manifest names no \"schema\"");
  if (json["schema"].GetInt() != schema::version)
    return fault(fmt::format("the index is of schema {} and this program reads schema {}", json["schema"].GetInt(),
                             schema::version),
                 again, path);
  if (!json.HasMember("generation") || !json["generation"].IsString() || json["generation"].GetStringLength() == 0)
    return damaged(path, "its manifest names no \"generation\"");
  if (!json.HasMember("books") || !json["books"].IsArray()) return damaged(path, "its manifest names no \"books\"");
  Manifest out;
  out.generation = json["generation"].GetString();
  if (out.generation.find('/') != std::string::npos) return damaged(path, "its generation lies outside the folder");
  std::set<std::string> ids;
  for (const auto& entry : json["books"].GetArray()) {
    auto book = read_book(entry, path);
    if (!book) return tl::unexpected(book.error());
    if (!ids.insert(book->book.id).second)
      return damaged(path, fmt::format("the book \"{}\" stands in it twice", book->book.id));
    out.books.push_back(std::move(*book));
  }
  std::sort(out.books.begin(), out.books.end(), [](const auto& a, const auto& b) { return a.order < b.order; });
  return out;
}

void write_book(rapidjson::PrettyWriter<rapidjson::StringBuffer>& json, const ShelvedBook& shelved) {
  json.StartObject();
  for (const auto& field : fields) {
    const std::string& value = shelved.book.*field.member;
    if (value.empty()) continue;
    json.Key(field.name);
    json.String(value);
  }
  json.Key("order");
  json.Uint(shelved.order);
  json.Key("recipes");
  json.Uint64(shelved.recipes);
  json.Key("bytes");
  json.Uint64(shelved.bytes);
  json.Key("statements");
  json.Uint64(shelved.statements);
  json.Key("tables");
  json.String(shelved.tables);
  json.EndObject();
}

}  // namespace

bool has_manifest(const std::string& folder) {
  std::error_code ignored;
  return fs::exists(path_of(folder), ignored);
}

Outcome<Manifest> read_manifest(const std::string& folder) {
  const auto path = path_of(folder);
  std::error_code ignored;
  if (!fs::exists(folder, ignored)) return fault("there is no such folder", "index some books into it first", folder);
  if (!has_manifest(folder))
    return fault("there is no index in this folder", "name the folder that the books were indexed into", folder);
  std::ifstream in(path, std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  if (!in.is_open() || in.bad())
    return fault("the manifest of the index cannot be read", "see who may read this file", path);
  return parse(bytes, path);
}

Outcome<bool> write_manifest(const std::string& folder, const Manifest& manifest) {
  rapidjson::StringBuffer out;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json(out);
  json.SetIndent(' ', 1);
  json.StartObject();
  json.Key("schema");
  json.Int(schema::version);
  json.Key("program");
  json.String(GALLIPOT_VERSION);
  json.Key("generation");
  json.String(manifest.generation);
  json.Key("books");
  json.StartArray();
  for (const auto& book : manifest.books) write_book(json, book);
  json.EndArray();
  json.EndObject();
  return replace_file(path_of(folder), {out.GetString(), out.GetSize()});
}

}  // namespace gallipot
