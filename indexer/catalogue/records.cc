// Reads MARC fields and Dublin Core elements; writes a shelf list.
#include "indexer/catalogue/records.h"

#include <fmt/format.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <set>
#include <utility>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/text/unicode.h"
#include "indexer/text/xml.h"

namespace gallipot {
namespace {

/// ISBD's marks at the end of a subfield go: "The larder book /", "York :", "1744."
std::string without_marks(std::string text) {
  while (!text.empty() && std::string_view(" /:;,=").find(text.back()) != std::string_view::npos) text.pop_back();
  if (text.size() > 3 && text.back() == '.' && text[text.size() - 2] != '.' && text[text.size() - 3] != '.' &&
      text[text.size() - 3] != ' ')
    text.pop_back();
  return text;
}

/// The EDTF date in "c1744.", "[1744?]", "1744-1750", "MDCCXLIV [1744]"; empty where there is no year.
std::string date_in(std::string_view text) {
  for (std::size_t i = 0; i + 4 <= text.size(); ++i) {
    const auto year = text.substr(i, 4);
    if (!std::all_of(year.begin(), year.end(), [](char c) { return c >= '0' && c <= '9'; })) continue;
    std::string out(year);
    if (i + 4 < text.size() && text[i + 4] == '?') out += '?';
    return edtf_years(out) ? out : std::string(year);
  }
  return {};
}

void set(std::string& field, std::string value) {
  if (field.empty()) field = std::move(value);
}

std::string subfield(pugi::xml_node field, std::string_view codes) {
  std::string out;
  for (const pugi::xml_node part : field.children()) {
    const auto code = xml_attribute(part, "code");
    if (xml_name(part) != "subfield" || code.size() != 1 || codes.find(code[0]) == std::string_view::npos) continue;
    if (!out.empty()) out += ' ';
    out += xml_text(part);
  }
  return without_marks(std::move(out));
}

/// "Hartley, Ann" -> "Ann Hartley"
std::string name_in_order(const std::string& name) {
  const auto comma = name.find(", ");
  if (comma == std::string::npos || name.find(',', comma + 1) != std::string::npos) return name;
  return name.substr(comma + 2) + " " + name.substr(0, comma);
}

Book book_of_marc(pugi::xml_node record) {
  Book book;
  for (const pugi::xml_node field : record.children()) {
    const auto tag = xml_attribute(field, "tag");
    if (tag == "008") {
      const std::string fixed = field.child_value();
      if (fixed.size() >= 38) set(book.language, fixed.substr(35, 3) == "eng" ? "en" : fixed.substr(35, 3));
    } else if (tag == "020" || tag == "024") {
      set(book.identifier, subfield(field, "a"));
    } else if (tag == "100" || tag == "110") {
      set(book.creator, name_in_order(subfield(field, "a")));
    } else if (tag == "700") {
      set(book.contributor, name_in_order(subfield(field, "a")));
    } else if (tag == "245") {
      set(book.title, subfield(field, "ab"));
    } else if (tag == "250") {
      set(book.edition, subfield(field, "a"));
    } else if (tag == "260" || tag == "264") {
      set(book.place, subfield(field, "a"));
      set(book.publisher, subfield(field, "b"));
      set(book.date, date_in(subfield(field, "c")));
    } else if (tag == "856") {
      set(book.source, subfield(field, "u"));
    }
  }
  return book;
}

Book book_of_dublin_core(pugi::xml_node record) {
  static constexpr std::pair<std::string_view, std::string Book::*> fields[] = {
      {"title", &Book::title},         {"creator", &Book::creator},      {"contributor", &Book::contributor},
      {"publisher", &Book::publisher}, {"language", &Book::language},    {"rights", &Book::rights},
      {"source", &Book::source},       {"identifier", &Book::identifier}};
  Book book;
  for (const pugi::xml_node element : record.children()) {
    const auto name = xml_name(element);
    for (const auto& [field, into] : fields)
      if (name == field) set(book.*into, without_marks(xml_text(element)));
    if (name == "date" || name == "issued") set(book.date, date_in(xml_text(element)));
  }
  book.creator = name_in_order(book.creator);
  return book;
}

std::string id_of(const Book& book) {
  const std::string name = book.creator.empty() ? book.title : book.creator.substr(book.creator.rfind(' ') + 1);
  std::string id;
  for (const char c : to_plain(name.substr(0, name.find(' ')))) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) id += c;
  }
  if (id.empty()) id = "book";
  return book.date.empty() ? id : id + "-" + book.date.substr(0, 4);
}

std::string free_id(std::string id, const std::set<std::string>& taken) {
  if (!taken.contains(id)) return id;
  for (char c = 'b'; c <= 'z'; ++c)
    if (std::string next = id + c; !taken.contains(next)) return next;
  for (std::size_t n = 2;; ++n)
    if (std::string next = fmt::format("{}-{}", id, n); !taken.contains(next)) return next;
}

void find_records(pugi::xml_node node, std::vector<Book>& books) {  // no deeper than deepest_xml
  const auto name = xml_name(node);
  const bool has_title = std::any_of(node.begin(), node.end(), [](auto child) { return xml_name(child) == "title"; });
  const bool marc = name == "record" &&
                    std::any_of(node.begin(), node.end(), [](auto child) { return xml_name(child) == "datafield"; });
  if (marc || has_title) {
    Book book = marc ? book_of_marc(node) : book_of_dublin_core(node);
    if (!book.title.empty()) books.push_back(std::move(book));
    return;
  }
  for (const pugi::xml_node child : node.children()) find_records(child, books);
}

}  // namespace

Outcome<std::vector<Book>> parse_records(std::string_view xml, const std::string& name) {
  const auto tree = XmlTree::parse(xml);
  if (!tree) {
    Fault f = tree.error();
    f.file = name;
    return tl::unexpected(std::move(f));
  }
  std::vector<Book> books;
  find_records(tree->root(), books);
  if (books.empty())
    return fault("there is no record of a book here", "give MARCXML or Dublin Core in XML, as catalogues export it",
                 name);
  return with_records({}, books);
}

std::vector<Book> with_records(std::vector<Book> shelf, const std::vector<Book>& books) {
  std::set<std::string> ids;
  for (const Book& book : shelf) ids.insert(book.id);
  for (const Book& book : books) {
    const bool there = std::any_of(shelf.begin(), shelf.end(), [&](const Book& other) {
      return (!book.identifier.empty() && other.identifier == book.identifier) ||
             (other.title == book.title && other.date == book.date);
    });
    if (there) continue;
    Book& added = shelf.emplace_back(book);
    added.id = free_id(book.id.empty() ? id_of(book) : book.id, ids);
    if (added.file.empty() || added.id != book.id) added.file = added.id + ".txt";
    ids.insert(added.id);
  }
  return shelf;
}

std::string shelf_list_text(const std::vector<Book>& books) {
  static constexpr std::pair<const char*, std::string Book::*> fields[] = {{"id", &Book::id},
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
                                                                           {"identifier", &Book::identifier},
                                                                           {"images", &Book::images},
                                                                           {"manifest", &Book::manifest}};
  rapidjson::StringBuffer out;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json(out);
  json.SetIndent(' ', 1);
  json.StartObject();
  json.Key("books");
  json.StartArray();
  for (const Book& book : books) {
    json.StartObject();
    for (const auto& [name, field] : fields) {
      if ((book.*field).empty()) continue;
      json.Key(name);
      json.String(book.*field);
    }
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
  return std::string(out.GetString(), out.GetSize()) + "\n";
}

}  // namespace gallipot
