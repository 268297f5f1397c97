// Who may ask what? Nothing is answered, and nothing written, unless these say so.
#pragma once

#include <string>

#include "tools/reading_room/request.h"

namespace gallipot::room {

/// Whether the Host header names this machine's own loopback ("127.0.0.1", "localhost", "[::1]", with or without a
/// port) or, where `by_token`, an address in figures. A name that some server has pointed at this machine does not
/// pass: so a page from elsewhere cannot ask in our name.
bool host_may_ask(const std::string& host, bool by_token);

/// Whether a write comes from a page of ours: posted, its Origin (where told) is the host asked, its Sec-Fetch-Site
/// (where told) the same origin, and its form carries the secret of this run.
bool write_is_ours(const Request& request, const std::string& secret);

/// Whether the request shows the token of a room that is open to other machines: as "Authorization: Bearer TOKEN" or in
/// the cookie that showing it once in the address has set.
bool shows_token(const Request& request, const std::string& token);
inline constexpr const char* token_cookie = "gallipot_token";

/// Same length and bytes, in a time that does not tell how many of them agree.
bool same_secret(const std::string& a, const std::string& b);

/// 32 hexadecimal figures from the system's source of randomness.
std::string new_secret();

/// Headers that every answer carries: what a page may load (only from us, no inline script or style), that it may not
/// be framed, that its address is told to no other.
const Pairs& guarding_headers();

}  // namespace gallipot::room
