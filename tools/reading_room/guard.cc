// The guard at the door.
#include "tools/reading_room/guard.h"

#include <fmt/format.h>

#include <algorithm>
#include <random>

namespace gallipot::room {
namespace {

/// Without ":8080"; "[::1]:8080" -> "[::1]".
std::string without_port(const std::string& host) {
  const auto bracket = host.find(']');
  const auto colon = host.find(':', bracket == std::string::npos ? 0 : bracket);
  return colon == std::string::npos ? host : host.substr(0, colon);
}

bool in_figures(const std::string& host) {
  if (host.size() > 2 && host.front() == '[' && host.back() == ']')
    return host.find_first_not_of("0123456789abcdefABCDEF:.", 1) == host.size() - 1;
  return !host.empty() && host.find_first_not_of("0123456789.") == std::string::npos;
}

}  // namespace

bool host_may_ask(const std::string& host, bool by_token) {
  const std::string name = without_port(host);
  if (name == "localhost" || name == "127.0.0.1" || name == "[::1]") return true;
  return by_token && in_figures(name);
}

bool write_is_ours(const Request& request, const std::string& secret) {
  if (request.method != "POST") return false;
  if (!request.origin.empty() && request.origin != "http://" + request.host) return false;
  if (!request.site.empty() && request.site != "same-origin") return false;
  return same_secret(request.field("secret"), secret);
}

bool shows_token(const Request& request, const std::string& token) {
  constexpr std::string_view bearer = "Bearer ";
  if (request.authorization.starts_with(bearer)) return same_secret(request.authorization.substr(bearer.size()), token);
  const std::string name = std::string(token_cookie) + "=";
  for (std::size_t at = 0; at < request.cookie.size();) {
    const std::size_t end = std::min(request.cookie.find(';', at), request.cookie.size());
    const std::string one = trimmed(std::string_view(request.cookie).substr(at, end - at));
    if (one.starts_with(name) && same_secret(one.substr(name.size()), token)) return true;
    at = end + 1;
  }
  return false;
}

bool same_secret(const std::string& a, const std::string& b) {
  if (a.size() != b.size() || a.empty()) return false;
  unsigned differ = 0;
  for (std::size_t i = 0; i < a.size(); ++i)
    differ |= static_cast<unsigned char>(a[i]) ^ static_cast<unsigned char>(b[i]);
  return differ == 0;
}

std::string new_secret() {
  std::random_device source;
  std::string out;
  for (int i = 0; i < 4; ++i) out += fmt::format("{:08x}", source());
  return out;
}

const Pairs& guarding_headers() {
  static const Pairs all = {{"Content-Security-Policy",
                             "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src "
                             "'self'; form-action 'self'; "
                             "base-uri 'none'; frame-ancestors 'none'"},
                            {"X-Content-Type-Options", "nosniff"},
                            {"Referrer-Policy", "no-referrer"},
                            {"Cross-Origin-Resource-Policy", "same-origin"},
                            {"Cross-Origin-Opener-Policy", "same-origin"},
                            {"Cache-Control", "no-store"}};
  return all;
}

}  // namespace gallipot::room
