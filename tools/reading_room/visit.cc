// What the pages share.
#include "tools/reading_room/visit.h"

#include <fmt/format.h>
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "query/citing/cite.h"
#include "query/dossier/keep.h"

namespace gallipot::room {
namespace {

struct Part {
  const char* name;
  const char* address;
  const char* words;
};
constexpr std::array<Part, 5> parts = {{{"search", "/search", "Search"},
                                        {"families", "/families", "Dishes"},
                                        {"shelf", "/shelf", "Shelf"},
                                        {"measures", "/measures", "Measures"},
                                        {"dossiers", "/dossiers", "Dossiers"}}};

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
  return text;
}

Outcome<int> year_asked(const Request& request, const char* name) {
  const std::string text = request.asked(name);
  if (text.empty()) return 0;
  const auto year = whole_number(text);
  if (!year || *year < 1 || *year > 2100)
    return fault(fmt::format("\"{}\" is no year", text.substr(0, 40)), "write it in four figures, such as 1850");
  return static_cast<int>(*year);
}

/// Names parted by commas, each under the lexicon's name.
Outcome<std::vector<std::string>> stuffs_asked(const Visit& visit, const char* name) {
  std::vector<std::string> out;
  for (const std::string& said : visit.request.all_asked(name))
    for (std::size_t at = 0; at <= said.size();) {
      const std::size_t end = std::min(said.find(',', at), said.size());
      const std::string one = trimmed(std::string_view(said).substr(at, end - at));
      at = end + 1;
      if (one.empty()) continue;
      auto named = stuff_named(one, visit.lexicon());
      if (!named) return tl::unexpected(named.error());
      out.push_back(std::move(*named));
    }
  return out;
}

}  // namespace

void set(Fields& fields, const std::string& name, const std::string& value) {
  if (value.empty())
    fields.set(name, false);
  else
    fields.set(name, value);
}

void set(Fields& fields, const std::string& name, const char* value) { set(fields, name, std::string(value)); }
void set(Fields& fields, const std::string& name, bool value) { fields.set(name, value); }

void set_list(Fields& fields, const std::string& name, const std::vector<Fields>& items) {
  Fields list{Fields::type::list};
  for (const Fields& item : items) list.push_back(item);
  fields.set(name, list);
}

Fields fields_of(const Visit& visit) {
  Fields out;
  out.set("secret", visit.room.secret());
  std::vector<Fields> dossiers;
  const std::string wanted = visit.request.asked("dossier");
  for (const ListedDossier& one : list_dossiers(visit.dossiers())) {
    if (!one.fault.empty()) continue;
    Fields item;
    item.set("dossier_name", one.name);
    item.set("dossier_title", one.title);
    item.set("dossier_wanted", one.name == wanted);
    dossiers.push_back(std::move(item));
  }
  out.set("has_dossiers", !dossiers.empty());
  set_list(out, "dossiers", dossiers);
  return out;
}

Answer page(const Visit& visit, const std::string& title, std::string_view here, const std::string& body, int status,
            const std::string& style) {
  Fields fields;
  fields.set("title", title);
  fields.set("body", body);
  set(fields, "dish", here == "start" ? "" : visit.request.asked("dish"));
  std::vector<Fields> items;
  for (const Part& part : parts) {
    Fields item;
    item.set("address", part.address);
    item.set("words", part.words);
    item.set("current", here == part.name);
    items.push_back(std::move(item));
  }
  set_list(fields, "parts", items);
  std::vector<Fields> styles;
  if (!style.empty()) {
    Fields item;
    item.set("style_address", "/" + style);
    styles.push_back(std::move(item));
  }
  set_list(fields, "styles", styles);
  fields.set("version", GALLIPOT_VERSION);
  Answer out;
  out.status = status;
  out.body = html::render("room_frame", std::move(fields));
  return out;
}

Answer page(const Visit& visit, const std::string& title, std::string_view here, std::string_view form, Fields fields,
            const std::string& style) {
  return page(visit, title, here, html::render(form, std::move(fields)), 200, style);
}

Answer problem(const Visit& visit, const Fault& fault, int status) {
  Fields fields;
  fields.set("what", capital(fault.what));
  set(fields, "mend", capital(fault.mend));
  set(fields, "line", fault.line > 0 ? std::to_string(fault.line) : "");
  return page(visit, status == 404 ? "Not here" : "That did not work", "",
              html::render("room_problem", std::move(fields)), status);
}

Answer json_problem(const Fault& fault, int status) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> json(buffer);
  json.StartObject();
  json.Key("fault");
  json.String(fault.what);
  json.Key("mend");
  json.String(fault.mend);
  json.EndObject();
  return json_answer(std::string(buffer.GetString(), buffer.GetSize()) + "\n", status);
}

Answer nothing_here(const Visit& visit, const Fault& fault) {
  return visit.request.path.starts_with("/api/") ? json_problem(fault, 404) : problem(visit, fault, 404);
}

Outcome<std::string> stuff_named(const std::string& said, const Lexicon& lexicon) {
  std::uint32_t at = 0;
  if (lexicon.foodstuff_phrases().find(said, at)) return lexicon.foodstuffs()[at].name;
  return fault(fmt::format("no ingredient is known as \"{}\"", said.substr(0, 80)),
               "write its plain modern name, such as \"walnut\" or \"black pepper\"");
}

Outcome<Filter> filter_of(const Visit& visit) {
  Filter out;
  const auto from = year_asked(visit.request, "from"), to = year_asked(visit.request, "to");
  if (!from) return tl::unexpected(from.error());
  if (!to) return tl::unexpected(to.error());
  out.from = *from;
  out.to = *to;
  if (out.from > 0 && out.to > 0 && out.from > out.to) std::swap(out.from, out.to);
  out.country = visit.request.asked("country");
  for (char& c : out.country)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 32);
  if (!out.country.empty() && out.country.size() != 2)
    return fault(fmt::format("\"{}\" is no country's two letters", out.country.substr(0, 40)),
                 "choose one from the list");
  out.books = visit.request.all_asked("book");
  for (const std::string& book : out.books)
    if (visit.shelf().book(book) == nullptr)
      return fault(fmt::format("the shelf has no book \"{}\"", book.substr(0, 80)), "choose one from the list");
  auto with = stuffs_asked(visit, "with"), without = stuffs_asked(visit, "without");
  if (!with) return tl::unexpected(with.error());
  if (!without) return tl::unexpected(without.error());
  out.with = std::move(*with);
  out.without = std::move(*without);
  return out;
}

Pairs filter_pairs(const Request& request) {
  Pairs out;
  for (const char* name : {"from", "to", "country", "book", "with", "without"})
    for (const std::string& value : request.all_asked(name)) out.emplace_back(name, value);
  return out;
}

std::string year_of(const Book& book) { return book.date.empty() ? "no date" : book.date; }

std::string place_of(const Citation& citation) {
  return fmt::format("{}, {}, {}", citation.book.title, year_of(citation.book), citation.place_in_book());
}

std::optional<long> whole_number(const std::string& text) {
  long out = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size() || text.empty()) return std::nullopt;
  return out;
}

std::optional<double> cooks_number(const std::string& text) {
  double sum = 0;
  bool any = false;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == ' ') {
      ++at;
      continue;
    }
    const std::size_t end = std::min(text.find(' ', at), text.size());
    std::string piece = text.substr(at, end - at);
    std::replace(piece.begin(), piece.end(), ',', '.');
    double value = 0, below = 1;
    auto read = std::from_chars(piece.data(), piece.data() + piece.size(), value);
    if (read.ec != std::errc{}) return std::nullopt;
    if (read.ptr != piece.data() + piece.size() && *read.ptr == '/')
      read = std::from_chars(read.ptr + 1, piece.data() + piece.size(), below);
    if (read.ec != std::errc{} || read.ptr != piece.data() + piece.size() || !(below > 0)) return std::nullopt;
    sum += value / below;
    any = true;
    at = end;
  }
  if (!any || !std::isfinite(sum) || sum < 0 || sum > 1e6) return std::nullopt;
  return sum;
}

}  // namespace gallipot::room
