// Fills templates. They are few and small, so each thread parses one once and keeps it.
#include "query/reporting/html.h"

#include <fmt/format.h>

#include <array>
#include <stdexcept>
#include <unordered_map>
#include <vector>

extern "C" {
#include "pages_declared.inc"
}

namespace gallipot::html {
namespace {

struct PageFile {
  std::string_view name;
  const char* begin;
  const char* end;
};

const std::vector<PageFile>& page_files() {
  static const std::vector<PageFile> all = {
#include "pages_index.inc"
  };
  return all;
}

constexpr std::string_view ending = ".mustache";

kainjow::mustache::mustache& parsed(std::string_view name) {
  thread_local std::unordered_map<std::string, kainjow::mustache::mustache> kept;
  const auto found = kept.find(std::string(name));
  if (found != kept.end()) return found->second;
  const std::string file = std::string(name).append(ending);
  const std::string_view bytes = page_file(file);
  if (bytes.empty()) throw std::logic_error(fmt::format("there is no page template {}", file));
  kainjow::mustache::mustache fresh{std::string(bytes)};
  if (!fresh.is_valid()) throw std::logic_error(fmt::format("page template {}: {}", file, fresh.error_message()));
  return kept.emplace(name, std::move(fresh)).first->second;
}

void add_partials(Fields& fields) {
  for (const PageFile& file : page_files()) {
    if (!file.name.ends_with(ending)) continue;
    const std::string name(file.name.substr(0, file.name.size() - ending.size()));
    const std::string_view bytes(file.begin, static_cast<std::size_t>(file.end - file.begin));
    fields.set(name, kainjow::mustache::partial{[bytes] { return std::string(bytes); }});
  }
}

}  // namespace

std::string escape(std::string_view text) {
  std::string out;
  out.reserve(text.size() + text.size() / 8);
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string_view page_file(std::string_view name) {
  for (const PageFile& file : page_files()) {
    if (file.name == name) return {file.begin, static_cast<std::size_t>(file.end - file.begin)};
  }
  return {};
}

std::string render(std::string_view name, Fields fields) {
  add_partials(fields);
  kainjow::mustache::mustache& page = parsed(name);
  std::string out = page.render(fields);
  if (!page.is_valid()) throw std::logic_error(fmt::format("page template {}: {}", name, page.error_message()));
  return out;
}

std::string whole_page(const Page& page) {
  Fields fields;
  fields.set("title", page.title);
  fields.set("language", page.language);
  fields.set("style", std::string(page_file("gallipot.css")));
  fields.set("head", page.head);
  fields.set("body", page.body);
  fields.set("colophon", page.colophon);
  return render("whole_page", std::move(fields));
}

}  // namespace gallipot::html
