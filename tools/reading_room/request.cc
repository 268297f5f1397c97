// Small change of requests and answers.
#include "tools/reading_room/request.h"

#include <fmt/format.h>

#include <algorithm>

namespace gallipot::room {
namespace {

std::string first_of(const Pairs& pairs, std::string_view name) {
  const auto at = std::find_if(pairs.begin(), pairs.end(), [&](const auto& one) { return one.first == name; });
  return at == pairs.end() ? std::string() : trimmed(at->second);
}

std::vector<std::string> all_of(const Pairs& pairs, std::string_view name) {
  std::vector<std::string> out;
  for (const auto& [key, value] : pairs)
    if (key == name)
      if (auto text = trimmed(value); !text.empty()) out.push_back(std::move(text));
  return out;
}

}  // namespace

std::string Request::asked(std::string_view name) const { return first_of(query, name); }
std::vector<std::string> Request::all_asked(std::string_view name) const { return all_of(query, name); }
std::string Request::field(std::string_view name) const { return first_of(form, name); }
std::vector<std::string> Request::fields(std::string_view name) const { return all_of(form, name); }

Answer json_answer(std::string body, int status) {
  return {status, "application/json; charset=utf-8", std::move(body), {}};
}

Answer go_to(const std::string& address) { return {303, "text/plain; charset=utf-8", "", {{"Location", address}}}; }

Answer file_answer(std::string type, std::string body, const std::string& file_name) {
  return {200,
          std::move(type),
          std::move(body),
          {{"Content-Disposition", fmt::format("attachment; filename=\"{}\"", file_name)}}};
}

std::string in_address(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
                       c == '.' || c == '_' || c == '~' || c == '/';
    if (plain)
      out += c;
    else
      out += fmt::format("%{:02X}", static_cast<unsigned char>(c));
  }
  return out;
}

std::string address(std::string_view path, const Pairs& query) {
  std::string out(path);
  char by = '?';
  for (const auto& [name, value] : query) {
    if (value.empty()) continue;
    out += by + in_address(name) + "=" + in_address(value);
    by = '&';
  }
  return out;
}

std::string trimmed(std::string_view text) {
  constexpr std::string_view white = " \t\r\n";
  const auto from = text.find_first_not_of(white);
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(white) - from + 1));
}

}  // namespace gallipot::room
