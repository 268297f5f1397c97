// What is asked of the reading room and what it answers, as plain values: the pages know nothing of sockets.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gallipot::room {

/// Names and values in the order in which they were given; a name may come several times.
using Pairs = std::vector<std::pair<std::string, std::string>>;

struct Upload {
  std::string file_name, bytes;
};

struct Request {
  std::string method = "GET";  ///< GET or POST; HEAD is asked as GET
  std::string path = "/";
  Pairs query;  ///< of the address
  Pairs form;   ///< of a posted form
  std::map<std::string, Upload> uploads;
  std::string host, origin, site, cookie, authorization;  ///< headers; `site` is Sec-Fetch-Site

  /// The first value of a name in the address, with white space at its ends taken off; empty where there is none.
  std::string asked(std::string_view name) const;
  std::vector<std::string> all_asked(std::string_view name) const;
  /// The same of the form.
  std::string field(std::string_view name) const;
  std::vector<std::string> fields(std::string_view name) const;
};

struct Answer {
  int status = 200;
  std::string type = "text/html; charset=utf-8";
  std::string body;
  Pairs headers;
};

Answer json_answer(std::string body, int status = 200);
/// To see another page next (303): after a form has been taken.
Answer go_to(const std::string& address);
/// A file to be kept under that name.
Answer file_answer(std::string type, std::string body, const std::string& file_name);

/// A text as it stands in an address (RFC 3986, 2.1): all but unreserved characters escaped.
std::string in_address(std::string_view text);
/// "/search" and {{"dish","plum jam"}} -> "/search?dish=plum%20jam"; pairs without a value are left out.
std::string address(std::string_view path, const Pairs& query);

/// White space at the ends taken off.
std::string trimmed(std::string_view text);

}  // namespace gallipot::room
