// Reads and checks a shelf list. The text is walked once beside the parsed document to know the line of each entry.
#include "indexer/catalogue/shelf_list.h"

#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/error/en.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <map>
#include <memory>

#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

struct Field {
  const char* name;
  std::string Book::*into;
  bool required;
};

constexpr std::array<Field, 17> kFields = {{{"id", &Book::id, true},
                                            {"file", &Book::file, true},
                                            {"title", &Book::title, true},
                                            {"creator", &Book::creator, false},
                                            {"contributor", &Book::contributor, false},
                                            {"date", &Book::date, false},
                                            {"first_published", &Book::first_published, false},
                                            {"publisher", &Book::publisher, false},
                                            {"place", &Book::place, false},
                                            {"country", &Book::country, false},
                                            {"edition", &Book::edition, false},
                                            {"language", &Book::language, false},
                                            {"rights", &Book::rights, false},
                                            {"source", &Book::source, false},
                                            {"identifier", &Book::identifier, false},
                                            {"images", &Book::images, false},
                                            {"manifest", &Book::manifest, false}}};

long line_of(std::string_view text, std::size_t offset) {
  return 1 + static_cast<long>(std::count(
                 text.begin(), text.begin() + static_cast<std::ptrdiff_t>(std::min(offset, text.size())), '\n'));
}

/// Where each entry of "books" begins, and where each field name stands in it: what RapidJSON does not keep.
struct EntryPlace {
  long line = 0;
  std::map<std::string, long, std::less<>> fields;
};

/// Walks well-formed JSON. Strings are skipped whole, so brackets and commas in titles do not mislead.
class PlaceFinder {
 public:
  explicit PlaceFinder(std::string_view text) : text_(text) {}

  std::vector<EntryPlace> find() {
    std::vector<EntryPlace> entries;
    int depth = 0;
    bool in_books = false;
    std::string key;
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (c == '\n') ++line_;
      if (c == '"') {
        const long line = line_;
        std::string word = string();
        if (!next_is_colon()) continue;
        if (depth == 1) in_books = word == "books";
        if (depth == 3 && in_books && !entries.empty()) entries.back().fields.emplace(std::move(word), line);
        continue;
      }
      if (c == '{' || c == '[') {
        if (c == '{' && depth == 2 && in_books) entries.push_back({line_, {}});
        ++depth;
      }
      if (c == '}' || c == ']') --depth;
      // An entry that is no object still counts as one.
      if (depth == 2 && in_books && (c == '-' || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z')))
        skip_scalar(entries);
      ++at_;
    }
    return entries;
  }

 private:
  std::string string() {
    std::string out;
    for (++at_; at_ < text_.size() && text_[at_] != '"'; ++at_) {
      if (text_[at_] == '\\') ++at_;
      if (at_ < text_.size()) out += text_[at_];
    }
    ++at_;
    return out;
  }

  bool next_is_colon() {
    while (at_ < text_.size() && static_cast<unsigned char>(text_[at_]) <= ' ') line_ += text_[at_++] == '\n';
    return at_ < text_.size() && text_[at_] == ':';
  }

  void skip_scalar(std::vector<EntryPlace>& entries) {
    entries.push_back({line_, {}});
    while (at_ + 1 < text_.size() && text_[at_ + 1] != ',' && text_[at_ + 1] != ']' && text_[at_ + 1] != '\n') ++at_;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  long line_ = 1;
};

const char* type_name(const rapidjson::Value& value) {
  switch (value.GetType()) {
    case rapidjson::kNullType:
      return "null";
    case rapidjson::kFalseType:
    case rapidjson::kTrueType:
      return "true or false";
    case rapidjson::kObjectType:
      return "an object";
    case rapidjson::kArrayType:
      return "a list";
    case rapidjson::kStringType:
      return "text";
    case rapidjson::kNumberType:
      return "a number";
  }
  return "something else";
}

/// Reads the entries of one list; `name` stands in faults.
class ListReader {
 public:
  ListReader(const std::string& name, std::vector<EntryPlace> places) : name_(name), places_(std::move(places)) {
    const auto slash = name.find_last_of('/');
    folder_ = slash == std::string::npos ? "" : name.substr(0, slash + 1);
  }

  Outcome<Book> entry(const rapidjson::Value& value, std::size_t index) {
    index_ = index;
    if (!value.IsObject())
      return at("", fmt::format("entry {} is {}, not an object", index + 1, type_name(value)),
                "write it as { \"id\": ..., \"file\": ..., \"title\": ... }");
    Book book;
    for (const Field& field : kFields) {
      const auto member = value.FindMember(field.name);
      const bool absent = member == value.MemberEnd() || member->value.IsNull();
      if (absent && !field.required) continue;
      if (absent)
        return at("", fmt::format("entry {} has no \"{}\"", index + 1, field.name),
                  fmt::format("add \"{}\" to it", field.name));
      if (!member->value.IsString())
        return at(field.name,
                  fmt::format("\"{}\" of entry {} is {}, not text", field.name, index + 1, type_name(member->value)),
                  "put it in double quotes");
      book.*field.into = to_nfc({member->value.GetString(), member->value.GetStringLength()});
      if (field.required && (book.*field.into).empty())
        return at(field.name, fmt::format("\"{}\" of entry {} is empty", field.name, index + 1), "fill it in");
    }
    return checked(std::move(book));
  }

 private:
  tl::unexpected<Fault> at(const char* field, std::string what, std::string mend) const {
    long line = 0;
    if (index_ < places_.size()) {
      line = places_[index_].line;
      if (const auto found = places_[index_].fields.find(field); found != places_[index_].fields.end())
        line = found->second;
    }
    return fault(std::move(what), std::move(mend), name_, line);
  }

  Outcome<Book> checked(Book book) {
    const auto bad = std::find_if(book.id.begin(), book.id.end(), [](char c) {
      return !((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' ||
               c == '.');
    });
    if (bad != book.id.end())
      return at("id", fmt::format("the id \"{}\" holds a character that an id may not hold", book.id),
                "use only letters, digits, '-', '_' and '.'");
    if (!ids_.emplace(book.id, index_ + 1).second)
      return at("id",
                fmt::format("the id \"{}\" stands twice, in entries {} and {}", book.id, ids_[book.id], index_ + 1),
                "give one of them another id");
    if (!files_.emplace(book.file, index_ + 1).second)
      return at("file",
                fmt::format("the file \"{}\" is listed twice, in entries {} and {}", book.file, files_[book.file],
                            index_ + 1),
                "take one of the entries out");
    if (!book.date.empty() && !(book.years = edtf_years(book.date))) return bad_date("date", book.date);
    if (!book.first_published.empty() && !(book.first_years = edtf_years(book.first_published)))
      return bad_date("first_published", book.first_published);
    const bool two_letters = book.country.size() == 2 &&
                             std::all_of(book.country.begin(), book.country.end(),
                                         [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); });
    if (!book.country.empty() && !two_letters)
      return at("country", fmt::format("the country \"{}\" of \"{}\" is not two letters", book.country, book.id),
                "write it as ISO 3166 does, for example \"GB\" or \"US\"");
    for (char& c : book.country)
      if (c >= 'a') c = static_cast<char>(c - 32);
    book.path = book.file.starts_with("/") ? book.file : folder_ + book.file;
    return book;
  }

  Outcome<Book> bad_date(const char* field, const std::string& written) const {
    return at(field, fmt::format("\"{}\" of entry {} is not a date: \"{}\"", field, index_ + 1, written),
              "write a year such as \"1861\", \"1830~\" (about) or \"18XX\" (some year of the 1800s)");
  }

  const std::string& name_;
  std::vector<EntryPlace> places_;
  std::string folder_;
  std::size_t index_ = 0;
  std::map<std::string, std::size_t> ids_;
  std::map<std::string, std::size_t> files_;
};

}  // namespace

Outcome<std::vector<Book>> parse_shelf_list(std::string_view json, const std::string& name) {
  if (json.starts_with("\xEF\xBB\xBF")) json.remove_prefix(3);
  rapidjson::Document document;
  // Iterative: nesting of any depth in a broken file must not exhaust the stack.
  document.Parse<rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag>(json.data(), json.size());
  if (document.HasParseError()) {
    std::string what = rapidjson::GetParseError_En(document.GetParseError());
    while (!what.empty() && what.back() == '.') what.pop_back();
    return fault("the shelf list is not well-formed JSON here: " + what, "look for a missing comma, quote or bracket",
                 name, line_of(json, document.GetErrorOffset()));
  }
  const bool object = document.IsObject();
  const auto books = object ? document.FindMember("books") : rapidjson::Value::MemberIterator();
  if (!object || books == document.MemberEnd() || !books->value.IsArray())
    return fault("the shelf list has no list called \"books\"", "begin it with { \"books\": [", name, 1);
  ListReader reader(name, PlaceFinder(json).find());
  std::vector<Book> out;
  out.reserve(books->value.Size());
  for (rapidjson::SizeType i = 0; i < books->value.Size(); ++i) {
    auto book = reader.entry(books->value[i], i);
    if (!book) return tl::unexpected<Fault>(std::move(book.error()));
    out.push_back(std::move(*book));
  }
  return out;
}

Outcome<std::vector<Book>> read_shelf_list(const std::string& path) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), std::fclose);
  if (!file)
    return fault(fmt::format("the shelf list cannot be opened ({})", std::strerror(errno)),
                 "see whether its name is right", path);
  std::string text;
  std::string chunk(1 << 16, '\0');
  std::size_t got = 0;
  while ((got = std::fread(chunk.data(), 1, chunk.size(), file.get())) > 0) text.append(chunk, 0, got);
  if (std::ferror(file.get()))
    return fault("the shelf list cannot be read", "see whether it is a file and not a folder", path);
  return parse_shelf_list(text, path);
}

}  // namespace gallipot
